package ahead

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/assemble"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/unit"
)

// Joined is the plan that is handed out, with what the other day adds. Before is
// nil where the plan is of the day before itself.
func (s TwoDays) Joined(p schedule.Plan, before *schedule.Plan) schedule.Plan {
	cooked := p
	if before != nil {
		cooked = *before
		p.Steps = append(p.Steps, s.stepsBefore(p, cooked)...)
	}
	p.Ahead = &schedule.Ahead{Plan: before, Request: s.asked, ChillAt: cooked.ServeAt}
	p.Steps = append(p.Steps, s.watch(p, cooked)...)
	for i, dish := range s.dishes {
		p.Ahead.Dishes = append(p.Ahead.Dishes, s.warming(&p, dish, s.warmed[i]))
	}
	plans.SortSteps(p.Steps)
	p.Findings = s.findings(p, before)
	p.Cautions = aheadCautions(p.Cautions, cooked.Cautions)
	if len(p.Steps) > 0 {
		p.Quiet = s.quietOf(p, before)
	}
	return p
}

// quietOf are the quiet hours that touch both days: of each as it was planned.
func (s TwoDays) quietOf(p schedule.Plan, before *schedule.Plan) []schedule.Interval {
	loc, err := s.asked.Location()
	if err != nil {
		return p.Quiet
	}
	d := Hours(&day.Day{Req: s.asked, Loc: loc, End: p.ServeAt}, p.Night)
	if before == nil {
		return d.QuietWithin(p)
	}
	first := Hours(&day.Day{Req: s.asked, Loc: loc, End: before.ServeAt}, before.Night)
	later := slices.DeleteFunc(d.QuietWithin(p), func(q schedule.Interval) bool { return q.From.Before(before.ServeAt) })
	return append(first.QuietWithin(schedule.Plan{Steps: p.Steps, ServeAt: before.ServeAt}), later...)
}

// stepsBefore are the steps of the day before in the plan of the day of serving.
// They keep their ids; phases and batches of another plan are left out.
func (s TwoDays) stepsBefore(p, before schedule.Plan) []schedule.Step {
	steps := slices.Clone(before.Steps)
	for i := range steps {
		steps[i].Phase, steps[i].Batch = 0, 0
		if !hasDish(p, steps[i].Dish) {
			steps[i].Dish = ""
		}
	}
	return steps
}

// awake is the last instant up to another, in steps of five minutes, that is in no quiet hours
// of the day that is cooked, and no earlier than the chilling begins.
func (s TwoDays) awake(cooked schedule.Plan, from, at time.Time) time.Time {
	loc, err := s.asked.Location()
	if err != nil {
		return at
	}
	d := Hours(&day.Day{Req: s.asked, Loc: loc, End: cooked.ServeAt}, cooked.Night)
	for d.InQuiet(at) && at.After(from) {
		at = at.Add(-5 * time.Minute)
	}
	return at
}

func hasDish(p schedule.Plan, id string) bool {
	_, has := p.Dish(id)
	return has
}

// watch looks at what chills before the first published stage is over; before the sleep that
// it would fall into, for what is too warm by then goes into ice water, and sooner harms nobody.
// What goes in within half an hour is looked at together.
func (s TwoDays) watch(p, cooked schedule.Plan) []schedule.Step {
	var in []time.Time
	for _, c := range cooked.Steps {
		if n := len(in); c.Kind != schedule.StepChill {
			continue
		} else if n > 0 && c.At.Sub(in[n-1]) <= 2*instant.Quarter {
			in[n-1] = c.At
		} else {
			in = append(in, c.At)
		}
	}
	u := s.asked.Units
	var out []schedule.Step
	for i, from := range in {
		at, when := from.Add(day.ChillWatch-instant.Quarter), "1 hr 45 min after the last went in"
		if bed := s.awake(cooked, from, at); bed.Before(at) && bed.After(from) {
			at, when = bed, "Before you sleep"
		}
		out = append(out, schedule.Step{
			ID: plans.StepID(p.ID, "", 0, schedule.StepLook, len(in)-1-i), Kind: schedule.StepLook, At: at, Window: plans.FixedWindow(at), Attended: true, Minutes: 5,
			Text: fmt.Sprintf("%s, measure the middle of the thickest portion: %s or less, or into bags and ice water at once. Throw out anything still above %[2]s after 2 hr.",
				when, u.Core(unit.Temperature(safety.CoolingMiddleC))),
			Why: "the published first stage of chilling ends after 2 hr",
		})
	}
	return out
}

// warming is how a dish comes back to the table. In the oven it has steps of its
// own; on the grate it is a dish of the day.
func (s TwoDays) warming(p *schedule.Plan, dish schedule.Dish, w warmed) schedule.AheadDish {
	a := schedule.AheadDish{
		Dish: dish.ID, Name: dish.Name, CookedKg: w.cookedKg, PortionM: w.portionM, ChillFirstMinutes: w.firstMinutes, ChillMinutes: w.coldMinutes,
		Place: schedule.PlaceGrate, CoreC: safety.ReheatMinimum().CoreC,
	}
	if s.asked.Oven == nil {
		return a
	}
	loc, err := s.asked.Location()
	if err != nil {
		return a
	}
	serve := day.ClockIn(s.asked, dish.Serve, loc)
	ready := serve
	if dish.Travel != nil {
		ready = serve.Add(-time.Duration(*dish.Travel))
	}
	in := ready.Add(-instant.Minutes(math.Ceil(w.oven.Planned) + arrange.HandsOnSmall)).Truncate(5 * time.Minute)
	a.Place, a.Minutes, a.From = schedule.PlaceOven, w.oven.Minutes(), &in
	u := s.asked.Units
	id := ""
	if hasDish(*p, dish.ID) {
		id = dish.ID
	}
	off := schedule.Window{Early: in.Add(instant.Minutes(w.oven.Early)).Round(time.Minute), Expected: in.Add(instant.Minutes(w.oven.Expected)).Round(time.Minute), Late: in.Add(instant.Minutes(w.oven.Late)).Round(time.Minute)}
	add := func(kind schedule.StepKind, at time.Time, win schedule.Window, text, why string) {
		p.Steps = append(p.Steps, schedule.Step{
			ID: plans.StepID(p.ID, "warm/"+dish.ID, 0, kind, 0), Kind: kind, At: at, Window: win, Dish: id, Attended: true, Minutes: arrange.HandsOnSmall, Text: text, Why: why,
		})
	}
	add(schedule.StepToOven, in, plans.FixedWindow(in), fmt.Sprintf("%s: one layer in a pan covered with foil, into the oven at %s.", dish.Name, u.Grate(unit.Temperature(reheatOvenC))),
		"it needs about "+u.About(instant.Minutes(w.oven.Expected))+" and is warmed within 2 hr")
	add(schedule.StepTakeOff, off.Expected, off, fmt.Sprintf("%s: hot when the middle reads %s or more everywhere.", dish.Name, u.Core(unit.Temperature(a.CoreC))),
		"the published temperature for what was cooked and chilled")
	s.serve(p, dish, ready, loc, add)
	return a
}

// serve puts a dish that was warmed in the oven on the table with all that is served
// then: one step for one instant.
func (s TwoDays) serve(p *schedule.Plan, dish schedule.Dish, ready time.Time, loc *time.Location, add func(kind schedule.StepKind, at time.Time, win schedule.Window, text, why string)) {
	if dish.Travel != nil {
		add(schedule.StepServe, ready, plans.FixedWindow(ready), assemble.LeaveText(dish.Name, s.asked.Units.About(time.Duration(*dish.Travel))),
			"on the table at "+say.LocalClock(s.asked.Units, day.ClockIn(s.asked, dish.Serve, loc)))
		return
	}
	var names []string
	for _, o := range s.asked.Dishes {
		if o.Travel == nil && day.ClockIn(s.asked, o.Serve, loc).Equal(ready) {
			names = append(names, o.Name)
		}
	}
	text := assemble.ServeText(say.Listed(names, "and"))
	for i, o := range p.Steps {
		if o.Kind == schedule.StepServe && o.At.Equal(ready) && strings.HasPrefix(o.Text, assemble.ServeWord) {
			p.Steps[i].Text = text
			return
		}
	}
	add(schedule.StepServe, ready, plans.FixedWindow(ready), text, "the asked time")
}

// findings of both days. What the day before says of holding does not matter there:
// what is done early is chilled early.
func (s TwoDays) findings(p schedule.Plan, before *schedule.Plan) []schedule.Finding {
	out := slices.DeleteFunc(slices.Clone(p.Findings), func(f schedule.Finding) bool { return before == nil && f.Code == schedule.CodeHoldShort })
	if before != nil {
		for _, f := range before.Findings {
			if f.Code == schedule.CodeHoldShort {
				continue
			}
			f.Path, f.Text = "", "The day before: "+f.Text
			f.Dishes = slices.DeleteFunc(slices.Clone(f.Dishes), func(id string) bool { return !hasDish(p, id) })
			out = append(out, f)
		}
		if b, on := before.Fuel, p.Fuel; b != nil && on != nil {
			out = append(out, day.Finding("ahead-fuel", "", nil, fmt.Sprintf("The day before burns about %s of fuel, too: buy %s for both days.",
				say.Mass(s.asked.Units, b.MassKg), say.Mass(s.asked.Units, b.BuyKg+on.BuyKg))))
		}
	}
	out = append(out, menuFindings(s.asked)...)
	u := s.asked.Units
	for i, dish := range s.dishes {
		w := s.warmed[i]
		if w.portionM == 0 {
			out = append(out, day.Finding("ahead-chill", "", nil, "No portion of "+dish.Name+" chills within the published limits."))
			continue
		}
		out = append(out, day.Finding("ahead-portions", "", nil, fmt.Sprintf(
			"%s: portions no thicker than %s, one layer in shallow pans, chill to %s in about %s and to %s in about %s; thicker ones need bags and ice water.",
			dish.Name, u.Length(unit.Length(w.portionM)), u.Core(unit.Temperature(safety.CoolingMiddleC)), u.About(instant.Minutes(w.firstMinutes)),
			u.Core(unit.Temperature(safety.CoolingEndC)), u.About(instant.Minutes(w.coldMinutes)))))
	}
	return out
}

// aheadCautions are those of both days and of what lies between them, in the order
// of the catalogue; those on a target of their own come last.
func aheadCautions(a, b []schedule.Caution) []schedule.Caution {
	all := slices.Clone(a)
	for _, c := range safety.Cautions(safety.Situation{ChillAhead: true, Reheat: true}) {
		b = append(slices.Clone(b), schedule.Caution{Code: c.Code, Severity: schedule.Severity(c.Severity), Text: c.Sentence, Source: c.Source})
	}
	for _, c := range b {
		if !slices.ContainsFunc(all, func(o schedule.Caution) bool { return o.Code == c.Code && o.Text == c.Text }) {
			all = append(all, c)
		}
	}
	rank := map[string]int{}
	for i, c := range safety.Catalogue() {
		rank[c.Code] = i + 1
	}
	sort.SliceStable(all, func(i, j int) bool { return rank[all[i].Code] < rank[all[j].Code] })
	return all
}
