package schedule_test

import (
	"errors"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// What a cook writes about the fire is read in the words of cooks, and kept in one form.
func TestReadLogReadsTheFire(t *testing.T) {
	p := plantest.Party(t, "..")
	for _, c := range []struct {
		kind  schedule.EntryKind
		text  string
		value string
	}{
		{schedule.LogVents, "top 1/4, bottom 1/2", "top 1/4, bottom 1/2"},
		{schedule.LogVents, "bottom half open, top a quarter", "top 1/4, bottom 1/2"},
		{schedule.LogVents, "Top 25%, bottom 50 %", "top 1/4, bottom 1/2"},
		{schedule.LogVents, "top vent 0.25 and bottom vent half", "top 1/4, bottom 1/2"},
		{schedule.LogVents, "both shut", "top 0, bottom 0"},
		{schedule.LogVents, "all open", "top 1, bottom 1"},
		{schedule.LogVents, "top 40 %", "top 40 %"},
		{schedule.LogVents, "bottom cracked", "bottom 1/32"},
		{schedule.LogVents, "lid three quarters, intake two thirds", "top 3/4, bottom 2/3"},
		{schedule.LogLitCoals, " 15 ", "15"},
		{schedule.LogUnlitCoals, "80", "80"},
		{schedule.LogWind, "calm", "0 m/s"},
		{schedule.LogAshCleared, "", ""},
		{schedule.LogLidClosed, "", ""},
	} {
		log, err := schedule.ReadLog([]byte("time,kind,value\n12:00,"+string(c.kind)+",\""+c.text+"\"\n"), p)
		if err != nil || len(log) != 1 || log[0].Value != c.value {
			t.Errorf("%s %q: %+v, %v; want %q", c.kind, c.text, log, err, c.value)
		}
	}
	for _, c := range []struct {
		kind        schedule.EntryKind
		text, wants string
	}{
		{schedule.LogVents, "", "no opening"}, {schedule.LogVents, "top 3/2", "no opening"}, {schedule.LogVents, "top 140 %", "no opening"},
		{schedule.LogVents, "a little", "top 1/4, bottom 1/2"}, {schedule.LogVents, "1/4, bottom 1/2", "no opening"},
		{schedule.LogLitCoals, "some", "how many"}, {schedule.LogLitCoals, "0", "1 to 1000"}, {schedule.LogUnlitCoals, "1e3", "how many"},
		{schedule.LogWind, "12", "12"}, {schedule.LogWind, "150 mph", "12 mph"},
	} {
		_, err := schedule.ReadLog([]byte("time,kind,value\n12:00,"+string(c.kind)+",\""+c.text+"\"\n"), p)
		var bad *schedule.InputError
		if !errors.As(err, &bad) || !strings.Contains(err.Error(), c.wants) || bad.Faults[0].Line != 2 {
			t.Errorf("%s %q: %v, want a fault of line 2 with %q", c.kind, c.text, err, c.wants)
		}
	}
}
