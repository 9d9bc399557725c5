package planner_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/check"
	"example.com/cookday/schedule/internal/plantest"
)

// What came off below what it must have shown goes back on the heat: nothing is carved, no
// chance is promised. Before, a turkey at 150 F was "over 99%" and carved, and one that was
// read at 120 F just after it came off was thrown away for a hold that had cooled.
func TestWhatComesOffUndoneIsNotServed(t *testing.T) {
	turkey := plantest.Plan(t, "serve: {date: 2027-11-25, time: \"16:00\", tz: America/Denver}\ngrill: kettle 22 in\noven: {hold: 170 F}\ndishes: [{name: Turkey, cut: turkey, weight: 14 lb}]\n")
	frail := plantest.Plan(t, "serve: {date: 2027-11-25, time: \"16:00\", tz: America/Denver}\ngrill: kettle 22 in\nguests: {adults: 4, frail: true}\ndishes: [{name: Turkey, cut: burger, count: 8}]\n")
	const on = "time,dish,kind,value\n2027-11-25 11:05,,lit,\n2027-11-25 11:40,Turkey,on,\n"
	const late = "time,dish,kind,value\n2027-11-25 14:05,,lit,\n2027-11-25 14:40,Turkey,on,\n"
	for _, tt := range []struct {
		name string
		p    schedule.Plan
		log  string
		code string // of what is found; empty where it may be served
	}{
		{"read and taken off", turkey, on + "2027-11-25 14:50,Turkey,core,150 F\n2027-11-25 14:51,Turkey,pulled,\n", schedule.OffUndone},
		{"two degrees short", turkey, on + "2027-11-25 14:50,Turkey,core,163 F\n2027-11-25 14:51,Turkey,pulled,\n", schedule.OffUndone},
		{"read after it came off", turkey, on + "2027-11-25 14:51,Turkey,pulled,\n2027-11-25 14:52,Turkey,core,120 F\n", schedule.OffUndone},
		{"burgers for frail guests", frail, late + "2027-11-25 14:50,Turkey,core,152 F\n2027-11-25 14:51,Turkey,pulled,\n", schedule.OffUndone},
		{"not read for long", turkey, on + "2027-11-25 14:10,Turkey,core,150 F\n2027-11-25 14:51,Turkey,pulled,\n", schedule.OffUnread},
		{"done after all", turkey, on + "2027-11-25 14:50,Turkey,core,158 F\n2027-11-25 14:51,Turkey,pulled,\n2027-11-25 15:05,Turkey,coldest,166 F\n", ""},
		{"done in one place", turkey, on + "2027-11-25 14:50,Turkey,core,166 F\n2027-11-25 14:51,Turkey,pulled,\n", schedule.OffUnread},
		{"done", turkey, on + "2027-11-25 14:50,Turkey,coldest,166 F\n2027-11-25 14:51,Turkey,pulled,\n", ""},
	} {
		q := plantest.Revised(t, tt.p, tt.log, "2027-11-25 15:06")
		carved := false
		for _, s := range q.Steps {
			carved = carved || !s.Done && s.Dish != "" && s.Kind == schedule.StepSlice
			if tt.code == schedule.OffUndone && !s.Done && s.Kind == schedule.StepCloseDown && !strings.HasPrefix(s.Text, "When nothing has to go back on the grate") {
				t.Errorf("%s: %s", tt.name, s.Text)
			}
		}
		for _, code := range []string{schedule.OffUndone, schedule.OffUnread} {
			if _, found := plantest.Finding(q, code); found != (code == tt.code) {
				t.Errorf("%s: %s found %t; %v", tt.name, code, found, q.Findings)
			}
		}
		if undone := tt.code == schedule.OffUndone; undone && (q.Chance.All > 0 || carved) || !undone && q.Chance.All < 0.5 {
			t.Errorf("%s: chance %.2f, carved %t", tt.name, q.Chance.All, carved)
		}
		if _, thrown := plantest.Finding(q, "hold-over"); thrown {
			t.Errorf("%s: it is thrown away for a hold", tt.name)
		}
		if faults := check.Plan(q); len(faults) > 0 {
			t.Errorf("%s: the judge: %v", tt.name, faults)
		}
	}
	q := plantest.Revised(t, turkey, on+"2027-11-25 12:50,Turkey,core,120 F\n2027-11-25 12:51,Turkey,pulled,\n", "2027-11-25 15:06")
	if f, _ := plantest.Finding(q, schedule.OffUndone); !strings.Contains(f.Text, "throw it away") {
		t.Errorf("off at 120 F for more than two hours: %s", f.Text)
	}
}

// A bird that no thermometer showed to be done is not sure, and the sooner it came off the less
// so. It was "over 99%" as soon as it was off.
func TestWhatNobodyReadIsNotSure(t *testing.T) {
	turkey := plantest.Plan(t, "serve: {date: 2027-11-25, time: \"16:00\", tz: America/Denver}\ngrill: kettle 22 in\noven: {hold: 170 F}\ndishes: [{name: Turkey, cut: turkey, weight: 14 lb}]\n")
	const on = "time,dish,kind,value\n2027-11-25 11:05,,lit,\n2027-11-25 11:40,Turkey,on,\n"
	last := 0.0
	for _, off := range []string{"12:40", "13:40", "14:20", "15:20"} {
		q := plantest.Revised(t, turkey, on+"2027-11-25 "+off+",Turkey,pulled,\n", "2027-11-25 15:25")
		if _, asked := plantest.Finding(q, schedule.OffUnread); !asked || q.Chance.All > 0.9 || q.Chance.All < last {
			t.Errorf("off at %s and never read: %.3f sure, before %.3f; asked for a reading: %t", off, q.Chance.All, last, asked)
		}
		t.Logf("off at %s: %.3f", off, q.Chance.All)
		last = q.Chance.All
	}
	if last < 0.5 {
		t.Errorf("off after 3 hr 40 min: %.3f sure", last)
	}
}

// What was served and never read at its minimum is eaten no further: it is made hot at once or
// thrown away, and nothing says to chill it as it is.
func TestWhatWasServedUndoneIsNotChilled(t *testing.T) {
	p := plantest.Plan(t, "serve: {date: 2027-11-25, time: \"16:00\", tz: America/Denver}\ngrill: kettle 22 in\noven: {hold: 170 F}\ndishes: [{name: Turkey, cut: turkey, weight: 14 lb}]\n")
	const log = "time,dish,kind,value\n2027-11-25 11:05,,lit,\n2027-11-25 11:40,Turkey,on,\n2027-11-25 14:50,Turkey,core,150 F\n2027-11-25 15:20,Turkey,pulled,\n2027-11-25 15:50,Turkey,served,\n"
	for _, tt := range []struct{ more, now, code, says string }{
		{"", "2027-11-25 15:51", schedule.OffUnread, "stop eating, and measure what is left"},
		{"2027-11-25 15:52,Turkey,core,148 F\n", "2027-11-25 15:53", schedule.OffUndone, "Off at 3:20 PM, and 148 °F inside at 3:52 PM"},
		{"2027-11-25 15:52,Turkey,core,148 F\n", "2027-11-25 18:30", schedule.OffUndone, "throw away what is left"},
	} {
		q := plantest.Revised(t, p, log+tt.more, tt.now)
		f, _ := plantest.Finding(q, tt.code)
		if !strings.Contains(f.Text, tt.says) {
			t.Errorf("%s: %q, want %q", tt.now, f.Text, tt.says)
		}
		if left, told := plantest.Finding(q, schedule.Leftovers); told {
			t.Errorf("%s: %s", tt.now, left.Text)
		}
	}
	q := plantest.Revised(t, p, log+"2027-11-25 15:52,Turkey,core,166 F\n", "2027-11-25 15:53")
	if _, told := plantest.Finding(q, schedule.Leftovers); !told {
		t.Errorf("read at its minimum: nothing is said of what is left: %v", q.Findings)
	}
}

// What was read far below its minimum as it came off is not done, in whichever unit that was
// typed: nothing else is known of it.
func TestAColdReadingAtTheTakeOffIsNotPassedOver(t *testing.T) {
	p := plantest.Party(t, "../..")
	q := plantest.Revised(t, p, "time,dish,kind,value\n2027-07-03 07:19,,lit,\n2027-07-03 09:48,brisket,coldest,25 F\n2027-07-03 09:51,brisket,boxed,\n", "2027-07-03 10:32")
	if !slices.ContainsFunc(q.Findings, func(f schedule.Finding) bool { return f.Code == schedule.OffUndone }) || q.Dishes[0].Chance > 0 {
		t.Errorf("chance %.3f: %v", q.Dishes[0].Chance, q.Findings)
	}
}

// Two steaks of one dish, by one reading, are told of once, by the one that came off sooner.
func TestPiecesOfOneDishAreToldOfOnce(t *testing.T) {
	p := plantest.Plan(t, "serve: {date: 2027-07-03, time: \"19:00\", tz: America/Denver}\ngrill: kettle 22 in\ndishes: [{name: Ribeyes, cut: steak, count: 2, thickness: 1.5 in, target: medium-rare}]\n")
	q := plantest.Revised(t, p, "time,dish,kind,value\n2027-07-03 18:03,,lit,\n2027-07-03 18:40,Ribeyes,on,\n2027-07-03 18:54,Ribeyes,coldest,118 F\n2027-07-03 18:57,Ribeyes,pulled,one\n2027-07-03 18:59,Ribeyes,pulled,\n", "2027-07-03 19:02")
	told := ""
	for _, f := range q.Findings {
		if f.Code == schedule.OffUndone {
			told += f.Text
		}
	}
	if strings.Count(told, "not done") != 1 || !strings.Contains(told, "Off since 6:57 PM: in heat by 8:57 PM") {
		t.Errorf("told: %s", told)
	}
}

// Coals as many as the plan asked for are its feed, also where that is few: it is not asked for again.
func TestCoalsAsThePlanAskedForAreItsFeed(t *testing.T) {
	p := plantest.Plan(t, "serve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\ngrill: kettle 22 in\ndishes: [{name: Ribs, cut: baby-backs, count: 2, serve: \"17:30\", prep: []}, {name: Thighs, cut: chicken-thigh, count: 12}, {name: Burgers, cut: burger, count: 10}]\n")
	var feed schedule.Step
	for _, s := range p.Steps {
		if s.Kind == schedule.StepRefuel && feed.ID == "" {
			feed = s
		}
	}
	asked, _, _ := strings.Cut(strings.TrimPrefix(feed.Text, "Add "), " ")
	n, err := strconv.Atoi(asked)
	if err != nil || n >= 20 {
		t.Fatalf("the day wants no small feed: %q", feed.Text)
	}
	at, on := feed.At.Format("2006-01-02 15:04"), feed.At.Add(-50*time.Minute).Format("2006-01-02 15:04")
	for _, coals := range []struct {
		count string
		fed   bool
	}{{asked, true}, {"5", false}} {
		q := plantest.Revised(t, p, "time,dish,kind,value\n"+on+",Ribs,on,\n"+at+",,lit-coals,"+coals.count+"\n", feed.At.Add(15*time.Minute).Format("2006-01-02 15:04"))
		for _, s := range q.Steps {
			if s.ID == feed.ID && s.Done != coals.fed {
				t.Errorf("%s coals at %s: done is %t: %s", coals.count, at, s.Done, s.Text)
			}
		}
	}
}
