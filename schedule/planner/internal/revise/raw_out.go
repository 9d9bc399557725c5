package revise

import (
	"fmt"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/unit"
)

// rawOutOver is the code of a piece that lay raw and out of the refrigerator for too long.
const rawOutOver = "raw-out-over"

// Figures of raw meat that is out of the refrigerator (judgment): read so warm inside it has been out; and for how long it is
// out anyway, to be seasoned.
var rawWarmC = unit.FToC(50)

const rawOutLeast = 40.0

// halfDay is a slip of the half of the day.
const halfDay = 12 * time.Hour

// rawOut is how long a piece lay raw and out of the refrigerator before it went on, minutes, as the log tells, and since when
// at the last; 0 for not as far as is known. It counts until it goes on, or into the refrigerator.
func (v *Revision) rawOut(a *liveBatch) (since time.Time, minutes float64) {
	if a.batch.It.Verdict.Minimum.CoreC == 0 {
		return since, 0
	}
	end := v.now
	if a.on.set {
		end = a.on.at
	}
	for _, o := range v.batches { // of a dish that is on in part, the log tells of what is on
		if o.batch.It.Dish.ID == a.batch.It.Dish.ID && o.on.set && o.on.at.Before(end) {
			end = o.on.at
		}
	}
	var open, first time.Time
	for _, e := range v.log {
		if e.Dish != a.batch.It.Dish.ID || !e.At.Before(end) {
			continue
		}
		warm := (e.Kind == schedule.LogCore || e.Kind == schedule.LogColdest) && e.C >= rawWarmC
		switch {
		case (warm || e.Kind == schedule.LogCounter || e.Kind == schedule.LogStopped) && open.IsZero():
			if open = e.At; first.IsZero() {
				first = open
			}
		case e.Kind == schedule.LogChilled && !open.IsZero():
			minutes, open = minutes+e.At.Sub(open).Minutes(), time.Time{}
		}
	}
	if !open.IsZero() {
		minutes += end.Sub(open).Minutes()
	}
	return first, minutes
}

// rawTooLong says whether a piece was raw and out for too long, whatever its fire did.
func (a *liveBatch) rawTooLong() bool {
	return slices.ContainsFunc(a.verdict, func(f safety.Finding) bool { return f.Code == rawOutOver })
}

// rawOutText says of such a piece what to do, and why.
func (v *Revision) rawOutText(a *liveBatch) string {
	since, minutes := v.rawOut(a)
	text := fmt.Sprintf("%s: throw it away, and do not cook it. It was raw and out of the refrigerator from %s, for %s, and the published limit is %s. Heat does not mend that. Wash your hands and what it touched.",
		a.batch.It.Dish.Name, v.clock(since), v.span(minutes), v.span(safety.OutLimit(v.day.Air.AirC)))
	if meant := since.Add(halfDay); meant.Sub(v.now) <= 0 {
		text += fmt.Sprintf(" If %s was meant, correct that line of the log.", v.clock(meant))
	}
	return text
}

// noteRawOut says by when a raw piece that lies out must be in heat, and of one that is on that this counts.
func (v *Revision) noteRawOut(a *liveBatch, add func(schedule.Finding)) {
	since, minutes := v.rawOut(a)
	limit := safety.OutLimit(v.day.Air.AirC)
	if minutes <= 0 || minutes > limit || a.where == off {
		return
	}
	name := a.batch.It.Dish.Name
	switch {
	case a.on.set && minutes > rawOutLeast:
		add(about(a, schedule.HeatLost, fmt.Sprintf("%s: it was raw and out of the refrigerator for %s before it went on, from %s. Its time without heat counts on from that: %s at the most.", name, v.span(minutes), v.clock(since), v.span(limit))))
	case !a.on.set && v.liesRaw(a):
		add(about(a, schedule.StandsOpen, fmt.Sprintf("%s: raw, and out of the refrigerator since %s. Back into it now, or onto the hot grate by %s. Past that it is thrown away.", name, v.clock(since), v.clock(v.now.Add(instant.Minutes(limit-minutes))))))
	}
}

// liesRaw says whether a piece that is not on lies out now, longer than it takes to season it.
func (v *Revision) liesRaw(a *liveBatch) bool {
	_, minutes := v.rawOut(a)
	for _, e := range slices.Backward(v.log) {
		if e.Dish == a.batch.It.Dish.ID && slices.Contains([]schedule.EntryKind{schedule.LogCounter, schedule.LogStopped, schedule.LogChilled}, e.Kind) {
			return e.Kind != schedule.LogChilled && minutes > rawOutLeast/2
		}
	}
	return minutes > rawOutLeast/2
}
