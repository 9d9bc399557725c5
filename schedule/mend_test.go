package schedule_test

import (
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
)

// What is missing or of another kind is answered with the line that would be right.
func TestMissingFieldsShowTheirLine(t *testing.T) {
	for text, want := range map[string]string{
		"grill: kettle 22 in\ndishes: [{cut: burger, count: 4}]":                                                           `serve: is missing; write serve: {date: 2027-07-03, time: "18:00", tz: America/Chicago}`,
		"serve: Saturday 18:00\ngrill: kettle 22 in\ndishes: [{cut: burger, count: 4}]":                                    `it must be a group of fields: serve: {date: 2027-07-03, time: "18:00", tz: America/Chicago}`,
		"serve: {date: 2027-07-03, time: 6pm}\ngrill: kettle 22 in\ndishes: [{cut: burger, count: 4}]":                     `serve.tz: is missing; write tz: America/Chicago, or the large city whose clock is yours`,
		"serve: {date: 2027-07-03, time: 6pm, tz: America/Chicago}\ngrill: {}\ndishes: [{weight: 2 lb}]":                   "grill.kind: is missing; write kind: kettle\ndishes[0].cut: is missing; write what it is, as in cut: chicken-thigh",
		"serve: {date: 2027-07-03, time: 6pm, tz: America/Chicago}\ngrill: kettle 22 in\ndishes: brisket":                  `dishes[0].weight: the weight is missing; for brisket it is from 5 lb to 22 lb a piece. Without it give a count of pieces, or the guests of the day`,
		"serve: {date: 2027-07-03, time: 6pm, tz: America/Chicago}\ngrill: kettle 22 in\ndishes: [brisket]":                `dishes[0].weight: the weight is missing; for brisket it is from 5 lb to 22 lb a piece. Without it give a count of pieces, or the guests of the day`,
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

// A mend is read back: what plans is not broken by it, nor made to mean another day.
func TestAMendIsReadBack(t *testing.T) {
	zone, err := time.LoadLocation("America/Chicago")
	if err != nil {
		t.Fatal(err)
	}
	now := time.Date(2026, 12, 1, 12, 0, 0, 0, zone)
	const rest = "serve: {date: 2026-12-05, time: \"18:00\", tz: America/Chicago}\ngrill: kettle 22 in\ndishes:\n  - burgers: 8\n"
	for _, said := range []string{
		"guests: 8 (2 vegan)\n" + rest, "guests: 10 (2 vegetarians)\n" + rest,
		"guests: 8\nserve: saturday six thirty\ngrill: kettle 22 in\ndishes:\n  - burgers: 8\n",
		"guests: 8\nSupper: 6 o'clock\ndate: saturday\ngrill: kettle 22 in\ndishes:\n  - burgers: 8\n",
	} {
		before, err := schedule.Understand([]byte(said), now)
		if err != nil {
			t.Errorf("%s: %v", said, err)
			continue
		}
		mended, _ := schedule.MendOn([]byte(said), now)
		after, err := schedule.Understand(mended, now)
		if err != nil || after.Serve != before.Serve || *after.Guests != *before.Guests || len(after.Dishes) != len(before.Dishes) {
			t.Errorf("%s is mended to %s: %v", said, mended, err)
		}
	}
}

// What a dish is, is never answered with another food.
func TestNoFoodIsPutInThePlaceOfOneThatIsNotKnown(t *testing.T) {
	for dish, want := range map[string]string{
		"{name: venison backstrap, count: 2}": `"venison backstrap" is not in the catalogue`,
		"{halloumi skewers: 10, count: 10}":   `"halloumi skewers" is not in the catalogue`,
		"{name: Ribeye, count: 2}":            "write cut: steak",
		"{weight: 2 lb}":                      "write what it is, as in cut: chicken-thigh",
	} {
		_, err := schedule.Read([]byte("serve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\ngrill: kettle 22 in\ndishes: [" + dish + "]\n"))
		if err == nil || !strings.Contains(err.Error(), want) || strings.Contains(err.Error(), "cut: brisket") {
			t.Errorf("%s: %v; want %s", dish, err, want)
		}
	}
}

// A row of cells under the dishes is the text that says the same.
func TestARowOfCellsIsADish(t *testing.T) {
	const head = "serve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\ngrill: kettle 22 in\ndishes:\n"
	r, err := schedule.Read([]byte(head + "  - [burgers, 8, 6 oz, \"\", frozen]\n  - [pork loin roast, 1, 4 lb]\n"))
	if err != nil || len(r.Dishes) != 2 || r.Dishes[0].Count != 8 || r.Dishes[0].Start == nil || r.Dishes[1].Weight.Pounds() < 3.9 {
		t.Errorf("%+v, %v", r.Dishes, err)
	}
}

// The quotes of a time are no inches: what is metric stays so.
func TestAQuotedTimeIsNoInch(t *testing.T) {
	r, err := schedule.Understand([]byte("serve: {date: 2027-07-03, time: \"18:00\", tz: Europe/London}\ngrill: kettle 57 cm\ndishes: [{cut: goose, weight: 4.5 kg}]\n"), time.Date(2026, 12, 1, 12, 0, 0, 0, time.UTC))
	if err != nil || r.Units != "metric" {
		t.Errorf("%v, %v", r.Units, err)
	}
}

// Grates one above another are levels of an upright cooker; what a drum holds is no size.
func TestTwoGratesOfADrumAreLevels(t *testing.T) {
	const head, tail = "serve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\ngrill: ", "\ndishes: [{cut: burger, count: 4}]\n"
	for _, said := range []string{"upright 22 in, 2 grates", "upright 22 in with two grates", "bullet 18 in, two racks"} {
		if r, err := schedule.Read([]byte(head + said + tail)); err != nil || r.Grill.Levels != 2 {
			t.Errorf("%s: %+v, %v", said, r.Grill, err)
		}
	}
	if _, err := schedule.Read([]byte(head + "55 gallon drum, 2 grates" + tail)); err == nil || strings.Contains(err.Error(), "leave it out") || !strings.Contains(err.Error(), "how large is it?") {
		t.Errorf("a drum: %v", err)
	}
}
