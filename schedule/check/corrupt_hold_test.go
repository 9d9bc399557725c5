package check_test

import (
	"slices"

	"github.com/rickb777/date/clock"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/unit"
)

// holdCorruptions spoil how something waits.
var holdCorruptions = []corruption{
	{"wait on a fast day that nobody mentions", "box", "hold", func(p *schedule.Plan) { p.Findings = nil }},
	{"good until before it is eaten, and its step does not say so", nightDay, "good-until", func(p *schedule.Plan) {
		for i := range p.Dishes[0].Holds {
			p.Dishes[0].Holds[i].LimitMinutes = 5
		}
	}},
	{"hot for less long than it is held", "overnight", "hold", func(p *schedule.Plan) { p.Dishes[0].Holds[0].HotMinutes = 40 }},
	{"eaten later than the clock", "overnight", "hold", func(p *schedule.Plan) { p.Dishes[0].Holds[0].EatenMinutes += 60 }},
	{"oven at another setting", "overnight", "hold", func(p *schedule.Plan) {
		for i := range p.Dishes[0].Holds {
			p.Dishes[0].Holds[i].OvenC = 66
		}
	}},
	{"bird in a box for longer than the table has", "box", "hold", func(p *schedule.Plan) {
		p.Request.Dishes[0].Hold = []string{schedule.HoldBox}
		h := &p.Dishes[0].Holds[0]
		h.Method, h.LimitMinutes, h.HotMinutes, h.EatenMinutes = schedule.HoldBox, 150, 150, 210
	}},
	{"frail guests and added time", "box", "hold", func(p *schedule.Plan) { p.Request.Guests = &schedule.Guests{Adults: 6, Frail: true} }},
	{"good box without a measured hold, and nobody says so", "box", "box", func(p *schedule.Plan) {
		p.Findings = leavingOut(p.Findings, func(f schedule.Finding) bool { return f.Code == "box-unproven" })
	}},
	{"a hold that cannot be kept called sure", nightDay, "chance", func(p *schedule.Plan) {
		loadOf(p, 0).Chance, p.Dishes[0].Chance, p.Chance.All = 0.9, 0.9, 0.9
	}},
	{"nobody looks before sleep", nightDay, "overnight", func(p *schedule.Plan) {
		p.Steps = leavingOut(p.Steps, func(s schedule.Step) bool { return s.Kind == schedule.StepCheckOven && s.CoreC == 0 })
	}},
	{"nobody reads the probe on waking", nightDay, "overnight", func(p *schedule.Plan) {
		p.Steps = leavingOut(p.Steps, func(s schedule.Step) bool { return s.Kind == schedule.StepCheckOven && s.CoreC > 0 })
	}},
	{"something else before the probe is read", nightDay, "overnight", func(p *schedule.Plan) {
		i := slices.IndexFunc(p.Steps, func(s schedule.Step) bool { return s.Kind == schedule.StepCheckOven && s.CoreC > 0 })
		s := *theStep(p, schedule.StepCheckFire)
		s.At = p.Steps[i].At
		p.Steps = slices.Insert(p.Steps, i, s)
	}},
	{"an oven set lower for the night", nightDay, "overnight", func(p *schedule.Plan) { p.Request.Oven.Hold = unit.FromFahrenheit(160) }},
	{"injected meat in the oven through the night", nightDay, "overnight", func(p *schedule.Plan) { p.Request.Dishes[0].Prep = []string{"injected"} }},
	{"frail guests eat what nobody watched", nightDay, "overnight", func(p *schedule.Plan) { p.Request.Guests = &schedule.Guests{Adults: 6, Frail: true} }},
	{"not finished at 195 F", nightDay, "overnight", func(p *schedule.Plan) { p.Dishes[0].TargetC = 85 }},
	{"longer in the oven than is practised", nightDay, "overnight", func(p *schedule.Plan) { putOff(&theStep(p, schedule.StepToOven).At, -60) }},
	{"left alone for longer than an oven stays on", nightDay, "overnight", func(p *schedule.Plan) { p.Request.Quiet[0].To += 3 * clock.Hour }},
	{"cooler than the line in the night", nightDay, "overnight", func(p *schedule.Plan) {
		for i := range p.Dishes[0].Holds {
			if h := &p.Dishes[0].Holds[i]; h.Chosen {
				h.Course[len(h.Course)/2].LowC = 58
			}
		}
	}},
}

const nightDay = "night in the oven"
