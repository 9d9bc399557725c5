package arrange

func ShiftPhases(p *Placed, by int) {
	for i := range p.Phases {
		for j := range p.Phases[i] {
			if p.Phases[i][j] >= 0 {
				p.Phases[i][j] += by
			}
		}
	}
}
