package export

import (
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
)

// doNow says what is to be done now: dangers, what else asks for hands, the steps that are
// due. Where a measurement decides, it comes before all of them. It gives the places of the
// findings that are no danger and were told.
func (t *textSheet) doNow(due, next []schedule.Step) (told []int) {
	due = slices.DeleteFunc(slices.Clone(due), func(s schedule.Step) bool { return t.askedAnyway(s, due) })
	said := len(due)
	for _, s := range due { // the meat before all that is said of its fire
		if s.Kind == schedule.StepIndoors {
			t.item("[ ] ", t.stepText(s))
		}
	}
	for _, s := range due { // and what is done, or may be, before all that is said of fire and log
		if offByReading(s) {
			t.item("[ ] ", t.stepText(s))
		}
	}
	for i, f := range t.Findings {
		if f.Code == schedule.PastTarget && len(told) < mostAsked && t.asksNow(f, due) {
			t.item(t.styled(danger, "! "), sentence(f.Text))
			told, said = append(told, i), said+1
		}
	}
	steps := func() {
		for _, s := range due {
			if s.Kind != schedule.StepIndoors && !offByReading(s) {
				t.item("[ ] ", t.stepText(s))
			}
		}
	}
	first := slices.ContainsFunc(due, func(s schedule.Step) bool { return s.Kind == schedule.StepLook && t.measuredFirst(s.Dish) })
	if first {
		steps()
	}
	for _, f := range t.alarms() {
		t.item(t.styled(danger, "! "), sentence(f.Text))
		said++
	}
	for i, f := range t.Findings {
		if f.Code == "grate-off-level" && slices.ContainsFunc(due, func(s schedule.Step) bool { return s.Kind == schedule.StepRefuel }) {
			told = append(told, i) // a step that is due says it
			continue
		}
		if len(told) < mostAsked && f.Code != schedule.PastTarget && t.asksNow(f, due) {
			t.item(t.styled(danger, "! "), sentence(f.Text))
			told, said = append(told, i), said+1
		}
	}
	if !first {
		steps()
	}
	switch {
	case said > 0:
	case len(next) > 0:
		t.item("", t.idle(next[0].At))
	default:
		t.item("", "Nothing is left to do.")
	}
	return told
}

// askedAnyway says of a measurement that is due that a finding beside it asks for the same: one
// question is asked once.
func (t *textSheet) askedAnyway(s schedule.Step, due []schedule.Step) bool {
	return s.Kind == schedule.StepLook && slices.ContainsFunc(t.Findings, func(f schedule.Finding) bool {
		unread := f.Code == schedule.OffUnread && strings.HasPrefix(s.Text, "Measure ") && strings.Contains(s.Text, " before anybody eats") && t.asksNow(f, due)
		burned := f.Severity == schedule.Danger && strings.HasPrefix(s.Text, "Did the fire ") && strings.Contains(f.Text, "log what the grate showed then")
		return slices.Contains(f.Dishes, s.Dish) && (unread || burned)
	})
}

// idle says until when nothing is to be done: until the next step, or until something may
// be done on a fast day, which only a reading tells.
func (t *textSheet) idle(until time.Time) string {
	shut := ""
	if t.anyOn() {
		shut = " Leave the lid shut."
	}
	for _, s := range t.Steps {
		if s.Kind != schedule.StepTakeOff || s.Done || !s.Window.Early.Before(until) || leftOut(s) || t.found(schedule.OnNotTold, s.Dish) || !strings.Contains(s.Text, " inside") && !strings.Contains(s.Text, "bends") {
			continue // by the eye, or a skewer: that is nothing to measure
		}
		name := t.dish(s.Dish)
		if s.Window.Early.After(t.now.Add(dueWithin)) {
			return "Nothing to do before " + t.clockBy(s.Window.Early, t.now) + "." + shut + " From then on " + name + ": measure, for it may be done early."
		}
		return "Nothing to do before " + t.clockBy(until, t.now) + " but to measure " + name + ": it may be done early." + shut
	}
	return "Nothing to do before " + t.clockBy(until, t.now) + "." + shut
}

// anyOn says whether a piece is on the fire.
func (t *textSheet) anyOn() bool {
	return slices.ContainsFunc(t.Dishes, func(d schedule.DishPlan) bool {
		_, indoors := t.indoorsSince(d.ID)
		return !indoors && slices.ContainsFunc(d.Batches, func(b schedule.Batch) bool { return t.cooks(d, b) != "" })
	})
}

// asksNow says whether a finding asks for hands before the next step does, and no step that
// is due does what it asks.
func (t *view) asksNow(f schedule.Finding, due []schedule.Step) bool {
	does := func(kind schedule.StepKind) bool {
		return slices.ContainsFunc(due, func(s schedule.Step) bool { return s.Kind == kind })
	}
	switch f.Code {
	case "grate-off-level", "grate-doubted", schedule.LowHeat:
		if f.Steer != nil && f.Steer.Do == "leave" {
			return false
		}
		return f.Severity == schedule.Warning && !does(schedule.StepRefuel) && !does(schedule.StepSetVents)
	case schedule.PastTarget:
		i := slices.IndexFunc(due, func(s schedule.Step) bool {
			return s.Kind == schedule.StepTakeOff && slices.Contains(f.Dishes, s.Dish)
		})
		return i < 0 || strings.Contains(due[i].Text, ": off ") // by the clock, not by what was read
	case "readings-stopped":
		return !t.quietAt(t.now)
	case "fire-out", "slow-through-danger-zone": // by the clock
		return strings.Contains(f.Text, " by ")
	case schedule.LineLeft, schedule.RawBeside, schedule.OffUnread, schedule.Leftovers, schedule.NoFuel, schedule.Sparks, "core-falling", schedule.Plateau, schedule.StandsOpen, schedule.CoolOven, schedule.FireRelit, schedule.LidWasOff, schedule.ReadingUnit, schedule.ReadingOther, schedule.ProbeFellOut, schedule.ProbeInAir, schedule.ProbeCold, schedule.ProbeHot, schedule.FrozenMiddle, schedule.OnNotTold:
		return true
	case schedule.HoldRead:
		return strings.Contains(f.Text, "Eat it now")
	case schedule.CodeHoldShort: // by what was read of it, not by what a fast day may do
		return strings.HasPrefix(f.Text, "Put ") || strings.HasPrefix(f.Text, "Measure ")
	}
	return false
}

// dueAndNext are the steps to be done now, and the next ones after them.
func (t *textSheet) dueAndNext() (due, next []schedule.Step) {
	for _, s := range t.Steps {
		switch {
		case !toDo(s):
		case s.At.Before(t.now.Add(dueWithin)):
			due = append(due, s)
		case len(next) < nextSteps:
			next = append(next, s)
		}
	}
	due = slices.DeleteFunc(due, func(s schedule.Step) bool { // to look whether it is done, and to take it off when it is, is one thing
		return s.Kind == schedule.StepLook && strings.Contains(s.Text, ": start checking") && slices.ContainsFunc(t.Steps, func(o schedule.Step) bool {
			return o.Kind == schedule.StepTakeOff && o.Dish == s.Dish && o.Batch == s.Batch && toDo(o) && o.At.Before(t.now.Add(dueWithin))
		})
	})
	return due, next
}

// offByReading says of a step that a piece comes off now, for it was read at its target or may be
// done by the feel.
func offByReading(s schedule.Step) bool {
	if strings.HasPrefix(s.Text, "Only if ") || strings.HasPrefix(s.Text, "Once ") {
		return false
	}
	return s.Kind == schedule.StepTakeOff && strings.Contains(s.Text, ": take it off now.") || s.Kind == schedule.StepLook && strings.Contains(s.Text, "it is done: take it off")
}

// toDo says of a step that somebody has to do it still.
func toDo(s schedule.Step) bool { return s.Attended && !s.Done && !leftOut(s) }

// leftOut says of a step that stays in the plan that it is not to be done.
func leftOut(s schedule.Step) bool { return strings.HasPrefix(s.Text, "Leave this out") }
