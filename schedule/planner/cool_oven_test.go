package planner_test

import (
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/unit"
)

// Raw meat is never left in an oven that does not cook it: that is said first, and the times are
// those of an oven as hot as it must be, not of hours in a cool one. What is at its minimum
// waits in a cool oven, and one that was set anew is hot from then on. An invented day.
func TestRawMeatIsNotLeftInACoolOven(t *testing.T) {
	const birds, joint = "{name: Birds, cut: chicken, weight: 4.5 lb, count: 2}", "{name: Butt, cut: pork-butt, weight: 6 lb}"
	on := "time,dish,kind,value\n2027-07-03 15:13,,lit,\n2027-07-03 15:50,DISH,on,\n2027-07-03 17:06,DISH,core,READ\n2027-07-03 17:15,DISH,to-oven,OVEN\n"
	for _, c := range []struct{ name, dish, id, read, oven, more, now, says string }{
		{"raw birds at 200", birds, "birds", "84 F", "200 F", "", "17:16", "set the oven to 325 °F"},
		{"raw birds at 150", birds, "birds", "84 F", "150 F", "", "17:16", "set the oven to 325 °F"},
		{"raw birds at 200, hours later", birds, "birds", "84 F", "200 F", "2027-07-03 18:50,birds,coldest,121 F\n", "18:51", "set the oven to 325 °F"},
		{"raw birds at 325", birds, "birds", "84 F", "325 F", "", "17:16", ""},
		{"nobody said how hot", birds, "birds", "84 F", "", "", "17:16", ""},
		{"set anew", birds, "birds", "84 F", "200 F", "2027-07-03 17:20,birds,to-oven,325 F\n", "17:21", ""},
		{"its thermometer read", birds, "birds", "84 F", "200 F", "2027-07-03 17:40,,oven,330 F\n", "17:41", ""},
		{"and it sank", birds, "birds", "84 F", "325 F", "2027-07-03 17:40,,oven,190 F\n", "17:41", "set the oven to 325 °F"},
		{"a raw joint at 200", joint, "butt", "84 F", "200 F", "", "17:16", "set the oven to 250 °F"},
		{"a raw joint at 250", joint, "butt", "84 F", "250 F", "", "17:16", ""},
		{"a joint past its minimum", joint, "butt", "163 F", "200 F", "", "17:16", ""},
	} {
		log := strings.NewReplacer("DISH", c.id, "READ", c.read, "OVEN", c.oven).Replace(on) + c.more
		q := plantest.Revised(t, plantest.Day(t, plantest.Evening(plantest.Kettle22, c.dish)), log, "2027-07-03 "+c.now)
		f, told := plantest.Finding(q, schedule.CoolOven)
		if told != (c.says != "") || !strings.Contains(f.Text, c.says) {
			t.Errorf("%s: %v, want %q", c.name, q.Findings, c.says)
			continue
		}
		if !told {
			continue
		}
		if q.Findings[0].Code != schedule.CoolOven {
			t.Errorf("%s: it is not said first: %v", c.name, q.Findings)
		}
		for _, s := range q.Steps {
			if strings.Contains(s.Text, "throw it away") || strings.Contains(s.Text, "Do not serve") {
				t.Errorf("%s: it can be mended: %s", c.name, s.Text)
			}
		}
		if off, ok := q.Dishes[0].Batches[0].Milestone(schedule.MilestoneTakeOff); c.id == "birds" && ok && off.Window.Expected.Sub(*q.RevisedAt) > 2*time.Hour+10*time.Minute {
			t.Errorf("%s: off at %s, as if the oven stayed cool", c.name, off.Window.Expected)
		}
	}
}

// No oven below 250 °F is advised for a joint from a low fire that is not done (safety, 2).
func TestNoCoolOvenIsAdvised(t *testing.T) {
	q := plantest.Revised(t, plantest.Day(t, plantest.Evening(plantest.Kettle22+"oven: yes\nweather: {rain: true}\n", "{name: Butt, cut: pork-butt, weight: 6 lb, level: 225 F}")),
		"time,dish,kind,value\n2027-07-03 03:30,,lit,\n2027-07-03 04:00,butt,on,\n2027-07-03 09:00,butt,core,120 F\n2027-07-03 09:00,,grate,190 F\n", "2027-07-03 09:01")
	for _, r := range q.Remedies {
		if strings.Contains(r.Text, "225 °F") && strings.Contains(r.Text, "oven") {
			t.Errorf("%s", r.Text)
		}
	}
	for _, s := range q.Steps {
		if s.Kind == schedule.StepIndoors && s.GrateC < unit.FToC(249) {
			t.Errorf("%s", s.Text)
		}
	}
}
