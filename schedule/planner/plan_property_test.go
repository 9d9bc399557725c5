package planner_test

import (
	"cmp"
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/check"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
	"example.com/cookday/schedule/unit"
)

var properties = flag.Int("properties", 25, "how many days the property tests of plans plan")

// checkDays plans drawn days and hands the feasible ones over.
func checkDays(t *testing.T, look func(*rapid.T, schedule.Request, schedule.Plan)) {
	before := flag.Lookup("rapid.checks").Value.String()
	defer flag.Set("rapid.checks", before)
	flag.Set("rapid.checks", fmt.Sprint(*properties))
	drawn, feasible := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		drawn++                                                        // a short run draws fewer than asked
		rnd := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "day"), 0)) // even choices; rapid prefers small ones
		choices := make([]byte, 120)
		for i := range choices {
			choices[i] = byte(rnd.IntN(256))
		}
		text := plantest.FuzzedRequest(choices)
		r, err := schedule.Read([]byte(text))
		if err != nil {
			return
		}
		p := made(t, r)
		if p.Feasible {
			feasible++
			look(t, r, p)
			if t.Failed() {
				t.Log(text)
			}
		}
	})
	if feasible < max(drawn/8, 1) {
		t.Errorf("only %d of %d days could be done: the test looks at too little", feasible, drawn)
	}
}

func made(t rapid.TB, r schedule.Request) schedule.Plan {
	p, err := planner.Make(context.Background(), r, planner.Cheaply(4*fuzzNodes))
	if _, bad := err.(*schedule.InputError); err != nil && !bad {
		t.Fatal(err)
	}
	if err == nil {
		for _, f := range check.Plan(p) {
			t.Errorf("the judge: %s", f)
		}
	}
	return p
}

// ranges are what the numbers of a plan may plausibly be, by the end of their name in
// JSON: a slip of the unit (F for C, grams for kilograms, hours for minutes) leaves
// them. Assumptions, from the limits of a request.
var ranges = map[string][2]float64{
	"_c":       {-60, 700},   // degC: the coldest air to the hottest fire
	"kg":       {0, 2000},    // 40 dishes of 500 pieces at the most, and a day's charcoal
	"_m":       {-2, 3},      // m: of a grate of at most 60 in, a ring around it
	"_m2":      {0, 3},       // m2
	"minutes":  {0, 11000},   // a week and a half: the thawing of a turkey
	"early":    {0, 4320},    // minutes of a stage: three days
	"expected": {0, 4320},    //
	"late":     {0, 8640},    //
	"_deg":     {-360, 360},  // degrees
	"chance":   {0, 1},       //
	"asked":    {0.5, 0.99},  //
	"all":      {0, 1},       //
	"open":     {0, 1},       // share of a vent
	"count":    {0, 100_000}, // pieces, briquettes
}

func TestNumbersArePlausible(t *testing.T) {
	seen := map[string]bool{}
	checkDays(t, func(t *rapid.T, _ schedule.Request, p schedule.Plan) {
		p.Request, p.Asked = schedule.Request{}, nil
		if p.Ahead != nil {
			p.Ahead.Request = schedule.Request{}
		}
		numbers(reflect.ValueOf(p), "", func(path string, v float64) {
			for end, r := range ranges {
				if strings.HasSuffix(path, end) {
					seen[end] = true
					if !(v >= r[0] && v <= r[1]) {
						t.Errorf("%s is %g; %g to %g is plausible", path, v, r[0], r[1])
					}
				}
			}
		})
	})
	for end := range ranges {
		if !seen[end] {
			t.Errorf("no number of a plan ends in %s", end)
		}
	}
}

// numbers calls found with every number in a value, by its path in JSON.
func numbers(v reflect.Value, path string, found func(string, float64)) {
	switch v.Kind() {
	case reflect.Float64:
		found(path, v.Float())
	case reflect.Int:
		found(path, float64(v.Int()))
	case reflect.Pointer:
		if !v.IsNil() {
			numbers(v.Elem(), path, found)
		}
	case reflect.Slice:
		for i := range v.Len() {
			numbers(v.Index(i), path, found)
		}
	case reflect.Struct:
		for f := range v.Type().Fields() {
			if name, _, _ := strings.Cut(f.Tag.Get("json"), ","); name != "" && name != "-" {
				numbers(v.FieldByIndex(f.Index), path+"."+name, found)
			}
		}
	}
}

// Windows are in order, steps by time, and all of it holds for the plan as a whole.
func TestWindowsAndStepsAreInOrder(t *testing.T) {
	checkDays(t, func(t *rapid.T, _ schedule.Request, p schedule.Plan) {
		plantest.LookOver(t, p)
		ids := map[string]bool{}
		for i, s := range p.Steps {
			if i > 0 && s.At.Before(p.Steps[i-1].At) {
				t.Errorf("%s at %s comes after %s at %s", s.Kind, s.At, p.Steps[i-1].Kind, p.Steps[i-1].At)
			}
			if ids[s.ID] {
				t.Errorf("two steps have the id of %s %s", s.Kind, s.Dish)
			}
			ids[s.ID] = true
			inOrder(t, string(s.Kind), s.Window)
		}
		for _, d := range p.Dishes {
			for _, b := range d.Batches {
				for _, m := range b.Milestones {
					inOrder(t, d.ID+" "+string(m.Kind), m.Window)
				}
			}
		}
	})
}

func inOrder(t rapid.TB, what string, w schedule.Window) {
	if w.Expected.Before(w.Early) || w.Late.Before(w.Expected) {
		t.Errorf("%s: %s, %s, %s", what, w.Early, w.Expected, w.Late)
	}
}

// The same request has the same ids, and where a plan has an id of its own, a change of
// one dish leaves those of the others: a calendar updates instead of doubling.
func TestIDsStay(t *testing.T) {
	checkDays(t, func(t *rapid.T, r schedule.Request, _ schedule.Plan) {
		r.ID = "day"
		p := made(t, r)
		if again := made(t, r); printed(t, p) != printed(t, again) {
			t.Fatal("the same request gave two plans")
		}
		changed := r
		changed.Dishes = slices.Clone(r.Dishes)
		last := &changed.Dishes[len(r.Dishes)-1]
		if last.Weight == 0 {
			return
		}
		last.Weight *= unit.Mass(1.001)
		q := made(t, changed)
		if !q.Feasible || !p.Feasible {
			return
		}
		for i, d := range p.Dishes[:len(p.Dishes)-1] {
			if was, is := putOns(p, d.ID), putOns(q, d.ID); len(p.Dishes[i].Batches) == len(q.Dishes[i].Batches) && !slices.Equal(was, is) {
				t.Errorf("%s is put on by %v, after a change of %s by %v", d.ID, was, last.ID, is)
			}
		}
	})
}

// putOns are the ids of a dish's put-ons, by batch.
func putOns(p schedule.Plan, dish string) []string {
	steps := slices.DeleteFunc(slices.Clone(p.Steps), func(s schedule.Step) bool { return s.Kind != schedule.StepPutOn || s.Dish != dish })
	slices.SortFunc(steps, func(a, b schedule.Step) int { return cmp.Compare(a.Batch, b.Batch) })
	var ids []string
	for _, s := range steps {
		ids = append(ids, s.ID)
	}
	return ids
}

func printed(t rapid.TB, p schedule.Plan) string {
	text, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// In whatever order the dishes are written down, the day is as good. Which of two plans of
// one cost is taken is not said: ties go by the order of the dishes (one day in some two
// hundred).
func TestTheOrderOfDishesDoesNotMatter(t *testing.T) {
	checkDays(t, func(t *rapid.T, r schedule.Request, _ schedule.Plan) {
		for i := range r.Dishes { // names that do not depend on the order
			r.Dishes[i].ID = fmt.Sprintf("d%d", i)
		}
		p := made(t, r)
		q := r
		q.Dishes = rapid.Permutation(r.Dishes).Draw(t, "order")
		o := made(t, q)
		if p.Feasible != o.Feasible || p.Solution.Proven && o.Solution.Proven && p.Solution.Objective != o.Solution.Objective {
			t.Errorf("feasible %v at %d; in another order %v at %d", p.Feasible, p.Solution.Objective, o.Feasible, o.Solution.Objective)
		}
	})
}
