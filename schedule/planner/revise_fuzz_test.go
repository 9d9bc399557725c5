package planner_test

import (
	"context"
	"os"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
)

// Whatever is noted of a day, and whenever it is asked: the faults of the log, or a plan
// that is the same after its JSON was read and prints no broken number. That it is sound
// is asked of logs that a cook might keep (TestRevisionIsAFold): one that contradicts
// itself, such as food that is served before it goes on, is answered as well as can be.
// Text that begins like a log is taken as it is, other bytes are choices; see FuzzedLog.
func FuzzRevise(f *testing.F) {
	days := reviseDays(f)
	f.Add([]byte("time,dish,kind,value\n07:40,Brisket,on,\n12:00,brisket,core,152 F\n"), uint8(0), int16(300))
	f.Add([]byte(`[{"time":"07:40","dish":"brisket","kind":"on"}]`), uint8(0), int16(0))
	f.Add([]byte("time,kind,value\n12:00,dish-added,\"{\"\"cut\"\":\"\"burger\"\"}\"\n"), uint8(1), int16(-500))
	for i := range byte(12) {
		var choices []byte
		for j := range 10 + 3*i {
			choices = append(choices, 41*i+13*j+i*j)
		}
		f.Add(choices, i, int16(60*int(i)))
	}
	f.Fuzz(func(t *testing.T, data []byte, day uint8, minutes int16) {
		p := days[int(day)%len(days)]
		text := string(data)
		if len(data) == 0 || data[0] != 't' && data[0] != '[' {
			text = plantest.FuzzedLog(data[:min(len(data), 200)], p)
		}
		defer func() {
			if t.Failed() {
				t.Logf("day %d, %d minutes after the first step, log\n%s", int(day)%len(days), minutes, text)
			}
		}()
		log, err := schedule.ReadLog([]byte(text), p)
		if err != nil {
			plantest.Faulty(t, err)
			return
		}
		now := p.Steps[0].At.Add(time.Duration(minutes) * time.Minute)
		q, err := planner.Revise(context.Background(), p, log, now)
		if err != nil {
			plantest.Faulty(t, err)
			return
		}
		if len(data) > 0 && (data[0] == 't' || data[0] == '[') {
			q.Log, q.Request, q.Asked = nil, schedule.Request{}, nil // notes and names may be anything
			plantest.Clean(t, "texts", textsOf(q))
			return
		}
		plantest.SameRead(t, q)
		plantest.Prints(t, q)
	})
}

// reviseDays are the days that are revised: the party, patties at noon, and a roast in
// the cold with an oven and quiet hours.
func reviseDays(t testing.TB) []schedule.Plan {
	t.Helper()
	party, err := os.ReadFile("../../examples/backyard-party/request.yaml")
	if err != nil {
		t.Fatal(err)
	}
	var days []schedule.Plan
	for _, text := range []string{
		string(party),
		"format: 1\nserve: {date: 2027-05-15, time: \"13:00\", tz: Europe/Berlin}\ngrill: {kind: kettle, diameter: 57 cm}\nunits: metric\ndishes:\n" +
			"  - {name: Burgers, cut: burger, weight: 170 g, count: 20}\n  - {name: Corn, cut: corn, count: 6}\n",
		"format: 1\nserve: {date: 2027-03-14, time: \"12:00\", tz: America/Chicago}\ngrill: {kind: kettle, diameter: 22 in}\noven: {hold: 170 F}\n" +
			"weather: {air: 20 F}\nquiet: [{from: \"23:00\", to: \"05:00\"}]\ndishes:\n  - {name: Shoulder, cut: pork-butt, weight: 7 lb}\n",
	} {
		r, err := schedule.Read([]byte(text))
		if err != nil {
			t.Fatal(err)
		}
		p, err := planner.Make(context.Background(), r)
		if err != nil || !p.Feasible {
			t.Fatal(err, p.Findings)
		}
		plantest.Judge(t, p)
		days = append(days, p)
	}
	return days
}

// textsOf are the sentences of a plan but for those with names that a log gave.
func textsOf(p schedule.Plan) string {
	var s strings.Builder
	for _, step := range p.Steps {
		if step.Kind == schedule.StepLight || step.Kind == schedule.StepRefuel || step.Kind == schedule.StepCheckFire {
			s.WriteString(step.Text + "\n" + step.Why + "\n")
		}
	}
	return s.String()
}
