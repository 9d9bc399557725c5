package planner_test

import (
	"testing"

	"example.com/cookday/schedule"
)

const (
	thinSteaks = "  - {id: steaks, cut: steak, count: 4, prep: []}\n"
	steaksOn   = "2027-07-03 17:00,,lit,\n2027-07-03 17:35,steaks,on,\n"
	loinOff    = "2027-07-03 15:40,,lit,\n2027-07-03 16:20,loin,on,\n2027-07-03 17:40,loin,core,143 F\n2027-07-03 17:41,loin,pulled,\n"
	turkeyIn   = "2027-07-03 13:10,,lit,\n2027-07-03 13:50,turkey,on,\n2027-07-03 16:40,turkey,coldest,166 F\n2027-07-03 16:45,turkey,pulled,\n2027-07-03 16:50,turkey,boxed,cooler\n"
)

// A good day that is logged thinly is no alarm: a wish that was missed by what resting adds is no
// limit, a meal that was served needs no reading of whole pieces. A published minimum keeps its
// word, and what waits hot past its meal is asked after.
func TestAThinLogOfAGoodDay(t *testing.T) {
	for _, tt := range []struct {
		name, menu, log, now string
		wants                []string // a code and what it says
		lacks                []string
	}{
		{"served, nothing read", thinSteaks, steaksOn + "2027-07-03 17:58,,served,\n", "18:00", nil, []string{"unsound", schedule.OffUndone}},
		{"two degrees short of a wish", thinSteaks, steaksOn + "2027-07-03 17:50,steaks,core,128 F\n2027-07-03 17:51,steaks,pulled,\n", "17:52", nil, []string{"unsound", schedule.OffUndone}},
		{"and served", thinSteaks, steaksOn + "2027-07-03 17:50,steaks,core,128 F\n2027-07-03 17:51,steaks,pulled,\n2027-07-03 17:58,,served,\n", "18:05", nil, []string{"unsound", schedule.OffUndone}},
		{"ten degrees short of a wish", thinSteaks, steaksOn + "2027-07-03 17:50,steaks,core,120 F\n2027-07-03 17:51,steaks,pulled,\n", "17:52", []string{schedule.OffUndone, "not done"}, []string{"unsound"}},
		{"two degrees short of a minimum", "  - {id: loin, cut: pork-loin, prep: []}\n", loinOff, "17:42", []string{schedule.OffUndone, "a little short", "Resting adds a few degrees"}, []string{"unsound"}},
		{"and served", "  - {id: loin, cut: pork-loin, prep: []}\n", loinOff + "2027-07-03 18:00,,served,\n", "18:05", []string{schedule.OffUndone, "measure what is left"}, []string{"unsound"}},
		{"in the cooler past its meal", "  - {id: turkey, cut: turkey, weight: 13 lb, prep: []}\n", turkeyIn, "18:10", []string{schedule.Leftovers, "was it eaten?"}, []string{"unsound"}},
		{"the evening after", "  - {id: turkey, cut: turkey, weight: 13 lb, prep: []}\n", turkeyIn, "22:30", []string{schedule.Leftovers, "throw it away"}, []string{"unsound"}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			q := trouble{served("18:00") + "quiet: []\n", tt.menu, tt.log, "2027-07-03 " + tt.now}.revised(t)
			if len(tt.wants) > 0 {
				q.wants(t, tt.wants[0], tt.wants[1:]...)
			}
			q.lacks(t, tt.lacks...)
		})
	}
}

// What sits open first, as planned, is not asked after before it is due in its oven.
func TestWhatSitsOpenAsPlannedIsNoAlarm(t *testing.T) {
	log := "2027-07-03 05:15,,lit,\n2027-07-03 05:45,butt,on,\n2027-07-03 11:22,butt,wrapped,foil\n2027-07-03 14:40,butt,core,201 F\n2027-07-03 14:45,butt,pulled,\n"
	c := trouble{served("18:00") + "quiet: []\n", troubledButt, log, "2027-07-03 15:40"}
	c.revised(t).lacks(t, schedule.StandsOpen)
	c.now = "2027-07-03 16:30"
	c.revised(t).wants(t, schedule.StandsOpen, "If it stood")
}
