package schedule_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/unit"
)

// A plan of three dishes on one fire; its names and hours are invented.
func notedPlan(units unit.System) (schedule.Plan, time.Time) {
	loc := time.FixedZone("CDT", -5*3600)
	on := time.Date(2027, 7, 3, 20, 0, 0, 0, loc)
	return schedule.Plan{TZ: "America/Chicago", ServeAt: time.Date(2027, 7, 4, 14, 0, 0, 0, loc), Request: schedule.Request{Units: units},
		Dishes: []schedule.DishPlan{{ID: "brisket", Name: "Brisket", Cut: "brisket"}, {ID: "butt", Name: "Pork butt", Cut: "pork-butt"}, {ID: "belly", Name: "Pork belly", Cut: "pork-belly", Holds: []schedule.HoldAdvice{{Method: schedule.HoldOven, Chosen: true, OvenC: unit.FToC(170)}}}},
		Phases: []schedule.Phase{{Number: 1, SetupFrom: on, LevelC: unit.FToC(250)}},
		Steps:  []schedule.Step{{Kind: schedule.StepPutOn, At: on}}}, on
}

func TestNotes(t *testing.T) {
	us, on := notedPlan(unit.US)
	metric, _ := notedPlan(unit.Metric)
	log := []schedule.Entry{{At: on, Dish: "brisket", Kind: schedule.LogOn}, {At: on, Dish: "belly", Kind: schedule.LogOn}, {At: on.Add(5 * time.Hour), Dish: "brisket", Kind: schedule.LogCore, C: unit.FToC(150)}}
	for _, c := range []struct{ words, want string }{
		{"brisket 152", "05:12 brisket core 152 F"},
		{"Bris 152 F", "05:12 brisket core 152 F"},
		{"brisket 67c", "05:12 brisket core 67 F as C"},
		{"pork butt on", "05:12 butt on"},
		{"but went on", "05:12 butt on"},
		{"05:00 brisket wrapped", "05:00 brisket wrapped"},
		{"brisket wrapped in paper", "05:12 brisket wrapped paper"},
		{"wrapped brisket", "05:12 brisket wrapped"},
		{"brisket left bare", "05:12 brisket wrapped none"},
		{"brisket off", "05:12 brisket pulled"},
		{"brisket in the cooler", "05:12 brisket boxed cooler"},
		{"brisket to oven 275", "05:12 brisket to-oven 275 F"},
		{"grate 260", "05:12  grate 260 F"},
		{"lid 300", "05:12  gauge 300 F"},
		{"lid opened", "05:12  lid-opened"},
		{"fire out", "05:12  fire-out"},
		{"relit", "05:12  lit"},
		{"added coals", "05:12  refuelled"},
		{"dinner 15:30", "05:12  serving-moved 2027-07-04T15:30:00-05:00"},
		{"lit at 11:58", "23:58  lit"}, // the last such moment
		{"lit at 11:58 am", "11:58  lit"},
		{"lit at 4:58 am", "04:58  lit"},
		{"5:05 am brisket on", "05:05 brisket on"},
		{"brisket on at 4:50", "04:50 brisket on"},
		{"top vent open", "05:12  vents top open"},
		{"vents top full bottom full", "05:12  vents top full, bottom full"},
		{"top 1/4 bottom 1/2", "05:12  vents top 1/4, bottom 1/2"},
		{"opened the top vent halfway", "05:12  vents top half"},
		{"closed bottom vent", "05:12  vents bottom shut"},
		{"bottom vent 1/4 open", "05:12  vents bottom 1/4"},
		{"both vents wide open", "05:12  vents both wide open"},
		{"vents half", "05:12  vents both half"},
		{"put brisket on", "refuses that brisket is on stands in the log"},
		{"put the brisket on", "refuses that brisket is on stands in the log"},
		{"brisket is on", "refuses that brisket is on stands in the log"},
		{"put the butt on", "05:12 butt on"},
		{"butt is on", "05:12 butt on"},
		{"took brisket off", "05:12 brisket pulled"},
		{"wrapped brisket in foil", "05:12 brisket wrapped foil"},
		{"wrapped the pork butt in paper", "05:12 butt wrapped paper"},
		{"moved brisket to the cooler", "05:12 brisket boxed cooler"},
		{"belly in the cooler", "05:12 belly boxed cooler"}, // though its plan waits in the oven
		{"put pork butt in the oven", "05:12 butt to-oven"},
		{"pork belly to oven", "05:12 belly boxed oven"}, // it is planned to wait there
		{"moved the belly into the oven", "05:12 belly boxed oven"},
		{"belly to oven 170", "05:12 belly boxed oven"},
		{"belly to oven 275", "05:12 belly to-oven 275 F"}, // which is for cooking
		{"brisket internal 160", "05:12 brisket core 160 F"},
		{"brisket 160 internal", "05:12 brisket core 160 F"},
		{"brisket at 160", "05:12 brisket core 160 F"},
		{"brisket is at 160 degrees", "05:12 brisket core 160 F"},
		{"160 brisket", "05:12 brisket core 160 F"},
		{"grill temp 260", "05:12  grate 260 F"},
		{"smoker 260", "05:12  grate 260 F"},
		{"dome 300", "05:12  gauge 300 F"},
		{"added 80 coals", "05:12  refuelled 80 coals"},
		{"added 25 unlit briquettes", "05:12  unlit-coals 25"},
		{"added 30 lit coals", "05:12  lit-coals 30"},
		{"poured 13 coals", "05:12  lit-coals 13"},
		{"added charcoal", "05:12  refuelled"},
		{"started the fire", "05:12  lit"},
		{"fire died", "05:12  fire-out"},
		{"cleared the ash", "05:12  ash-cleared"},
		{"opened the lid", "05:12  lid-opened"},
		{"served", "05:12  served"},
		{"dinner is served", "05:12  served"},
		{"bag empty", "05:12  no-fuel"},
		{"the bag is empty", "05:12  no-fuel"},
		{"out of charcoal", "05:12  no-fuel"},
		{"it is raining", "05:12  rain"},
		{"rain stopped", "05:12  rain over"},
		{"brisket served", "05:12 brisket served"},
		{"we ate at 4:50 am", "04:50  served"},
		{"eating at 3pm", "05:12  serving-moved 2027-07-04T15:00:00-05:00"},
		{"brisket flipped", "refuses needs no note"},
		{"top vent banana", "refuses How far is it open now?"},
		{"pork 152", "asks butt or belly"},
		{"152", "refuses dish"},
		{"goose 152", "refuses cannot be read"},
		{"brisket 66", "asks 151 °F|66C"}, // 66 C is 151 F, and the last reading was 150 F
		{"belly 66", "asks 66C"},          // no piece is that cold after nine hours on the fire
		{"grate 121", "asks 250 °F|121C"}, // 121 C is 250 F, the level
		{"grate 26", "asks 26F"},          // a digit is missing
		{"brisket 230", "asks boiling"},
	} {
		n, err := schedule.ReadNote(strings.Fields(c.words), us, log, on.Add(9*time.Hour+12*time.Minute))
		checkNote(t, c.words, c.want, n, err)
	}
	for _, c := range []struct{ words, want string }{
		{"brisket 66", "05:12 brisket core 66 C"}, {"brisket 128", "asks 128F"}, {"grate 120", "05:12  grate 120 C"}, {"grate 250", "asks 250F"},
	} {
		n, err := schedule.ReadNote(strings.Fields(c.words), metric, log, on.Add(9*time.Hour+12*time.Minute))
		checkNote(t, c.words, c.want, n, err)
	}
}

func checkNote(t *testing.T, words, want string, all []schedule.Note, err error) {
	t.Helper()
	var n schedule.Note
	if len(all) > 0 {
		n = all[0]
	}
	if err == nil && len(all) != 1 {
		t.Errorf("%q: %d lines", words, len(all))
	}
	got := strings.TrimSpace(fmt.Sprintf("%s %s %s %s", n.At.Format("15:04"), n.Dish, n.Kind, n.Text))
	if n.Kind == string(schedule.LogServingMoved) {
		got = strings.TrimSpace(fmt.Sprintf("%s %s %s %s", n.At.Format("15:04"), n.Dish, n.Kind, n.Value))
	}
	switch {
	case strings.HasPrefix(want, "asks ") || strings.HasPrefix(want, "refuses "):
		for _, part := range strings.Split(strings.TrimPrefix(strings.TrimPrefix(want, "asks "), "refuses "), "|") {
			if part == "boiling" {
				part = "does not fit"
			}
			if err == nil || !strings.Contains(err.Error(), part) {
				t.Errorf("%q: %v %v, want %q", words, got, err, part)
			}
		}
	case err != nil:
		t.Errorf("%q: %v", words, err)
	case strings.HasSuffix(want, " as C"):
		if n.Text != "67C" && n.Text != "67 C" {
			t.Errorf("%q: %s", words, got)
		}
	case got != want:
		t.Errorf("%q: %s, want %s", words, got, want)
	}
}
