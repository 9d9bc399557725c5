package schedule_test

import (
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
)

// Letters, messages and notes with headings are taken apart: what is of the day and what is food
// is read, the rest is told back, and a line that a message gives can be added to them (invented
// by strangers to the form; behind => what each means, worked out by hand, or what is asked).
func TestLettersAreTakenApart(t *testing.T) {
	zone, err := time.LoadLocation("America/Chicago")
	if err != nil {
		t.Fatal(err)
	}
	now := time.Date(2026, 12, 2, 8, 0, 0, 0, zone)
	for said, want := range map[string]string{
		"Subject: New Years Day cookout\nHi all! Come over Jan 1st, food at 3:30 in the afternoon. I'm doing frozen burger patties (20 of them, straight from the freezer), a 4 lb chuck roast for pulled beef, 5 dozen wings and a beer can chicken. Beans in a pot on the grate. I've got an 18 inch kettle and that's it. About 15-18 people. We're in Pocatello, Idaho.\n- Your host\n": "2027-01-01 15:30; kettle 46 cm; 18+0; 20 burger frozen; 1 chuck-roast 1.81 kg pulled; 60 chicken-wing; 1 chicken; beans-pan for all",
		"SHOPPING\n- 2 racks baby backs\n- 3 lb bratwurst\n- hamburger buns (8 pk)\n- 8 burgers 1/3 lb\n- charcoal\n- zucchini 4\nfor sunday 4pm, 12 ppl, Kansas City\ngrill: {kind: kettle, diameter: 22 in}\n":                                                                                                                                                                            "2026-12-06 16:00; kettle 56 cm; 12+0; 2 baby-backs; 12 sausage; 8 burger 0.15 kg; 4 vegetables",
		"Dinner on the 14th at 18h. Place: Albuquerque.\nSmoker: kettle 22 in, lights by 5am at the earliest (I wont get up before).\n- 5:00 light it\n- 5:45 pork butt on (7.5 lb, bone in)\n- 16:00 chicken halves on (4)\n- 17:30 rest\nWe are 9.\n":                                                                                                                                     "2026-12-14 18:00; kettle 56 cm; 9+0; from 05:00; 1 pork-butt 3.40 kg; 4 chicken-half",
		"Thanksgiving 4pm. Turkey 14 lb on the kettle, spatchcocked. Also smoked sausage 2 lb, cranberry sauce, pumpkin pie. Burlington VT. 11 adults and 3 little kids. Turkey is still frozen solid.":                                                                                                                                                                                     "? kettle 22 in",
		"hey can you bring the propane grill sat? its 7 of us plus grandma (84) and my sister who is pregnant. thinking 2 tri tips about 2.5lb each, garlic bread and a big salad. eat around 5 at our place in fresno.":                                                                                                                                                                    `?"propane grill": the plan is for charcoal`,
		"Three pork butts (8, 8 and 6.5 lbs) and two briskets 12 lb & 14 lb for the church. 60 plates. kettle 26 in. Noon on Sunday the 20th, Tupelo Mississippi.":                                                                                                                                                                                                                          "2026-12-20 12:00; kettle 66 cm; 60+0; 3 pork-butt 3.63 3.63 2.95 kg; 2 brisket 5.44 6.35 kg",
		"BBQ for 10, Leeds, Saturday 12 December, half five\n10 bangers\n3 courgettes, 2 aubergines\nkettle 57 cm\nTwo veggies coming.\n":                                                                                                                                                                                                                                                   "2026-12-12 17:30; kettle 57 cm; 10+0; 10 sausage; 3 vegetables; 8 vegetables",
		"10 bangers\nkettle 57 cm\nSaturday 12 December, half five, Leeds\nNeed it sliced by 4pm\n":                                                                                                                                                                                                                                                                                         `?"Need it sliced by 4pm" is not understood; if it is of the day write it in one of these lines`,
	} {
		r, err := schedule.Understand([]byte(said), now)
		got := inWords(r)
		if err != nil {
			got = "?" + err.Error()
		}
		if asks, ok := strings.CutPrefix(want, "?"); ok && (err == nil || !strings.Contains(got, strings.TrimSpace(asks))) || !ok && got != want {
			t.Errorf("%.40q:\n got %s\nwant %s", said, got, want)
		}
	}
}

// That it is frozen is said of the dish wherever it stands in a note: without it no thaw was planned.
func TestANoteThatSaysFrozenIsThawed(t *testing.T) {
	for _, said := range []string{"it is frozen now", "it's still frozen", "the lamb is frozen solid", "it is in the freezer"} {
		text := "leg of lamb, 2.2 kg, bone in\n6 people\nSaturday 5 pm\nkettle 57 cm\n" + said + "\n"
		r, err := schedule.Understand([]byte(text), time.Date(2026, 12, 2, 12, 0, 0, 0, time.UTC))
		if err != nil || len(r.Dishes) != 1 || r.Dishes[0].Start == nil || !r.Dishes[0].Start.Frozen {
			t.Errorf("%q: %v %+v", said, err, r.Dishes)
		}
	}
}
