package schedule_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule"
)

// What is missing or of another kind is answered with the line that would be right.
func TestMissingFieldsShowTheirLine(t *testing.T) {
	for text, want := range map[string]string{
		"grill: kettle 22 in\ndishes: [{cut: burger, count: 4}]":                                                           `serve: is missing; write serve: {date: 2027-07-03, time: "18:00", tz: America/Chicago}`,
		"serve: Saturday 18:00\ngrill: kettle 22 in\ndishes: [{cut: burger, count: 4}]":                                    `it must be a group of fields: serve: {date: 2027-07-03, time: "18:00", tz: America/Chicago}`,
		"serve: {date: 2027-07-03, time: 6pm}\ngrill: kettle 22 in\ndishes: [{cut: burger, count: 4}]":                     `serve.tz: is missing; write tz: America/Chicago, or the large city whose clock is yours`,
		"serve: {date: 2027-07-03, time: 6pm, tz: America/Chicago}\ngrill: {}\ndishes: [{weight: 2 lb}]":                   "grill.kind: is missing; write kind: kettle\ndishes[0].cut: is missing; write cut: brisket",
		"serve: {date: 2027-07-03, time: 6pm, tz: America/Chicago}\ngrill: kettle 22 in\ndishes: brisket":                  `dishes[0].weight: the weight is missing; for whole brisket it is from 5 lb to 22 lb a piece. Without it give a count of pieces, or the guests of the day`,
		"serve: {date: 2027-07-03, time: 6pm, tz: America/Chicago}\ngrill: kettle 22 in\ndishes: [brisket]":                `dishes[0].weight: the weight is missing; for whole brisket it is from 5 lb to 22 lb a piece. Without it give a count of pieces, or the guests of the day`,
		"serve: {date: 2027-07-03, time: 6pm, tz: America/Chicago}\ngrill: kettle 22 in\ndishs: [{cut: burger, count: 4}]": "dishs: there is no such field; did you mean dishes?",
	} {
		_, err := schedule.Read([]byte(text))
		if err == nil || err.Error() != want && !strings.HasSuffix(err.Error(), want) {
			t.Errorf("%s\n got %v\nwant %s", text, err, want)
		}
	}
}

// One stretch of quiet hours and a chance in percent are read as they are written.
func TestLooserForms(t *testing.T) {
	r, err := schedule.Read([]byte(`{"serve": {"date": "2027-07-03", "time": "6pm", "tz": "America/Chicago"}, "grill": "kettle 22 in", "confidence": "85%",
		"quiet": {"from": "11pm", "to": "5am"}, "dishes": [{"cut": "burger", "count": 4}]}`))
	if err != nil || r.Confidence != 0.85 || len(r.Quiet) != 1 || r.Quiet[0].From.HhMm() != "23:00" {
		t.Errorf("%v, %v, %v", r.Confidence, r.Quiet, err)
	}
}

func TestMend(t *testing.T) {
	const right = "serve: {date: 2027-07-03, time: 6pm, tz: America/Chicago}\ngrill: {kind: kettle, diameter: 22 in}\ndishes:\n  - {cut: brisket, weight: 10 lb, hold: oven}\noven: {}\n"
	for _, slip := range []struct{ old, now string }{
		{"dishes", "dishs"}, {"kettle", "ketle"}, {"2027-07-03", "07/03/2027"}, {"diameter", "diametr"}, {"brisket", "briskett"}, {"hold: oven", "hold: oveen"},
	} {
		spoiled := strings.Replace(right, slip.old, slip.now, 1)
		if mended, ok := schedule.Mend([]byte(spoiled)); !ok || string(mended) != right {
			t.Errorf("%s: %v\n%s", slip.now, ok, mended)
		}
	}
	for _, text := range []string{right, "grill: kettle\n", strings.Replace(right, "22 in", "40", 1), strings.Replace(right, "brisket", "elephant", 1), "{", ""} {
		if mended, ok := schedule.Mend([]byte(text)); ok {
			t.Errorf("%q is mended:\n%s", text, mended)
		}
	}
}

// What stands in a list and is no item of it is answered with an item, from the example of
// that list alone: the example of a list within a group is told whole.
func TestItemsComeFromTheExampleOfTheirOwnList(t *testing.T) {
	const head = "serve: {date: 2027-07-03, time: 6pm, tz: America/Chicago}\ngrill: kettle 22 in\ndishes: [{cut: burger, count: 4}]\n"
	for text, want := range map[string]string{
		"quiet: [5]\n":            `it must be a group of fields: {from: "23:00", to: "05:00"}`,
		"weather: {hours: [5]}\n": `it must be a group of fields: hours: [{from: "14:00", air: 90 F, wind: 12 mph}]`,
		"weather: {hours: 12}\n":  `it must be a list: hours: [{from: "14:00", air: 90 F, wind: 12 mph}]`,
	} {
		if _, err := schedule.Read([]byte(head + text)); err == nil || !strings.HasSuffix(err.Error(), want) {
			t.Errorf("%s\n got %v\nwant %s", text, err, want)
		}
	}
}
