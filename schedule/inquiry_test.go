package schedule_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"example.com/cookday/schedule"
)

// All faults of an inquiry come at once: those of what cannot be read, and those of what can.
func TestAllFaultsOfAnInquiryComeAtOnce(t *testing.T) {
	_, err := schedule.ReadInquiry(map[string]string{"cut": "briskit", "weight": "12", "grate": "2500 F"})
	var input *schedule.InputError
	if !errors.As(err, &input) {
		t.Fatal(err)
	}
	var paths []string
	for _, f := range input.Faults {
		paths = append(paths, f.Path)
	}
	slices.Sort(paths)
	if got := strings.Join(paths, " "); got != "cut grate weight" {
		t.Errorf("faults of %s: %v", got, err)
	}
}
