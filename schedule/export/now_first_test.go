package export_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule/export"
	"example.com/cookday/schedule/internal/plantest"
)

// What was read at its target comes off before anything is said of the fire and the log: of two
// tri-tips the one at 131 of a wished 130 °F stood under the worries, below a chimney of coals.
func TestWhatIsDoneComesOffFirst(t *testing.T) {
	p := plantest.Plan(t, "serve: {date: 2027-08-14, time: \"19:00\", tz: America/New_York}\ngrill: {kind: kettle, diameter: 22 in, fuel: lump}\nguests: 4\nweather: {air: 80 F}\ndishes: [{cut: tri-tip, weight: 2.2 lb, count: 2, target: 130 F, finish: sear}, {cut: corn, count: 6}]\n")
	const on = "time,dish,kind,value\n2027-08-14 17:20,,lit,\n2027-08-14 17:40,,lit-coals,80\n2027-08-14 17:55,tri-tip,on,\n2027-08-14 18:15,,grate,265 F\n2027-08-14 18:15,tri-tip,core,88 F\n2027-08-14 18:35,,grate,225 F\n2027-08-14 18:35,tri-tip,core,109 F\n2027-08-14 18:43,tri-tip,core,117 F\n"
	for now, c := range map[string][2]string{
		"2027-08-14 18:44": {"", "! Take Tri-tips off now: it is at 117 °F"},
		"2027-08-14 19:06": {"2027-08-14 18:45,tri-tip,stopped,\n2027-08-14 18:58,,lit-coals,40\n2027-08-14 19:02,tri-tip,restarted,\n2027-08-14 19:06,tri-tip,core,131 F\n", "! Tri-tips: take off the one that reads 131 °F"},
	} {
		var b strings.Builder
		if err := export.Now(&b, plantest.Revised(t, p, on+c[0], now), export.Options{Width: 200}); err != nil {
			t.Fatal(err)
		}
		_, do, _ := strings.Cut(b.String(), "Do now\n------\n")
		if !strings.HasPrefix(do, c[1]) {
			t.Errorf("%s: Do now begins with %q", now, do[:min(len(do), 120)])
		}
	}
}
