package planner_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// What was read at its minimum all through is not asked for that reading again: what is open is
// whether its fire burned. It was a dead end, "measure now" a minute after it was measured.
func TestWhatWasMeasuredIsNotAskedForAgain(t *testing.T) {
	p := plantest.Plan(t, "serve: {date: 2027-11-25, time: \"16:00\", tz: America/Chicago}\ngrill: kettle 22 in\nguests: 10\noven: yes\nweather: {air: 48 F}\ndishes: [{cut: turkey, weight: 13 lb}]\n")
	log := "time,dish,kind,value\n2027-11-25 09:55,,lit,\n2027-11-25 10:35,turkey,on,\n2027-11-25 11:30,,grate,338 F\n2027-11-25 13:30,,lit-coals,40\n2027-11-25 14:30,turkey,core,102 F\n"
	for _, tt := range []struct {
		lines, says, never string
	}{
		{"", "push the probe through", "Did the fire"},
		{"2027-11-25 16:35,turkey,coldest,166 F\n", "Did the fire under Whole turkey burn from 11:30 AM to 2:30 PM? Log what the grate showed then", "push the probe"},
	} {
		at := "14:31"
		if tt.lines != "" {
			at = "16:36"
		}
		q := plantest.Revised(t, p, log+tt.lines, "2027-11-25 "+at)
		said := ""
		for _, s := range q.Steps {
			if s.Kind == schedule.StepLook && !s.Done && s.At.Equal(*q.RevisedAt) {
				said += s.Text
			}
		}
		if !strings.Contains(said, tt.says) || strings.Contains(said, tt.never) {
			t.Errorf("at %s: %q; %v", at, said, q.Findings)
		}
	}
}

// What came off undone has the end of its clock, by the air about it.
func TestWhatIsPutBackHasAClock(t *testing.T) {
	const on = "time,dish,kind,value\n2027-07-04 14:40,,lit,\n2027-07-04 15:20,meatloaf,on,\n2027-07-04 16:58,meatloaf,core,156 F\n2027-07-04 17:00,meatloaf,pulled,\n"
	for air, by := range map[string]string{"84 F": "in heat by 7:00 PM", "96 F": "in heat by 6:00 PM"} {
		p := plantest.Plan(t, "serve: {date: 2027-07-04, time: \"18:00\", tz: America/New_York}\ngrill: kettle 22 in\nweather: {air: "+air+"}\ndishes: [{cut: meatloaf, weight: 3 lb}]\n")
		q := plantest.Revised(t, p, on, "2027-07-04 17:45")
		if f, _ := plantest.Finding(q, schedule.OffUndone); !strings.Contains(f.Text, by) {
			t.Errorf("%s: %q", air, f.Text)
		}
		q = plantest.Revised(t, p, on, "2027-07-04 18:15")
		if f, _ := plantest.Finding(q, schedule.OffUndone); strings.Contains(f.Text, "throw it away") != (air == "96 F") {
			t.Errorf("%s, after an hour and a quarter: %q", air, f.Text)
		}
	}
}

// What was put into an oven that cooks is left there, however long it takes, and comes out once its
// coldest place is done. It was "put it back", then thrown away, then nothing.
func TestWhatCooksInTheOvenComesOutOfIt(t *testing.T) {
	turkey := plantest.Plan(t, "serve: {date: 2027-11-25, time: \"16:00\", tz: America/Chicago}\ngrill: kettle 22 in\nguests: 8\nweather: {air: 38 F, wind: 9 mph}\ndishes: [{cut: turkey, weight: 15 lb, prep: [injected]}]\n")
	const bird = "time,dish,kind,value\n2027-11-25 11:00,,lit,\n2027-11-25 11:25,turkey,on,\n2027-11-25 15:35,turkey,coldest,158 F\n2027-11-25 15:40,turkey,pulled,\n2027-11-25 15:45,turkey,to-oven,325 F\n"
	for _, tt := range []struct{ lines, now, code, says string }{
		{"", "15:46", schedule.OffUndone, "Leave it in the oven"},
		{"2027-11-25 16:15,turkey,core,168 F\n", "16:16", schedule.OffUndone, "168 °F at 4:15 PM, but the coldest place was at 158 °F"},
		{"2027-11-25 17:30,turkey,coldest,161 F\n", "17:45", schedule.OffUndone, "Leave it in the oven"},
		{"2027-11-25 16:15,turkey,coldest,166 F\n", "16:16", schedule.HoldRead, "out of the oven, and serve it"},
	} {
		q := plantest.Revised(t, turkey, bird+tt.lines, "2027-11-25 "+tt.now)
		f, _ := plantest.Finding(q, tt.code)
		if !strings.Contains(f.Text, tt.says) || strings.Contains(f.Text, "Put it back") || strings.Contains(f.Text, "throw it away") {
			t.Errorf("%s: %q: %v", tt.now, f.Text, q.Findings)
		}
	}
}
