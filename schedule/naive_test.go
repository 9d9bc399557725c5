package schedule_test

import (
	"encoding/json"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/unit"
)

// Requests as people guess them (invented): each is read, or refused with words that lead
// to one that is read. After the arrow is what somebody writes who does what was said.
func TestNaiveRequestsGetThereInTwoTries(t *testing.T) {
	const serve, grill, dishes = "serve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\n", "grill: kettle 22 in\n", "dishes: [{cut: brisket, weight: 10 lb}]\n"
	for _, c := range []struct{ naive, says, then string }{
		{serve + grill + "dishes:\n  - brisket\n", "Without it give a count of pieces, or the guests", serve + grill + dishes},
		{serve + grill + "dishes:\n  - brisket: 10 lb\n", "write {cut: brisket, weight: 10 lb}", serve + grill + "dishes:\n  - cut: brisket\n    weight: 10 lb\n"},
		{serve + grill + "dishes:\n  - cut: brisket\n    weight: 10\n", "such as 10 lb", serve + grill + dishes},
		{serve + grill + "dishes:\n  - name: Brisket\n    weight: 10 lb\n", "write cut: brisket", serve + grill + dishes},
		{serve + "grill: 22 inch kettle\n" + dishes, "", ""},
		{serve + "grill: kettle\n" + dishes, `such as grill: kettle 22 in`, serve + grill + dishes},
		{serve + "grill: {kettle: 22 in}\n" + dishes, "write kind: kettle", serve + "grill: {kind: kettle, diameter: 22 in}\n" + dishes},
		{serve + "grill: charcoal\n" + dishes, `"kettle 22 in"`, serve + grill + dishes},
		{"serve: 6pm Saturday\n" + grill + dishes, serve[:len(serve)-1], serve + grill + dishes},
		{"serve: 2027-07-03 18:00\n" + grill + dishes, serve[:len(serve)-1], serve + grill + dishes},
		{"serve: {date: 7/3/2027, time: 6 pm, tz: America/Chicago}\n" + grill + dishes, "2027-07-03", "serve: {date: 2027-07-03, time: 6 pm, tz: America/Chicago}\n" + grill + dishes},
		{"serve: {date: 2027-07-03, time: 18:00}\n" + grill + dishes, "write tz: America/Chicago", serve + grill + dishes},
		{serve + grill + "dishes: [{cut: ribs, count: 3}]\n", "st-louis-ribs; write which", serve + grill + "dishes: [{cut: st-louis-ribs, count: 3}]\n"},
		{serve + grill + "dishes: [{cut: baby back ribs, count: 2, weight: 2.5lbs}]\n", "", ""},
		{serve + grill + "units: imperial\n" + dishes, "us or metric", serve + grill + "units: us\n" + dishes},
		{serve + grill + "menu: [{cut: brisket, weight: 10 lb}]\n", "write dishes in its place", serve + grill + dishes},
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

// What is not a field is answered by what it means, with its value and unit at once; letters
// alone make no meaning of another word. Each says all that is in want, and no more than is.
func TestWhatWasMeant(t *testing.T) {
	const serve, grill, dishes = "serve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\n", "grill: kettle 22 in\n", "dishes: [{cut: brisket, weight: 10 lb}]\n"
	for _, c := range []struct {
		naive, says string
		not         string
	}{
		{serve + grill + "dishes:\n  - ribs: 2 racks\n", `"ribs" may mean baby-backs, beef-back-ribs, beef-plate-ribs, lamb-ribs, spare-ribs or st-louis-ribs; write which: {cut: baby-backs, count: 2}`, "lies"},
		{serve + grill + "dishes:\n  - 2 racks of ribs\n", `write which: {cut: baby-backs, count: 2}`, ""},
		{serve + grill + "dishes: [{cut: 2 racks of ribs}]\n", `st-louis-ribs; write which: {cut: baby-backs, count: 2}`, "nearest"},
		{serve + grill + "dishes:\n  - brisket: 14 lb\n", `{cut: brisket, weight: 14 lb}`, "there are"},
		{serve + grill + "dishes: {brisket: 12 lb, ribs: 3}\n", `"ribs" may mean baby-backs, beef-back-ribs`, ""},
		{serve + grill + "brisket: 12 lb\n", `write dishes: [{cut: brisket, weight: 12 lb}]`, "is missing"},
		{serve + grill + "dishes: [{cut: brisket, weight: 10 lb, temp: 250}]\n", "there is no such field; write level: 250 F", "there are id"},
		{serve + grill + "dishes: [{cut: brisket, weight: 10 lb, temperature: 250F}]\n", "write level: 250F", "there are"},
		{serve + grill + "dishes: [{cut: brisket, weight: 10 lb, heat: 120}]\n", "write level: 120 C", "there are"},
		{serve + grill + "dishes: [{cut: brisket, weight: 10 lb, internal: 203}]\n", "write target: 203 F", ""},
		{serve + grill + "dishes: [{cut: brisket, lbs: 12}]\n", "write weight: 12 lb", "the weight is missing"},
		{serve + grill + "dishes: [{cut: steak, qty: 2, sear: true}]\n", "write finish: sear", "start"},
		{serve + grill + "dishes: [{cut: steak, qty: 2, sear: true}]\n", "write count: 2", "the weight is missing"},
		{serve + grill + "dishes: [{meat: brisket, weight: 10 lb}]\n", "write cut: brisket", "is missing"},
		{serve + "grill: {size: 22}\n" + dishes, "write diameter: 22 in", "there are"},
		{serve + "grill: {kind: kettle, size: 22}\n" + dishes, "write diameter: 22 in", "the diameter is missing"},
		{serve + "grill: {kind: kettle, size: 22, fuel: wood}\n" + dishes, "briquettes or lump", ""},
		{serve + "grill: {size: 22, fuel: wood}\n" + dishes, "briquettes or lump", ""},
		{"date: 2027-07-03\ntime: 18:00\n" + grill + dishes, `date: there is no such field; write serve: {date: 2027-07-03, time: "18:00", tz: America/Chicago}`, "name"},
		{"date: 2027-07-03\ntime: 18:00\n" + grill + dishes, `time: there is no such field; write serve:`, "serve: is missing"},
		{"when: Saturday\n" + grill + dishes, `write serve: {date`, "oven"},
		{serve + "event: birthday\n" + grill + dishes, "there are format, id", "did you mean"},
		{serve + "corn: 8\n" + grill + dishes, "write dishes: [{cut: corn, count: 8}]", "did you mean"},
		{serve + "foo: 8\n" + grill + dishes, "there are format, id", "did you mean"},
		{serve + "people: 8\n" + grill + dishes, "write guests: 8", "there are"},
		{serve + "cooker: kettle 22 in\n" + dishes, "write grill: kettle 22 in", "grill: is missing"},
		{serve + "bbq: kettle 22 in\n" + dishes, "write grill: kettle 22 in", "grill: is missing"},
		{serve + grill + "food: [brisket]\n", "write dishes: [", "dishes: is missing"},
		{serve + grill + "meats: [{cut: brisket, weight: 10 lb}]\n", "write dishes in its place", "dishes: is missing"},
		{serve + grill + "wood: hickory\n" + dishes, "leave it out", "did you mean"},
		{serve + "grill: gas\n" + dishes, "is for charcoal", "22 in"},
		{serve + "grill: gas grill 24 in\n" + dishes, "is for charcoal", ""},
		{serve + "grill: {kind: pellet, width: 30 in, depth: 20 in}\n" + dishes, "is for charcoal", ""},
		{serve + "grill: {kind: kettle, diameter: 22 in, fuel: propane}\n" + dishes, "is for charcoal", ""},
		{serve + grill + "sleep: 10pm-6am\n" + dishes, `write quiet: [{from: 10pm, to: 6am}]`, "23:00"},
		{serve + grill + "weather: cold and windy, 40 degrees\n" + dishes, "write weather: {air: 40 F}", "84 F"},
		{serve + grill + "how_many_coals: 60\n" + dishes, "leave it out", "there are"},
		{serve + grill + "dishes: [{cut: brisket, weight: \"12 lb, untrimmed\"}]\n", "write weight: 12 lb", "comma"},
		{serve + grill + "dishes: [{cut: pork butt, weight: 8 lb, finish: 203}]\n", "write target: 203 F", "quotes"},
		{serve + grill + "dishes: [{cut: brisket, weight: 12 lb, start: 9pm}]\n", "the plan works out when it goes on", "needs a unit"},
		{serve + grill + "dishes: [{cut: leg of lamb, weight: 5 lb, butterflied: yes}]\n", "lamb-leg-butterflied", "yes butterflied"},
		{serve + grill + "dishes: [{cut: tofu, weight: 2 lbs}]\n", "write count: 10", ""},
		{serve + grill + "dishes: [{cut: wings, weight: 5 pounds}]\n", "write count: 23", ""},
		{"dinners: [{date: 2026-12-05, food: steak}]\n" + grill + dishes, "a dish that is eaten at another time has its own", "serve: is missing"},
		{serve + grill + "dishes: [{cut: tri tip, weight: 2.5 lb, done: medium rare}]\n", "write target: medium rare", ""},
	} {
		_, err := schedule.Read([]byte(c.naive))
		if err == nil || !strings.Contains(err.Error(), c.says) || c.not != "" && strings.Contains(err.Error(), c.not) {
			t.Errorf("%s\n%v\nwant %q, not %q", c.naive, err, c.says, c.not)
		}
	}
}

// Words of a trade name, and others that say nothing of the fire, may stand in the line of
// the grill (all of them invented).
func TestTheGrillInALine(t *testing.T) {
	const rest = "\nserve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\ndishes: [{cut: brisket, weight: 10 lb}]\n"
	for line, want := range map[string]string{
		"22 inch Examplar kettle": `"kettle","diameter":"0.5588 m"}`, "Examplar kettle 22 in": `"kettle","diameter":"0.5588 m"}`, "kettle, 22 in": `"kettle","diameter":"0.5588 m"}`,
		"22\" kettle": `"kettle","diameter":"0.5588 m"}`, "22-inch charcoal kettle grill": `"kettle","diameter":"0.5588 m"}`, "kettle 22 in lump": `"kettle","diameter":"0.5588 m","fuel":"lump"}`,
		"kettle 22 in with a water pan": `"kettle","diameter":"0.5588 m","water_pan":true}`, "box 36 x 18 in": `"box","width":"0.9144 m","depth":"0.4572 m"}`,
		"36x18 inch box": `"box","width":"0.9144 m","depth":"0.4572 m"}`, "36 in by 18 in Examplar box": `"box","width":"0.9144 m","depth":"0.4572 m"}`,
		"drum 22 in": `"upright","diameter":"0.5588 m"}`, "57 cm kettle": `"kettle","diameter":"0.57 m"}`,
	} {
		r, err := schedule.Read([]byte("grill: '" + line + "'" + rest))
		if err != nil {
			t.Errorf("%s: %v", line, err)
			continue
		}
		if got, err := json.Marshal(r); err != nil || !strings.Contains(string(got), `"grill":{"kind":`+want) {
			t.Errorf("%s: %s, %v; want %s", line, got, err, want)
		}
	}
}

// What a message names as the most is taken: where a limit is rounded, the value that reads
// like it.
func TestALimitThatIsNamedIsTaken(t *testing.T) {
	for _, c := range cut.All() {
		for _, kg := range []float64{c.MinPieceKg, c.MaxPieceKg} {
			weight := unit.US.Mass(unit.Mass(kg))
			text := "serve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\ngrill: kettle 22 in\ndishes: [{cut: " + c.Name + ", weight: " + weight + "}]\n"
			if _, err := schedule.Read([]byte(text)); err != nil && strings.Contains(err.Error(), "not plausible") {
				t.Errorf("%s: %v", weight, err)
			}
		}
	}
}
