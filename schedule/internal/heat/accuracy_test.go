package heat

import (
	"math"
	"slices"
	"testing"

	"example.com/cookday/schedule/internal/testbed"
)

// score sums up errors against published ranges.
type score struct {
	n, inside          int
	absolute, relative float64
}

func (s *score) add(got, lo, hi float64) {
	off := got/((lo+hi)/2) - 1
	s.n++
	s.absolute += math.Abs(off)
	s.relative += off
	if got >= lo*0.85 && got <= hi*1.15 {
		s.inside++
	}
}

func (s *score) mape() float64  { return s.absolute / float64(s.n) }
func (s *score) share() float64 { return float64(s.inside) / float64(s.n) }

// recorded is how wrong the model was when it was last looked at. A change may
// make it better, not worse; half a per cent is for other machines' arithmetic. The
// second edition was fitted to home cooks beside the charts: charts used in the fit
// went from 4.3 to 5.7 % and practice from 8.3 to 10.4 %, held-out charts from 14.1 to
// 12.4 %.
var recorded = []struct {
	group       string
	mape, share float64
}{
	{"all, a priori", 0.196, 0.68},
	{"all, fitted size", 0.174, 0.73},
	{"consistent oven, a priori", 0.121, 0.87},
	{"consistent oven, fitted size", 0.087, 0.94},
	{"consistent cal, a priori", 0.060, 0.95},
	{"consistent cal, fitted size", 0.057, 0.95},
	{"consistent held-out, a priori", 0.161, 0.81},
	{"consistent held-out, fitted size", 0.124, 0.90},
	{"source chart, a priori", 0.069, 0.90},
	{"source chart, fitted size", 0.061, 0.90},
	{"source common practice, a priori", 0.104, 1},
	{"source university demonstration, a priori", 0.039, 1},
}

// Published government charts are ranges of a rule, not experiments. Errors are
// taken at the middle of the weight range and of the published minutes; share is
// that of rows inside the range widened by 15 %. "a priori" takes dimensions
// from anatomy alone, "fitted size" multiplies them by a size factor per cut
// that was fitted on part of these rows, so its figures are partly in sample.
// Rows marked inconsistent contradict other rows of the same charts.
func TestAccuracyAgainstCharts(t *testing.T) {
	c := readCuts(t)
	scores := map[string]*score{}
	add := func(group string, got, lo, hi float64) {
		if scores[group] == nil {
			scores[group] = &score{}
		}
		scores[group].add(got, lo, hi)
	}
	for _, r := range testbed.Rows(t, "testdata/reference_rows.csv") {
		for _, setting := range []string{"a priori", "fitted size"} {
			logSize := 0.0
			if setting == "fitted size" {
				logSize = c[r["cut"]].Number(t, "log_size")
			}
			got := minutes(t, c, r, logSize)
			lo, hi := r.Number(t, "published_lo_min"), r.Number(t, "published_hi_min")
			add("source "+r["source"]+", "+setting, got, lo, hi)
			if r["source"] == "common practice" || r["source"] == "university demonstration" {
				continue
			}
			add("all, "+setting, got, lo, hi)
			if r["inconsistent_source_row"] == "no" {
				add("consistent "+r["surroundings"]+", "+setting, got, lo, hi)
				add("consistent "+r["set"]+", "+setting, got, lo, hi)
			}
		}
	}
	var groups []string
	for group := range scores {
		groups = append(groups, group)
	}
	slices.Sort(groups)
	for _, group := range groups {
		s := scores[group]
		t.Logf("%-48s n %3d  MAPE %5.1f %%  bias %+5.1f %%  inside %3.0f %%", group, s.n, 100*s.mape(), 100*s.relative/float64(s.n), 100*s.share())
	}
	for _, want := range recorded {
		s := scores[want.group]
		if s == nil {
			t.Errorf("no rows in %q", want.group)
			continue
		}
		if s.mape() > want.mape+0.005 || s.share() < want.share-0.005 {
			t.Errorf("%s: MAPE %.1f %%, inside %.0f %%; recorded %.1f and %.0f", want.group, 100*s.mape(), 100*s.share(), 100*want.mape, 100*want.share)
		}
	}
}
