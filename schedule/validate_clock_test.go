package schedule_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// Every clock of a request is looked at; quiet hours are a habit and are not.
func TestClockChangesInRequests(t *testing.T) {
	night := strings.NewReplacer("2027-07-03", "2027-11-06", "23:00", "00:30", "05:30", "01:30").Replace(plantest.Terrace)
	if _, err := schedule.Read([]byte(night)); err != nil {
		t.Error(err)
	}
	tests := []struct{ old, now, path string }{
		{`date: 2027-11-06, time: "18:00"`, `date: 2027-11-07, time: "01:15"`, "serve.time"},
		{"units: us", `earliest: {date: 2027-11-07, time: "01:15"}`, "earliest"},
		{"cut: burger", `cut: burger, serve: {date: 2027-11-07, time: "01:15"}`, "dishes[2].serve"},
		{"cut: burger", `cut: burger, earliest: {date: 2027-11-07, time: "01:15"}`, "dishes[2].earliest"},
		{"wind: 8 mph", `wind: 8 mph, hours: [{from: {date: 2027-11-07, time: "01:15"}, rain: true}]`, "weather.hours[0].from"},
	}
	for _, tt := range tests {
		plantest.Refused(t, strings.Replace(night, tt.old, tt.now, 1), tt.path, "happens twice")
	}
}
