package schedule_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
)

// A fault names the value as the cook wrote it, however the sheet would round it or
// whichever units it speaks.
func TestFaultsNameWhatWasWritten(t *testing.T) {
	const day = `
format: 1
serve: {date: 2027-07-03, time: "18:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 3 mm}
weather: {wind: 400 km/h}
dishes:
  - {cut: steak, weight: 1 g, thickness: 2 mm, rest: 200 h, target: {final: 400 K}}
`
	_, err := schedule.Read([]byte(strings.Replace(day, "400 K", "900 C", 1)))
	want := []string{
		"grill.diameter: 3 mm is not", "weather.wind: 400 km/h is not", "dishes[0].weight: 1 g is not",
		"dishes[0].rest: 200 h must", "dishes[0].target.final: 900 C is not",
	}
	for _, w := range want {
		if err == nil || !strings.Contains(err.Error(), w) {
			t.Errorf("%q is missing in\n%v", w, err)
		}
	}

	q, err := schedule.ReadInquiry(map[string]string{"cut": "brisket", "weight": "40 g", "grate": "3 C", "target": "final@900C"})
	if err != nil {
		t.Fatal(err)
	}
	_, err = planner.Forecast(t.Context(), q)
	for _, w := range []string{"weight: 40 g is not", "grate: 3 C is not", "target: final@900C is not"} {
		if err == nil || !strings.Contains(err.Error(), w) {
			t.Errorf("%q is missing in\n%v", w, err)
		}
	}
}
