package planner_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

const twoButts = "serve: {date: 2027-07-10, time: \"18:00\", tz: America/Chicago}\ngrill: kettle 22 in\nguests: 16\noven: yes\ndishes:\n  - {cut: pork-butt, weight: 8 lb, count: 2, prep: []}\n"

const twoButtsRead = "time,dish,kind,value\n2027-07-10 05:10,,lit,\n2027-07-10 05:50,pork-butt,on,\n2027-07-10 14:30,pork-butt,core,203 F\n2027-07-10 14:32,pork-butt,core,192 F\n"

// Of two pieces one is done before the other: it is taken off by itself, waits by itself, and the
// other goes on by what it was read at. The line that said so was refused, and all that could be
// noted was that both were off.
func TestOnePieceComesOffByItself(t *testing.T) {
	p := plantest.Plan(t, twoButts)
	q := plantest.Revised(t, p, twoButtsRead, "2027-07-10 14:33")
	if !due(q, "take off the one that reads 203") || due(q, "wrap it now") {
		t.Errorf("one of two is done: %v", dueTexts(q))
	}
	q = plantest.Revised(t, p, twoButtsRead+"2027-07-10 14:34,pork-butt,pulled,one\n", "2027-07-10 14:36")
	if len(q.Dishes[0].Batches) != 2 {
		t.Fatalf("%d batches of one off, one on", len(q.Dishes[0].Batches))
	}
	off, on := 0, 0
	for _, s := range q.Steps {
		if s.Kind == schedule.StepTakeOff && s.Done {
			off++
		} else if s.Kind == schedule.StepTakeOff {
			on++
		}
		if s.Kind == schedule.StepCloseDown && !s.Done && !s.At.After(*q.RevisedAt) {
			t.Errorf("the fire is shut under what is on: %s", s.Text)
		}
	}
	if off != 1 || on != 1 {
		t.Errorf("%d off, %d on", off, on)
	}
	for _, tt := range []struct{ more, now, wants string }{
		{"", "15:20", "in the cooler since 2:34 PM?"},
		{"2027-07-10 14:40,pork-butt,boxed,cooler\n", "15:20", ""},
		{"2027-07-10 14:40,pork-butt,boxed,cooler\n2027-07-10 15:10,pork-butt,core,201 F\n2027-07-10 15:12,pork-butt,pulled,\n", "17:20", "in the cooler since 3:12 PM?"},
		{"2027-07-10 14:40,pork-butt,boxed,cooler\n2027-07-10 15:10,pork-butt,core,201 F\n2027-07-10 15:12,pork-butt,pulled,second\n2027-07-10 15:20,pork-butt,boxed,cooler\n", "17:20", ""},
	} {
		q := plantest.Revised(t, p, twoButtsRead+"2027-07-10 14:34,pork-butt,pulled,one\n"+tt.more, "2027-07-10 "+tt.now)
		f, found := plantest.Finding(q, schedule.StandsOpen)
		if found != (tt.wants != "") || !strings.Contains(f.Text, tt.wants) {
			t.Errorf("%s%s: %v", tt.more, tt.now, q.Findings)
		}
	}
}

// due says whether a step that is due now says something.
func due(p schedule.Plan, says string) bool {
	return strings.Contains(strings.Join(dueTexts(p), "\n"), says)
}

func dueTexts(p schedule.Plan) (out []string) {
	for _, s := range p.Steps {
		if !s.Done && !s.At.After(*p.RevisedAt) {
			out = append(out, s.Text)
		}
	}
	return out
}

// What came off goes where the plan has it wait: that is the next thing to do. It was taken for
// done the minute the piece was noted off, and the fire was shut instead; and it was asked after
// before the plan itself had it go anywhere.
func TestWhatCameOffIsPutAwayNext(t *testing.T) {
	bird := plantest.Plan(t, "serve: {date: 2027-11-25, time: \"16:00\", tz: America/Chicago}\ngrill: kettle 22 in\nguests: 9\nweather: {air: 48 F}\noven: yes\ndishes:\n  - {cut: whole-turkey, weight: 13 lb, prep: []}\n")
	log := "time,dish,kind,value\n2027-11-25 11:10,,lit,\n2027-11-25 11:50,whole-turkey,on,\n2027-11-25 14:45,whole-turkey,coldest,166 F\n2027-11-25 14:48,whole-turkey,pulled,\n"
	for now, asked := range map[string]bool{"14:50": false, "15:10": false, "15:30": true} {
		q := plantest.Revised(t, bird, log, "2027-11-25 "+now)
		f, found := plantest.Finding(q, schedule.StandsOpen)
		if found != asked || asked && !strings.Contains(f.Text, "in the oven since 2:48 PM?") || due(q, "into the oven") == asked {
			t.Errorf("%s: %v %v", now, dueTexts(q), q.Findings)
		}
		if texts := dueTexts(q); !asked && (len(texts) == 0 || !strings.Contains(texts[0], "into the oven")) {
			t.Errorf("%s: first %v", now, texts)
		}
	}
}

// A cold place that was read again is what it was read at last: the same place of a bird, and the
// core of a whole steak after its sear. Both were sent back to the heat for the older reading.
func TestThePlaceThatWasColdIsReadAgain(t *testing.T) {
	bird := plantest.Plan(t, "serve: {date: 2027-07-03, time: \"18:30\", tz: America/Chicago}\ngrill: kettle 22 in\nguests: 4\ndishes: [{cut: whole-chicken, weight: 4 lb, prep: []}]\n")
	const on = "time,dish,kind,value\n2027-07-03 16:20,,lit,\n2027-07-03 17:00,whole-chicken,on,\n2027-07-03 18:15,whole-chicken,core,155 F thigh\n2027-07-03 18:15,whole-chicken,coldest,148 F breast\n2027-07-03 18:27,whole-chicken,core,176 F thigh\n"
	for last, asked := range map[string]bool{"core,166 F breast": false, "core,166 F": true, "core,166 F leg": true} {
		q := plantest.Revised(t, bird, on+"2027-07-03 18:27,whole-chicken,"+last+"\n2027-07-03 18:27,whole-chicken,pulled,\n", "2027-07-03 18:29")
		if got := len(q.Findings) > 0 && strings.Contains(findingTexts(q), "165 °F"); got != asked {
			t.Errorf("%s: asked %v: %s", last, got, findingTexts(q))
		}
	}
	steak := plantest.Plan(t, "serve: {date: 2027-05-21, time: \"19:30\", tz: America/Los_Angeles}\ngrill: kettle 22 in\nguests: 4\ndishes: [{cut: ribeye, thickness: 2 in, count: 3, target: medium-rare, finish: sear}]\n")
	q := plantest.Revised(t, steak, "time,dish,kind,value\n2027-05-21 17:50,,lit,\n2027-05-21 18:20,ribeye,on,\n2027-05-21 19:08,ribeye,coldest,112 F\n2027-05-21 19:15,ribeye,core,117 F\n2027-05-21 19:17,ribeye,pulled,\n2027-05-21 19:26,ribeye,core,133 F\n", "2027-05-21 19:27")
	if texts := findingTexts(q); strings.Contains(texts, "112") || strings.Contains(texts, "back on the hot grate") {
		t.Errorf("133 °F after the sear: %s", texts)
	}
	for _, s := range q.Steps {
		if s.Kind == schedule.StepLook && !s.Done && strings.Contains(s.Text, "start checking") {
			t.Errorf("what is off is looked at: %s", s.Text)
		}
	}
}

func findingTexts(p schedule.Plan) string {
	var all []string
	for _, f := range p.Findings {
		all = append(all, f.Text)
	}
	return strings.Join(all, "\n")
}

// Of unequal pieces the small one comes off as the small one.
func TestTheSmallPieceComesOff(t *testing.T) {
	p := plantest.Plan(t, strings.Replace(twoButts, "weight: 8 lb, count: 2", "weights: [9 lb, 7 lb]", 1))
	q := plantest.Revised(t, p, "time,dish,kind,value\n2027-07-10 05:10,,lit,\n2027-07-10 05:50,pork-butt,on,all\n2027-07-10 14:30,pork-butt,core,203 F small\n2027-07-10 14:32,pork-butt,core,181 F big\n2027-07-10 14:34,pork-butt,pulled,small\n", "2027-07-10 14:36")
	for _, b := range q.Dishes[0].Batches {
		off := false
		for _, s := range q.Steps {
			off = off || s.Kind == schedule.StepTakeOff && s.Done && s.Batch == b.Number
		}
		if small := b.Pieces[0].MassKg < 3.5; off != small {
			t.Errorf("batch %d of %.1f kg: off %v", b.Number, b.Pieces[0].MassKg, off)
		}
	}
}

// Two birds, two readings: the one at its target comes off, the other goes on. Of two places of
// one that nobody called pieces the colder one holds both.
func TestOneOfTwoBirdsComesOff(t *testing.T) {
	p := plantest.Plan(t, "serve: {date: 2027-07-03, time: \"18:30\", tz: America/Chicago}\ngrill: kettle 22 in\nguests: 8\ndishes: [{cut: whole-chicken, weight: 4 lb, count: 2, prep: []}]\n")
	const on = "time,dish,kind,value\n2027-07-03 16:20,,lit,\n2027-07-03 17:00,whole-chicken,on,\n2027-07-03 18:20,whole-chicken,core,167 F\n2027-07-03 18:22,whole-chicken,"
	for line, apart := range map[string]bool{"core,149 F other": true, "coldest,149 F other": true, "coldest,149 F": false} {
		on := on
		if apart {
			on = strings.Replace(on, "167 F", "167 F breast", 1)
		}
		q := plantest.Revised(t, p, on+line+"\n", "2027-07-03 18:23")
		if due(q, "take off the one that reads 167 °F") != apart {
			t.Errorf("%s: %v", line, dueTexts(q))
		}
		if apart && strings.Contains(findingTexts(q), "leave it on") {
			t.Errorf("%s: %s", line, findingTexts(q))
		}
	}
}
