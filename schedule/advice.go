package schedule

// advice is filled in by the remedies of a revised plan.
func (v *revision) advice(p *Plan, l left) []Remedy { return []Remedy{} }

// findings is what the log shows.
func (v *revision) findings(l left) []Finding { return nil }
