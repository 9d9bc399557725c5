package planner_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
)

// noonDay is a request for noon on Saturday 3 July 2027.
func noonDay(rest string, dishes ...string) string {
	return strings.Replace(plantest.Evening(plantest.Kettle22+rest, dishes...), "18:00", "12:00", 1)
}

// inUsualNight are the attended steps of a plan between 23:00 and 05:00.
func inUsualNight(p schedule.Plan) []string {
	var out []string
	for _, s := range p.Steps {
		if h := s.At.Hour(); s.Attended && (h >= 23 || h < 5) {
			out = append(out, fmt.Sprintf("%s at %s", s.Kind, s.At.Format("Mon 15:04")))
		}
	}
	return out
}

// spends fails unless a plan spends the night in a way, and says so.
func spends(t *testing.T, p schedule.Plan, way schedule.NightWay, first string) {
	t.Helper()
	if !p.Feasible || p.Night == nil || p.Night.Way != way {
		t.Fatalf("feasible %v, the night is %+v, want %s; %v", p.Feasible, p.Night, way, p.Findings)
	}
	f, ok := plantest.Finding(p, way.Code())
	if !ok || !strings.HasPrefix(f.Text, first) {
		t.Errorf("%s: %q, want %q first", way.Code(), f.Text, first)
	}
}

// A brisket for noon, and nobody has said when they sleep: the fire burns overnight,
// because nothing else works, and nobody is called between 23:00 and 05:00.
func TestBrisketForNoonWithNoHoursSaid(t *testing.T) {
	p := plantest.Day(t, noonDay("", "{name: Brisket, cut: brisket, weight: 12 lb}"))
	spends(t, p, schedule.NightFire, "The fire burns unwatched from 11:00 PM to 5:00 AM while you sleep.")
	if called := inUsualNight(p); len(called) > 0 {
		t.Errorf("in the night: %v", called)
	}
}

// A picnic shoulder for noon, likewise.
func TestPicnicForNoonWithNoHoursSaid(t *testing.T) {
	p := plantest.Day(t, noonDay("", "{name: Picnic, cut: pork-picnic, weight: 8 lb}"))
	if called := inUsualNight(p); len(called) > 0 {
		t.Errorf("in the night: %v", called)
	}
	if p.Night == nil || p.Night.Way != schedule.NightFire && p.Night.Way != schedule.NightOven {
		t.Errorf("the night: %+v", p.Night)
	}
}

// The ways of the night come in one order, and each is chosen only where those before it
// do not work.
func TestNightsInTheirOrder(t *testing.T) {
	butt := "{name: Butt, cut: pork-butt, weight: %s}"
	evening := func(rest, weight string) string {
		return plantest.Evening(plantest.Kettle22+rest, fmt.Sprintf(butt, weight))
	}
	gentle := func(rest string) string { // a hotter grate would spare the night
		text := strings.Replace(evening(rest, "4 lb"), "18:00", "13:00", 1)
		return strings.Replace(text, "4 lb", "4 lb, level: 275 F", 1)
	}
	for _, c := range []struct {
		name, document string
		way            schedule.NightWay
		first          string
	}{
		{"a day's cook", evening(plantest.Oven170, "8 lb"), schedule.NightDay, "You sleep until 5:00 AM"},
		{"an early start", gentle(""), schedule.NightEarly, "You are up at 3:"},
		{"an early start that is less sure, before a fire that nobody watches", noonDay("", fmt.Sprintf(butt, "6 lb")), schedule.NightEarly, "You are up at 3:"},
		{"the fire, since nothing else works", noonDay("", fmt.Sprintf(butt, "8 lb")), schedule.NightFire, "The fire burns unwatched"},
		{"the fire is asked for", strings.Replace(evening("overnight: true", "7 lb"), "18:00", "13:00", 1), schedule.NightFire, "The fire burns unwatched"},
		{"no unwatched fire in wind", noonDay("weather: {wind: 12 mph}", fmt.Sprintf(butt, "8 lb")), schedule.NightAwake, "Somebody is up in the night"},
		{"hours that were said", noonDay(plantest.Sleep, fmt.Sprintf(butt, "6 lb")), schedule.NightFire, "The fire burns unwatched from 11:00 PM to 5:30 AM"},
	} {
		t.Run(c.name, func(t *testing.T) { spends(t, plantest.Plan(t, c.document), c.way, c.first) })
	}
}

// A day that begins before dawn for less than the asked chance is no less sure than the fire
// that nobody would have watched, says how sure it is, and is found again when it is revised.
func TestAnEarlyStartIsAsSureAsTheNightsFire(t *testing.T) {
	early := plantest.Day(t, noonDay("", "{name: Butt, cut: pork-butt, weight: 6 lb}"))
	fire := plantest.Day(t, noonDay("overnight: true", "{name: Butt, cut: pork-butt, weight: 6 lb}"))
	f, said := plantest.Finding(early, schedule.MayBeLate)
	if !said || !strings.Contains(f.Text, "80% sure") || early.Chance.All < fire.Chance.All-0.05 || early.Chance.All < 0.79 {
		t.Errorf("%.2f, %.2f over a night's fire: %v", early.Chance.All, fire.Chance.All, f)
	}
	q, err := planner.Revise(t.Context(), early, nil, early.LightAt.Add(-7*time.Hour))
	if err != nil || !q.LightAt.Equal(*early.LightAt) || q.Night == nil || q.Night.Way != schedule.NightEarly {
		t.Errorf("the evening before: lit at %v, was %v; %+v, %v", q.LightAt, early.LightAt, q.Night, err)
	}
}

// An empty list says that nobody sleeps: then the cheapest day holds, whatever the hour,
// and nothing is said of a night.
func TestNobodySleeps(t *testing.T) {
	p := plantest.Day(t, noonDay("quiet: []", "{name: Brisket, cut: brisket, weight: 12 lb}"))
	if p.Night != nil || len(p.Quiet) != 0 || len(inUsualNight(p)) == 0 {
		t.Errorf("night %+v, quiet %v, steps in the night %v", p.Night, p.Quiet, inUsualNight(p))
	}
}

// Hours that were said are kept: the usual night may end early, one that was asked for
// never does.
func TestHoursThatWereSaidAreKept(t *testing.T) {
	p := plantest.Plan(t, strings.Replace(plantest.Evening(plantest.Kettle22+"quiet: [{from: \"23:00\", to: \"05:00\"}]", "{name: Butt, cut: pork-butt, weight: 4 lb}"), "18:00", "13:00", 1))
	if called := inUsualNight(p); len(called) > 0 || p.Night != nil && p.Night.Way == schedule.NightEarly {
		t.Errorf("in the night: %v, %+v", called, p.Night)
	}
}

// A day that leaves the night alone by itself is the same, whether nobody is said to sleep
// or nothing is said.
func TestTheUsualNightChangesNoDayThatKeepsToIt(t *testing.T) {
	for _, dish := range []string{"{cut: burger, weight: 6 oz, count: 8}", "{cut: chicken, weight: 4 lb}", "{cut: baby-backs, weight: 2.25 lb}"} {
		unsaid, awake := plantest.Day(t, plantest.Evening(plantest.Kettle22, dish)), plantest.Day(t, plantest.Evening(plantest.Kettle22+"quiet: []", dish))
		if len(unsaid.Steps) != len(awake.Steps) {
			t.Fatalf("%s: %d steps and %d", dish, len(unsaid.Steps), len(awake.Steps))
		}
		for i, s := range unsaid.Steps {
			if o := awake.Steps[i]; !s.At.Equal(o.At) || s.Text != o.Text {
				t.Errorf("%s: %s at %v, and %s at %v where nobody sleeps", dish, s.Kind, s.At, o.Kind, o.At)
			}
		}
	}
}

// An hour of sleep more or less turns no day upside down: it can still be had, and with a
// fire in the night before and after the food goes on by no more than that hour and the
// half hour that the vents are left alone.
func TestAnHourOfSleepMoreOrLess(t *testing.T) {
	dishes := []string{"{name: Meat, cut: brisket, weight: 12 lb}", "{name: Meat, cut: pork-butt, weight: 8 lb}", "{name: Meat, cut: chicken, weight: 4 lb}", "{name: Meat, cut: spare-ribs, weight: 3.5 lb}"}
	for _, dish := range dishes {
		for _, serve := range []string{"12:00", "15:00", "18:00"} {
			var before schedule.Plan
			for i, night := range []string{"00:00-05:00", "23:00-05:00", "23:00-06:00", "22:00-06:00"} {
				from, to, _ := strings.Cut(night, "-")
				p := plantest.Plan(t, strings.Replace(plantest.Evening(plantest.Kettle22+plantest.Oven170+fmt.Sprintf("quiet: [{from: %q, to: %q}]", from, to), dish), "18:00", serve, 1))
				if !p.Feasible && len(p.Remedies) == 0 {
					t.Errorf("%s at %s, asleep %s: neither plan nor remedy", dish, serve, night)
				}
				if i > 0 && p.Feasible && before.Feasible && p.Night.Way == before.Night.Way {
					a, b := plantest.FirstAt(p, schedule.StepPutOn, "meat"), plantest.FirstAt(before, schedule.StepPutOn, "meat")
					if d := a.Sub(b).Abs(); d > 3*time.Hour {
						t.Errorf("%s at %s: asleep %s it goes on %v from where it does with an hour of sleep less", dish, serve, night, d)
					}
				}
				t.Logf("%s at %s, asleep %s: feasible %v, %v", dish, serve, night, p.Feasible, wayOf(p))
				before = p
			}
		}
	}
}

func wayOf(p schedule.Plan) schedule.NightWay {
	if p.Night == nil {
		return ""
	}
	return p.Night.Way
}

// No cold-water thaw runs into quiet hours: it begins and ends awake, or the piece thaws
// for days in the refrigerator, or the plan says that there is no time. 12 lb take 6 h in
// cold water (fsis_thaw), and a turkey for 13:00 goes on at about 09:00.
func TestNoColdWaterInQuietHours(t *testing.T) {
	turkey := "{name: Turkey, cut: turkey, weight: 12 lb, start: frozen}"
	at := func(rest, serve string) schedule.Plan {
		return plantest.Plan(t, strings.Replace(plantest.Evening(plantest.Kettle22+rest, turkey), "18:00", serve, 1))
	}
	slow := plantest.StepsOf(at("", "13:00"), schedule.StepThaw, "turkey")
	if len(slow) != 1 || !strings.Contains(slow[0].Text, "refrigerator") || strings.Contains(slow[0].Text, "cold water") {
		t.Errorf("with days to spare: %v", slow)
	}
	late := at("earliest: \"02:00\"", "13:00")
	if _, said := plantest.Finding(late, "thaw-no-time"); !said || len(plantest.StepsOf(late, schedule.StepThaw, "turkey")) > 0 {
		t.Errorf("only the night is left for cold water: %v, %v", plantest.StepsOf(late, schedule.StepThaw, "turkey"), late.Findings)
	}
	day := plantest.StepsOf(at("earliest: \"06:00\"", "18:00"), schedule.StepThaw, "turkey")
	if len(day) != 1 || !strings.Contains(day[0].Text, "Change the water every 30 min, then cook it at once.") || day[0].At.Hour() < 5 {
		t.Errorf("by day: %v", day)
	}
}

// What is done the day before lies in waking hours, with nothing said of the night too:
// salted, thawed, cooked, cut within 2 h of its take-off, chilled, looked after.
func TestTheDayBeforeLiesInWakingHours(t *testing.T) {
	for _, dish := range []string{"{name: Butt, cut: pork-butt, weight: 6 lb, ready: day-before}", "{name: Brisket, cut: brisket, weight: 10 lb, ready: day-before, prep: [brined]}"} {
		p := plantest.Day(t, plantest.Evening(plantest.Kettle22+plantest.Oven170, dish, "{name: Burgers, cut: burger, weight: 6 oz, count: 4}"))
		for _, s := range p.Steps {
			if h := s.At.Hour(); s.Attended && (h >= 23 || h < 3 || h < 5 && p.Ahead.Plan.Night.Way != schedule.NightEarly) && s.Window.Early.Equal(s.Window.Late) {
				t.Errorf("%s: %s at %v", dish, s.Kind, s.At)
			}
		}
		cut := plantest.Step(t, p, schedule.StepSlice, "")
		if !strings.Contains(cut.Text, "chill first, sleep after") {
			t.Errorf("a slow one: %s", cut.Text)
		}
		// Chilled early enough to look after it for the 2 h of the first stage (fda_3_501_14).
		if at := p.Ahead.ChillAt.Hour(); at > 21 {
			t.Errorf("chilled at %v", p.Ahead.ChillAt)
		}
	}
}

// The cook is asked, not skipped: who eats, and what the label says of birds and pork.
// What is not known is printed with the stricter minimum; what was said is not asked.
func TestTheCookIsAskedNotSkipped(t *testing.T) {
	asked := func(p schedule.Plan, code string) bool {
		return slices.ContainsFunc(p.Cautions, func(c schedule.Caution) bool { return c.Code == code })
	}
	for _, c := range []struct {
		rest, dish string
		who, label bool
	}{
		{"", "{cut: chicken, weight: 4 lb}", true, true},
		{"", "{cut: pork-chop, weight: 10 oz}", true, true},
		{"", "{cut: pork-chop, weight: 10 oz, prep: []}", true, false},
		{"", "{cut: chicken, weight: 4 lb, prep: [injected]}", true, false},
		{"", "{cut: steak, weight: 12 oz, target: medium}", true, false},
		{"guests: {adults: 4, frail: true}\n", "{cut: chicken, weight: 4 lb}", false, true},
		{"guests: {adults: 4, frail: false}\n", "{cut: chicken, weight: 4 lb, prep: []}", false, false},
		{"guests: {adults: 4}\n", "{cut: chicken, weight: 4 lb, prep: []}", true, false},
		{"", "{cut: corn, count: 4}", false, false},
	} {
		p := plantest.Day(t, plantest.Evening(plantest.Kettle22+c.rest, c.dish))
		if asked(p, "who-eats") != c.who || asked(p, "label-not-read") != c.label {
			t.Errorf("%s %s: who eats %t, label %t", c.rest, c.dish, asked(p, "who-eats"), asked(p, "label-not-read"))
		}
	}
}

// What waits in the oven through the night makes no early start a night of the usual hours.
func TestAnEarlyStartBesideTheOven(t *testing.T) {
	p := plantest.Plan(t, `format: 1
serve: {date: 2027-07-03, time: "12:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in}
oven: {hold: 170 F}
weather: {air: 40 F, night: 25 F, wind: 10 mph}
confidence: 0.75
dishes:
  - {cut: brisket, weight: 4.354 kg, wrap: {with: foil, after: 4h}, level: 275 F}
  - {cut: baby-backs, weight: 0.816 kg}
  - {cut: bavette, weight: 0.544 kg}
`)
	if p.Night == nil || p.Night.Way != schedule.NightEarly {
		t.Errorf("night %+v", p.Night)
	}
}

// What goes on soon after people wake is cooked on a fire that is lit then, hotter if need be:
// before, the evening's fire was kept through the night with nothing on it, asked for or not.
func TestNoFireBurnsThroughTheNightUnderNothing(t *testing.T) {
	for _, c := range []struct{ rest, ribs, meat string }{
		{plantest.Oven170 + "quiet: [{from: \"23:00\", to: \"06:00\"}]", "{name: Ribs, cut: spare-ribs, weight: 3.49 lb}", "{name: Meat, cut: pork-butt, weight: 6.3 lb}"},
		{plantest.Oven170 + "quiet: [{from: \"23:00\", to: \"06:00\"}]\novernight: true", "{name: Ribs, cut: spare-ribs, weight: 3.49 lb}", "{name: Meat, cut: pork-butt, weight: 6.3 lb}"},
		{"oven: {hold: 200 F}\nquiet: [{from: \"23:00\", to: \"05:00\"}]", "{name: Ribs, cut: st-louis-ribs, weight: 2.62 lb, count: 2}", "{name: Meat, cut: brisket, weight: 14 lb}"},
	} {
		p := plantest.Day(t, strings.Replace(plantest.Evening("grill: {kind: kettle, diameter: 26 in}\n"+c.rest, c.ribs, c.meat), "18:00", "12:00", 1))
		spends(t, p, schedule.NightOven, "You sleep from 11:00 PM")
		for _, ph := range p.Phases {
			if ph.From.Day() != ph.To.Day() {
				t.Errorf("%s: a fire burns from %s to %s", c.rest, ph.From.Format("Mon 15:04"), ph.To.Format("Mon 15:04"))
			}
		}
	}
}

// A shoulder waits in the oven while a brisket cooks through the night: on waking both are
// looked at, the oven and the fire, before anything else.
func TestTheOvenAndTheFireAreLookedAtFirst(t *testing.T) {
	for _, c := range []struct{ serve, level string }{{"12:00", ", level: 300 F"}, {"15:00", ", serve: \"10:00\""}, {"13:00", ", serve: \"10:00\""}} {
		p := plantest.Day(t, strings.Replace(plantest.Evening("grill: {kind: kettle, diameter: 26 in}\n"+plantest.Oven170+"quiet: [{from: \"22:30\", to: \"06:00\"}]\novernight: true",
			"{name: Butt, cut: pork-butt, weight: 5 lb"+c.level+"}", "{name: Brisket, cut: brisket, weight: 14 lb, hold: [insulated-box]}"), "18:00", c.serve, 1))
		spends(t, p, schedule.NightFire, "The fire burns unwatched")
		var first []schedule.StepKind
		for _, s := range p.Steps {
			if s.Attended && s.At.Format("02 15:04") == "03 06:00" {
				first = append(first, s.Kind)
			}
		}
		if !slices.Equal(first, []schedule.StepKind{schedule.StepCheckOven, schedule.StepWaking}) {
			t.Errorf("%s: on waking %v", c.serve, first)
		}
	}
}
