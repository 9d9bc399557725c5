package schedule_test

import (
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
)

// Nothing that was written of a dish is lost on the way to the fields, or to the line that is
// offered: numbers behind a name, weights one by one, a second food with its own number, how
// done it is to be; a number of sandwiches is none of pieces. (Invented; worked out by hand.)
func TestNothingOfADishIsLost(t *testing.T) {
	now := time.Date(2026, 12, 2, 12, 0, 0, 0, time.UTC)
	for said, want := range map[string]string{
		"ribeye steak 4 1.5 inch thick medium rare": "4 steak 3.8 cm medium-rare",
		"burgers 8 well done":                       "8 burger well-done",
		"burgers 8 medium":                          "160 °F; leave it out; without that it is {cut: burger, count: 8}",
		"burgers rare":                              "without that it is {cut: burger}",
		"turkey burgers 6 medium":                   "165 °F; leave it out; without that it is {cut: burger, name: Turkey burgers, count: 6}",
		"chicken 4 lb medium rare":                  "165 °F; leave it out; without that it is {cut: chicken, weight: 4 lb}",
		"duck breast 4, medium rare":                `leaves "medium rare" aside`,
		"\"2 briskets 12 lb & 14 lb\"":              "2 brisket 5.44 6.35 kg",
		"3 pork butts 8, 8 and 6.5 lbs":             "3 pork-butt 3.63 3.63 2.95 kg",
		"2 pork butts 8, 8 and 6.5 lbs":             "2 pieces and 3 weights",
		"3 courgettes, 2 aubergines":                "3 vegetables; 8 vegetables",
		"spare ribs, 3 racks St Louis":              "3 st-louis-ribs",
		"tofu 1 block":                              "how many slabs",
		"briskit 10lb":                              "brisket 4.54 kg",
		"saussages 12":                              "12 sausage",
		"12 brisket sandwiches":                     "12 sandwiches are no number of pieces of brisket",
		"pulled pork sandwiches 12":                 "without that it is {cut: pulled pork, name: Pulled pork sandwiches}",
		"fish tacos 12":                             "12 tacos are no number",
		"steaks 4 with salad":                       "4 steak",
		"chicken 1 beer can":                        "1 chicken",
		"steak salad for 6":                         `"steak salad for 6" is not in the catalogue`,
		"mashed potatoes":                           `"mashed potatoes" is nothing for the grill`,
		"hamburger buns (8 pk)":                     "is nothing for the grill",
		"brisket 10":                                "write which: {cut: brisket, weight: 10 lb}",
		"brats in beer 6":                           "6 sausage",
		"oysters 2 dozen":                           `"oysters" is not in the catalogue`,
		"hot dogs 2 dozen":                          "24 hot-dog",
		"portobello caps 4":                         "4 vegetables",
		"prime rib, 3 bones, 7 lb":                  "rib-roast-bone-in 3.18 kg",
	} {
		r, err := schedule.Understand([]byte("serve: 2026-12-12 18:00 Chicago\nguests: 8\ngrill: kettle 22 in\nunits: us\ndishes:\n  - "+said+"\n"), now)
		got := inWords(r)
		if err != nil {
			got = err.Error()
		}
		if !strings.Contains(got, want) {
			t.Errorf("%q: %s; want %s", said, got, want)
		}
	}
}
