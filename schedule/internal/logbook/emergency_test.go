package logbook

import (
	"strings"
	"testing"

	"example.com/cookday/schedule/internal/strict"
)

// Each row of testdata/emergencies.csv is a note and words that its answer must have, before
// grammar; a row without is a note of every day, which is no emergency.
func TestEmergenciesComeBeforeGrammar(t *testing.T) {
	rows := rowsOf(t, "emergencies")
	d := noteDays()["party"]
	for _, row := range rows[1:] {
		got := Emergency(strings.Fields(row[0]))
		if row[1] == "" && got != "" {
			t.Errorf("%q is no emergency: %s", row[0], got)
		}
		for want := range strings.SplitSeq(row[1], "|") {
			if !strings.Contains(got, want) {
				t.Errorf("%q: %q lacks %q", row[0], got, want)
			}
		}
		if got != "" && d.note(row[0]) != "refuses "+got {
			t.Errorf("%q: the note is answered otherwise: %s", row[0], d.note(row[0]))
		}
	}
}

// What cooks write on a day without trouble is never taken for an emergency.
func TestNotesOfADayAreNoEmergency(t *testing.T) {
	rows := rowsOf(t, "notes")
	for _, row := range rows[1:] {
		if got := Emergency([]string{row[1]}); got != "" {
			t.Errorf("%q: %s", row[1], got)
		}
	}
}

// A row whose kind is such a cry, as a caller may send it, is answered by what to do first.
func TestARowThatTellsOfDangerIsAnswered(t *testing.T) {
	faults := &strict.FaultList{}
	d := noteDays()["party"]
	if _, ok := NewReader(d.day, faults).Entry(Row{time: "16:00", kind: "dizzy and headache"}); ok || len(faults.Faults) != 1 || !strings.Contains(faults.Faults[0].Sentence, "fresh air now") {
		t.Errorf("%v", faults.Faults)
	}
}
