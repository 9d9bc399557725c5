package planner_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// What was read where tenderness decides is felt now: ribs at 201 °F had "nothing to do" for half
// an hour. And a higher reading is never later, nor less likely at the hour that was asked for.
func TestWhatMayBeDoneIsFeltNow(t *testing.T) {
	const on = "time,dish,kind,value\n2027-09-18 10:30,,lit,\n2027-09-18 11:10,spare-ribs,on,\n2027-09-18 12:30,,grate,250 F\n2027-09-18 15:10,spare-ribs,core,181 F\n2027-09-18 16:00,,grate,250 F\n"
	p := plantest.Plan(t, "serve: {date: 2027-09-18, time: \"17:30\", tz: America/Denver}\ngrill: kettle 22 in\nguests: 8\nweather: {air: 64 F}\ndishes: [{cut: spare-ribs, weight: 3.2 lb, count: 2, level: 250 F}]\n")
	var off time.Time
	chance := 0.0
	for _, core := range []int{190, 193, 195, 198, 201, 203, 206, 208} {
		q := plantest.Revised(t, p, on+fmt.Sprintf("2027-09-18 16:45,spare-ribs,core,%d F\n", core), "2027-09-18 16:46")
		felt := false
		for _, s := range q.Steps {
			felt = felt || s.Kind == schedule.StepLook && !s.Done && s.At.Equal(*q.RevisedAt) && strings.Contains(s.Text, "bend it now")
		}
		if felt != (core >= 195) {
			t.Errorf("%d °F: bend it now: %v", core, felt)
		}
		at := plantest.TakeOff(t, q, "spare-ribs").Expected
		if !off.IsZero() && at.After(off) || q.Dishes[0].ServeAt.Equal(p.Dishes[0].ServeAt) && q.Dishes[0].Chance < chance {
			t.Errorf("%d °F: off at %v, %.2f; colder by a little: %v, %.2f", core, at, q.Dishes[0].Chance, off, chance)
		}
		off, chance = at, 0
		if q.Dishes[0].ServeAt.Equal(p.Dishes[0].ServeAt) {
			chance = q.Dishes[0].Chance
		}
	}
}

// A butt that nobody has read is not done by the clock: "Nothing to do before ..." for a day, 51 %
// at half past five, "over 99 %" and served five minutes before its meal, thirteen hours on.
func TestTheClockAloneFinishesNoButt(t *testing.T) {
	p := plantest.Plan(t, "serve: {date: 2027-07-10, time: \"18:00\", tz: America/Chicago}\ngrill: kettle 22 in\nguests: 10\noven: yes\ndishes: [{cut: pork-butt, weight: 8 lb, prep: []}]\n")
	for _, now := range []string{"13:45", "17:00", "17:55", "18:10", "19:05"} {
		q := plantest.Revised(t, p, "time,dish,kind,value\n2027-07-10 05:10,,lit,\n2027-07-10 05:50,pork-butt,on,\n", "2027-07-10 "+now)
		said := strings.Join(dueTexts(q), "\n") + "\n" + findingTexts(q)
		if !strings.Contains(said, "measure it now, nobody has read it") && !strings.Contains(said, "nobody read it. Measure") {
			t.Errorf("%s: nobody is asked to measure it: %s", now, said)
		}
		if sliced := strings.Contains(said, "slice it from 180 °F on"); sliced != (now == "17:00" || now == "17:55" || now == "18:10") {
			t.Errorf("%s: sliced from 180 °F: %v", now, sliced)
		}
		if q.Chance.All > 0.92 {
			t.Errorf("%s: promised at %.2f", now, q.Chance.All)
		}
	}
}

// What nobody has read is measured from its earliest time on, and not only a tough piece: a pork
// loin past its first look had no line at all. What came off a degree short is read again, by
// whichever reading that was, and a reading that was too warm is over once the meat has come to it.
func TestWhatNobodyReadIsMeasured(t *testing.T) {
	p := plantest.Plan(t, "serve: {date: 2027-10-03, time: \"18:00\", tz: America/Chicago}\ngrill: kettle 22 in\nguests: 6\ndishes: [{cut: pork-loin, weight: 4 lb, prep: []}]\n")
	on := plantest.StepAt(t, p, schedule.StepPutOn, "pork-loin").Format("2006-01-02 15:04")
	look := plantest.StepAt(t, p, schedule.StepLook, "pork-loin").Add(7 * time.Minute).Format("2006-01-02 15:04")
	log := "time,dish,kind,value\n" + on + ",pork-loin,on,\n"
	if q := plantest.Revised(t, p, log, look); !due(q, "measure it now, nobody has read it") {
		t.Errorf("unread: %v", dueTexts(q))
	}
	for _, kind := range []string{"core", "coldest"} {
		q := plantest.Revised(t, p, log+look+",pork-loin,"+kind+",144 F\n"+look+",pork-loin,pulled,\n", look)
		if f, ok := plantest.Finding(q, schedule.OffUndone); !ok || !strings.Contains(f.Text, "measure it again") {
			t.Errorf("%s of 144 °F: %v", kind, q.Findings)
		}
	}
}
