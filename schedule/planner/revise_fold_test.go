package planner_test

import (
	"context"
	"encoding/json"
	"fmt"
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/check"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
	"example.com/cookday/schedule/unit"
)

// A day as it might be logged: put-on near its time, cores that climb as the
// first plan has them at some pace, a grate about its level, a wrap, fuel, and
// sometimes one thing that goes wrong.
func drawLog(rt *rapid.T, p schedule.Plan, until time.Time) []schedule.Entry {
	var log []schedule.Entry
	add := func(at time.Time, dish string, kind schedule.EntryKind, c float64, value string) {
		if !at.After(until) {
			log = append(log, schedule.Entry{At: at, Dish: dish, Kind: kind, C: c, Value: value})
		}
	}
	minutes := func(label string, low, high int) time.Duration {
		return time.Duration(rapid.IntRange(low, high).Draw(rt, label)) * time.Minute
	}
	for _, d := range p.Dishes {
		on := plantest.FirstAt(p, schedule.StepPutOn, d.ID)
		if rapid.Bool().Draw(rt, d.ID+" silent") || len(d.Batches[0].Curve) == 0 {
			continue
		}
		put := on.Add(minutes(d.ID+" on", -5, 20))
		add(put, d.ID, schedule.LogOn, 0, "")
		pace := rapid.Float64Range(0.8, 1.3).Draw(rt, d.ID+" pace")
		for _, point := range d.Batches[0].Curve {
			at := put.Add(time.Duration(pace * float64(point.At.Sub(on)))).Truncate(time.Minute)
			if rapid.Float64Range(0, 1).Draw(rt, "reads") < 0.4 {
				add(at, d.ID, schedule.LogCore, point.CoreC+rapid.Float64Range(-2, 2).Draw(rt, "off"), "")
			}
		}
		if wrap := plantest.FirstAt(p, schedule.StepWrap, d.ID); !wrap.IsZero() {
			add(wrap.Add(minutes(d.ID+" wrap", 0, 90)), d.ID, schedule.LogWrapped, 0, schedule.WrapFoil)
		}
	}
	start := p.Phases[0].From
	for at := start; at.Before(until); at = at.Add(minutes("next look", 20, 200)) {
		level := 0.0
		for _, ph := range p.Phases {
			if level == 0 || !ph.From.After(at) {
				level = ph.LevelC
			}
		}
		add(at, "", schedule.LogGrate, level+rapid.Float64Range(-12, 12).Draw(rt, "grate"), "")
	}
	trouble := start.Add(minutes("trouble", 30, 500))
	switch rapid.IntRange(0, 7).Draw(rt, "what") {
	case 0:
		add(trouble, "", schedule.LogFireOut, 0, "")
	case 1:
		add(trouble, "", schedule.LogServingMoved, 0, p.ServeAt.Add(2*time.Hour).Format(time.RFC3339))
	case 2:
		add(trouble, "burgers", schedule.LogDishCancelled, 0, "")
	case 3:
		add(trouble, "sausages", schedule.LogDishAdded, 0, `{"cut": "sausage", "weight": "4 oz", "count": 6, "name": "Sausages"}`)
	case 4:
		add(trouble, "", schedule.LogLevel, unit.FToC(300), "")
	case 5:
		add(trouble, "", schedule.LogRefuelled, 0, "")
	}
	slices.SortStableFunc(log, func(a, b schedule.Entry) int { return a.At.Compare(b.At) })
	return log
}

func revisionJSON(t rapid.TB, p schedule.Plan) string {
	text, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// P4: a log that is handed in entry by entry, through the JSON of each plan, gives
// byte for byte the plan of the whole log at once. No revision moves what an
// earlier one knew as done, drops a caution or changes the id of a step, and each
// is a sound plan.
func TestRevisionIsAFold(t *testing.T) {
	p := plantest.Party(t, "../..")
	ctx := context.Background()
	rapid.Check(t, func(rt *rapid.T) {
		now := p.Phases[0].From.Add(time.Duration(rapid.IntRange(0, 640).Draw(rt, "now")) * time.Minute)
		log := drawLog(rt, p, now)
		whole, err := planner.Revise(ctx, p, log, now)
		if err != nil {
			rt.Fatalf("%v\nat %v of\n%v", err, now, log)
		}
		step := p
		cuts := []int{rapid.IntRange(0, len(log)).Draw(rt, "first part")}
		cuts = append(cuts, len(log))
		from := 0
		for _, to := range cuts {
			at := now
			if to < len(log) {
				at = log[to].At.Add(-time.Minute)
				if to > 0 && log[to-1].At.After(at) {
					at = log[to-1].At
				}
			}
			next, err := planner.Revise(ctx, step, log[from:to], at)
			if err != nil {
				rt.Fatal(err)
			}
			keepsThePast(rt, step, next)
			soundRevision(rt, next)
			if step, err = schedule.ReadPlan([]byte(revisionJSON(rt, next))); err != nil {
				rt.Fatal(err)
			}
			from = to
		}
		again, err := planner.Revise(ctx, step, nil, now)
		if err != nil {
			rt.Fatal(err)
		}
		if a, b := revisionJSON(rt, whole), revisionJSON(rt, again); a != b {
			rt.Fatalf("the whole log gives\n%s\nin parts\n%s", a, b)
		}
	})
}

// keepsThePast compares two revisions of a day. What the earlier one took as done
// for want of a word may be put right by the log later.
func keepsThePast(t rapid.TB, before, after schedule.Plan) {
	for _, fault := range lostOfThePast(before, after) {
		t.Fatalf("%s", fault)
	}
}

// lostOfThePast is what a later revision moved or took back of what an earlier one had as
// done, with no word of the log for it, and the cautions that it dropped.
func lostOfThePast(before, after schedule.Plan) (faults []string) {
	steps := map[string]schedule.Step{}
	for _, s := range after.Steps {
		if steps[s.ID].ID != "" {
			faults = append(faults, fmt.Sprintf("two steps of one id: %s %s", s.Kind, s.Dish))
		}
		steps[s.ID] = s
	}
	for _, s := range before.Steps {
		if !s.Done {
			continue
		}
		if now, ok := steps[s.ID]; !ok || !now.Done || !now.At.Equal(s.At) {
			if !correctedBy(after.Log, before.Log, s) {
				faults = append(faults, fmt.Sprintf("%s of %q was done at %v; now %v, done %v", s.Kind, s.Dish, s.At, now.At, now.Done))
			}
		}
	}
	for _, c := range before.Cautions {
		if !slices.Contains(after.Cautions, c) && !(c.Code == "fire-unattended" && !burnsInQuiet(after)) {
			faults = append(faults, fmt.Sprintf("caution %s was dropped", c.Code))
		}
	}
	return faults
}

// burnsInQuiet says whether a fire burns while people sleep: an hour of dinner that was put
// off into the night, and is not any more, leaves no fire to be warned of.
func burnsInQuiet(p schedule.Plan) bool {
	for _, ph := range p.Phases {
		for _, q := range p.Quiet {
			if q.From.Before(ph.To) && q.To.After(ph.SetupFrom) {
				return true
			}
		}
	}
	return false
}

// loggedBy are the entries that say when a step was done.
var loggedBy = map[schedule.StepKind][]schedule.EntryKind{
	schedule.StepLight: {schedule.LogLit}, schedule.StepRefuel: {schedule.LogRefuelled}, schedule.StepPutOn: {schedule.LogOn}, schedule.StepWrap: {schedule.LogWrapped},
	schedule.StepTakeOff: {schedule.LogPulled, schedule.LogBoxed, schedule.LogCounter}, schedule.StepRest: {schedule.LogPulled, schedule.LogBoxed, schedule.LogCounter},
	schedule.StepBox: {schedule.LogBoxed}, schedule.StepToOven: {schedule.LogBoxed}, schedule.StepHold: {schedule.LogBoxed},
}

// correctedBy says whether a step that was taken as done for want of a word was
// put right by what the log says of its dish since. What was logged stays.
func correctedBy(after, before []schedule.Entry, s schedule.Step) bool {
	isKnown := func(e schedule.Entry) bool {
		return slices.ContainsFunc(before, func(b schedule.Entry) bool { return b.At.Equal(e.At) && b.Kind == e.Kind && b.Dish == e.Dish })
	}
	if s.Dish != "" && slices.ContainsFunc(after, func(e schedule.Entry) bool { return e.Dish == s.Dish && !isKnown(e) && backOn(e, before, s) }) {
		return true
	}
	for _, e := range before {
		if e.At.Equal(s.At) && e.Dish == s.Dish && slices.Contains(loggedBy[s.Kind], e.Kind) {
			return false
		}
	}
	for _, e := range after {
		known := isKnown(e)
		if !known && s.Dish != "" {
			return true // of the fire, or of another dish on it: what went by that fire was done at another time, or not at all
		}
		if !known && (e.Kind == schedule.LogLit || s.Dish == "" && (e.Kind == schedule.LogOn || e.Kind == schedule.LogFireOut || e.Dish != "")) {
			return true // the fire was there at another time
		}
	}
	return false
}

// backOn says whether an entry puts a dish on so that a step was not the end of it, or
// was not about it: on again, or on for the first time that the log knows of.
func backOn(e schedule.Entry, before []schedule.Entry, s schedule.Step) bool {
	ends := []schedule.StepKind{schedule.StepTakeOff, schedule.StepRest, schedule.StepBox, schedule.StepToOven, schedule.StepHold, schedule.StepSlice}
	switch e.Kind {
	case schedule.LogRestarted:
		return slices.Contains(ends, s.Kind)
	case schedule.LogOn:
		wasOn := slices.ContainsFunc(before, func(b schedule.Entry) bool { return b.Kind == schedule.LogOn && b.Dish == e.Dish && !b.At.After(e.At) })
		return !wasOn || slices.Contains(ends, s.Kind)
	}
	return false
}

func soundRevision(t rapid.TB, p schedule.Plan) {
	for _, f := range check.Plan(p) {
		t.Errorf("unsound: %s", f)
	}
	if !slices.IsSortedFunc(p.Steps, func(a, b schedule.Step) int { return a.At.Compare(b.At) }) {
		t.Error("steps are not in order")
	}
	for _, s := range p.Steps {
		if s.Done && s.At.After(*p.RevisedAt) {
			t.Errorf("%s is done at %v, after now", s.Kind, s.At)
		}
		if !s.Done && s.At.Before(*p.RevisedAt) {
			t.Errorf("%s is to be done at %v, before now", s.Kind, s.At)
		}
	}
}
