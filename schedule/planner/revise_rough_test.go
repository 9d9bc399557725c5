package planner_test

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/check"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
)

// drawRoughLog is a log as nobody should keep one: entries of any kind about any
// dish at any time, twice, out of order, contradicting each other.
func drawRoughLog(rt *rapid.T, p schedule.Plan, now time.Time) []schedule.Entry {
	values := map[schedule.EntryKind][]string{
		schedule.LogWrapped:      {"", schedule.WrapFoil, schedule.WrapPaper, schedule.WrapNone},
		schedule.LogServingMoved: {p.ServeAt.Add(2 * time.Hour).Format(time.RFC3339), p.ServeAt.Add(-time.Hour).Format(time.RFC3339)},
		schedule.LogVents:        {"", "top 1/4, bottom 1/2", "top 1/16", "bottom 0", "top 1, bottom 1"},
		schedule.LogLitCoals:     {"", "12", "1000"},
		schedule.LogUnlitCoals:   {"", "30"},
		schedule.LogWind:         {"", "0 m/s", "12 m/s"},
		schedule.LogDishAdded:    {`{"cut": "sausage", "weight": "4 oz", "count": 6, "name": "Sausages"}`, `{"cut": "burger", "weight": "6 oz"}`},
	}
	var log []schedule.Entry
	var ids []string
	for _, d := range p.Dishes {
		ids = append(ids, d.ID)
	}
	at := p.Steps[0].At
	for range rapid.IntRange(1, 25).Draw(rt, "entries") {
		at = at.Add(time.Duration(rapid.IntRange(-20, 120).Draw(rt, "later")) * time.Minute)
		if at.After(now) {
			at = now
		}
		form := rapid.SampledFrom(schedule.EntryForms()).Draw(rt, "kind")
		e := schedule.Entry{At: at, Kind: form.Kind}
		if form.OfDish {
			e.Dish = rapid.SampledFrom(ids).Draw(rt, "dish")
		}
		switch form.Carries {
		case schedule.CarriesTemperature, schedule.CarriesMaybeTemperature:
			e.C = rapid.Float64Range(-5, 260).Draw(rt, "temperature")
		}
		if on := plantest.FirstAt(p, schedule.StepPutOn, e.Dish).Add(-5 * time.Minute); e.Kind == schedule.LogOn && e.At.Before(on) {
			continue // on long before its fire: what a plan makes of that is not settled
		}
		if all := values[e.Kind]; all != nil {
			e.Value = rapid.SampledFrom(all).Draw(rt, "value")
		}
		if e.Kind == schedule.LogDishAdded {
			e.Dish = rapid.SampledFrom([]string{"extra", "more"}).Draw(rt, "id")
		}
		log = append(log, e)
		if rapid.IntRange(0, 9).Draw(rt, "twice") == 0 {
			log = append(log, e)
		}
	}
	return log
}

// Whatever the log says, there is a plan or an error that says what is wrong: never
// a panic, a step moved in the past or a caution dropped, and every plan passes Check.
//
// What does not fit: of 2,000 logs at seed 22 no step moves, and the plans of two logs break a rule: a
// dish taken as done the minute it was served in the night has no rest. Seeds 33, 44 and 55 ended at
// their logs 561, 297 and 837 in a look at a fire that a revision had asked for; that was mended
// since, and they were not run again to their ends.
func TestRoughLogs(t *testing.T) {
	setFlag(t, "rapid.checks", fmt.Sprint(roughChecks()))
	if flag.Lookup("rapid.seed").Value.String() == "0" {
		setFlag(t, "rapid.seed", "20270703")
	}
	p := plantest.Party(t, "../..")
	ctx := context.Background()
	unsound, all := 0, 0
	judge := func(q schedule.Plan, log []schedule.Entry) {
		all++
		if faults := check.Plan(q); len(faults) > 0 {
			unsound++
			t.Errorf("unsound: %v at %v of\n%v", faults, q.RevisedAt, log)
		}
		if two := plantest.Contradictions(q); len(two) > 0 {
			t.Errorf("two orders: %v at %v of\n%v", two, q.RevisedAt, log)
		}
	}
	rapid.Check(t, func(rt *rapid.T) {
		now := p.Phases[0].From.Add(time.Duration(rapid.IntRange(-300, 3000).Draw(rt, "now")) * time.Minute)
		log := drawRoughLog(rt, p, now)
		before := slices.DeleteFunc(slices.Clone(log), func(e schedule.Entry) bool { return e.At.After(now.Add(-time.Hour)) })
		q, err := planner.Revise(ctx, p, before, now.Add(-time.Hour))
		if acceptable(rt, err, log) {
			return
		}
		judge(q, before)
		next, err := planner.Revise(ctx, q, log, now)
		if acceptable(rt, err, log) {
			return
		}
		keepsThePast(rt, q, next)
		judge(next, log)
	})
	t.Logf("%d of %d plans do not pass Check", unsound, all)
}

// roughChecks are few in the gate and many where more are asked for.
func roughChecks() int {
	if testing.Short() {
		return 10
	}
	return max(*parties/10, 50)
}

// acceptable says whether a revision ended in an error that says something.
func acceptable(rt *rapid.T, err error, log []schedule.Entry) bool {
	var bad *schedule.InputError
	switch {
	case err == nil:
		return false
	case errors.As(err, &bad) && len(bad.Faults) > 0 && strings.TrimSpace(bad.Faults[0].Sentence) != "":
		return true
	}
	rt.Fatalf("%v from\n%v", err, log)
	return true
}
