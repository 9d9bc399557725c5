package spread

func (p Pace) Times(f float64) Pace {
	return Pace{p.Early * f, p.Expected * f, p.Late * f, p.Planned * f}
}
