package export

import (
	"slices"
	"strings"
	"testing"

	"example.com/cookday/schedule"
)

// Every step is in a part of the day, parts begin with the step that they are called by, and
// the sheet has their names over their steps.
func TestStepsAreInPartsOfTheDay(t *testing.T) {
	for _, day := range days {
		p := keptPlan(t, day)
		v, err := look(p, p.ServeAt.AddDate(0, 0, -9))
		if err != nil {
			t.Fatal(err)
		}
		parts := v.parts()
		if len(parts) != len(v.Steps) || slices.Contains(parts, "") {
			t.Fatalf("%s: %d steps in parts %q", day, len(v.Steps), parts)
		}
		in := func(kind schedule.StepKind, wants ...string) {
			for i, s := range v.Steps {
				if s.Kind == kind && !slices.Contains(wants, parts[i]) {
					t.Errorf("%s: %s at %s under %q, want one of %q", day, kind, v.clock(s.At), parts[i], wants)
				}
			}
		}
		in(schedule.StepLayFire, partFireUp)
		in(schedule.StepChangeFire, partChange)
		in(schedule.StepServe, partTable)
		in(schedule.StepSlice, partTable)
		in(schedule.StepBeforeSleep, partNight)
		in(schedule.StepWaking, partMorning)
		in(schedule.StepPutOn, partLong, partShort, partFinish, partTable) // burgers beside the knife
		sheet := textOf(t, p, Options{})
		for _, part := range parts {
			if !strings.Contains(sheet, "\n"+part+"\n") {
				t.Errorf("%s: no %q over its steps", day, part)
			}
		}
	}
}

// What is salted and thawed on other days is before the day, and a day of one fire that is
// short has no long cook.
func TestPartsOfOtherDays(t *testing.T) {
	p := keptPlan(t, "small")
	thaw := p.Steps[0]
	thaw.ID, thaw.Kind, thaw.At = "00000000-0000-5000-8000-0000000000aa", schedule.StepThaw, thaw.At.AddDate(0, 0, -3)
	p.Steps = append(p.Steps, thaw)
	v, err := look(p, p.ServeAt)
	if err != nil {
		t.Fatal(err)
	}
	var order []string
	for _, part := range v.parts() {
		if len(order) == 0 || order[len(order)-1] != part {
			order = append(order, part)
		}
	}
	if want := []string{partBefore, partFireUp, partShort, partTable}; !slices.Equal(order, want) {
		t.Errorf("parts %q, want %q", order, want)
	}
}
