package export_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule/export"
	"example.com/cookday/schedule/internal/plantest"
)

// A grate that runs cool is told with what the day is once it is back at its heat, beside the hour
// that counts with the grate as it is.
func TestACoolGrateIsToldWithTheDayOnceItIsMended(t *testing.T) {
	p := plantest.Plan(t, "serve: {date: 2027-07-04, time: \"15:00\", tz: America/Chicago}\ngrill: kettle 22 in\nguests: 12\nquiet: [{from: \"23:00\", to: \"06:00\"}]\noven: true\ndishes: [{id: x, cut: pork-butt, weight: 9 lb, level: 250 F}]\n")
	of := func(grate string) string {
		q := plantest.Revised(t, p, "time,dish,kind,value\n2027-07-03 21:30,,lit,\n2027-07-03 22:10,x,on,\n2027-07-04 02:00,,grate,"+grate+"\n2027-07-04 04:00,,grate,"+grate+"\n2027-07-04 04:00,x,core,140 F\n", "2027-07-04 04:01")
		var b strings.Builder
		if err := export.Now(&b, q, export.Options{Width: 300}); err != nil {
			t.Fatal(err)
		}
		head, _, _ := strings.Cut(b.String(), "Do now")
		return head
	}
	if head := of("212 F"); !strings.Contains(head, "With the grate back at its heat: eat at 3:00 PM, ") || !strings.Contains(head, "% sure.") {
		t.Error(head)
	}
	if head := of("250 F"); strings.Contains(head, "back at its heat") {
		t.Error(head)
	}
}
