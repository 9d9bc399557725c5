package schedule_test

import (
	"encoding/json"
	"strings"
	"testing"

	"example.com/cookday/schedule"
)

// A day as short as a hand writes it is the day in full.
func TestADayWrittenShortIsTheDayInFull(t *testing.T) {
	full := canonical(t, `
format: 1
serve: {date: 2027-07-03, time: "18:00", tz: America/Chicago}
grill: {kind: box, width: 36 in, depth: 18 in}
dishes: [{cut: pork-butt, weight: 8 lb, prep: [tenderised], hold: [insulated-box], serve: "17:30"}]
`)
	for _, grill := range []string{"box 36 x 18 in", "36 in x 18 in box", "box 36x18 in", "Rectangular 36 in by 18 in", "{kind: rectangular, width: 36 in, depth: 18 in}"} {
		for _, at := range []string{`"6:00 PM"`, "6pm", "6 p.m.", `"18:00"`} {
			short := canonical(t, `
serve: {date: 2027-07-03, time: `+at+`, tz: America/Chicago}
grill: `+grill+`
dishes: [{cut: pork butt, weight: 8 lb, prep: [tenderized], hold: cooler, serve: "5:30 pm"}]
`)
			if short != full {
				t.Errorf("grill: %s, time: %s\n%s\nin full\n%s", grill, at, short, full)
			}
		}
	}
}

func TestTimesOfDay(t *testing.T) {
	for text, want := range map[string]string{
		"18:00": "18:00", "6:00 PM": "18:00", "6pm": "18:00", "06:05 am": "06:05", "12 am": "00:00", "12:30 PM": "12:30", "noon": "12:00", "9:15": "09:15",
		"25:00": "", "13 pm": "", "0am": "", "6": "", "6:5": "", "pm": "", "6:00:00": "",
	} {
		c, err := schedule.ParseTimeOfDay(text)
		if got := c.HhMm(); err == nil && got != want || err != nil && want != "" {
			t.Errorf("%q: %s, %v; want %q", text, got, err, want)
		}
	}
}

// What is not read is answered with what would be.
func TestRefusedFormsNameTheRightOne(t *testing.T) {
	const day = "serve: {date: DATE, time: \"18:00\", tz: America/Chicago}\ngrill: GRILL\ndishes: [{cut: burger, count: 4}]\n"
	for _, c := range []struct{ date, grill, want string }{
		{`"7/3/2027"`, "kettle 22 in", "write year, month and day: 2027-07-03"},
		{`"July 3, 2027"`, "kettle 22 in", "2027-07-03"},
		{"2027-07-03", "kettle", `how large is it? Write what its grate measures across, such as grill: kettle 22 in`},
		{"2027-07-03", "kettle 40", "unit"}, // inches or centimeters
		{"2027-07-03", "box 30 in", "box 36 x 18 in"},
		{"2027-07-03", "wok 22 in", "grill: kettle 22 in"},
	} {
		_, err := schedule.Read([]byte(strings.NewReplacer("DATE", c.date, "GRILL", c.grill).Replace(day)))
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s, %s: %v; want %q", c.date, c.grill, err, c.want)
		}
	}
}

func canonical(t *testing.T, text string) string {
	t.Helper()
	r, err := schedule.Read([]byte(text))
	if err != nil {
		t.Fatalf("%s\n%v", text, err)
	}
	out, err := json.Marshal(r)
	if err != nil {
		t.Fatal(err)
	}
	return string(out)
}
