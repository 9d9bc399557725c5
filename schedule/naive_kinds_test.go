package schedule_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
)

// Words for food that the catalogue does not have are read as what they are, or asked for; none is
// planned as another food without a word (all invented).
func TestAFoodIsNoOtherFood(t *testing.T) {
	now := time.Date(2026, 12, 1, 11, 27, 0, 0, time.FixedZone("America/Chicago", -6*3600))
	for dish, want := range map[string]string{ // the cut, and after a bar what is heard or refused
		"2 portobello burgers":              "2 vegetables|",
		"6 halloumi skewers":                "6 halloumi|halloumi skewers: planned as slice of halloumi",
		"8 jerk chicken thighs":             "8 chicken-thigh|jerk chicken thighs: planned as bone-in chicken thigh",
		"4 turkey burgers":                  "4 burger well-done|Turkey burgers: done at 165 °F",
		"6 chicken sausages":                "6 sausage well-done|done at 165 °F",
		"12 lamb koftas":                    "12 kofta|lamb koftas: planned as kofta",
		"1 pineapple":                       "8 fruit|1 pineapple: taken as 8 slices",
		"6 pineapple slices":                "6 fruit|",
		"2 cabbages":                        "16 vegetables|2 cabbages: taken as 16 wedges",
		"40 eggplants":                      "40 vegetables|taken as slices, not as whole ones",
		"6 pizzas (12 inch)":                "6 pizza|does nothing with \"12 inch\"",
		"2 salmon burgers":                  "|\"salmon burgers\" is not in the catalogue",
		"2 lb gizzards":                     "|nothing near it is known",
		"two dozen oysters":                 "|nothing here stands for it",
		"brisket point 5 lb for burnt ends": "1 brisket-point|Cubing it, the sauce",
		"{cut: burger, name: Turkey burgers, count: 4, target: done}": "|ground poultry must reach 165 °F",
	} {
		r, err := schedule.Understand([]byte("serve: {date: 2026-12-05, time: \"17:00\", tz: America/Chicago}\ngrill: kettle 22 in\nguests: 8\ndishes:\n  - "+dish+"\n"), now)
		cut, says, _ := strings.Cut(want, "|")
		if cut == "" {
			if err == nil || !strings.Contains(err.Error(), says) || strings.Contains(err.Error(), "{cut: burger, name: salmon") {
				t.Errorf("%s: %v; want %q", dish, err, says)
			}
			continue
		}
		if err != nil {
			t.Errorf("%s: %v", dish, err)
			continue
		}
		if got := inWords(r); !strings.Contains(got, "; "+cut) {
			t.Errorf("%s: %s, want %s", dish, got, cut)
		}
		if heard := strings.Join(r.Heard, "\n"); !strings.Contains(heard, says) {
			t.Errorf("%s: %q is heard, want %q", dish, heard, says)
		}
	}
}

// A place decides whose clock it is; one that is not known is asked for, and the day is not lost
// for it.
func TestAPlaceIsKnownOrAskedFor(t *testing.T) {
	chicago, err := time.LoadLocation("America/Chicago")
	if err != nil {
		t.Fatal(err)
	}
	now := time.Date(2026, 12, 1, 11, 27, 0, 0, chicago)
	for said, want := range map[string]string{
		"serve: Saturday 6 PM, Portland, Oregon":                          "America/Los_Angeles",
		"serve: Saturday 6 PM, Portland, ME":                              "America/New_York",
		"serve: Saturday 6 PM\ntown: Austin, TX":                          "America/Chicago",
		"serve: half past six in the evening on Friday, Dec 11, Honolulu": "Pacific/Honolulu",
		"serve: Saturday 6 PM, Springfield":                               `?date: 2026-12-05, time: "18:00", tz: CITY}`,
		"serve: Saturday 6 PM, Portland":                                  "?has more than one clock",
		"serve: Saturday 6 PM\nwhere: Smallville":                         `?serve.tz: "Smallville" is not a known`,
		"serve: {date: 2026-12-05, time: \"18:00\", tz: CITY}":            "?stands for a large city",
		"guests: 8": `?serve: is missing; write serve: {date: YYYY-MM-DD, time: "HH:MM"`,
	} {
		r, err := schedule.Understand([]byte(said+"\ngrill: kettle 22 in\ndishes: [{cut: burger, count: 4}]\n"), now)
		if refused, asked := strings.CutPrefix(want, "?"); asked {
			if err == nil || !strings.Contains(err.Error(), refused) {
				t.Errorf("%q: %v; want %s", said, err, refused)
			}
			continue
		}
		if err != nil || r.Serve.TZ != want {
			t.Errorf("%q: %s, %v; want %s", said, r.Serve.TZ, err, want)
		}
	}
}

// A dish for some of the guests is as much as they eat, and grills that burn no charcoal are told
// by zones in the cook's own units: the line to copy is of the cook's day and no other.
func TestWhatTheLinesToCopySay(t *testing.T) {
	now := time.Date(2026, 12, 1, 11, 27, 0, 0, time.FixedZone("America/Chicago", -6*3600))
	const day, kettle, food = "serve: {date: 2026-12-05, time: \"17:00\", tz: America/Chicago}\n", "grill: kettle 22 in\n", "dishes: [{cut: burger, count: 4}]\n"
	for request, want := range map[string]string{ // after ? what is refused
		day + kettle + "guests: 12, 3 of them vegetarian\ndishes: [veggie burgers, portobellos for the vegetarians]\n":                                                                         "; 4 veggie-burger; 6 vegetables",
		day + kettle + "guests: 6 adults and 4 kids\ndishes: [burgers 2 each, hot dogs 1 each for the kids]\n":                                                                                 "; 20 burger; 4 hot-dog",
		day + kettle + "guests: 9\ndishes:\n  boudin: 15 links\n":                                                                                                                              "; 15 sausage-scalded",
		day + kettle + "guests: 9\ndishes: [corn]\nin the oven:\n  cornbread: 1 pan\n":                                                                                                         "corn for all",
		day + kettle + food + "nobody up before: 8 AM\n":                                                                                                                                       "4 burger",
		`{"event": {"start": "2026-12-05T17:00", "tz": "America/Chicago"}, "equipment": {"grill": "kettle 22 in", "oven": "yes, to keep warm"}, "dishes": [{"dish": "burgers", "pieces": 4}]}`: "2026-12-05 17:00; kettle 56 cm; 4 burger",
		day + kettle + food + "guests: me and my wife\n":                                                                                                                                       "; 2+0; 4 burger",
		day + kettle + food + "guests: 5 adults, 2 kids aged 3 and 6\n":                                                                                                                        "; 5+2 frail; 4 burger",
		day + kettle + food + "guests: 16 (4 veggies, 2 toddlers)\n":                                                                                                                           "; 14+2 frail; 4 burger",
		kettle + food + "dinner: Saturday 7.30pm, Cape Town\n":                                                                                                                                 "2026-12-05 19:30;",
		kettle + food + "when: Dec 19, 6pm Tacoma\nwhere: backyard\n":                                                                                                                          "2026-12-19 18:00;",
		day + kettle + "guests: 4\ndishes: [elk sausage 12, lamb burgers x 10, grilled aubergine 2]\n":                                                                                         "; 12 sausage; 10 burger; 8 vegetables",
		"item;qty;weight\nchicken wings;;2 kg\nwhen;Saturday 18:30;\ngrill;kettle 57 cm;\npeople;10;\n":                                                                                        "2026-12-05 18:30; kettle 57 cm; 10+0; 20 chicken-wing",
		"Hey, planning a cookout for 9 of us this Sunday 3pm in Tucson\n22\" kettle\nmy mom is 83\n9 ears corn":                                                                                "2026-12-06 15:00; kettle 56 cm; 9+0 frail; 9 corn",
		`{"serve": "Saturday 6pm", "grill": "kettle 22 in", "guests": 11, "food": [{"item": "turkey sausages", "howmany": 12}]}`:                                                               "; 11+0; 12 sausage well-done",
		day + food + "grill: gas grill 80 x 50 cm\n":                                                                                                                                           "?width: 41 cm, depth: 51 cm, min: 110 C",
		day + food + "grill: pellet grill\n":                                                                                                                                                   "?{name: grate, width: 30 in, depth: 18 in, min: 225 F, max: 450 F}]}",
		day + food + "grill: parrilla 80 x 60 cm\n":                                                                                                                                            "?If yours has a lid to close, write box 80 x 60 cm",
		day + kettle + "dishes: [{dish: goat shoulder, kg: 3}]":                                                                                                                                "?to plan it as that write cut: lamb-shoulder, name: goat shoulder",
		"Saturday 4pm in Phoenix, 15 people coming\nkettle 22 in\n20 chicken thighs\n3 lb gizzards\n":                                                                                          "?\"3 lb gizzards\" is not understood; leave it out, or write it behind a # (line 4)",
		"Saturday 4pm in Phoenix, 15 people coming\nkettle 22 in\n20 chicken thighs\n":                                                                                                         "2026-12-05 16:00; kettle 56 cm; 15+0; 20 chicken-thigh",
	} {
		r, err := schedule.Understand([]byte(request), now)
		if refused, is := strings.CutPrefix(want, "?"); is {
			var wrong *schedule.InputError
			text := ""
			if errors.As(err, &wrong) {
				for _, f := range wrong.Faults {
					text += fmt.Sprintf("%s (line %d)\n", f, f.Line)
				}
			}
			if !strings.Contains(text, refused) {
				t.Errorf("%s\n%s\nwant %s", request, text, refused)
			}
			continue
		}
		if err != nil {
			t.Errorf("%s\n%v", request, err)
		} else if got := inWords(r); !strings.Contains(got, want) {
			t.Errorf("%s\n got %s\nwant %s", request, got, want)
		}
	}
	mended, certain := schedule.MendOn([]byte(`{"when": "Saturday 6pm", "grill": "kettle 22 in", "people": 4, "menu": ["1 pineapple"]}`), now)
	if r, err := schedule.Read(mended); !certain || err != nil || r.Dishes[0].Count != 8 || len(r.Heard) == 0 {
		t.Errorf("JSON is mended to %s, %v", mended, err)
	}
}
