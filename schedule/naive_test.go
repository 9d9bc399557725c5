package schedule_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule"
)

// Requests as people guess them (invented): each is read, or refused with words that lead
// to one that is read. After the arrow is what somebody writes who does what was said.
func TestNaiveRequestsGetThereInTwoTries(t *testing.T) {
	const serve, grill, dishes = "serve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\n", "grill: kettle 22 in\n", "dishes: [{cut: brisket, weight: 10 lb}]\n"
	for _, c := range []struct{ naive, says, then string }{
		{serve + grill + "dishes:\n  - brisket\n", "{cut: brisket, weight: 10 lb}", serve + grill + dishes},
		{serve + grill + "dishes:\n  - brisket: 10 lb\n", "write cut: brisket", serve + grill + "dishes:\n  - cut: brisket\n    weight: 10 lb\n"},
		{serve + grill + "dishes:\n  - cut: brisket\n    weight: 10\n", "such as 10 lb", serve + grill + dishes},
		{serve + grill + "dishes:\n  - name: Brisket\n    weight: 10 lb\n", "write cut: brisket", serve + grill + dishes},
		{serve + "grill: 22 inch kettle\n" + dishes, "", ""},
		{serve + "grill: kettle\n" + dishes, `"kettle 22 in"`, serve + grill + dishes},
		{serve + "grill: {kettle: 22 in}\n" + dishes, "write kind: kettle", serve + "grill: {kind: kettle, diameter: 22 in}\n" + dishes},
		{serve + "grill: charcoal\n" + dishes, `"kettle 22 in"`, serve + grill + dishes},
		{"serve: 6pm Saturday\n" + grill + dishes, serve[:len(serve)-1], serve + grill + dishes},
		{"serve: 2027-07-03 18:00\n" + grill + dishes, serve[:len(serve)-1], serve + grill + dishes},
		{"serve: {date: 7/3/2027, time: 6 pm, tz: America/Chicago}\n" + grill + dishes, "2027-07-03", "serve: {date: 2027-07-03, time: 6 pm, tz: America/Chicago}\n" + grill + dishes},
		{"serve: {date: 2027-07-03, time: 6pm, tz: Chicago}\n" + grill + dishes, "America/Chicago", serve + grill + dishes},
		{"serve: {date: 2027-07-03, time: 18:00}\n" + grill + dishes, "write tz: America/Chicago", serve + grill + dishes},
		{serve + grill + "guests: eight\n" + dishes, "a whole number such as 24", serve + grill + "guests: 8\n" + dishes},
		{serve + grill + "dishes: [{cut: ribs, count: 3}]\n", "st-louis-ribs; write which", serve + grill + "dishes: [{cut: st-louis-ribs, count: 3}]\n"},
		{serve + grill + "dishes: [{cut: baby back ribs, count: 2, weight: 2.5lbs}]\n", "", ""},
		{serve + grill + "quiet: 11pm-5am\n" + dishes, `quiet: [{from: "23:00", to: "05:00"}]`, serve + grill + "quiet: [{from: 11pm, to: 5am}]\n" + dishes},
		{serve + grill + "oven: yes\n" + dishes, "oven: {hold: 170 F}", serve + grill + "oven: {hold: 170 F}\n" + dishes},
		{serve + grill + "units: imperial\n" + dishes, "us or metric", serve + grill + "units: us\n" + dishes},
		{serve + grill + "menu: [{cut: brisket, weight: 10 lb}]\n", "write " + dishes[:len(dishes)-1], serve + grill + dishes},
		{serve + grill + "dishes: [{cut: ribeye, count: 2, target: medium rare}]\n", "", ""},
		{serve + grill + "dishes: [{cut: brisket, wieght: 10 lb, count: \"1\"}]\n", "did you mean weight?", serve + grill + dishes},
	} {
		_, err := schedule.Read([]byte(c.naive))
		if c.says == "" {
			if err != nil {
				t.Errorf("%s\n%v", c.naive, err)
			}
			continue
		}
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s\n%v\nwant %q", c.naive, err, c.says)
		}
		if _, err := schedule.Read([]byte(c.then)); err != nil {
			t.Errorf("%s\n%v", c.then, err)
		}
	}
}
