package planner_test

import (
	"fmt"
	"math"
	"sort"
	"testing"
	"time"

	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/internal/testbed"
)

// followedPoint is a finished cook at one of its readings: what was left, hours, and what
// the revision said of it.
type followedPoint struct {
	cook, group        string
	wrapped            bool
	left               float64
	early, mid, latest float64
}

func (p followedPoint) off() float64 { return math.Log(p.mid / p.left) }

// followCook revises the plan of a finished cook by its readings, one after the other, a
// minute after each.
func followCook(t *testing.T, r testbed.Row, readings []testbed.Row) (out []followedPoint) {
	t.Helper()
	dish := fmt.Sprintf("{id: x, name: X, cut: %s, weight: %s lb, level: %s F, target: %s F", r["cut"], r["weight_lb"], r["level_f"], r["target_f"])
	if r["wrap"] != "" {
		dish += ", wrap: " + r["wrap"]
	}
	p := plantest.Plan(t, "format: 1\nserve: {date: 2027-07-03, time: \"20:00\", tz: America/Chicago}\ngrill: {kind: kettle, diameter: 22 in, fuel: briquettes}\nquiet: []\noven: {hold: 170 F}\n"+
		"weather: {air: "+r["air_f"]+" F}\ndishes:\n  - "+dish+"}\n")
	if !p.Feasible {
		t.Logf("%s: no plan: %v", r["id"], p.Findings)
		return nil
	}
	on, end := plantest.StepAt(t, p, "put-on", "x"), r.Number(t, "cook_hours")
	log := "time,dish,kind,value\n" + on.Format(time.RFC3339) + ",x,on,\n"
	wrapped := false
	for i, x := range readings {
		h := x.Number(t, "hours")
		at := on.Add(time.Duration(h * float64(time.Hour))).Truncate(time.Second)
		add := func(dish, kind, value string) {
			log += fmt.Sprintf("%s,%s,%s,%s\n", at.Format(time.RFC3339), dish, kind, value)
		}
		if x["pit_f"] != "" {
			add("", "grate", x["pit_f"]+" F")
		}
		if x["core_f"] != "" {
			add("x", "core", x["core_f"]+" F")
		}
		if x["wrapped"] != "" {
			wrapped = true
			add("x", "wrapped", x["wrapped"])
		}
		if x["core_f"] == "" || h >= end-0.02 || i+1 < len(readings) && readings[i+1]["hours"] == x["hours"] {
			continue
		}
		now := at.Add(time.Minute)
		w := plantest.TakeOff(t, plantest.Revised(t, p, log, now.Format("2006-01-02 15:04")), "x")
		to := func(at time.Time) float64 { return math.Max(at.Sub(now).Hours(), 0.05) }
		out = append(out, followedPoint{r["id"], r["group"], wrapped, math.Max(end-h, 0.05), to(w.Early), to(w.Expected), to(w.Late)})
	}
	return out
}

// The given cooks (home_cook_report) as they are followed by their readings, one weight a
// cook. What must hold is the acceptance of the estimator: the window of 80 % holds 72 to
// 92 %, later than it at most 14 %, the mean of the logarithm at most 0.56, the bias within
// 20 %. Its constants were fitted on these cooks, leaving a group out at a time
// (clock_fit_test.go of the room belief): cooks that nobody here has seen are scored apart.
func TestGivenCooksAreFollowed(t *testing.T) {
	readings := map[string][]testbed.Row{}
	for _, x := range testbed.Rows(t, "testdata/logs/follow_readings.csv") {
		readings[x["id"]] = append(readings[x["id"]], x)
	}
	var all []followedPoint
	lost := 0
	for _, r := range testbed.Rows(t, "testdata/logs/follow_cooks.csv") {
		points := followCook(t, r, readings[r["id"]])
		if len(points) == 0 {
			lost++
		}
		all = append(all, points...)
	}
	pick := func(name string, with func(followedPoint) bool) (inside, later, logs, bias float64) {
		var some []followedPoint
		n := map[string]float64{}
		for _, p := range all {
			if with(p) {
				some, n[p.cook] = append(some, p), n[p.cook]+1
			}
		}
		total := float64(len(n))
		type weighed struct{ off, weight float64 }
		var offs []weighed
		for _, p := range some {
			w, slack := 1/n[p.cook]/total, 1.0/60
			logs += w * math.Abs(p.off())
			if p.left > p.latest+slack {
				later += w
			} else if p.left >= p.early-slack {
				inside += w
			}
			offs = append(offs, weighed{p.off(), w})
		}
		sort.Slice(offs, func(i, j int) bool { return offs[i].off < offs[j].off })
		sum := 0.0
		for _, o := range offs {
			if sum += o.weight; sum >= 0.5 {
				bias = math.Expm1(o.off)
				break
			}
		}
		t.Logf("%-8s points %2d cooks %2.0f: bias %+.0f %%, |log| %.2f, inside %.0f %%, later %.0f %%", name, len(some), total, 100*bias, logs, 100*inside, 100*later)
		return inside, later, logs, bias
	}
	pick("bare", func(p followedPoint) bool { return !p.wrapped })
	pick("wrapped", func(p followedPoint) bool { return p.wrapped })
	inside, later, logs, bias := pick("all", func(followedPoint) bool { return true })
	if inside < 0.72 || inside > 0.92 || later > 0.14 || logs > 0.56 || math.Abs(bias) > 0.2 || len(all) < 30 {
		t.Errorf("of %d points: inside %.3f, later %.3f, |log| %.3f, bias %+.3f", len(all), inside, later, logs, bias)
	}
	if lost > 0 {
		t.Errorf("%d cooks without a plan", lost)
	}
}
