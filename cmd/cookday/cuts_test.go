package main

import (
	"encoding/json"
	"strings"
	"testing"

	"example.com/cookday/schedule"
)

func TestCutsListsAll(t *testing.T) {
	out := mustRun(t, "", "cuts")
	for _, c := range schedule.Cuts().Cuts {
		mark := "  "
		if c.Estimate {
			mark = "~ "
		}
		if !strings.Contains(out, "\n"+mark+c.Name+" ") {
			t.Errorf("%s is missing or not marked %q", c.Name, mark)
		}
	}
}

func TestCutShowsWhatACookWantsToKnow(t *testing.T) {
	out := mustRun(t, "", "cuts", "brisket")
	// The catalogue's own figures: what is tested is that they are shown.
	for _, want := range []string{"203 °F (95 °C)", "12 lb (5.4 kg)", "in foil", "160 °F (71 °C)", "low band", "at least 30 min", "no source"} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is not in\n%s", want, out)
		}
	}
	if out := mustRun(t, "", "cuts", "duck"); !strings.Contains(out, "estimate") {
		t.Errorf("an estimate is not called one:\n%s", out)
	}
	for _, c := range schedule.Cuts().Cuts {
		mustRun(t, "", "cuts", c.Name)
	}
}

func TestCutsJSON(t *testing.T) {
	var all schedule.Catalogue
	if err := json.Unmarshal([]byte(mustRun(t, "", "cuts", "--format", "json")), &all); err != nil || len(all.Cuts) != len(schedule.Cuts().Cuts) {
		t.Errorf("%d cuts, %v", len(all.Cuts), err)
	}
	var one struct {
		Name     string
		Doneness []struct {
			CoreC   float64 `json:"core_c"`
			Default bool
		}
	}
	if err := json.Unmarshal([]byte(mustRun(t, "", "cuts", "brisket", "--format", "json")), &one); err != nil || one.Name != "brisket" || len(one.Doneness) != 3 {
		t.Errorf("%+v, %v", one, err)
	}
}

// Names that cooks use lead to the cut, and one that several cuts share to all of them.
func TestCutsByTheNamesOfCooks(t *testing.T) {
	if out := mustRun(t, "", "cuts", "T Bones"); !strings.HasPrefix(out, "Steak (steak)") {
		t.Errorf("no steak in\n%s", out)
	}
	out := mustRun(t, "", "cuts", "kebabs")
	for _, want := range []string{"~ beef-skewer ", "~ chicken-skewer ", "~ lamb-skewer ", "~ pork-skewer "} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is not in\n%s", want, out)
		}
	}
	if strings.Contains(out, "brisket") {
		t.Errorf("more than was asked for:\n%s", out)
	}
	var shared schedule.Catalogue
	if err := json.Unmarshal([]byte(mustRun(t, "", "cuts", "kebabs", "--format", "json")), &shared); err != nil || len(shared.Cuts) != 4 || shared.Version == "" {
		t.Errorf("%d cuts, %v", len(shared.Cuts), err)
	}
}
