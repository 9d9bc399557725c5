package export

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
)

// onTheFire says of each piece that cooks how it stands.
func (t *textSheet) onTheFire() {
	var lines []string
	for _, d := range t.Dishes {
		for _, b := range d.Batches {
			if line := t.cooks(d, b); line != "" && !t.unfit(d.ID) {
				lines = append(lines, line)
			}
		}
	}
	if len(lines) == 0 {
		return
	}
	heading := "On the fire"
	if !t.anyOn() {
		heading = "In the oven"
	}
	t.heading(heading, '-')
	for _, line := range lines {
		t.item("- ", line)
	}
}

// offTheFire says of each piece that is done and waits for its serving where it does.
func (t *textSheet) offTheFire() {
	var lines []string
	for _, d := range t.Dishes {
		for _, b := range d.Batches {
			if line := t.rests(d.ID, b); line != "" && !t.unfit(d.ID) {
				lines = append(lines, line)
				continue
			}
			if n := len(b.Stages); n > 0 && b.Stages[n-1].Kind == schedule.StageHold && !b.Stages[n-1].From.After(t.now) && b.Stages[n-1].To.After(t.now) && !t.unfit(d.ID) {
				lines = append(lines, t.waits(d, b, b.Stages[n-1]))
			}
		}
	}
	if len(lines) == 0 {
		return
	}
	t.heading("Off the fire", '-')
	for _, line := range lines {
		t.item("- ", line)
	}
}

// rests says of a batch that is off where it lies, open or not, until it is put away or cut up.
func (t *textSheet) rests(dish string, b schedule.Batch) string {
	var rest schedule.Step
	var next schedule.Step
	for _, s := range t.Steps {
		if s.Dish != dish || s.Batch != b.Number {
			continue
		}
		switch s.Kind {
		case schedule.StepRest:
			rest = s
		case schedule.StepBox, schedule.StepToOven, schedule.StepHold, schedule.StepSlice:
			if s.Done {
				return ""
			}
			if next.ID == "" {
				next = s
			}
		}
	}
	if !rest.Done || next.ID == "" || t.found(schedule.CodeHoldShort, dish) || t.found(schedule.StandsOpen, dish) {
		return ""
	}
	return t.stepText(rest) + " At " + t.clockBy(next.At, t.now) + ": " + t.kind(next) + "."
}

// waits says of a batch where it waits and until when; one that does not keep has a finding
// that says so.
func (t *textSheet) waits(d schedule.DishPlan, b schedule.Batch, hold schedule.Stage) string {
	dish, name := d.ID, t.dish(d.ID)
	if len(d.Batches) > 1 {
		name += fmt.Sprintf(", batch %d", b.Number)
	}
	line := name + ": in the " + strings.TrimPrefix(phrase(hold.Place), "warm ")
	if hold.Place != schedule.HoldBox && hold.Place != schedule.HoldOven {
		line = name + ": " + phrase(hold.Place)
	}
	told := slices.ContainsFunc(t.Log, func(e schedule.Entry) bool {
		return e.Dish == dish && (e.Kind == schedule.LogBoxed || e.Kind == schedule.LogToOven)
	})
	if !told {
		line = strings.Replace(line, ": in the ", ": off; the plan has it in the ", 1)
	}
	if !told && (t.found(schedule.StandsOpen, dish) || t.found(schedule.Leftovers, dish)) {
		return name + ": where it waits was not logged."
	}
	if t.found(schedule.CodeHoldShort, dish) {
		return line + "; that does not last until " + t.clockBy(d.ServeAt, t.now) + "."
	}
	return line + ", until " + t.clockBy(hold.To, t.now) + "."
}

// cooks is how a batch stands that is on and not off; empty for another.
func (t *textSheet) cooks(d schedule.DishPlan, b schedule.Batch) string {
	done := func(kind schedule.StepKind) bool {
		return slices.ContainsFunc(t.Steps, func(s schedule.Step) bool {
			return s.Done && s.Kind == kind && s.Dish == d.ID && s.Batch == b.Number
		})
	}
	if !done(schedule.StepPutOn) || done(schedule.StepTakeOff) || len(b.Stages) == 0 {
		return ""
	}
	name := t.dish(d.ID)
	if len(d.Batches) > 1 {
		name += fmt.Sprintf(", batch %d", b.Number)
	}
	text := name + ": on since " + t.clockBy(b.Stages[0].From, t.now)
	if !t.putOnTold(d, b) {
		text += " by the plan, not noted; on later? Note when"
	}
	if at, ok := t.indoorsSince(d.ID); ok {
		text += ", in the oven since " + t.clockBy(at, t.now)
	}
	if e, ok := t.lastCore(d.ID); ok {
		text += fmt.Sprintf(", %s%s at %s", t.core(e.C), coldestOf(e), t.clockBy(e.At, t.now))
		if t.found("stall", d.ID) {
			text += ", in its stall: nothing is wrong"
		}
	} else {
		text += ", not measured yet"
	}
	if m, ok := b.Milestone(schedule.MilestoneTakeOff); ok && !t.found(schedule.NeverDone, d.ID) {
		if !m.Window.Late.After(t.now.Add(dueWithin)) {
			return text + t.dueNow(d)
		}
		text += fmt.Sprintf("; off at %s or so, between %s and %s", t.clockBy(m.Window.Expected, t.now), t.clockBy(m.Window.Early, t.now), t.clockBy(m.Window.Late, t.now))
	}
	return text + "."
}

// putOnTold says whether the log has a batch go on, and not the plan alone.
func (t *textSheet) putOnTold(d schedule.DishPlan, b schedule.Batch) bool {
	told := 0
	for _, e := range t.Log {
		if e.Dish == d.ID && e.Kind == schedule.LogOn {
			told++
		}
	}
	return told >= b.Number
}

// indoorsSince is when a dish went on cooking in the kitchen oven, as the log says.
func (v *view) indoorsSince(dish string) (at time.Time, ok bool) {
	for _, e := range v.Log {
		switch {
		case e.Dish != dish:
		case e.Kind == schedule.LogToOven:
			at, ok = e.At, true
		case e.Kind == schedule.LogRestarted:
			ok = false
		}
	}
	return at, ok
}

// othersAsked says whether other pieces or places of a dish are read before it comes off.
func (t *textSheet) othersAsked(id string) bool {
	return slices.ContainsFunc(t.Findings, func(f schedule.Finding) bool {
		return f.Code == schedule.PastTarget && slices.Contains(f.Dishes, id) && !strings.HasPrefix(f.Text, "Take ") && !strings.HasPrefix(f.Text, "Is ")
	})
}

// dueNow is what to do about what the clock says is done: only a thermometer shows that it is.
func (t *textSheet) dueNow(d schedule.DishPlan) string {
	e, ok := t.lastCore(d.ID)
	done := ok && d.TargetC > 0 && e.C >= d.TargetC-1
	switch {
	case done && t.othersAsked(d.ID):
		return ". Read the others too: see above."
	case done:
		return ". It is done: off now."
	case d.TargetC > 0:
		return "; due off about now, but only once it reads " + t.core(d.TargetC) + ". Measure it."
	}
	return "; due off about now: look."
}

// doubts are the codes of a reading that is not taken for the core.
var doubts = []string{schedule.ProbeFellOut, schedule.ProbeInAir, schedule.ProbeHot, schedule.ProbeCold, schedule.ReadingUnit, schedule.ReadingOther, schedule.ReadingOpen}

// doubted says whether a finding doubts a reading.
func (v *view) doubted(e schedule.Entry) bool {
	return slices.ContainsFunc(v.Findings, func(f schedule.Finding) bool {
		return slices.Contains(doubts, f.Code) && slices.Contains(f.Dishes, e.Dish) && strings.Contains(f.Text, v.core(e.C)+" at "+v.clock(e.At))
	})
}

// coldestOf says of a reading that it is of the coldest place, or of the slowest of several.
func coldestOf(e schedule.Entry) string {
	if e.Kind == schedule.LogColdest {
		return " (coldest)"
	}
	return ""
}

// lastCore is the newest reading of a dish that is not doubted.
func (v *view) lastCore(dish string) (last schedule.Entry, ok bool) {
	for _, e := range v.Log {
		if e.Dish == dish && (e.Kind == schedule.LogCore || e.Kind == schedule.LogColdest) && !e.At.Before(last.At) && !v.doubted(e) {
			if ok && e.At.Equal(last.At) && e.C > last.C { // two pieces: the slower one
				continue
			}
			last, ok = e, true
		}
	}
	return last, ok
}
