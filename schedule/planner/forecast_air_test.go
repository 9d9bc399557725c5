package planner_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// A butt at 225 °F to 203 °F without a wrap is an everyday cook: 1.5 to 2 hr a pound
// (common practice, no source), and 15.7 hr for 9 lb in a cook's log (home_cook_report
// C074). Its core creeps, so the window is wide and the forecast says so; a cook a
// little hotter is no slower.
func TestTheUsualLowCookArrives(t *testing.T) {
	late := 1e9
	for _, grate := range []string{"220 °F", "225 °F", "228 °F", "235 °F", "245 °F"} {
		o := plantest.Ask(t, "cut", "pork-butt", "weight", "9 lb", "grate", grate, "target", "203 °F", "wrap", "none")
		m := plantest.Milestone(o, schedule.MilestoneTakeOff)
		t.Logf("%s: %.1f %.1f %.1f h", grate, m.EarlyMinutes/60, m.ExpectedMinutes/60, m.LateMinutes/60)
		if m.ExpectedMinutes > late+1 {
			t.Errorf("%s: %.0f min, more than a cooler grate takes", grate, m.ExpectedMinutes)
		}
		late = m.ExpectedMinutes
		creeps := slices.ContainsFunc(o.Findings, func(f schedule.Finding) bool { return f.Code == "grate-creeps" })
		if grate == "225 °F" && (!creeps || m.EarlyMinutes > 15.7*60 || m.LateMinutes < 15.7*60 || m.ExpectedMinutes < 1.5*9*60 || m.ExpectedMinutes > 2.2*9*60) {
			t.Errorf("%s: %+v, creeps %t", grate, m, creeps)
		}
	}
}

// Where the air is too cool for the target, the answer says how far it brings the
// core and what it takes; doing what it says works.
func TestTooCoolAGrateSaysWhatItTakes(t *testing.T) {
	o := plantest.Ask(t, "cut", "pork-butt", "weight", "8 lb", "grate", "180 °F", "target", "203 °F", "wrap", "none")
	if o.Reaches || !strings.Contains(o.Reason, "It takes about 215 °F") || len(o.Findings) > 0 {
		t.Errorf("reaches %t: %s %v", o.Reaches, o.Reason, o.Findings)
	}
	if o = plantest.Ask(t, "cut", "pork-butt", "weight", "8 lb", "grate", "215 °F", "target", "203 °F", "wrap", "none"); !o.Reaches {
		t.Error(o.Reason)
	}
}

// A wrap by the clock comes at its time, however little the bare grate could bring
// the core to in the end: after 4 hr, not with the raw piece.
func TestAWrapByTheClockWaitsForIt(t *testing.T) {
	for _, grate := range []string{"200 °F", "215 °F", "225 °F", "235 °F"} {
		o := plantest.Ask(t, "cut", "pork-butt", "weight", "8 lb", "grate", grate, "target", "203 °F", "wrap", "foil@4h")
		if m := plantest.Milestone(o, schedule.MilestoneWrap); m.ExpectedMinutes < 239 || m.CoreC < 45 {
			t.Errorf("%s: wrapped after %.0f min at %.0f degC", grate, m.ExpectedMinutes, m.CoreC)
		}
	}
}

// A stall under the wrap comes after the wrap.
func TestAStallUnderTheWrapComesAfterIt(t *testing.T) {
	o := plantest.Ask(t, "cut", "pork-butt", "weight", "8 lb", "grate", "215 °F", "target", "203 °F", "wrap", "foil@4h")
	begins, ends, off := plantest.Milestone(o, schedule.MilestoneStallBegins), plantest.Milestone(o, schedule.MilestoneStallEnds), plantest.Milestone(o, schedule.MilestoneTakeOff)
	if !(begins.ExpectedMinutes > 241 && ends.ExpectedMinutes > begins.ExpectedMinutes && off.ExpectedMinutes > ends.ExpectedMinutes) {
		t.Errorf("stall from %.0f to %.0f min, off at %.0f; wrapped at 240", begins.ExpectedMinutes, ends.ExpectedMinutes, off.ExpectedMinutes)
	}
}
