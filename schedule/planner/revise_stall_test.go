package planner_test

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
)

// demonstration is the unwrapped brisket of the university demonstration
// (tamu_stall2013): pit 225-250 °F, core 140 °F from 4 to 6 hr, 195 °F after "13+"
// hours, taken as 13.0 to 14.5. Its weight is not printed; 12 lb is assumed.
const demonstration = `format: 1
serve: {date: 2027-07-04, time: "18:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in}
earliest: {date: 2027-07-03, time: "20:00"}
dishes:
  - {name: Brisket, cut: brisket, weight: 12 lb, level: 237 °F, target: 195 °F, wrap: none, hold: [insulated-box]}
`

// kept is the same day with an oven, which keeps the brisket however early it is done: it
// goes on in time for a slow one.
var kept = strings.Replace(demonstration, "hold: [insulated-box]", "hold: [oven]", 1) + "oven: {hold: 170 °F}\n"

// shown are the plateau's hours and its core temperature in the file.
func shown(t *testing.T) (from, to, coreF float64) {
	t.Helper()
	f, err := os.Open("testdata/logs/stall_experiments.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range rows {
		hours, _ := strconv.ParseFloat(r[5], 64)
		core, _ := strconv.ParseFloat(r[6], 64)
		switch {
		case r[1] == "brisket A" && strings.HasPrefix(r[7], "plateau begins"):
			from, coreF = hours, core
		case r[1] == "brisket A" && strings.HasPrefix(r[7], "plateau ends"):
			to = hours
		}
	}
	return from, to, coreF
}

func TestTheDemonstrationIsNoLateCook(t *testing.T) {
	from, to, coreF := shown(t)
	if from != 4 || to != 6 || coreF != 140 {
		t.Fatalf("plateau from %v to %v h at %v °F", from, to, coreF)
	}
	p := plantest.Day(t, kept)
	on := plantest.StepAt(t, p, schedule.StepPutOn, "brisket")
	log := "time,dish,kind,value\n" + on.Format(time.RFC3339) + ",brisket,on,\n"
	for _, look := range []struct {
		hours, most float64 // the distance allowed is that of the task, in per cent of the range's nearer end
	}{{from, 15}, {(from + to) / 2, 15}, {to, 10}} {
		at := on.Add(time.Duration(look.hours * float64(time.Hour)))
		log += fmt.Sprintf("%s,brisket,core,%v °F\n", at.Format(time.RFC3339), coreF)
		q := plantest.Revised(t, p, log, at.Format("2006-01-02 15:04"))
		hours := plantest.TakeOff(t, q, "brisket").Expected.Sub(on).Hours()
		off := 100 * math.Max(math.Max(13.0/hours-1, hours/14.5-1), 0)
		if hours < 13 {
			off = 100 * (1 - hours/13)
		}
		t.Logf("140 °F at %v h: off at %.1f h, %.0f%% from 13.0-14.5", look.hours, hours, off)
		if off > look.most {
			t.Errorf("at %v h: predicted %.1f h is %.0f%% from 13.0-14.5, allowed %v", look.hours, hours, off, look.most)
		}
		for _, f := range q.Findings {
			if f.Code == "late" || f.Code == "served-later" || strings.Contains(f.Text, "hours late") {
				t.Errorf("at %v h: %s: %s", look.hours, f.Code, f.Text)
			}
		}
	}
}

// Readings every five minutes through the plateau say no more than a few do.
func TestADenseProbeIsNotFooledByTheStall(t *testing.T) {
	p := plantest.Day(t, demonstration)
	on := plantest.StepAt(t, p, schedule.StepPutOn, "brisket")
	log := "time,dish,kind,value\n" + on.Format(time.RFC3339) + ",brisket,on,\n"
	for m := 240; m <= 360; m += 5 {
		log += fmt.Sprintf("%s,brisket,core,140 °F\n", on.Add(time.Duration(m)*time.Minute).Format(time.RFC3339))
	}
	q := plantest.Revised(t, p, log, on.Add(6*time.Hour).Format("2006-01-02 15:04"))
	hours := plantest.TakeOff(t, q, "brisket").Expected.Sub(on).Hours()
	t.Logf("25 readings of 140 °F: off at %.1f h", hours)
	if off := hours/14.5 - 1; off > 0.1 {
		t.Errorf("predicted %.1f h, %.0f%% beyond 14.5", hours, 100*off)
	}
	if _, ok := plantest.Finding(q, "stall"); !ok {
		t.Error("the stall is not named")
	}
}

// A stall may be called normal, but never harmless to a day that it makes late: of a
// piece that is late nothing says that it is not.
func TestAStallIsNoExcuse(t *testing.T) {
	p := plantest.Party(t, "../..")
	q := plantest.Revised(t, p, "time,dish,kind,value\n07:54,brisket,on,\n10:00,brisket,core,128 °F\n11:30,brisket,core,152 °F\n13:00,brisket,core,153 °F\n14:30,brisket,core,152 °F\n", "2027-07-03 14:30")
	if _, ok := plantest.Finding(q, "served-later"); !ok {
		t.Fatalf("findings %v: this day is to be a late one", q.Findings)
	}
	if f, _ := plantest.Finding(q, "stall"); !strings.Contains(f.Text, "Nothing is wrong") || strings.Contains(f.Text, "late") {
		t.Error(f.Text)
	}
	// What saves dinner stands first: the oven does, by two hours.
	if first := q.Remedies[0]; !first.ServeAt.Before(q.ServeAt) {
		t.Errorf("first advice: %s %s", first.Text, first.Price)
	}
}

// A chicken that is on the grate is not put on later, and of food that must not be
// eaten only that is said; its fire is left alone.
func TestAdviceFitsWhatIsGoingOn(t *testing.T) {
	// Under a tent a bird keeps for 30 min at the most; in a box it would keep for longer.
	tented := strings.Replace(plantest.ReadFile(t, "testdata/logs/chicken.yaml"), "weight: 4.5 lb", "weight: 4.5 lb, hold: [tent]", 1)
	p := plantest.Day(t, tented)
	q := plantest.Revised(t, p, "time,dish,kind,value\n17:00,chicken,on,\n17:15,chicken,core,70 °F\n", "2027-07-03 17:20")
	if f, _ := plantest.Finding(q, schedule.CodeHoldShort); f.Text == "" || strings.Contains(f.Text, "on later") {
		t.Errorf("finding %q", f.Text)
	}
	p = plantest.Day(t, plantest.ReadFile(t, "testdata/logs/overnight.yaml"))
	q = plantest.Revised(t, p, "time,dish,kind,value\n2027-07-02 22:00,butt,on,\n2027-07-03 00:30,butt,core,95 °F\n2027-07-03 03:00,,fire-out,\n", "2027-07-03 06:00") // 3 h, of which the grate was hot for half an hour
	for _, s := range q.Steps {
		if !s.Done && (s.Kind == schedule.StepCheckFire || s.Kind == schedule.StepRefuel && !strings.HasPrefix(s.Text, "Leave this out")) {
			t.Errorf("at %v: %s", s.At, s.Text)
		}
	}
	if f, ok := plantest.Finding(q, "no-readings"); ok {
		t.Error(f.Text)
	}
}

// A butt that is done by breakfast: its core has crept through the stall, a wrap that
// makes it earlier still is no help, an earlier meal is, and with that it keeps.
func TestWhatIsDoneTooEarlyIsServedSooner(t *testing.T) {
	p := plantest.Day(t, `format: 1
serve: {date: 2027-07-03, time: "18:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in}
dishes:
  - {name: Butt, cut: pork-butt, weight: 8 lb, level: 225 °F, wrap: none}
`)
	log := "time,dish,kind,value\n2027-07-02 16:05,butt,on,\n20:05,butt,core,140 °F\n23:05,butt,core,153 °F\n2027-07-03 02:05,butt,core,165 °F\n"
	q := plantest.Revised(t, p, log, "2027-07-03 02:10")
	if f, _ := plantest.Finding(q, "stall"); !strings.Contains(f.Text, "crept from 140 °F to 165 °F in 6 hr") {
		t.Errorf("stall: %q", f.Text)
	}
	if len(q.Remedies) != 1 || q.Remedies[0].Code != "sooner" {
		t.Fatalf("advice %v, want an earlier meal alone", q.Remedies)
	}
	r := q.Remedies[0]
	var e schedule.Entry
	if err := json.Unmarshal([]byte(r.Edits[0].Value), &e); err != nil {
		t.Fatal(err)
	}
	after, err := planner.Revise(t.Context(), q, []schedule.Entry{e}, *q.RevisedAt)
	if err != nil {
		t.Fatal(err)
	}
	plantest.Judge(t, after)
	if !after.ServeAt.Equal(r.ServeAt) || math.Abs(after.Chance.All-r.Chance) > 0.001 {
		t.Errorf("says %v at %.3f; the plan has %v at %.3f", r.ServeAt, r.Chance, after.ServeAt, after.Chance.All)
	}
	if f, _ := plantest.Finding(after, "early"); strings.Contains(f.Text, "too short") {
		t.Errorf("served at %v: %s", after.ServeAt, f.Text)
	}
}

// What makes a piece late that stands in its stall is said with the hour it makes: it was lateness, with a
// new hour at each reading.
func TestAStallIsNoLateness(t *testing.T) {
	p := plantest.Plan(t, "serve: {date: 2027-07-04, time: \"15:00\", tz: America/Chicago}\ngrill: {kind: kettle, diameter: 26 in}\nquiet: []\nguests: 8\ndishes: [{id: butt, cut: pork-butt, weight: 8 lb, level: 250 F, wrap: none}]\n")
	log := "time,dish,kind,value\n2027-07-04 01:00,butt,on,\n2027-07-04 05:00,butt,core,146 F\n2027-07-04 07:00,butt,core,156 F\n"
	said := 0
	for _, read := range []string{"09:00,butt,core,158 F", "09:45,butt,core,158 F", "10:30,butt,core,160 F", "11:30,butt,core,163 F"} {
		log += "2027-07-04 " + read + "\n"
		q := plantest.Revised(t, p, log, "2027-07-04 "+read[:5])
		for _, f := range q.Findings {
			if strings.Contains(f.Text, "in its stall, and nothing is wrong; expected") {
				said++
			}
		}
	}
	if said != 4 {
		t.Errorf("said %d times in four revisions", said)
	}
	q := plantest.Revised(t, p, log+"2027-07-04 12:30,butt,core,174 F\n", "2027-07-04 12:31")
	for _, f := range q.Findings {
		if strings.Contains(f.Text, "in its stall") {
			t.Errorf("out of its stall: %s", f.Text)
		}
	}
}
