package export

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/unit"
)

// view is a plan with what every writer asks of it: the cook's clock, the cook's
// units, names by id.
type view struct {
	schedule.Plan
	loc     *time.Location
	sys     unit.System
	names   map[string]string
	changes map[string]schedule.Change // by id of the step
	now     time.Time
	apart   *strings.Replacer // sets names from right to left apart, for pictures and pages
}

func look(p schedule.Plan, now time.Time) (*view, error) {
	if p.TZ == "Local" { // would make the bytes depend on the machine
		return nil, fmt.Errorf("tz: %q is no time zone of a place; an IANA name like Europe/Berlin is", p.TZ)
	}
	loc, err := time.LoadLocation(p.TZ)
	if err != nil {
		return nil, fmt.Errorf("tz: %w", err)
	}
	v := &view{Plan: p, loc: loc, sys: unit.System(p.Units), now: now, apart: isolator(p),
		names: map[string]string{}, changes: map[string]schedule.Change{}}
	if v.Ahead != nil {
		for _, d := range v.Ahead.Dishes {
			v.names[d.Dish] = clean(d.Name)
		}
	}
	for _, d := range p.Dishes {
		v.names[d.ID] = clean(d.Name)
	}
	for _, c := range p.Changes {
		if c.Step != "" {
			v.changes[c.Step] = c
		}
	}
	if v.fuelOfBoth() != nil { // which says it
		v.Findings = slices.DeleteFunc(slices.Clone(p.Findings), func(f schedule.Finding) bool { return f.Code == "ahead-fuel" })
	}
	v.Steps = slices.Clone(p.Steps)
	slices.SortStableFunc(v.Steps, func(a, b schedule.Step) int { return a.At.Compare(b.At) })
	v.nameEarly()
	return v, nil
}

// tellOnce leaves out of later refuels how coals are added, which the first that is to come
// has told in full: on a sheet, that is read from its top, not in an alarm that rings alone.
func (v *view) tellOnce() {
	told := map[string]bool{}
	for i, s := range v.Steps {
		first, how, ok := strings.Cut(s.Text, ". ")
		if s.Kind != schedule.StepRefuel || s.Done || !ok {
			continue
		}
		if told[how] {
			v.Steps[i].Text = first + ", the same way as before."
		}
		told[how] = true
	}
}

// dish gives a dish's name, and its id where it has none.
func (v *view) dish(id string) string {
	if name := v.names[id]; name != "" {
		return name
	}
	return clean(id)
}

// dishNames gives the names of several dishes as prose.
func (v *view) dishNames(ids []string) string {
	names := make([]string, len(ids))
	for i, id := range ids {
		names[i] = v.dish(id)
	}
	return list(names)
}

// fewPieces is how many unequal pieces are named one by one.
const fewPieces = 4

// portion says how much there is of a dish: "12 lb", "2 × 4.5 lb", "9 lb and 7.5 lb",
// "6, 38 lb in all".
func (v *view) portion(d schedule.DishPlan) string {
	if d.MassKg <= 0 {
		if d.Count > 1 {
			return fmt.Sprint(d.Count)
		}
		return ""
	}
	all := v.sys.Mass(unit.Mass(d.MassKg))
	if d.Count < 2 {
		return all
	}
	each, unequal := d.MassKg/float64(d.Count), false
	var weights []string
	for _, b := range d.Batches {
		for _, piece := range b.Pieces {
			unequal = unequal || math.Abs(piece.MassKg-each) > 0.02*each // to the eye
			weights = append(weights, v.sys.Mass(unit.Mass(piece.MassKg)))
		}
	}
	switch {
	case unequal && len(weights) <= fewPieces:
		return list(weights)
	case unequal:
		return fmt.Sprintf("%d, %s in all", d.Count, all)
	}
	return fmt.Sprintf("%d × %s", d.Count, v.sys.Mass(unit.Mass(each)))
}

// percent never says certain: nothing about a fire is.
func percent(chance float64) string {
	switch {
	case chance >= 0.995:
		return "over 99%"
	case chance < 0.005:
		return "less than 1%"
	}
	return fmt.Sprintf("%.0f%%", 100*chance)
}

// doesNotKeep are the dishes of a revision that do not keep until their serving as they wait, or
// are expected to.
func (v *view) doesNotKeep() (names []string) {
	for _, d := range v.Dishes {
		if v.Revision > 0 && !v.unfit(d.ID) && slices.ContainsFunc(v.Findings, func(f schedule.Finding) bool {
			return f.Code == schedule.CodeHoldShort && f.Severity == schedule.Warning && slices.Contains(f.Dishes, d.ID) && !ifFast(f.Text)
		}) {
			names = append(names, v.dish(d.ID))
		}
	}
	return names
}

// keepsNot names what is ready in time and yet not good at its meal, as it waits.
func (v *view) keepsNot() string {
	names := v.doesNotKeep()
	if len(names) == 0 {
		return ""
	}
	return ". Not good until then as it waits: " + list(names)
}

// ifFast says whether a text is of a day that goes faster than likely.
func ifFast(text string) bool {
	return strings.Contains(text, "on a fast day") || strings.Contains(text, "done as early as")
}

// core and grate print temperatures in the cook's units.
func (v *view) core(c float64) string  { return v.sys.Core(unit.Temperature(c)) }
func (v *view) grate(c float64) string { return v.sys.Grate(unit.Temperature(c)) }

// bySeverity splits cautions into dangers, which come before all else, and the rest.
func (v *view) bySeverity() (first, rest []schedule.Caution) {
	for _, c := range v.Cautions {
		if c.Severity == schedule.Danger {
			first = append(first, c)
		}
	}
	for _, severity := range []schedule.Severity{schedule.Warning, schedule.Info} {
		for _, c := range v.Cautions {
			if c.Severity == severity {
				rest = append(rest, c)
			}
		}
	}
	return first, rest
}
