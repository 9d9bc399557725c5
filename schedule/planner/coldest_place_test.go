package planner_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// A bird on the fire is done when its coldest place is: a thigh at 158 °F beside a breast at 171
// leaves it on. It was "take it off now", and the thigh was ignored.
func TestTheColdestPlaceLeavesABirdOn(t *testing.T) {
	turkey := plantest.Plan(t, "serve: {date: 2027-11-25, time: \"16:00\", tz: America/Chicago}\ngrill: kettle 22 in\nguests: 8\nweather: {air: 38 F, wind: 9 mph}\noven: {hold: 170 F}\ndishes: [{cut: turkey, weight: 15 lb, prep: [injected]}]\n")
	const bird = "time,dish,kind,value\n2027-11-25 11:00,,lit,\n2027-11-25 11:25,turkey,on,\n2027-11-25 15:20,turkey,core,171 F\n"
	for name, low := range map[string]string{"pushed through": "2027-11-25 15:21,turkey,coldest,158 F\n", "a plain reading": "2027-11-25 15:22,turkey,core,158 F\n"} {
		q := plantest.Revised(t, turkey, bird+low, "2027-11-25 15:23")
		f, _ := plantest.Finding(q, schedule.ProbeHot)
		if !strings.Contains(f.Text, "leave it on") || !strings.Contains(f.Text, "158 °F") {
			t.Errorf("%s: %v", name, q.Findings)
		}
		takenOff(t, name, q)
		q = plantest.Revised(t, turkey, bird+low+"2027-11-25 15:27,turkey,core,172 F\n", "2027-11-25 15:28")
		takenOff(t, name+", and warm elsewhere again", q)
	}
}

// What a probe pushed through the bird found near its minimum, and under it, only such a probe
// clears, however long ago: a breast of 171 °F half an hour later was carved.
func TestAColdPlaceIsNotForgotten(t *testing.T) {
	turkey := plantest.Plan(t, "serve: {date: 2027-11-25, time: \"16:00\", tz: America/Chicago}\ngrill: kettle 22 in\nguests: 8\nweather: {air: 38 F, wind: 9 mph}\noven: {hold: 170 F}\ndishes: [{cut: turkey, weight: 15 lb, prep: [injected]}]\n")
	const bird = "time,dish,kind,value\n2027-11-25 11:00,,lit,\n2027-11-25 11:25,turkey,on,\n2027-11-25 14:30,turkey,coldest,149 F\n2027-11-25 15:20,turkey,core,171 F\n"
	q := plantest.Revised(t, turkey, bird, "2027-11-25 15:21")
	f, _ := plantest.Finding(q, schedule.ProbeHot)
	if !strings.Contains(f.Text, "leave it on") || !strings.Contains(f.Text, "149 °F") {
		t.Errorf("on the fire: %v", q.Findings)
	}
	takenOff(t, "on the fire", q)
	q = plantest.Revised(t, turkey, bird+"2027-11-25 15:22,turkey,pulled,\n", "2027-11-25 15:23")
	if _, undone := plantest.Finding(q, schedule.OffUndone); !undone {
		t.Errorf("off: %v", q.Findings)
	}
	q = plantest.Revised(t, turkey, bird+"2027-11-25 15:22,turkey,coldest,166 F\n2027-11-25 15:23,turkey,pulled,\n", "2027-11-25 15:24")
	if f, undone := plantest.Finding(q, schedule.OffUndone); undone || q.Dishes[0].Chance < 0.5 {
		t.Errorf("measured where it was cold: chance %.2f, %v", q.Dishes[0].Chance, f)
	}
}

// With a cold place open a warmer one moves no time either: at 166 °F in the breast the chicken
// was "over 99%", off and tented, under the order to leave it on.
func TestAWarmerPlaceMovesNoTime(t *testing.T) {
	p := plantest.Plan(t, "serve: {date: 2027-06-26, time: \"19:00\", tz: America/New_York}\ngrill: kettle 22 in\nguests: 5\nweather: {air: 79 F}\ndishes: [{cut: chicken, weight: 4.5 lb, prep: []}]\n")
	const log = "time,dish,kind,value\n2027-06-26 16:50,,lit,\n2027-06-26 17:30,chicken,on,\n2027-06-26 17:50,,grate,372 F\n2027-06-26 18:20,chicken,coldest,141 F\n"
	was := plantest.Revised(t, p, log, "2027-06-26 18:46")
	q := plantest.Revised(t, p, log+"2027-06-26 18:45,chicken,core,166 F\n", "2027-06-26 18:46")
	takenOff(t, "a warmer place", q)
	if q.Dishes[0].Chance > was.Dishes[0].Chance+1e-9 {
		t.Errorf("chance %.3f, and %.3f without the warmer place", q.Dishes[0].Chance, was.Dishes[0].Chance)
	}
	for _, s := range q.Steps {
		if !s.Done && !s.At.After(*q.RevisedAt) && (s.Kind == schedule.StepTakeOff || s.Kind == schedule.StepRest || s.Kind == schedule.StepBox) {
			t.Errorf("now: %s", s.Text)
		}
	}
}

// A loin that nobody read and nobody told to be off is not done because its hour is past: it was
// "over 99%", and served. A butt, whose minimum is hours behind it, is taken as planned.
func TestAnUnreadLoinIsNotDone(t *testing.T) {
	const of = "serve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\ngrill: kettle 22 in\nguests: 10\n"
	loin := plantest.Plan(t, of+"dishes: [{cut: pork-loin, weight: 4 lb, prep: [], level: 325 F}]\n")
	q := plantest.Revised(t, loin, "time,dish,kind,value\n2027-07-03 15:20,,lit,\n2027-07-03 16:00,pork-loin,on,\n", "2027-07-03 17:50")
	if _, asked := plantest.Finding(q, schedule.OffUnread); !asked || q.Dishes[0].Chance > 0.9+1e-9 {
		t.Errorf("chance %.3f: %v", q.Dishes[0].Chance, q.Findings)
	}
	plantest.Orders(t, q)
	for _, s := range q.Steps {
		if s.Kind == schedule.StepServe && strings.Contains(s.Text, "Serve: ") {
			t.Errorf("%s", s.Text)
		}
	}
}

// takenOff fails where something is to come off, or was read at its target.
func takenOff(t *testing.T, name string, q schedule.Plan) {
	t.Helper()
	if f, past := plantest.Finding(q, schedule.PastTarget); past {
		t.Errorf("%s: %s", name, f.Text)
	}
	for _, s := range q.Steps {
		if s.Kind == schedule.StepTakeOff && !s.Done && strings.Contains(s.Text, "off now") {
			t.Errorf("%s: %s", name, s.Text)
		}
	}
}

// One reading that comes too soon finishes no bird: 50 °F in 20 minutes beside a pork loin is the
// pork, and the bird that came off by it goes back on. It was carved at "over 99%", and after that
// thrown away.
func TestOneReadingTooSoonFinishesNoBird(t *testing.T) {
	p := plantest.Plan(t, "serve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\ngrill: kettle 22 in\nguests: 10\ndishes:\n  - {cut: turkey-breast, weight: 6 lb, prep: [], level: 325 F}\n  - {cut: pork-loin, weight: 4 lb, prep: [], level: 325 F}\n")
	const log = "time,dish,kind,value\n2027-07-03 14:20,,lit,\n2027-07-03 15:00,turkey-breast,on,\n2027-07-03 15:50,pork-loin,on,\n2027-07-03 16:30,turkey-breast,core,92 F\n2027-07-03 17:00,turkey-breast,core,118 F\n2027-07-03 17:20,turkey-breast,core,168 F\n"
	q := plantest.Revised(t, p, log, "2027-07-03 17:21")
	takenOff(t, "just read", q)
	if text := all(q); !strings.Contains(text, "168 °F") || !strings.Contains(text, "dish") && !strings.Contains(text, "Boneless pork loin was read") {
		t.Errorf("the other dish is not thought of: %s", text)
	}
	q = plantest.Revised(t, p, log+"2027-07-03 17:22,turkey-breast,pulled,\n", "2027-07-03 17:23")
	if _, asked := plantest.Finding(q, schedule.OffUnread); !asked || q.Dishes[0].Chance > 0.9 {
		t.Errorf("off by it: chance %.3f, %v", q.Dishes[0].Chance, q.Findings)
	}
	q = plantest.Revised(t, p, log+"2027-07-03 17:22,turkey-breast,pulled,\n2027-07-03 17:30,turkey-breast,core,136 F\n", "2027-07-03 17:31")
	if f, _ := plantest.Finding(q, schedule.OffUndone); !strings.Contains(f.Text, "136 °F") || strings.Contains(f.Text, "hrow it away") {
		t.Errorf("read low after it: %v", q.Findings)
	}
	q = plantest.Revised(t, p, strings.Replace(log, "168 F", "140 F", 1)+"2027-07-03 17:45,turkey-breast,core,166 F\n", "2027-07-03 17:46")
	if _, past := plantest.Finding(q, schedule.PastTarget); !past {
		t.Errorf("done at its pace: %v", q.Findings)
	}
}

// all are the texts of what is found.
func all(q schedule.Plan) string {
	var out []string
	for _, f := range q.Findings {
		out = append(out, f.Text)
	}
	return strings.Join(out, "\n")
}
