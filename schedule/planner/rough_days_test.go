package planner_test

import (
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// Logs of other days than the party that drew a fault once, each of a kind and as short as it gets.
func TestLogsOfOtherDaysThatDrewFaults(t *testing.T) {
	night := plantest.Day(t, "format: 1\nserve: {date: 2027-11-13, time: \"13:00\", tz: America/New_York}\ngrill: kettle 22 in\novernight: true\noven: {hold: 170 F}\nweather: {air: 52 F, night: 38 F, wind: 5 mph}\ndishes:\n  - {cut: pork-butt, weight: 8 lb, prep: [injected]}\n")
	sear := plantest.Day(t, "format: 1\nserve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\ngrill: kettle 22 in\ndishes:\n  - {cut: tri-tip, weight: 2.5 lb, finish: sear}\n  - {cut: sausage, weight: 5 oz, count: 6}\n")
	turkey := plantest.Day(t, "format: 1\nserve: {date: 2027-11-25, time: \"16:00\", tz: America/New_York}\ngrill: kettle 22 in\noven: yes\nweather: {air: 40 F}\ndishes:\n  - {cut: turkey, weight: 12 lb}\n")
	party := plantest.Party(t, "../..")
	for _, c := range []struct {
		name     string
		day      schedule.Plan
		log, now string
	}{
		{"no coals, and dinner two hours later", night, "2027-11-12 20:37,,serving-moved,2027-11-13 15:00\n2027-11-12 20:37,,no-fuel,\n", "2027-11-12 21:17"},
		{"boxed in the night, and the hour of the end is past", night, "2027-11-13 02:04,pork-butt,boxed,\n", "2027-11-13 12:40"},
		{"off in the minute in which it went on", night, "2027-11-12 21:23,pork-butt,on,\n2027-11-12 21:23,pork-butt,pulled,\n", "2027-11-12 21:23"},
		{"off in the minute in which it was to go on", turkey, "2027-11-25 11:57,turkey,pulled,\n", "2027-11-25 12:02"},
		{"seared, and nothing of it logged five hours later", sear, "2027-07-03 22:54,sausage,coldest,62.1 C\n", "2027-07-03 22:54"},
		{"served, and then moved to before that", sear, "2027-07-03 16:21,sausage,boxed,\n2027-07-03 17:53,tri-tip,boxed,\n2027-07-03 18:06,,served,\n2027-07-03 19:46,,serving-moved,2027-07-03 17:00\n", "2027-07-04 09:16"},
		{"lit half an hour early, and out", party, "2027-07-03 05:44,,lit,\n2027-07-03 05:50,,fire-out,\n", "2027-07-03 11:50"},
		{"lit half an hour early, for a grate that cooks nothing", party, "2027-07-03 05:38,brisket,chilled,\n2027-07-03 05:41,,lit,\n2027-07-03 06:04,,level,33 F\n", "2027-07-03 08:02"},
		{"up before anything is on", party, "2027-07-03 05:27,,lit,\n2027-07-03 05:47,burgers,restarted,\n", "2027-07-03 06:50"},
		{"in an oven that is off, its fire out", party, "2027-07-03 07:28,brisket,coldest,33 F\n2027-07-03 07:40,,fire-out,\n2027-07-03 09:40,brisket,to-oven,30 F\n", "2027-07-04 04:28"},
		{"fed in the night before, and none in this", party, "2027-07-03 05:25,,grate,30 F\n2027-07-03 05:26,,lit-coals,1000\n", "2027-07-04 01:35"},
	} {
		now, err := time.ParseInLocation("2006-01-02 15:04", c.now, c.day.ServeAt.Location())
		if err != nil {
			t.Fatal(err)
		}
		log, err := schedule.ReadLog([]byte("time,dish,kind,value\n"+c.log), c.day)
		if err != nil {
			t.Fatal(err)
		}
		for _, fault := range roughFaults(t.Context(), c.day, log, now, false) {
			t.Errorf("%s: %s", c.name, fault)
		}
	}
}
