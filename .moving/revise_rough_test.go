package schedule

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
)

// drawRoughLog is a log as nobody should keep one: entries of any kind about any
// dish at any time, twice, out of order, contradicting each other.
func drawRoughLog(rt *rapid.T, p Plan, now time.Time) []Entry {
	values := map[string][]string{
		LogWrapped:      {"", WrapFoil, WrapPaper, WrapNone},
		LogServingMoved: {p.ServeAt.Add(2 * time.Hour).Format(time.RFC3339), p.ServeAt.Add(-time.Hour).Format(time.RFC3339)},
		LogDishAdded:    {`{"cut": "sausage", "weight": "4 oz", "count": 6, "name": "Sausages"}`, `{"cut": "burger", "weight": "6 oz"}`},
	}
	var log []Entry
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
		e := Entry{At: at, Kind: rapid.SampledFrom(kindNames()).Draw(rt, "kind")}
		if logKinds[e.Kind].dish {
			e.Dish = rapid.SampledFrom(ids).Draw(rt, "dish")
		}
		switch logKinds[e.Kind].carries {
		case temperature, maybeTemp:
			e.C = rapid.Float64Range(-5, 260).Draw(rt, "temperature")
		}
		if on := logStep(p, StepPutOn, e.Dish).Add(-5 * time.Minute); e.Kind == LogOn && e.At.Before(on) {
			continue // on long before its fire: what a plan makes of that is not settled
		}
		if all := values[e.Kind]; all != nil {
			e.Value = rapid.SampledFrom(all).Draw(rt, "value")
		}
		if e.Kind == LogDishAdded {
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
func TestRoughLogs(t *testing.T) {
	setFlag(t, "rapid.checks", fmt.Sprint(roughChecks()))
	if flag.Lookup("rapid.seed").Value.String() == "0" {
		setFlag(t, "rapid.seed", "20270703")
	}
	p := revisionParty(t)
	ctx := context.Background()
	unsound, all := 0, 0
	judge := func(q Plan, log []Entry) {
		all++
		if faults := Check(q); len(faults) > 0 {
			unsound++
			t.Errorf("unsound: %v at %v of\n%v", faults, q.RevisedAt, log)
		}
	}
	rapid.Check(t, func(rt *rapid.T) {
		now := p.Phases[0].From.Add(time.Duration(rapid.IntRange(-300, 3000).Draw(rt, "now")) * time.Minute)
		log := drawRoughLog(rt, p, now)
		before := slices.DeleteFunc(slices.Clone(log), func(e Entry) bool { return e.At.After(now.Add(-time.Hour)) })
		q, err := Revise(ctx, p, before, now.Add(-time.Hour))
		if acceptable(rt, err, log) {
			return
		}
		judge(q, before)
		next, err := Revise(ctx, q, log, now)
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
func acceptable(rt *rapid.T, err error, log []Entry) bool {
	var bad *InputError
	switch {
	case err == nil:
		return false
	case errors.As(err, &bad) && len(bad.Faults) > 0 && strings.TrimSpace(bad.Faults[0].Sentence) != "":
		return true
	}
	rt.Fatalf("%v from\n%v", err, log)
	return true
}
