package revise_test

import (
	"bytes"
	"encoding/json"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// What is found of a fire in hand, of any of its codes.
func fireFinding(p schedule.Plan) (schedule.Finding, bool) {
	i := slices.IndexFunc(p.Findings, func(f schedule.Finding) bool { return f.Steer != nil })
	if i < 0 {
		return schedule.Finding{}, false
	}
	return p.Findings[i], true
}

const creeping = "time,dish,kind,value\n06:00,,vents,\"top 1/3, bottom 1/3\"\n08:00,brisket,on,\n09:00,,grate,262 F\n09:30,brisket,core,70 F\n09:40,,grate,285 F\n10:10,,grate,305 F\n10:40,,grate,318 F\n"

// A fire that creeps up goes on doing so if nobody touches it: the brisket is done sooner than if the grate stayed as it
// was read last, and back to the level is a choice with its price.
func TestCourseOfTheGrateGoesIntoTheTimes(t *testing.T) {
	day := plantest.Day(t, plantest.ReadFile(t, "../../testdata/logs/brisket-alone.yaml"))
	told := plantest.Revised(t, day, creeping, "2027-07-03 10:45")
	plantest.Judge(t, told)
	f, ok := fireFinding(told)
	if !ok || f.Code != "grate-off-level" || f.Steer.Do != "move-vents" || f.Steer.To.Top >= f.Steer.From.Top && f.Steer.To.Bottom >= f.Steer.From.Bottom {
		t.Fatalf("%+v", f)
	}
	if !strings.HasPrefix(f.Steer.Text, "Close the ") || strings.Contains(f.Text, f.Steer.Text) { // a step says it, once
		t.Errorf("%s\nbeside the step %s", f.Text, f.Steer.Text)
	}
	for _, words := range []string{"above its level of 275 °F", "Expect ", "Look again in ", "Why: ", "nobody touches the fire for an hour"} {
		if !strings.Contains(f.Text, words) {
			t.Errorf("does not say %q: %s", words, f.Text)
		}
	}
	if !slices.ContainsFunc(told.Remedies, func(r schedule.Remedy) bool { return r.Code == "back-to-level" && strings.Contains(r.Price, "later") }) {
		t.Errorf("no way back to the level: %+v", told.Remedies)
	}
	set, look := 0, 0
	for _, s := range told.Steps {
		switch {
		case s.Kind == schedule.StepSetVents && !s.Done && s.At.Equal(*told.RevisedAt) && s.Text == f.Steer.Text:
			set++
		case s.Kind == schedule.StepCheckFire && !s.Done && s.At.Sub(*told.RevisedAt).Minutes() == float64(f.Steer.LookMinutes):
			look++
		}
	}
	if set != 1 || look != 1 {
		t.Errorf("%d steps to set the vents, %d looks", set, look)
	}
	silent := plantest.Revised(t, day, strings.Replace(creeping, "06:00,,vents,\"top 1/3, bottom 1/3\"\n", "", 1), "2027-07-03 10:45")
	if g, _ := fireFinding(silent); !strings.Contains(g.Text, "stays that way") || !strings.Contains(g.Text, "vents as the plan set them") {
		t.Errorf("vents not told: %s", g.Text)
	}
}

// Under vents that were opened far, a cool grate comes back: the dish is done sooner than if it stayed as read.
func TestCourseComesBack(t *testing.T) {
	day := plantest.Day(t, plantest.ReadFile(t, "../../testdata/logs/brisket-alone.yaml"))
	log := "time,dish,kind,value\n06:00,,vents,\"top 1/4, bottom 1/4\"\n08:00,brisket,on,\n08:30,,grate,236 F\n09:00,,grate,238 F\n09:30,,grate,237 F\n10:00,brisket,core,80 F\n10:00,,grate,238 F\n"
	low := plantest.Revised(t, day, log, "2027-07-03 10:01")
	opened := plantest.Revised(t, day, log+"10:00,,vents,\"top 1, bottom 1/2\"\n", "2027-07-03 10:01")
	if a, b := plantest.TakeOff(t, low, "brisket").Expected, plantest.TakeOff(t, opened, "brisket").Expected; !b.Before(a) {
		t.Errorf("off at %s under small vents, at %s under wide ones", a, b)
	}
}

// Equal logs, equal bytes; and in quiet hours nothing wants anybody out of bed.
func TestHandIsDeterministicAndLetsSleep(t *testing.T) {
	day := plantest.Day(t, strings.Replace(plantest.ReadFile(t, "../../testdata/logs/brisket-alone.yaml"), "dishes:", "quiet: [{from: \"10:30\", to: \"12:00\"}]\ndishes:", 1))
	var texts [2][]byte
	for i := range texts {
		p := plantest.Revised(t, day, creeping, "2027-07-03 10:45")
		plantest.Judge(t, p)
		texts[i], _ = json.Marshal(p)
		if f, ok := fireFinding(p); !ok || !strings.HasPrefix(f.Text, "Quiet hours: nothing here wants you out of bed.") {
			t.Errorf("in quiet hours: %+v", f)
		}
		for _, s := range p.Steps {
			if (s.Kind == schedule.StepSetVents || s.Kind == schedule.StepCheckFire) && !s.Done && s.At.Equal(*p.RevisedAt) {
				t.Errorf("%s in quiet hours", s.Kind)
			}
		}
	}
	if !bytes.Equal(texts[0], texts[1]) {
		t.Error("the same log, another plan")
	}
}

// Raw meat over a fire that gets no air lets nobody sleep: "nothing here wants you out of bed" stood over an order to open
// its vents.
func TestARawPieceOverShutVentsLetsNobodySleep(t *testing.T) {
	day := plantest.Day(t, "format: 1\nserve: {date: 2027-07-04, time: \"13:00\", tz: America/Chicago}\ngrill: {kind: kettle, diameter: 22 in}\novernight: true\ndishes:\n  - {id: butt, name: Pork butt, cut: pork-butt, weight: 8 lb, level: 250 F, prep: []}\n")
	const log = "time,dish,kind,value\n2027-07-03 21:35,,lit,\n2027-07-03 22:30,butt,on,\n2027-07-03 22:55,,grate,262 F\n2027-07-04 01:00,,vents,both shut\n2027-07-04 02:10,,grate,215 F\n"
	p := plantest.Revised(t, day, log, "2027-07-04 02:11")
	if f, ok := fireFinding(p); !ok || !strings.HasPrefix(f.Text, "This wants you out of bed: Open the top vent") {
		t.Errorf("%+v", f)
	}
}

// Coals that are lit to be added later are not lit with the fire.
func TestTheChimneyOfARefuelIsLitLater(t *testing.T) {
	day := plantest.Day(t, "format: 1\nserve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\ngrill: {kind: kettle, diameter: 22 in}\ndishes:\n  - {name: Chicken, cut: chicken, weight: 5 lb, level: 375 F}\n")
	var lights []schedule.Step
	for _, s := range day.Steps {
		if s.Kind == schedule.StepLight {
			lights = append(lights, s)
		}
	}
	if len(lights) < 2 || !strings.Contains(lights[1].Text, "in the chimney, to add in 20 min") {
		t.Fatalf("the day tests nothing: %+v", lights)
	}
	now := lights[0].At.Add(20 * time.Minute)
	q := plantest.Revised(t, day, "time,dish,kind,value\n"+lights[0].At.Format(time.RFC3339)+",,lit,\n", now.Format("2006-01-02 15:04"))
	plantest.Judge(t, q)
	for _, s := range q.Steps {
		if s.ID == lights[1].ID && s.Done {
			t.Errorf("done: %+v", s)
		}
	}
}

// Before a night beside the fire the cook hears how sure it is.
func TestHowSureTheNightIs(t *testing.T) {
	day := plantest.Day(t, plantest.ReadFile(t, "../../testdata/logs/overnight.yaml"))
	on := plantest.FirstAt(day, schedule.StepPutOn, "brisket")
	if on.IsZero() {
		on = plantest.FirstAt(day, schedule.StepPutOn, day.Dishes[0].ID)
	}
	line := func(after time.Duration, rest string) string {
		return on.Add(after).Format(time.RFC3339) + "," + rest + "\n"
	}
	log := "time,dish,kind,value\n" + line(-40*time.Minute, ",lit,") + line(-20*time.Minute, `,vents,"top 1/4, bottom 1/4"`) + line(0, day.Dishes[0].ID+",on,")
	for k := range 5 {
		log += line(time.Duration(7*k-14)*time.Minute, ",grate,240 F")
	}
	q := plantest.Revised(t, day, log, on.Add(25*time.Minute).Format("2006-01-02 15:04"))
	plantest.Judge(t, q)
	for _, f := range q.Findings {
		if f.Code == "night-sure" {
			t.Log(f.Text)
			return
		}
	}
	t.Errorf("not told; put on at %s, quiet %v: %+v", on, q.Quiet, q.Findings)
}

// What burns, or dies, gets people up: sleep is never put before it.
func TestNobodySleepsThroughAFlare(t *testing.T) {
	day := plantest.Day(t, strings.Replace(plantest.ReadFile(t, "../../testdata/logs/brisket-alone.yaml"), "dishes:", "quiet: [{from: \"10:30\", to: \"12:00\"}]\ndishes:", 1))
	calm := "time,dish,kind,value\n06:00,,vents,\"top 1/3, bottom 1/3\"\n08:00,brisket,on,\n09:40,,grate,275 F\n10:10,,grate,276 F\n10:36,,grate,275 F\n"
	for name, last := range map[string]string{"a flare": "10:42,,grate,420 F\n", "too cool": "10:38,,grate,232 F\n10:42,,grate,190 F\n10:44,,grate,188 F\n"} {
		p := plantest.Revised(t, day, calm+last, "2027-07-03 10:45")
		plantest.Judge(t, p)
		for _, f := range p.Findings {
			if strings.Contains(f.Text, "wants you out of bed") {
				t.Errorf("%s: %s", name, f.Text)
			}
		}
		if f, ok := fireFinding(p); name == "a flare" && (!ok || !strings.Contains(f.Text, "Don't open the lid")) {
			t.Errorf("%s: %+v", name, p.Findings)
		}
	}
}

// In the last half hour before a sleep beside the fire no vent is moved.
func TestVentsRestBeforeSleep(t *testing.T) {
	day := plantest.Day(t, plantest.ReadFile(t, "../../testdata/logs/overnight.yaml"))
	on := plantest.FirstAt(day, schedule.StepPutOn, day.Dishes[0].ID)
	line := func(after time.Duration, rest string) string {
		return on.Add(after).Format(time.RFC3339) + "," + rest + "\n"
	}
	log := "time,dish,kind,value\n" + line(-40*time.Minute, ",lit,") + line(-20*time.Minute, `,vents,"top 1/2, bottom 1/2"`) + line(0, day.Dishes[0].ID+",on,")
	for k := range 5 {
		log += line(time.Duration(6*k-14)*time.Minute, ",grate,305 F")
	}
	now := on.Add(20 * time.Minute)
	if left := day.Quiet[0].From.Sub(now); left <= 0 || left > 30*time.Minute {
		t.Fatalf("the day tests nothing: %s until sleep", left)
	}
	q := plantest.Revised(t, day, log, now.Format("2006-01-02 15:04"))
	plantest.Judge(t, q)
	f, ok := fireFinding(q)
	if !ok || !strings.Contains(f.Text, "no vent is moved so late") {
		t.Errorf("%+v", f)
	}
	for _, s := range q.Steps {
		if s.Kind == schedule.StepSetVents && !s.Done {
			t.Errorf("vents at %s", s.At)
		}
	}
}

// Both vents shut under food: they are opened first, read or not, and the grate is told no hotter than it was read.
func TestShutVentsUnderFoodAreOpenedFirst(t *testing.T) {
	day := plantest.Day(t, plantest.ReadFile(t, "../../testdata/logs/brisket-alone.yaml"))
	log := "time,dish,kind,value\n06:00,,vents,\"top 1/3, bottom 1/3\"\n08:00,brisket,on,\n09:00,,grate,345 F\n09:02,,vents,both shut\n09:15,,grate,312 F\n"
	for _, now := range []string{"2027-07-03 09:16", "2027-07-03 09:40", "2027-07-03 10:05"} {
		p := plantest.Revised(t, day, log, now)
		f, _ := fireFinding(p)
		if f.Steer == nil {
			t.Errorf("%s: no word of the fire: %+v %+v", now, p.Findings, p.Steps)
			continue
		}
		if f.Steer.Do != "move-vents" || f.Steer.To.Top < 1./8 || !strings.HasPrefix(f.Steer.Text, "Open the top vent from shut to ") {
			t.Errorf("%s: %+v", now, f)
		}
		if strings.Contains(f.Text, "runs at about 33") || strings.Contains(f.Text, "runs at about 32") {
			t.Errorf("%s: told hotter than read under shut vents: %s", now, f.Text)
		}
		if late := now > "2027-07-03 10"; late != strings.Contains(f.Steer.Text, "Then read the grate") {
			t.Errorf("%s: asks for a reading: %t: %s", now, !late, f.Steer.Text)
		}
		if !slices.ContainsFunc(p.Steps, func(s schedule.Step) bool {
			return s.Kind == schedule.StepSetVents && !s.Done && s.At.Equal(*p.RevisedAt) && strings.HasPrefix(s.Text, f.Steer.Text) && strings.Contains(s.Text, "two minutes")
		}) {
			t.Errorf("%s: no step opens them", now)
		}
	}
}

// Lit coals lately, and the grate still hot: the fire is weak, not out. Colder than that, or long after, it is out as before.
func TestAYoungFireIsWeakNotOut(t *testing.T) {
	day := plantest.Day(t, "format: 1\nserve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\ngrill: {kind: kettle, diameter: 22 in}\ndishes:\n  - {name: Chicken, cut: chicken, weight: 5 lb, level: 375 F}\n")
	head := "time,dish,kind,value\n15:30,,lit,\n15:50,,lit-coals,80\n15:50,,vents,\"top 1, bottom 1\"\n16:05,chicken,on,\n"
	for _, c := range []struct {
		name, log, now string
		out            bool
	}{
		{"35 min after the pour", "16:25,,grate,262 F\n", "2027-07-03 16:25", false},
		{"coals since the reading", "17:00,,grate,225 F\n17:12,,lit-coals,40\n", "2027-07-03 17:20", false},
		{"too cold for that", "17:00,,grate,150 F\n17:12,,lit-coals,40\n", "2027-07-03 17:20", true},
		{"long after the pour", "17:00,,grate,225 F\n", "2027-07-03 17:01", true},
	} {
		p := plantest.Revised(t, day, head+c.log, c.now)
		out := slices.ContainsFunc(p.Findings, func(f schedule.Finding) bool { return f.Code == "fire-died" }) ||
			slices.ContainsFunc(p.Steps, func(s schedule.Step) bool { return !s.Done && strings.HasPrefix(s.Text, "Rebuild the fire") })
		if out != c.out {
			t.Errorf("%s: out %t: %+v", c.name, out, p.Findings)
		}
	}
}

// After a move there is one look at the grate, in no odd minutes, and none of the plan right beside it.
func TestOneLookAfterAMove(t *testing.T) {
	day := plantest.Day(t, plantest.ReadFile(t, "../../testdata/logs/brisket-alone.yaml"))
	i := slices.IndexFunc(day.Steps, func(s schedule.Step) bool { return s.Kind == schedule.StepCheckFire && s.At.Hour() >= 10 })
	now := day.Steps[i].At.Add(-4 * time.Minute)
	log := "time,dish,kind,value\n06:00,,vents,\"top 1/2, bottom 1/2\"\n08:00,brisket,on,\n"
	for _, c := range []struct {
		before int
		f      string
	}{{100, "285"}, {60, "305"}, {30, "325"}, {1, "345"}} {
		log += now.Add(-time.Duration(c.before)*time.Minute).Format(time.RFC3339) + ",,grate," + c.f + " F\n"
	}
	p := plantest.Revised(t, day, log, now.Format("2006-01-02 15:04"))
	plantest.Judge(t, p)
	f, _ := fireFinding(p)
	looks := 0
	for _, s := range p.Steps {
		if s.Kind == schedule.StepCheckFire && !s.Done && s.At.Sub(now) <= 35*time.Minute {
			looks++
		}
	}
	if f.Steer == nil || f.Steer.Do != "move-vents" || looks != 1 || f.Steer.LookMinutes > 5 && f.Steer.LookMinutes < 10 {
		t.Errorf("%d looks, %+v", looks, f.Steer)
	}
}

// A gauge whose offset was shown today asks for the grate by it, and for no move.
func TestTheLidIsReadThroughItsOffset(t *testing.T) {
	day := plantest.Day(t, plantest.ReadFile(t, "../../testdata/logs/brisket-alone.yaml"))
	log := "time,dish,kind,value\n06:00,,vents,\"top 1/3, bottom 1/4\"\n08:00,brisket,on,\n08:30,,gauge,225 F\n08:40,,grate,272 F\n11:00,,gauge,262 F\n"
	p := plantest.Revised(t, day, log, "2027-07-03 11:00")
	f, _ := fireFinding(p)
	if f.Steer == nil || f.Steer.Do != "hold-thermometer" || f.Steer.To != nil || f.Steer.In15 != nil || !strings.HasPrefix(f.Text, "Hold a thermometer at the grate") || !strings.Contains(f.Text, "puts the grate near 3") {
		t.Errorf("%s: %+v", f.Text, f.Steer)
	}
}
