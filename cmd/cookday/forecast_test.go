package main

import (
	"encoding/json"
	"strings"
	"testing"

	"example.com/cookday/schedule"
)

func TestForecastJSON(t *testing.T) {
	out := mustRun(t, "", "forecast", "--cut", "brisket", "--weight", "12 lb", "--grate", "250 F", "--wrap", "foil@150F",
		"--start", "38 F", "--air", "70 F", "--humidity", "50 %", "--target", "203 F", "--probability", "0.5,0.95", "--format", "json")
	var o struct {
		Cut        string
		Reaches    bool
		Reason     string
		Milestones []struct {
			Kind            string
			CoreC           float64 `json:"core_c"`
			EarlyMinutes    float64 `json:"early_minutes"`
			ExpectedMinutes float64 `json:"expected_minutes"`
			LateMinutes     float64 `json:"late_minutes"`
			Quantiles       []struct{ Probability, Minutes float64 }
		}
	}
	if err := json.Unmarshal([]byte(out), &o); err != nil {
		t.Fatal(err)
	}
	var kinds []string
	for _, m := range o.Milestones {
		kinds = append(kinds, m.Kind)
		if m.EarlyMinutes > m.ExpectedMinutes || m.ExpectedMinutes > m.LateMinutes || len(m.Quantiles) != 2 {
			t.Errorf("%+v", m)
		}
	}
	if got := strings.Join(kinds, " "); o.Cut != "brisket" || !o.Reaches || got != "on stall-begins wrap stall-ends take-off rested" {
		t.Errorf("%q reaches %t by %q", o.Cut, o.Reaches, got)
	}
}

func TestForecastFaults(t *testing.T) {
	tests := []struct {
		args []string
		want string
	}{
		{nil, "cut: "},
		{[]string{"--cut", "briskett", "--weight", "12 lb"}, "cut: "},
		{[]string{"--cut", "brisket", "--weight", "12"}, "weight: "},
		{[]string{"--cut", "brisket", "--weight", "500 lb"}, "weight: "},
		{[]string{"--cut", "brisket", "--weight", "12 lb", "--wrap", "silk"}, "wrap: "},
		{[]string{"--cut", "brisket", "--weight", "12 lb", "--grate", "2500 F"}, "grate: "},
		{[]string{"--cut", "brisket", "--weight", "12 lb", "--layout", "pyramid"}, "layout: "},
		{[]string{"--cut", "brisket", "--weight", "12 lb", "--probability", "1.5"}, "probability: "},
		{[]string{"--cut", "burger", "--weight", "6 oz", "--target", "140 F"}, "target: "},
		{[]string{"--cut", "brisket", "brisket"}, "cookday forecast: "},
	}
	for _, test := range tests {
		r := invoke("", append([]string{"forecast"}, test.args...)...)
		if r.code != exitInput || r.out != "" || !strings.HasPrefix(r.errors, test.want) {
			t.Errorf("%q: exit code %d, errors %q, want them to begin %q", test.args, r.code, r.errors, test.want)
		}
	}
}

// A grate cooler than the target never gets there: an answer, not an error.
func TestForecastOfWhatNeverGetsThere(t *testing.T) {
	out := mustRun(t, "", "forecast", "--cut", "brisket", "--weight", "12 lb", "--grate", "150 F", "--target", "207 F")
	if !strings.Contains(out, "does not get there") {
		t.Errorf("%s", out)
	}
}

func TestEveryFieldOfAnInquiryIsAFlagWithHelp(t *testing.T) {
	for _, name := range schedule.InquiryFields() {
		if inquiryHelp[name] == "" {
			t.Errorf("no help for --%s", name)
		}
	}
	if len(inquiryHelp) != len(schedule.InquiryFields()) {
		t.Errorf("help for %d flags, and there are %d", len(inquiryHelp), len(schedule.InquiryFields()))
	}
}

func TestForecastInMetric(t *testing.T) {
	out := mustRun(t, "", "forecast", "--cut", "pork-butt", "--weight", "3.6 kg", "--units", "metric")
	if !strings.Contains(out, "3.6 kg") || strings.Contains(out, " lb") {
		t.Errorf("%s", out)
	}
}
