package instant

func RoundTo(n, step int) int { return (n + step/2) / step * step }
