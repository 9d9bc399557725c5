package schedule_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/unit"
)

// menuOf is a request for one dish.
func menuOf(dish string) []byte {
	return fmt.Appendf(nil, "format: 1\nserve: {date: 2027-07-03, time: \"18:00\", tz: Europe/Berlin}\ngrill: {kind: kettle, diameter: 22 in}\ndishes:\n  - {%s}\n", dish)
}

// A cut may be written as cooks say it; the request then has the catalogue's name.
func TestReadTakesTheNamesOfCooks(t *testing.T) {
	for written, want := range map[string]string{
		"T-Bones, weight: 1 lb": "steak", "leg of lamb, weight: 6 lb": "lamb-leg-bone-in", "Hähnchenflügel, weight: 4 oz": "chicken-wing",
		"king prawns, weight: 1 oz, count: 20": "shrimp", "BRISKET, weight: 12 lb": "brisket",
	} {
		r, err := schedule.Read(menuOf("cut: " + written))
		if err != nil {
			t.Errorf("%s: %v", written, err)
			continue
		}
		if d := r.Dishes[0]; d.Cut != want || d.ID != want {
			t.Errorf("%s: cut %s, id %s; want %s", written, d.Cut, d.ID, want)
		}
	}
}

// What is said of several foods is asked back, and what is not here says what is near.
func TestNamesThatAreNoCutSayWhatIs(t *testing.T) {
	for written, want := range map[string][]string{
		"kebab":  {"beef-skewer, chicken-skewer, lamb-skewer or pork-skewer", "write which"},
		"tips":   {"tri-tip", "rib tips", "spare-ribs"},
		"oxtail": {"not in the catalogue", "the nearest is beef-cheek", "braised"},
		"galbii": {"not in the catalogue", "short-ribs-thin"},
	} {
		_, err := schedule.Read(menuOf("cut: " + written + ", weight: 1 lb"))
		var input *schedule.InputError
		if !errors.As(err, &input) || len(input.Faults) != 1 || input.Faults[0].Path != "dishes[0].cut" {
			t.Errorf("%s: %v", written, err)
			continue
		}
		for _, part := range append(want, `"`+written+`"`) {
			if !strings.Contains(input.Faults[0].Sentence, part) {
				t.Errorf("%s: %q is not in %q", written, part, input.Faults[0].Sentence)
			}
		}
	}
	amounts, err := schedule.Amounts(schedule.Guests{Adults: 10}, []string{"pork shoulder", "corn on the cob"})
	if err != nil || amounts[0].Cut != "pork-butt" || amounts[1].Cut != "corn" {
		t.Errorf("%v, %v", amounts, err)
	}
}

// Pieces whose outside lies inside are refused below their published minimum, and so are
// ground meat, poultry and what the maker has scalded: 145 F for skewered and rolled meat
// (fda_3_401_11 and fsg_safemin_2019), 160 F ground and 165 F poultry and reheated food
// (fsg_safemin_2019).
func TestNewCutsKeepTheirMinimum(t *testing.T) {
	for cut, leastF := range map[string]float64{
		"beef-skewer": 145, "lamb-skewer": 145, "pork-skewer": 145, "rib-roast-rolled": 145, "chicken-skewer": 165,
		"kofta": 160, "meatloaf": 160, "boerewors": 160, "merguez": 160, "sausage-scalded": 165, "cornish-hen": 165, "quail": 165, "goose": 165,
	} {
		c, err := schedule.FindCut(cut)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(unit.Temperature(c.MinimumC).Fahrenheit()-leastF) > 1e-9 {
			t.Errorf("%s: minimum %v C, want %v F", cut, c.MinimumC, leastF)
		}
		for _, d := range c.Doneness {
			if d.CoreC < c.MinimumC-1e-9 {
				t.Errorf("%s offers %s below its minimum", cut, d.Name)
			}
		}
		ask := func(f float64) error {
			_, err := schedule.Read(menuOf(fmt.Sprintf("cut: %s, weight: %.4f kg, target: %.0f F", cut, c.TypicalKg, f)))
			return err
		}
		if err := ask(leastF); err != nil {
			t.Errorf("%s to %v F: %v", cut, leastF, err)
		}
		if err := ask(leastF - 1); err == nil || !strings.Contains(err.Error(), "USDA minimum") {
			t.Errorf("%s to %v F: %v", cut, leastF-1, err)
		}
	}
}
