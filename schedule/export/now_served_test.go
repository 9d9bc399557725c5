package export_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule/export"
	"example.com/cookday/schedule/internal/plantest"
)

// What too few were read of has no odds before it was measured, and a meal that was served has none at
// all: both stood above the order to measure, or to stop eating.
func TestNoOddsBesideAnOrderToMeasure(t *testing.T) {
	p := plantest.Plan(t, "serve: {date: 2027-08-21, time: \"18:00\", tz: America/Chicago}\ngrill: kettle 22 in\nguests: 6\ndishes: [{id: x, cut: chicken-thigh, count: 8}]\n")
	head := func(log, now string) string {
		q := plantest.Revised(t, p, "time,dish,kind,value\n2027-08-21 16:30,,lit,\n2027-08-21 17:00,x,on,\n"+log, "2027-08-21 "+now)
		var b strings.Builder
		if err := export.Now(&b, q, export.Options{Width: 300}); err != nil {
			t.Fatal(err)
		}
		head, _, _ := strings.Cut(b.String(), "Do now")
		return head
	}
	one := "2027-08-21 17:45,x,core,180 F\n2027-08-21 17:50,x,pulled,\n"
	if got := head(one, "17:51"); !strings.Contains(strings.ToLower(got), "measure") || strings.Contains(got, "%") {
		t.Error(got)
	}
	if got := head("2027-08-21 17:20,x,core,120 F\n2027-08-21 17:50,x,pulled,\n2027-08-21 18:00,,served,\n", "18:02"); strings.Contains(got, "Odds") {
		t.Error(got)
	}
}
