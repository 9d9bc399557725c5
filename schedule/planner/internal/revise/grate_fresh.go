package revise

import (
	"math"
	"time"

	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/assemble"
)

// What a reading of the grate says of the hours after it: nothing of another fire, and little of
// the heat that cold food took for a while.

// grateWith is the history of the fire with outages that were found.
func (v *Revision) grateWith(found []outage) grateHistory {
	h := newGrateHistory(v.day.Day, v.whileItBurns(), v.now, v.plannedLevel, found)
	h.begins, h.cold = v.firesBegun(), v.coldLoads()
	return h
}

// firesBegun are the instants from which another fire of the plan than the first burns, in order:
// as planned, or when something was put on it.
func (v *Revision) firesBegun() []time.Time {
	var out []time.Time
	for k := 1; k < v.phases; k++ {
		from := v.first.Phases[k].SetupFrom.Add(v.lateOf(k))
		for _, a := range v.batches {
			if a.first != nil && a.on.logged && a.first.Phases[0].First >= k && a.on.at.Before(from) {
				from = a.on.at
			}
		}
		out = append(out, from)
	}
	return out
}

// coldLoads are the instants at which food went on that is heavy enough to cool the grate.
func (v *Revision) coldLoads() []time.Time {
	var out []time.Time
	for _, a := range v.batches {
		if a.on.set && !a.on.at.After(v.now) && a.batch.MassKg*math.Max(float64(a.batch.Count), 1) >= assemble.ColdLoadKg {
			out = append(out, a.on.at)
		}
	}
	return out
}

// countsOnRecovery says whether a piece is foretold over a grate that comes back by itself: not where
// its inside may be dangerous, for its clock goes by what was read.
func (v *Revision) countsOnRecovery(a *liveBatch) bool {
	return !safety.DangerApplies(a.batch.It.Category, a.batch.It.Prep)
}

// begunBetween says whether another fire was made between two instants.
func (h *grateHistory) begunBetween(from, to time.Time) bool {
	for _, t := range h.begins {
		if t.After(from) && !t.After(to) {
			return true
		}
	}
	return false
}

// dipWhole is for how long cold food takes the most; from then on it takes less and less
// (assumption: the sheet has it for up to two hours).
const dipWhole = 30 * time.Minute

// dipAt is the share of the most that cold food takes of the grate at an instant.
func (h *grateHistory) dipAt(at time.Time) float64 {
	most := 0.0
	for _, on := range h.cold {
		if since := at.Sub(on); since >= 0 && since < assemble.ColdTakes {
			most = math.Max(most, math.Min(float64(assemble.ColdTakes-since)/float64(assemble.ColdTakes-dipWhole), 1))
		}
	}
	return most
}

// recovered is the grate at an instant after it was read, degC: what cold food can have taken of
// it comes back, as the sheet says. What was read so cool that food would have too little heat
// stands as it was read.
func (h *grateHistory) recovered(readC, levelC float64, at time.Time) float64 {
	n := len(h.readings)
	if n == 0 || readC < safety.HalfHeatC || readC >= levelC || h.shut {
		return readC
	}
	was := h.dipAt(h.readings[n-1].at)
	if was == 0 {
		return readC
	}
	took := math.Min(levelC-readC, was*assemble.ColdMostK)
	return readC + took*(1-math.Min(h.dipAt(at)/was, 1))
}

// recovers is the grate from now on where cold food took of it; nil where it did not.
func (h *grateHistory) recovers(now time.Time, planned func(time.Time) float64) []airFrom {
	const steps = 3
	c, ok := h.lately(now)
	left := time.Duration(0)
	for _, on := range h.cold {
		left = max(left, on.Add(assemble.ColdTakes).Sub(now))
	}
	if !ok || left <= 0 {
		return nil
	}
	level := h.levelAt(now, planned)
	at := func(d time.Duration) float64 { return h.recovered(c, level, now.Add(d)) }
	if at(left)-at(0) < airStepK/2 {
		return nil
	}
	var out []airFrom
	for i := range steps {
		from := left * time.Duration(i) / steps
		out = append(out, airFrom{from.Minutes(), at(from + left/steps/2)})
	}
	return append(out, airFrom{left.Minutes(), at(left)})
}
