package schedule_test

import (
	"math"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/rickb777/date"
	"github.com/rickb777/date/clock"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/unit"
)

// Each row breaks the party in one place and gets one sentence about it.
func TestRequestsThatAreRefused(t *testing.T) {
	brisket, chicken, burger := "cut: brisket, weight: 12 lb", "cut: chicken-spatchcock, weight: 4.5 lb", "cut: burger, weight: 6 oz"
	tests := []struct{ old, now, path, word string }{
		{"format: 1", "format: 2", "format", "2 is not known"},
		{"format: 1\n", "format: 0\n", "format", "0 is not known"},
		{"format: 1", "format: \"1\"", "format", "without quotes"},
		{"format: 1", "format: 1\nid: a/b", "id", "letters, digits"},
		{"name: Saturday on the terrace", "name: 2027", "name", "in quotes"},
		{"name: Saturday on the terrace", "name: \"two\\nlines\"", "name", "line break"},
		{"name: Saturday on the terrace", "name: \"  \"", "name", "blank"},
		{"name: Saturday on the terrace", "name: " + strings.Repeat("long ", 40), "name", "too long"},
		{"tz: America/Chicago", "tz: America/Chikago", "serve.tz", "Europe/Berlin"},
		{"tz: America/Chicago", "tz: Local", "serve.tz", "not a known time zone"},
		{"tz: America/Chicago", "tz: ../etc/passwd", "serve.tz", "not a known time zone"},
		{", tz: America/Chicago", "", "serve.tz", "missing"},
		{"date: 2027-07-03", "date: 2027-02-29", "serve.date", "date of the calendar"},
		{"date: 2027-07-03", "date: 07/03/2027", "serve.date", "write year, month and day: 2027-07-03"},
		{"date: 2027-07-03", "date: 1207-07-03", "serve.date", "1970 to 2200"},
		{"time: \"18:00\"", "time: 6", "serve.time", "time of day"},
		{"time: \"18:00\"", "time: \"24:00\"", "serve.time", "time of day"},
		{"time: \"18:00\", ", "", "serve.time", "missing"},
		{"guests: 24", "guests: -1", "guests.adults", "-1"},
		{"guests: 24", "guests: 24.5", "guests", "whole number"},
		{"guests: 24", "guests: {adults: 20, dogs: 4}", "guests.dogs", "adults, children and frail"},
		{"guests: 24", "guests: {adults: 20, childrn: 4}", "guests.childrn", "children?"},
		{"guests: 24", "guests: {adults: 20, frail: maybe}", "guests.frail", "true or false"},
		{"kind: kettle", "kind: ketle", "grill.kind", "kettle?"},
		{"kind: kettle", "kind: wok", "grill.kind", "kettle, box, upright or other"},
		{"diameter: 22 in", "diameter: 22", "grill.diameter", "needs a unit"},
		{"diameter: 22 in", "diameter: 22 cm", "grill.diameter", "10 in and 40 in"},
		{"diameter: 22 in, ", "", "grill.diameter", "missing or 0"},
		{"diameter: 22 in", "diameter: 22 in, width: 20 in", "grill.width", "kind box"},
		{"kind: kettle, diameter: 22 in", "kind: box, width: 22 in", "grill.depth", "8 in and 60 in"},
		{"kind: kettle, diameter: 22 in, fuel: briquettes", "kind: other", "grill.zones", "there are 0"},
		{"fuel: briquettes", "fuel: pellets", "grill.fuel", "briquettes or lump"},
		{"gauge_offset: 40 °F", "gauge_offset: 400 °F", "grill.gauge_offset", "200 °F"},
		{"gauge_offset: 40 °F", "gauge_offset: 40 °F, zones: []", "", ""}, // an empty list says nothing
		{"hold: 170 °F", "hold: 350 °F", "oven.hold", "130 °F and 250 °F"},
		{"hold: 170 °F", "hold: 0 C", "oven.hold", "0 C is too little"},
		{"air: 84 °F", "air: 84 C", "weather.air", "122 °F"},
		{"air: 84 °F", "air: warm", "weather.air", "F or C"},
		{"humidity: 55%", "humidity: 0.55", "weather.humidity", "%"},
		{"humidity: 55%", "humidity: 155%", "weather.humidity", "100 %"},
		{"wind: 8 mph", "wind: 80 mph", "weather.wind", "67 mph"},
		{"altitude: 600 ft", "altitude: 60000 ft", "weather.altitude", "19685 ft"},
		{"altitude: 600 ft", "altitude: 600 ft, hours: [{from: \"12:00\"}]", "weather.hours[0]", "says nothing"},
		{"altitude: 600 ft", "altitude: 600 ft, hours: [{from: \"12:00\", rain: true}, {from: \"11:00\", rain: false}]", "weather.hours[1].from", "in order"},
		{"altitude: 600 ft", "altitude: 600 ft, hours: [{from: {date: 2026-07-03, time: \"11:00\"}, rain: false}]", "weather.hours[0].from", "more than 7 days"},
		{"{from: \"23:00\", to: \"05:30\"}", "{from: \"23:00\", to: \"23:00\"}", "quiet[0]", "differ"},
		{"{from: \"23:00\", to: \"05:30\"}", "{from: \"23:00\"}", "quiet[0].to", "missing"},
		{"confidence: 0.9", "confidence: 90", "confidence", "0.5 and 0.99"},
		{"confidence: 0.9", "confidence: 0", "confidence", "0 is too little"},
		{"confidence: 0.9", "confidence: 9%", "confidence", "between 0.5 and 0.99"},
		{"confidence: 0.9", "confidence: sure", "confidence", "plain number with a unit"},
		{"units: us", "units: imperial", "units", "us or metric"},
		{"units: us", "earliest: \"19:00\"", "earliest", "{date: 2027-07-02"},
		{"dishes:", "dishes: []\nfoods:", "dishes", "1 to 40"},
		{"cut: brisket", "cut: briskett", "dishes[0].cut", "brisket"},
		{brisket, "weight: 12 lb", "dishes[0].cut", "missing"},
		{brisket, "cut: brisket, weight: 12", "dishes[0].weight", "needs a unit: lb, oz, kg or g"},
		{brisket, "cut: brisket, weight: 0 lb", "dishes[0].weight", "0 lb is too little"},
		{brisket, "cut: brisket, weight: -12 lb", "dishes[0].weight", "must lie between"},
		{brisket, "cut: brisket, weight: 500 lb", "dishes[0].weight", "5 lb to 22 lb"},
		{brisket, "cut: brisket, weight: \"5,4 kg\"", "dishes[0].weight", "decimal point"},
		{brisket, brisket + ", weights: [12 lb]", "dishes[0].weight", "weights is given too"},
		{brisket, "cut: brisket, weights: [12 lb, 500 lb]", "dishes[0].weights[1]", "500 lb"},
		{brisket, "cut: brisket, weights: [12 lb], count: 1", "dishes[0].count", "leave count out"},
		{brisket, brisket + ", thickness: 0 in", "dishes[0].thickness", "too little"},
		{brisket, brisket + ", thickness: 3.5 ft", "dishes[0].thickness", "thickness of brisket"},
		{brisket, brisket + ", target: pulled", "dishes[0].target", "firm, sliced or chopped"},
		{brisket, brisket + ", target: 203", "dishes[0].target", "needs a unit"},
		{brisket, brisket + ", target: 503 °F", "dishes[0].target", "212 °F"},
		{brisket, brisket + ", target: \"\"", "dishes[0].target", "must be one of"},
		{brisket, brisket + ", target: {final: 20 °F}", "dishes[0].target.final", "100 °F"},
		{chicken, chicken + ", target: 155 °F", "dishes[1].target", "USDA minimum of 165 °F"},
		{burger, burger + ", target: 140 °F", "dishes[2].target", "USDA minimum of 160 °F"},
		{burger, burger + ", start: 20 °F", "dishes[2].start", "write frozen"},
		{burger, burger + ", start: warm", "dishes[2].start", "38 F, or frozen"},
		{burger, burger + ", start: 150 °F", "dishes[2].start", "90 °F"},
		{brisket, brisket + ", prep: [tenderizd]", "dishes[0].prep[0]", "tenderised?"},
		{brisket, brisket + ", prep: [brined, brined]", "dishes[0].prep[1]", "twice"},
		{"wrap: {with: foil, from: 150 °F}", "wrap: film", "dishes[0].wrap", "foil"},
		{"wrap: {with: foil, from: 150 °F}", "wrap: {with: none, from: 150 °F}", "dishes[0].wrap", "leave them out"},
		{"wrap: {with: foil, from: 150 °F}", "wrap: {with: foil, from: 150 °F, after: 4h}", "dishes[0].wrap", "both"},
		{"wrap: {with: foil, from: 150 °F}", "wrap: {with: foil, from: 205 °F}", "dishes[0].wrap.from", "target of 203 °F"},
		{"wrap: {with: foil, from: 150 °F}", "wrap: {with: foil, after: 4}", "dishes[0].wrap.after", "duration"},
		{"wrap: {with: foil, from: 150 °F}", "wrap: {with: foil, after: 40h}", "dishes[0].wrap.after", "24 hr"},
		{chicken, "cut: chicken-wing, weight: 4 oz, wrap: foil", "dishes[1].wrap", "not wrapped"},
		{brisket, brisket + ", zone: middle", "dishes[0].zone", "indirect or direct"},
		{brisket, brisket + ", level: 80 °F", "dishes[0].level", "150 °F"},
		{brisket, brisket + ", rest: 2 days", "dishes[0].rest", "24 hr"},
		{"hold: [insulated-box, oven]", "hold: [freezer]", "dishes[0].hold[0]", "insulated-box"},
		{"hold: [insulated-box, oven]", "hold: [oven, none]", "dishes[0].hold", "beside"},
		{"oven: {hold: 170 °F}\n", "", "dishes[0].hold", "has none"},
		{brisket, brisket + ", prep: [stuffed]", "dishes[0].hold", "not held in a box"},
		{burger, "cut: pork-loin, weight: 3 lb, prep: [stuffed], level: 250 °F, target: 165 °F", "dishes[2].level", "too cool for stuffed meat"},
		{burger, "cut: pork-loin, weight: 3 lb, prep: [stuffed], travel: 45m, target: 165 °F", "dishes[2].travel", "does not travel hot"},
		{chicken, chicken + ", prep: [stuffed]", "dishes[1].prep", "bake the stuffing apart"},
		{burger, "cut: pork-loin, weight: 3 lb, prep: [rolled], target: 140 °F", "dishes[2].target", "145 °F or more"},
		{brisket, brisket + ", finish: sear", "dishes[0].finish", "not seared"},
		{burger, burger + ", finish: smoke", "dishes[2].finish", "sear"},
		{burger, burger + ", serve: {date: 2028-07-03, time: \"18:00\"}", "dishes[2].serve", "more than 7 days"},
		{burger, burger + ", serve: \"2027-07-02 18:30\"", "dishes[2].serve", "{date: 2027-07-03, time:"},
		{burger, burger + ", serve: \"12:00\", earliest: \"13:00\"", "dishes[2].earliest", "not before the serving at 2027-07-03 12:00"},
		{burger, burger + ", travel: soon", "dishes[2].travel", "45m"},
		{burger, burger + ", ready: tomorrow", "dishes[2].ready", "day-before"},
		{"count: 12", "count: 0", "dishes[2].count", "too little"},
		{"count: 12", "count: -3", "dishes[2].count", "1 to 500"},
		{"count: 12", "count: 501", "dishes[2].count", "1 to 500"},
		{"count: 12", "count: 12, id: " + strings.Repeat("x", 65), "dishes[2].id", "too long"},
		{"count: 12", "count: 12, id: \"a b\"", "dishes[2].id", "letters, digits"},
		{burger, "id: x, " + burger + "}\n  - {id: x, " + burger, "dishes[3].id", "dishes[2]"},
		{burger, "cut: corn, target: 160 °F", "dishes[2].target", "goes by the clock"},
		{burger, "cut: vegetables, weight: 40 lb", "dishes[2].weight", "each of 12 pieces"},
	}
	for _, tt := range tests {
		t.Run(tt.now, func(t *testing.T) {
			document := plantest.With(t, tt.old, tt.now)
			if tt.path == "" {
				if _, err := schedule.Read([]byte(document)); err != nil {
					t.Error(err)
				}
				return
			}
			document = strings.Split(document, "\nfoods:")[0]
			plantest.Refused(t, document, tt.path, tt.word)
		})
	}
}

func TestZonesThatAreRefused(t *testing.T) {
	good := `{name: left, width: 40 cm, depth: 45 cm, min: 110 C, max: 180 C}`
	other := func(zones string) string {
		return plantest.With(t, "grill: {kind: kettle, diameter: 22 in, fuel: briquettes, gauge_offset: 40 °F}", "grill: {kind: other, zones: ["+zones+"]}")
	}
	if _, err := schedule.Read([]byte(other(good))); err != nil {
		t.Error(err)
	}
	plantest.Refused(t, other(good+", "+good), "grill.zones[1].name", "zone 1")
	plantest.Refused(t, other(strings.Replace(good, "left", `""`, 1)), "grill.zones[0].name", "give the zone a name")
	plantest.Refused(t, other(strings.Replace(good, "110 C", "190 C", 1)), "grill.zones[0].min", "exchange them")
	plantest.Refused(t, other(strings.Replace(good, "180 C", "1800 C", 1)), "grill.zones[0].max", "900 °F")
	plantest.Refused(t, other(strings.Replace(good, "40 cm", "40 m", 1)), "grill.zones[0].width", "60 in")
	plantest.Refused(t, strings.Replace(other(good), "kind: other,", "kind: other, fuel: lump,", 1), "grill.fuel", "no charcoal advice")
}

// A dish of which only its cut is known wants its weight, a count, or guests.
func TestADishThatFeedsNobodyIsRefused(t *testing.T) {
	document := strings.Replace(plantest.With(t, "weight: 12 lb", ""), ", cut: brisket,", ", cut: brisket", 1)
	document = regexp.MustCompile(`(?m)^guests:.*\n`).ReplaceAllString(document, "")
	_, err := schedule.Read([]byte(document))
	if err == nil || !strings.Contains(err.Error(), "dishes[0].weight: the weight is missing; for brisket it is from 5 lb to 22 lb a piece. Without it give a count of pieces, or the guests of the day") {
		t.Errorf("got %v", err)
	}
}

// One slip can leave two things to say.
func TestRequestsThatAreRefusedTwice(t *testing.T) {
	for now, want := range map[string]string{
		"weights: []": "dishes[0].weights: is an empty list; name at least one or leave the field out",
		"weight: 12 lb, target: {core: 203 °F}": "dishes[0].target.core: there is no such field; there is only final\n" +
			"dishes[0].target.final: is missing; write final: 130 F",
		"weight: 12,5 lb": "dishes[0].weight: 12: a weight needs a unit: lb, oz, kg or g, such as 12 lb\n" +
			"dishes[0].\"5 lb\": there is no such field; a decimal is written with a point: 1.5 and not 1,5",
	} {
		if _, err := schedule.Read([]byte(plantest.With(t, "weight: 12 lb", now))); err == nil || err.Error() != want {
			t.Errorf("%s: got\n%v\nwant\n%s", now, err, want)
		}
	}
}

func TestManyDishes(t *testing.T) {
	line := "  - {cut: corn}\n"
	if r, err := schedule.Read([]byte(plantest.Terrace + strings.Repeat(line, 37))); err != nil || len(r.Dishes) != 40 {
		t.Errorf("%d dishes, %v", len(r.Dishes), err)
	}
	plantest.Refused(t, plantest.Terrace+strings.Repeat(line, 38), "dishes", "41 items; at most 40")
}

// For guests who fall ill easily a doneness that others may choose is refused.
func TestFrailGuests(t *testing.T) {
	steak := "cut: steak, weight: 1 lb, target: medium-rare"
	rare := plantest.With(t, "cut: burger, weight: 6 oz", steak)
	if _, err := schedule.Read([]byte(rare)); err != nil {
		t.Error(err)
	}
	frail := strings.Replace(rare, "guests: 24", "guests: {adults: 24, frail: true}", 1)
	plantest.Refused(t, frail, "dishes[2].target", "145 °F")
	plantest.Refused(t, strings.Replace(frail, ", target: medium-rare", "", 1), "dishes[2].target", "No target is given, so medium-rare holds")
}

// A request made in Go is held to the same rules as one that was read.
func TestValidateOfValues(t *testing.T) {
	good, err := schedule.Read([]byte(plantest.Terrace))
	if err != nil {
		t.Fatal(err)
	}
	half := clock.New(18, 0, 30, 0)
	hot := unit.Temperature(math.Inf(1))
	tests := []struct {
		path   string
		change func(*schedule.Request)
	}{
		{"confidence", func(r *schedule.Request) { r.Confidence = math.NaN() }},
		{"weather.wind", func(r *schedule.Request) { r.Weather.Wind = unit.Speed(math.NaN()) }},
		{"weather.air", func(r *schedule.Request) { r.Weather.Air = &hot }},
		{"dishes[0].weight", func(r *schedule.Request) { r.Dishes[0].Weight = unit.Mass(math.NaN()) }},
		{"serve.time", func(r *schedule.Request) { r.Serve.Time = half }},
		{"serve.time", func(r *schedule.Request) { r.Serve.Time = clock.Undefined }},
		{"serve.date", func(r *schedule.Request) { r.Serve.Date = date.Date{} }},
		{"earliest", func(r *schedule.Request) { r.Earliest = &schedule.Clock{Time: 25 * clock.Hour} }},
		{"quiet[0]", func(r *schedule.Request) { r.Quiet = []schedule.Quiet{{From: clock.Undefined, To: 0}} }},
		{"dishes[0].target", func(r *schedule.Request) { r.Dishes[0].Target = &schedule.Target{Core: &hot, Doneness: "sliced"} }},
		{"dishes[0].start", func(r *schedule.Request) { r.Dishes[0].Start = &schedule.Start{Core: 4, Frozen: true} }},
		{"dishes[0].rest", func(r *schedule.Request) { d := unit.Duration(-time.Minute); r.Dishes[0].Rest = &d }},
		{"dishes", func(r *schedule.Request) { r.Dishes = nil }},
	}
	for _, tt := range tests {
		r := good.WithDefaults() // its own dishes
		tt.change(&r)
		if got := r.Validate(); len(got) != 1 || got[0].Path != tt.path {
			t.Errorf("got %v, want one fault at %s", got, tt.path)
		}
	}
	if len(schedule.Request{}.Validate()) < 5 {
		t.Error("an empty request has few faults")
	}
}
