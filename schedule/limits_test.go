package schedule

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"example.com/cookday/schedule/internal/logbook"
	"example.com/cookday/schedule/internal/strict"
)

// The limits that README.md names are the ones that hold.
func TestReadmeNamesTheLimits(t *testing.T) {
	text, err := os.ReadFile("../README.md")
	if err != nil {
		t.Fatal(err)
	}
	readme := strings.Join(strings.Fields(string(text)), " ")
	for _, limit := range []string{
		fmt.Sprintf("%d dishes", maxDishes), fmt.Sprintf("%d pieces", maxPieces),
		fmt.Sprintf("%d zones", maxZones), fmt.Sprintf("%d spans of quiet hours", maxQuiet), fmt.Sprintf("%d hours of weather", maxHours),
		fmt.Sprintf("at most %.0f h before the last serving", Horizon.Hours()), fmt.Sprintf("a log of %d readings", logbook.MaxEntries),
		fmt.Sprintf("%d MiB for a request or a log", strict.MaxRequestBytes>>20), fmt.Sprintf("%d MiB for a plan", strict.MaxPlanBytes>>20),
	} {
		if !strings.Contains(readme, limit) {
			t.Errorf("README.md does not say %q", limit)
		}
	}
	if logbook.MaxBytes != strict.MaxRequestBytes {
		t.Error("a log may be of another size than a request")
	}
}
