package planner

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner/internal/revise"
)

// mostBlamed is how many entries of a log are tried for the one that does not fit: each is a day
// arranged again.
const mostBlamed = 6

// unsound is the finding of a revision that breaks a rule. The log is blamed only where two of its
// entries cannot both be right; then the one is named without which the day keeps every rule, or
// both. What was told as it was advised, or as anybody would, is no cook's fault.
func (o options) unsound(ctx context.Context, p schedule.Plan, log []schedule.Entry, now time.Time, revised schedule.Plan, faults []schedule.Fault) schedule.Finding {
	pairs := contradictions(revised, revised.Log)
	if len(pairs) == 0 {
		return schedule.NewFinding(schedule.OwnFault, "", "This plan does not add up in one place, and that is not your log. Times below may be off: go by the thermometer.")
	}
	text := "The log does not fit together, and times below may be wrong. Go by the thermometer."
	for _, e := range suspects(revised, faults, pairs) {
		without := func(all []schedule.Entry) []schedule.Entry {
			return slices.DeleteFunc(slices.Clone(all), func(x schedule.Entry) bool {
				return len(schedule.JoinLogs([]schedule.Entry{x}, []schedule.Entry{e})) == 1
			})
		}
		q := p
		q.Log = without(p.Log)
		v, err := revise.New(ctx, q, without(log), now, o.chill)
		if err != nil {
			continue
		}
		if r, err := v.Plan(ctx); err == nil && len(o.judge(r)) == 0 {
			return schedule.NewFinding("unsound", "log", fmt.Sprintf("%s Look at the entry %s: without it the rest fits. Correct its time or its dish, or take it back.", text, entryText(revised, e)))
		}
	}
	last := pairs[len(pairs)-1]
	return schedule.NewFinding("unsound", "log", fmt.Sprintf("%s Look at %s and %s: not both can be right. Correct a time or a dish, or take one back.", text, entryText(revised, last[0]), entryText(revised, last[1])))
}

// suspects are the entries that another one contradicts, the likeliest first.
func suspects(p schedule.Plan, faults []schedule.Fault, pairs [][2]schedule.Entry) []schedule.Entry {
	faulted := map[string]bool{}
	for i, d := range p.Dishes {
		faulted[d.ID] = slices.ContainsFunc(faults, func(f schedule.Fault) bool { return strings.HasPrefix(f.Path, fmt.Sprintf("dishes[%d]", i)) })
	}
	var first, then []schedule.Entry
	contradicted := func(e schedule.Entry) bool {
		return slices.ContainsFunc(pairs, func(p [2]schedule.Entry) bool { return p[0] == e || p[1] == e })
	}
	for _, e := range slices.Backward(p.Log) {
		if !contradicted(e) {
			continue
		}
		if e.Dish != "" && faulted[e.Dish] {
			first = append(first, e)
		} else {
			then = append(then, e)
		}
	}
	all := append(first, then...)
	return all[:min(len(all), mostBlamed)]
}

// entryText is an entry as a cook finds it in the log.
func entryText(p schedule.Plan, e schedule.Entry) string {
	what := string(e.Kind)
	for _, d := range p.Dishes {
		if d.ID == e.Dish {
			what = d.Name + ": " + what
		}
	}
	at := e.At.In(p.ServeAt.Location())
	clock := p.Request.Units.Clock(at)
	if p.RevisedAt != nil && at.YearDay() != p.RevisedAt.In(at.Location()).YearDay() {
		clock = p.Request.Units.ClockOn(at)
	}
	return fmt.Sprintf("%q of %s", what, clock)
}
