package planner_test

import (
	"context"
	"math"
	"slices"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/internal/testbed"
	"example.com/cookday/schedule/planner"
)

// homeCook is what a home cook's grill took and what the forecast said to it.
type homeCook struct {
	id, cut, category string
	hours             float64
	early, mid, late  float64 // hours
}

func (h homeCook) inside() bool { return h.early <= h.hours && h.hours <= h.late }

// asHomeCook asks the forecast what a cook asked of a grill; why says that it gave no
// time, and is empty where it gave one.
func asHomeCook(t *testing.T, r testbed.Row) (h homeCook, why string) {
	t.Helper()
	fields := map[string]string{"cut": r["cut"], "weight": r["weight_lb"] + " lb", "grate": r["grate_f"] + " F", "wrap": r["wrap"]}
	for _, f := range []struct{ column, name, unit string }{
		{"target_f", "target", " F"}, {"air_f", "air", " F"}, {"start_f", "start", " F"}, {"thickness_in", "thickness", " in"},
	} {
		if r[f.column] != "" {
			fields[f.name] = r[f.column] + f.unit
		}
	}
	if r["count"] != "" {
		fields["count"] = r["count"]
	}
	q, err := schedule.ReadInquiry(fields)
	if err != nil {
		return h, err.Error()
	}
	o, err := planner.Forecast(context.Background(), q)
	if err != nil {
		return h, err.Error()
	}
	off := plantest.Milestone(o, schedule.MilestoneTakeOff)
	if !o.Reaches || off.Kind == "" {
		return h, "never: " + o.Reason
	}
	return homeCook{r["id"], r["cut"], r["category"], r.Number(t, "hours"), off.EarlyMinutes / 60, off.ExpectedMinutes / 60, off.LateMinutes / 60}, ""
}

// homeScore is how well the forecast did for cooks of a kind, as shares.
type homeScore struct {
	n               int
	wrong, bias, sd float64 // median of the error's size, median and deviation of the error
	inside          float64
	width           float64 // late over early, median
}

func scoreHome(cooks []homeCook) homeScore {
	n := float64(len(cooks))
	s := homeScore{n: len(cooks)}
	var logs, wrong, wide []float64
	mean := 0.0
	for _, h := range cooks {
		e := math.Log(h.mid / h.hours)
		logs, wrong, wide = append(logs, e), append(wrong, math.Abs(math.Expm1(e))), append(wide, h.late/h.early)
		mean += e / n
		if h.inside() {
			s.inside += 1 / n
		}
	}
	for _, e := range logs {
		s.sd += (e - mean) * (e - mean) / n
	}
	s.sd = math.Sqrt(s.sd)
	s.wrong, s.bias, s.width = plantest.Median(wrong), math.Expm1(plantest.Median(logs)), plantest.Median(wide)
	return s
}

func (s homeScore) log(t *testing.T, name string) {
	t.Helper()
	t.Logf("%-16s %3d %12.2f%% %+6.0f%% %5.2f %8.2f%% %10.2f", name, s.n, 100*s.wrong, 100*s.bias, s.sd, 100*s.inside, s.width)
}

// What must hold for home cooks. About 16 % is the floor of the median error for a
// stranger's grill, so 20 % is asked; 19.9 % and 82 % inside were had when this was
// written down, and no less than 81 % inside passes, though 78 % was asked.
const (
	mostWrong          = 0.20
	leastInside        = 0.81
	mostInside         = 0.90
	leastInsideOfAKind = 0.60
	mostLateToEarly    = 2.3 // a wide window is no merit; 2.15 was had
	mostRefused        = 6   // 1 was

	aKind       = 8 // cooks of a category that is judged by itself
	scoredCooks = 114
)

// The given home cooks (home_cook_report, pit at 220 F or more), asked as a cook would
// ask: windows of 80 % hold what they say, not by being wide, and the middle is no worse
// than it was. The medians and spreads of the model were fitted on them and on others:
// this is a record, and no test on cooks that the model never saw.
func TestHomeCooksFallIntoTheWindows(t *testing.T) {
	var all []homeCook
	refused := 0
	table := map[string][]homeCook{}
	for _, r := range testbed.Rows(t, "testdata/cook_asks.csv") {
		if r["scored"] != "yes" {
			continue
		}
		h, why := asHomeCook(t, r)
		if why != "" {
			refused++
			t.Logf("no time for %s, %s of %s lb: %s", r["id"], r["cut"], r["weight_lb"], why)
			continue
		}
		all = append(all, h)
		table[h.category] = append(table[h.category], h)
	}
	if len(all)+refused != scoredCooks {
		t.Fatalf("%d cooks asked, want %d", len(all)+refused, scoredCooks)
	}
	t.Logf("%-16s %3s %13s %7s %5s %9s %10s", "", "n", "median error", "bias", "sd", "inside", "late/early")
	names := make([]string, 0, len(table))
	for name := range table {
		names = append(names, name)
	}
	slices.Sort(names)
	for _, name := range names {
		s := scoreHome(table[name])
		s.log(t, name)
		if s.n >= aKind && s.inside < leastInsideOfAKind {
			t.Errorf("%s: %.0f %% of %d inside the window, want %.0f %%", name, 100*s.inside, s.n, 100*leastInsideOfAKind)
		}
	}
	judgeHome(t, scoreHome(all), refused)
}

func judgeHome(t *testing.T, s homeScore, refused int) {
	t.Helper()
	s.log(t, "all")
	if !(s.wrong <= mostWrong) {
		t.Errorf("median error %.2f %%, want at most %.0f %%", 100*s.wrong, 100*mostWrong)
	}
	if s.inside < leastInside || s.inside > mostInside {
		t.Errorf("%.1f %% inside the windows of 80 %%, want %.0f to %.0f %%", 100*s.inside, 100*leastInside, 100*mostInside)
	}
	if !(s.width <= mostLateToEarly) {
		t.Errorf("late is %.2f of early in the median, want at most %.1f", s.width, mostLateToEarly)
	}
	if refused > mostRefused {
		t.Errorf("%d cooks refused, want at most %d", refused, mostRefused)
	}
}
