package safety

import (
	"fmt"
	"math"
)

// EpisodeKind is what happened to a piece for a while.
type EpisodeKind string

// The episodes.
const (
	RawOut   EpisodeKind = "raw-out"  // raw and out of the refrigerator, before it went on
	FireOut  EpisodeKind = "fire-out" // on the grate, no heat
	LowHeat  EpisodeKind = "low-heat" // on a fire that gives too little
	Stopped  EpisodeKind = "stopped"  // taken off before it was done
	Standing EpisodeKind = "standing" // done, cooling without heat, for example on a counter
	Chilled  EpisodeKind = "chilled"  // in the refrigerator or on ice
)

// Episode is a stretch of a history in which the piece was not being cooked.
type Episode struct {
	Kind                 EpisodeKind
	FromMinute, ToMinute float64 // on the samples' clock; ToMinute may be now
	Spent                []Spent // its minutes in the danger zone as they were counted; none: readings tell
}

// History is what is known of one piece: readings of its core, and what happened.
type History struct {
	Category Category
	Prep     Prep
	AirC     float64 // around the grill, degC; above 90 F food may stand for 1 h only
	Core     []Sample
	Episodes []Episode // in order, not overlapping
	Slow     []Sample  // the core as it must have been, for the slow clock; none: Core is taken
}

// sparseMinutes: without heat the core falls fastest at first, so a straight line
// between readings far apart flatters. Over a longer gap that ends in the danger zone
// the whole gap counts. An assumption.
const sparseMinutes = 30.0

// JudgeHistory finds where a history leaves the published limits: too long without
// heat, stopped and chilled half-way, chilled too slowly, reheated too little or too
// slowly, too long in the danger zone. Where no reading shows otherwise, a piece
// without heat counts as being in the danger zone. The findings come in order of time
// of their episodes.
func JudgeHistory(h History) ([]Finding, error) {
	if err := h.check(); err != nil {
		return nil, err
	}
	var out []Finding
	doneAt := h.doneAt()
	out = append(out, h.slowCook(doneAt)...)
	// Cooking to the minimum starts the clock afresh: what grew before it is killed.
	var raw, done float64
	for _, e := range h.Episodes {
		if e.Kind == Chilled {
			out = append(out, h.chilled(e, doneAt)...)
			continue
		}
		total := &raw
		if doneAt <= e.FromMinute {
			total = &done
		}
		out = append(out, h.withoutHeat(e, total)...)
	}
	return out, nil
}

func (h History) check() error {
	if err := checkSamples(h.Core); err != nil {
		return fmt.Errorf("core: %w", err)
	}
	end := math.Inf(-1)
	for i, e := range h.Episodes {
		switch e.Kind {
		case RawOut, FireOut, LowHeat, Stopped, Standing, Chilled:
		default:
			return fmt.Errorf("episode %d: kind %q, must be raw-out, fire-out, low-heat, stopped, standing or chilled", i, e.Kind)
		}
		if !(e.FromMinute >= end) || !(e.ToMinute >= e.FromMinute) || math.IsInf(e.ToMinute, 0) {
			return fmt.Errorf("episode %d (%s): from minute %v to %v; episodes must be in order, end after they start and not overlap",
				i, e.Kind, e.FromMinute, e.ToMinute)
		}
		end = e.ToMinute
	}
	return nil
}

// doneAt is when the core first came to its published minimum; +Inf if it has not.
func (h History) doneAt() float64 {
	m := MinimumFor(h.Category, h.Prep)
	if !m.Applies() {
		return math.Inf(-1)
	}
	return firstAtLeast(h.Core, m.CoreC-printedToleranceK)
}

func firstAtLeast(samples []Sample, levelC float64) float64 {
	for i, s := range samples {
		if s.C < levelC {
			continue
		}
		if i == 0 {
			return s.Minute
		}
		return crossing(samples[i-1], s, levelC)
	}
	return math.Inf(1)
}

// slowCook is the 4 h warning, for the time until the piece was done.
func (h History) slowCook(doneAt float64) []Finding {
	var clock DangerClock
	core := h.Core
	if len(h.Slow) > 0 {
		core = h.Slow
	}
	for _, s := range stretch(core, math.Inf(-1), doneAt) {
		_ = clock.Add(s) // the samples have been checked
	}
	if f, warns := clock.Finding(h.Category, h.Prep); warns {
		return []Finding{f}
	}
	return nil
}

// withoutHeat adds an episode's minutes in the danger zone to total.
func (h History) withoutHeat(e Episode, total *float64) []Finding {
	limit := outLimit(h.AirC)
	minutes, overAt := h.zone(e, limit-*total)
	*total += minutes
	measured := fmt.Sprintf("%s without heat between 40 and 140 °F (4 and 60 °C); the published limit is %s.",
		spokenMinutes(*total), spokenMinutes(limit))
	if *total < 1 {
		measured = fmt.Sprintf("no time without heat between 40 and 140 F (4.4 and 60 °C) so far; the published limit is %s.", spokenMinutes(limit))
	}
	switch {
	case minutes > 0 && *total > limit+roundingMinutes:
		f := found(string(e.Kind)+"-over", measured, overAt, *total-limit)
		f.Counted = *total
		return []Finding{f}
	case e.Kind == FireOut:
		f := found("fire-out", measured, e.FromMinute, 0)
		f.Counted = *total
		return []Finding{f}
	}
	return nil
}

// zone is how many minutes of an episode the core was, or may have been, between 40
// and 140 F, and the minute at which they came to budget.
func (h History) zone(e Episode, budget float64) (minutes, overAt float64) {
	overAt = e.ToMinute
	if budget < 0 {
		overAt = e.FromMinute // another episode used it up
	}
	spend := func(from, to, share float64) {
		add := (to - from) * share
		if minutes <= budget && minutes+add > budget {
			// Within a segment that crosses a limit the instant is spread evenly.
			overAt = from + (budget-minutes)/share
		}
		minutes += add
	}
	if len(e.Spent) > 0 {
		return e.counted(budget)
	}
	seen := stretch(h.Core, e.FromMinute, e.ToMinute)
	if len(seen) == 0 {
		spend(e.FromMinute, e.ToMinute, 1)
		return minutes, overAt
	}
	spend(e.FromMinute, seen[0].Minute, 1)
	for i := 1; i < len(seen); i++ {
		a, b := seen[i-1], seen[i]
		share := shareBetween(a.C, b.C, DangerLowC, DangerHighC)
		if share > 0 && b.C < a.C && b.Minute-a.Minute > sparseMinutes {
			share = 1
		}
		spend(a.Minute, b.Minute, share)
	}
	spend(seen[len(seen)-1].Minute, e.ToMinute, 1)
	return minutes, overAt
}

// chilled judges a stay in the refrigerator and what followed it.
func (h History) chilled(e Episode, doneAt float64) []Finding {
	if doneAt > e.FromMinute {
		return []Finding{found("partial-cooking", "", e.FromMinute, 0)}
	}
	if !MinimumFor(h.Category, h.Prep).Applies() {
		return nil
	}
	var out []Finding
	cooled := stretch(h.Core, math.Inf(-1), e.ToMinute)
	report, _ := JudgeCooling(cooled) // the samples have been checked
	switch {
	case report.Finding != nil:
		out = append(out, *report.Finding)
	case report.Kind != CoolingWithin || !report.StartKnown:
		out = append(out, found("cooling-unknown", "", e.FromMinute, 0))
	}
	return append(out, h.reheated(e)...)
}

// reheated judges the way back up, from the end of the chill to the next one.
func (h History) reheated(e Episode) []Finding {
	until := math.Inf(1)
	for _, next := range h.Episodes {
		if next.FromMinute >= e.ToMinute && next.FromMinute != e.FromMinute {
			until = next.FromMinute
			break
		}
	}
	again := stretch(h.Core, e.ToMinute, until)
	if len(again) == 0 || again[len(again)-1].C <= CoolingEndC {
		return nil // still cold
	}
	end, m := again[len(again)-1].Minute, ReheatMinimum()
	took := min(firstAtLeast(again, m.CoreC-printedToleranceK), end) - e.ToMinute
	hot := !math.IsInf(firstAtLeast(again, m.CoreC-printedToleranceK), 1)
	switch {
	case took > ReheatWithinMinutes:
		measured := fmt.Sprintf("It has been warming for %s.", spokenMinutes(took))
		return []Finding{found("reheat-slow", measured, e.ToMinute+ReheatWithinMinutes, took-ReheatWithinMinutes)}
	case !hot:
		return []Finding{found("reheat", "", end, 0)}
	}
	return nil
}
