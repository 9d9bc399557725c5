package planner_test

import (
	"context"
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/internal/steer"
	"example.com/cookday/schedule/planner"
)

// The words of a request name what the steer room learns.
func TestOwnFiguresAreThoseOfTheSteerRoom(t *testing.T) {
	if !slices.Equal(schedule.OwnFigures(), append(steer.FigureNames(), schedule.OwnPace)) {
		t.Errorf("%v, %v", schedule.OwnFigures(), steer.FigureNames())
	}
}

// A leaky grill by its log, invented: it ran hot under small vents.
const leakyDay = "time,dish,kind,value\n06:00,,lit,\n06:15,,lit-coals,12\n06:15,,vents,\"top 1/3, bottom 1/3\"\n08:00,brisket,on,\n08:40,,grate,262 F\n09:10,,grate,285 F\n09:40,,grate,305 F\n09:41,,vents,top 1/6\n10:10,,grate,288 F\n10:40,,grate,276 F\n10:41,,vents,bottom 1/8\n11:20,,grate,262 F\n12:00,,grate,255 F\n13:00,,grate,252 F\n"

// A day teaches its grill: the next plan starts with less air, and says what it rests on. The same day, the same record.
func TestADayTeachesItsGrill(t *testing.T) {
	text := plantest.ReadFile(t, "testdata/logs/brisket-alone.yaml")
	p := plantest.Day(t, text)
	log, err := schedule.ReadLog([]byte(leakyDay), p)
	if err != nil {
		t.Fatal(err)
	}
	lesson, err := planner.Learn(context.Background(), p, log)
	if err != nil || !lesson.Taught || lesson.Own == nil || lesson.Own.Cooks != 1 || len(lesson.Holds) == 0 {
		t.Fatalf("%v: %+v", err, lesson)
	}
	again, _ := planner.Learn(context.Background(), p, log)
	a, _ := json.Marshal(lesson)
	if b, _ := json.Marshal(again); string(a) != string(b) {
		t.Errorf("%s\nthen\n%s", a, b)
	}
	own, _ := json.Marshal(lesson.Own)
	next := plantest.Day(t, strings.Replace(text, "fuel: briquettes", "fuel: briquettes, own: "+string(own), 1))
	plantest.Judge(t, next)
	if next.Phases[0].TopOpen >= p.Phases[0].TopOpen {
		t.Errorf("top vent %.2f, on the usual grill %.2f", next.Phases[0].TopOpen, p.Phases[0].TopOpen)
	}
	if !slices.ContainsFunc(next.Findings, func(f schedule.Finding) bool { return f.Code == "own-grill" }) {
		t.Errorf("it does not say what it rests on: %v", next.Findings)
	}
	if back, err := schedule.ReadOwnGrill([]byte(lesson.Own.Text())); err != nil || len(back.Figures) != len(lesson.Own.Figures) {
		t.Errorf("%v: %+v", err, back)
	}
	silent, err := planner.Learn(context.Background(), p, log[:4])
	if err != nil || silent.Taught || silent.Own != nil {
		t.Errorf("of a log that says nothing: %v %+v", err, silent)
	}
}

// Records that no grill has are refused, each fault by its field.
func TestRecordsThatAreRefused(t *testing.T) {
	for text, field := range map[string]string{
		"cooks: 0\nfigures: []": "cooks",
		"cooks: 2\nfigures: [{name: colour, times: 1, spread: 0.2}]":                                    "figures[0].name",
		"cooks: 2\nfigures: [{name: gain, times: 90, spread: 0.2}]":                                     "figures[0].times",
		"cooks: 2\nfigures: [{name: gain, times: 1, spread: 0}]":                                        "figures[0].spread",
		"cooks: 2\nfigures: [{name: gain, times: 1, spread: 0.2, note: hot}]":                           "figures[0].note",
		"cooks: 2\nfigures: [{name: gain, times: 1, spread: 0.2}, {name: gain, times: 1, spread: 0.2}]": "figures[1].name",
	} {
		if _, err := schedule.ReadOwnGrill([]byte(text)); err == nil || !strings.Contains(err.Error(), field) {
			t.Errorf("%s: %v", text, err)
		}
	}
}

func putOn(t *testing.T, p schedule.Plan) time.Time {
	t.Helper()
	m, ok := p.Dishes[0].Batches[0].Milestone(schedule.MilestoneOn)
	if !ok {
		t.Fatal("never put on")
	}
	return m.Window.Expected
}

// What cooked low and was taken off when done teaches the pace, by less than half of what it was off; the next plan takes it
// so, with narrower windows, and says that it does.
func TestADayTeachesItsPace(t *testing.T) {
	text := plantest.ReadFile(t, "testdata/logs/brisket-alone.yaml")
	p := plantest.Day(t, text)
	off := plantest.TakeOff(t, p, "brisket")
	on := putOn(t, p)
	minutes := off.Expected.Sub(on).Minutes()
	at := on.Add(time.Duration(1.3*minutes) * time.Minute)
	log, err := schedule.ReadLog([]byte(fmt.Sprintf("time,dish,kind,value\n%s,brisket,on,\n%s,brisket,core,203 F\n%s,brisket,pulled,\n",
		on.Format(time.RFC3339), at.Add(-time.Minute).Format(time.RFC3339), at.Format(time.RFC3339))), p)
	if err != nil {
		t.Fatal(err)
	}
	lesson, err := planner.Learn(context.Background(), p, log)
	if err != nil || !lesson.Taught || lesson.Own == nil || lesson.Own.Cooks != 1 {
		t.Fatalf("%v: %+v", err, lesson)
	}
	f, ok := lesson.Own.Figure(schedule.OwnPace)
	if !ok || f.Times < 1.02 || f.Times > 1.15 || f.Spread >= 0.12 || !strings.Contains(lesson.Text, "percent longer here") {
		t.Fatalf("%+v: %s", f, lesson.Text)
	}
	own, _ := json.Marshal(lesson.Own)
	next := plantest.Day(t, strings.Replace(text, "fuel: briquettes", "fuel: briquettes, own: "+string(own), 1))
	plantest.Judge(t, next)
	then := plantest.TakeOff(t, next, "brisket")
	took := then.Expected.Sub(putOn(t, next)).Minutes()
	if r := took / minutes; math.Abs(r-f.Times) > 0.03 {
		t.Errorf("%.0f min, %.0f before: %.3f times for %.3f", took, minutes, r, f.Times)
	}
	if is, was := then.Late.Sub(then.Early).Minutes()/took, off.Late.Sub(off.Early).Minutes()/minutes; is >= was {
		t.Errorf("a window of %.3f, %.3f before", is, was)
	}
	if !slices.ContainsFunc(next.Findings, func(f schedule.Finding) bool {
		return f.Code == "own-grill" && strings.Contains(f.Text, "1 cook on this grill taught") && strings.Contains(f.Text, "percent longer")
	}) {
		t.Errorf("%v", next.Findings)
	}
	for name, log := range map[string]string{
		"taken off undone": fmt.Sprintf("time,dish,kind,value\n%s,brisket,on,\n%s,brisket,core,150 F\n%s,brisket,pulled,\n", on.Format(time.RFC3339), at.Add(-time.Minute).Format(time.RFC3339), at.Format(time.RFC3339)),
		"never taken off":  fmt.Sprintf("time,dish,kind,value\n%s,brisket,on,\n", on.Format(time.RFC3339)),
	} {
		entries, err := schedule.ReadLog([]byte(log), p)
		if err != nil {
			t.Fatal(err)
		}
		if l, err := planner.Learn(context.Background(), p, entries); err != nil || l.Taught {
			t.Errorf("%s: %v %+v", name, err, l)
		}
	}
}
