package schedule

import "slices"

// Dish is what becomes of a dish, by its id; false where the plan has none of that id.
func (p Plan) Dish(id string) (DishPlan, bool) {
	for _, d := range p.Dishes {
		if d.ID == id {
			return d, true
		}
	}
	return DishPlan{}, false
}

// Finding is the first finding of a code; false where there is none.
func (p Plan) Finding(code string) (Finding, bool) {
	for _, f := range p.Findings {
		if f.Code == code {
			return f, true
		}
	}
	return Finding{}, false
}

// Step is the first step of a kind for a dish, or for the grill where dish is empty;
// false where there is none.
func (p Plan) Step(kind StepKind, dish string) (Step, bool) {
	for _, s := range p.Steps {
		if s.Kind == kind && s.Dish == dish {
			return s, true
		}
	}
	return Step{}, false
}

// MeasuredNow says whether a step of the instant of the revision is the measurement that clears a dish or
// condemns it: before it the dish is not served.
func (p Plan) MeasuredNow(dish string) bool {
	return p.RevisedAt != nil && slices.ContainsFunc(p.Steps, func(s Step) bool {
		return s.Decides() && s.Dish == dish && !s.Done && s.At.Equal(*p.RevisedAt)
	})
}

// Milestone is an instant of the batch; false where it has none of that kind.
func (b Batch) Milestone(kind MilestoneKind) (Milestone, bool) {
	for _, m := range b.Milestones {
		if m.Kind == kind {
			return m, true
		}
	}
	return Milestone{}, false
}
