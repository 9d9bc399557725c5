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

// A log of a fire alone needs no plan: clocks count on, dates are taken, dishes and what is of them are refused.
func TestReadFireLog(t *testing.T) {
	log, err := schedule.ReadFireLog([]byte("time,kind,value\n23:30,lit,\n23:45,lit-coals,12\n00:15,grate,245 F\n09:00,grate,251 F\n"))
	if err != nil || len(log) != 4 {
		t.Fatalf("%+v, %v", log, err)
	}
	if h := log[3].At.Sub(log[0].At).Hours(); h != 9.5 {
		t.Errorf("from the light to the last reading %v h, want 9.5", h)
	}
	log, err = schedule.ReadFireLog([]byte(`[{"time":"2031-05-04T10:00:00Z","kind":"grate","value":"245 F"},{"time":"2031-05-04 10:30","kind":"vents","value":"both 1/4"}]`))
	if err != nil || len(log) != 2 || log[1].At.Sub(log[0].At).Minutes() != 30 {
		t.Errorf("%+v, %v", log, err)
	}
	for text, want := range map[string]string{
		"time,kind,value\n10:00,core,150 F\n": "no entry of a fire alone", "time,kind,value\n": "no entry", "": "empty", "time,kind,value\n10:00,grate,hot\n": "line 2",
	} {
		if _, err := schedule.ReadFireLog([]byte(text)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
}
