package export

import (
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
)

// A revision stamps its events anew, and never with an earlier instant than the plan it
// revises.
func TestStampFollowsTheRevisions(t *testing.T) {
	at := time.Date(2027, 7, 3, 12, 0, 0, 0, time.UTC)
	p := schedule.Plan{Format: 1, ID: "a", Feasible: true, TZ: "UTC", ServeAt: at.Add(6 * time.Hour),
		Steps: []schedule.Step{{ID: "s", At: at, Kind: schedule.StepLight, Attended: true, Window: schedule.Window{Early: at, Expected: at, Late: at}}}}
	stamp := func(revised *time.Time) string {
		p.RevisedAt = revised
		var b strings.Builder
		if err := Calendar(&b, p); err != nil {
			t.Fatal(err)
		}
		_, rest, _ := strings.Cut(b.String(), "DTSTAMP:")
		text, _, _ := strings.Cut(rest, "\r\n")
		return text
	}
	before, after, later := at.Add(-48*time.Hour), at.Add(time.Hour), at.Add(2*time.Hour)
	first, early, mid, late := stamp(nil), stamp(&before), stamp(&after), stamp(&later)
	if first != "20270703T120000Z" || early != first || mid != "20270703T130000Z" || late != "20270703T140000Z" {
		t.Errorf("%s, %s, %s, %s", first, early, mid, late)
	}
}
