package schedule_test

import (
	"encoding/json"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
)

const (
	wordsServe = "serve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\n"
	wordsGrill = "grill: kettle 22 in\n"
)

// What is said in a cook's words without doubt is read as the same in the form's: nothing of
// it is lost, and no number comes out that was not said.
func TestWordsAreReadAsTheForm(t *testing.T) {
	for words, form := range map[string]string{
		"dishes: [brisket 12 lb]":                                             "dishes: [{cut: brisket, weight: 12 lb}]",
		"dishes: [{cut: brisket 12 lb}]":                                      "dishes: [{cut: brisket, weight: 12 lb}]",
		"dishes: {brisket: 12 lb, burgers: 8}":                                "dishes: [{cut: brisket, weight: 12 lb}, {cut: burger, count: 8}]",
		"dishes: 2 briskets and 2 chickens":                                   "dishes: [{cut: brisket, count: 2}, {cut: chicken, count: 2}]",
		"dishes: {cut: brisket, weight: 10 lb}":                               "dishes: [{cut: brisket, weight: 10 lb}]",
		"dishes: ['2 ribeyes, medium']":                                       "dishes: [{cut: ribeyes, count: 2, target: medium}]",
		"dishes: ['2 ribeyes medium rare']":                                   "dishes: [{cut: ribeyes, count: 2, target: medium-rare}]",
		"dishes: ['pork chops, 4, 1 inch thick']":                             "dishes: [{cut: pork-chop, count: 4, thickness: 1 in}]",
		"dishes: ['tri-tip, 2.5 lb, medium-rare']":                            "dishes: [{cut: tri-tip, weight: 2.5 lb, target: medium-rare}]",
		"dishes: ['chicken drumsticks, 16']":                                  "dishes: [{cut: chicken drumsticks, count: 16}]",
		"dishes: ['spare ribs, 4 racks']":                                     "dishes: [{cut: spare-ribs, count: 4}]",
		"dishes: ['hamburgers, a dozen, 1/3 lb']":                             "dishes: [{cut: hamburgers, count: 12, weight: 1/3 lb}]",
		"dishes: ['portobello mushrooms, 4']":                                 "dishes: [{cut: portobello mushrooms, count: 4}]",
		"dishes: {turkey: 'frozen, 14 lb'}":                                   "dishes: [{cut: turkey, weight: 14 lb, start: frozen}]",
		"dishes: ['reverse sear steaks, 2']":                                  "dishes: [{cut: steaks, count: 2, finish: sear}]",
		"dishes: ['3 dozen chicken wings']":                                   "dishes: [{cut: chicken-wing, count: 36}]",
		"dishes: [{cut: chicken-wing, count: 3 dozen}]":                       "dishes: [{cut: chicken-wing, count: 36}]",
		"guests: 8\ndishes: [{cut: chicken-wing, count: 6 per person}]":       "guests: 8\ndishes: [{cut: chicken-wing, count: 48}]",
		"guests: 8\ndishes: [{cut: hot-dog, count: 2 each}]":                  "guests: 8\ndishes: [{cut: hot-dog, count: 16}]",
		"guests: {adults: 6, children: 2}\ndishes: ['2 hot dogs per person']": "guests: {adults: 6, children: 2}\ndishes: [{cut: hot-dog, count: 16}]",
		"dishes: [{cut: chicken-wing, count: 10-12}]":                         "dishes: [{cut: chicken-wing, count: 12, assumed: [larger, weight]}]",
		"dishes: [{cut: chicken, weight: 3-4 lb}]":                            "dishes: [{cut: chicken, weight: 4 lb, assumed: [larger]}]",
		"dishes: [{cut: pork-butt, weight: 16 lb total, count: 2}]":           "dishes: [{cut: pork-butt, weight: 8 lb, count: 2}]",
		"dishes: ['2 pork butts, 16 lb total']":                               "dishes: [{cut: pork-butt, weight: 8 lb, count: 2}]",
		"dishes: [{cut: baby-backs, weight: 3 racks}]":                        "dishes: [{cut: baby-backs, count: 3}]",
		"dishes: [{cut: baby back ribs, count: 2 racks}]":                     "dishes: [{cut: baby back ribs, count: 2}]",
		"dishes: [{cut: chicken, count: 3, weight: 4 lbs each}]":              "dishes: [{cut: chicken, count: 3, weight: 4 lb}]",
		"dishes: [{cut: brisket, weight: twelve pounds}]":                     "dishes: [{cut: brisket, weight: 12 lb}]",
		"dishes: [{cut: brisket, weight: \"12#\"}]":                           "dishes: [{cut: brisket, weight: 12 lb}]",
		"dishes: [{cut: brisket, weight: 10½ lb}]":                            "dishes: [{cut: brisket, weight: 10.5 lb}]",
		"dishes: [{cut: brisket, weight: 12 lb, wrap: yes}]":                  "dishes: [{cut: brisket, weight: 12 lb, wrap: foil}]",
		"dishes: [{cut: brisket, weight: 12 lb, wrap: no}]":                   "dishes: [{cut: brisket, weight: 12 lb, wrap: none}]",
		"dishes: [{cut: ribeye, count: 2, target: med-rare}]":                 "dishes: [{cut: ribeye, count: 2, target: medium-rare}]",
		"dishes: [{cut: ribeye, count: 2, target: well}]":                     "dishes: [{cut: ribeye, count: 2, target: well-done}]",
		"oven: yes\ndishes: [{cut: brisket, weight: 12 lb}]":                  "oven: {}\ndishes: [{cut: brisket, weight: 12 lb}]",
		"oven: no\ndishes: [{cut: brisket, weight: 12 lb}]":                   "dishes: [{cut: brisket, weight: 12 lb}]",
		"oven: 200 F\ndishes: [{cut: brisket, weight: 12 lb}]":                "oven: {hold: 200 F}\ndishes: [{cut: brisket, weight: 12 lb}]",
		"guests: 6 adults and 2 kids\ndishes: [{cut: brisket}]":               "guests: {adults: 6, children: 2}\ndishes: [{cut: brisket}]",
		"guests: about 10 people\ndishes: [{cut: brisket}]":                   "guests: 10\ndishes: [{cut: brisket}]",
		"guests: eight\ndishes: [brisket]":                                    "guests: 8\ndishes: [{cut: brisket}]",
		"guests: about a dozen\ndishes: [mac and cheese]":                     "guests: 12\ndishes: [{cut: mac and cheese}]",
		"quiet: 11pm-5am\ndishes: [{cut: brisket, weight: 12 lb}]":            "quiet: [{from: 11pm, to: 5am}]\ndishes: [{cut: brisket, weight: 12 lb}]",
		"quiet: we sleep 11 to 6\ndishes: [{cut: brisket, weight: 12 lb}]":    "quiet: [{from: \"23:00\", to: \"06:00\"}]\ndishes: [{cut: brisket, weight: 12 lb}]",
		"quiet: none\ndishes: [{cut: brisket, weight: 12 lb}]":                "quiet: []\ndishes: [{cut: brisket, weight: 12 lb}]",
		"weather: -5 C, wind 20 km/h\ndishes: [{cut: burger, count: 4}]":      "weather: {air: -5 C, wind: 20 km/h}\ndishes: [{cut: burger, count: 4}]",
		"weather: rainy, 50 F\ndishes: [{cut: burger, count: 4}]":             "weather: {air: 50 F, rain: true}\ndishes: [{cut: burger, count: 4}]",
	} {
		got, err := schedule.Read([]byte(wordsServe + wordsGrill + words + "\n"))
		if err != nil {
			t.Errorf("%s\n%v", words, err)
			continue
		}
		want, err := schedule.Read([]byte(wordsServe + wordsGrill + form + "\n"))
		if err != nil {
			t.Fatalf("%s\n%v", form, err)
		}
		if inJSON(t, got) != inJSON(t, want) {
			t.Errorf("%s\n got %s\nwant %s", words, inJSON(t, got), inJSON(t, want))
		}
	}
}

func inJSON(t *testing.T, r schedule.Request) string {
	t.Helper()
	out, err := json.Marshal(r)
	if err != nil {
		t.Fatal(err)
	}
	return string(out)
}

// What is open is asked, with the words it is about, and no number is made up: not a count,
// not a weight.
func TestWordsThatAreOpenAreNamed(t *testing.T) {
	for words, want := range map[string]string{
		"dishes: [hot dogs for the match]":                                     `"for the match" is not understood`,
		"dishes: ['steaks, 10, dinner']":                                       `"dinner" is not understood`,
		"dishes: [coleslaw]":                                                   "is not in the catalogue",
		"dishes: [4 packs of hot dogs]":                                        "how many are in a pack is not said",
		"dishes: [{cut: hot-dog, count: 4 packs}]":                             "how many are in a pack is not said",
		"dishes: [6 wings per person]":                                         "how many eat is not said",
		"dishes: [{cut: chicken, count: 1 1/2}]":                               "pieces are whole ones",
		"dishes: [1 1/2 chickens]":                                             "", // no food goes by that name
		"dishes: ['10 burgers (half well done)']":                              "is two dishes",
		"dishes: ['brisket, 13 pounds, start at 250']":                         "write which",
		"dishes: ['goose 4,5kg']":                                              "written with a point",
		"guests: 5 vegetarians and 3 meat eaters\ndishes: [brisket]":           "write guests: 8; who eats no meat",
		"weather: cold and windy, 40 degrees\ndishes: [2 ribeyes]":             "write weather: {air: 40 F}",
		"weather: cold\ndishes: [2 ribeyes]":                                   "write the figures of the forecast",
		"weather: 35 F and windy\ndishes: [2 ribeyes]":                         `"windy" says no figure`,
		"notes: grandma is 85 and Lisa is pregnant\ndishes: [brisket]":         "write guests: {adults: how many, frail: true}",
		"allergies: nuts\ndishes: [2 ribeyes]":                                 "knows nothing of allergies",
		"leftovers: yes please\ndishes: [2 ribeyes]":                           "does nothing with it",
		"start: noon\ndishes: [2 ribeyes]":                                     `write earliest: "noon"`,
		"serve: {date: 2027-07-03, time: 6pm, tz: Texas}\ndishes: [2 ribeyes]": "given twice",
	} {
		_, err := schedule.Read([]byte(wordsServe + wordsGrill + words + "\n"))
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s\n%v\nwant %q", words, err, want)
		}
		if err != nil && (strings.Contains(err.Error(), "10 lb") || strings.Contains(err.Error(), "count: 4")) {
			t.Errorf("%s: a number that nobody said:\n%v", words, err)
		}
	}
}

// When people eat, in a cook's words on a day in a cook's zone: a date is read, a day of the
// week is answered with its date, for a file is read again on other days.
func TestServeInWords(t *testing.T) {
	chicago, err := time.LoadLocation("America/Chicago")
	if err != nil {
		t.Fatal(err)
	}
	london, err := time.LoadLocation("Europe/London")
	if err != nil {
		t.Fatal(err)
	}
	now := time.Date(2026, 12, 1, 11, 27, 0, 0, chicago) // a Tuesday
	const rest = "\ngrill: kettle 22 in\ndishes: [2 ribeyes]\n"
	for _, c := range []struct{ serve, reads, says string }{
		{"serve: \"2026-12-19T17:00\"", "2026-12-19 17:00 America/Chicago", ""},
		{"serve: 2026-12-19 5:30pm", "2026-12-19 17:30 America/Chicago", ""},
		{"serve: 2026-12-19 5:30pm London", "2026-12-19 17:30 Europe/London", ""},
		{"serve: 12/19/2026 1pm", "2026-12-19 13:00 America/Chicago", ""},
		{"serve: December 19 2026, noon EST", "2026-12-19 12:00 America/New_York", ""},
		{"serve: {date: 2026-12-19, time: 6pm}", "2026-12-19 18:00 America/Chicago", ""},
		{"serve: {date: 2026-12-19, time: 6pm, tz: London}", "2026-12-19 18:00 Europe/London", ""},
		{"serve: {date: 2026-12-19, time: 6pm, tz: 'Denver, CO'}", "2026-12-19 18:00 America/Denver", ""},
		{"serve: {date: 2026-12-19, time: 6pm, tz: Ohio}", "2026-12-19 18:00 America/New_York", ""},
		{"serve: {date: 2026-12-19, time: 6pm, tz: Texas}", "", "America/Chicago, or America/Denver around El Paso"},
		{"serve: Saturday 6pm", "", `serve: {date: 2026-12-05, time: "18:00", tz: America/Chicago}`},
		{"serve: tomorrow 7:30pm", "", `serve: {date: 2026-12-02, time: "19:30", tz: America/Chicago}`},
		{"serve: tonight at 7", "", `serve: {date: 2026-12-01, time: "19:00", tz: America/Chicago}`},
		{"serve: 6pm", "", `time: "18:00", tz: America/Chicago}`},
		{"serve: Sat 12/5/26 6:00 PM EST", "2026-12-05 18:00 America/New_York", ""},
		{"serve: Sunday lunch", "", "serve: {date: 2026-12-06"},
		{"serve: saturday at 6", "", "morning or the evening"},
		{"serve: {date: Saturday, time: 6pm, tz: Chicago}", "", "write year, month and day: 2026-12-05"},
		{"serve: {date: 2026-12-19, time: 5, tz: Chicago}", "", `"5 PM" or "5 AM"`},
		{"date: Saturday\ntime: 6pm\ntimezone: London", "", `serve: {date: 2026-12-05, time: "18:00", tz: Europe/London}`},
		{"dinner: Saturday 6:30 pm", "", `serve: {date: 2026-12-05, time: "18:30", tz: America/Chicago}`},
		{"eat at: 6pm tomorrow", "", `serve: {date: 2026-12-02, time: "18:00", tz: America/Chicago}`},
	} {
		r, err := schedule.ReadOn([]byte(c.serve+rest), now)
		if c.reads != "" {
			if got := r.Serve.Date.String() + " " + r.Serve.Time.HhMm() + " " + r.Serve.TZ; err != nil || got != c.reads {
				t.Errorf("%s is %s, %v; want %s", c.serve, got, err, c.reads)
			}
			continue
		}
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v\nwant %s", c.serve, err, c.says)
		}
	}
	if _, err := schedule.ReadOn([]byte("serve: 12/06/2026 1pm"+rest), now.In(london)); err == nil || !strings.Contains(err.Error(), "is it December 6, 2026, or June 12, 2026?") {
		t.Errorf("of a day that is written first in London: %v", err)
	}
}
