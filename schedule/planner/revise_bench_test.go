package planner_test

import (
	"context"
	"fmt"
	"slices"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
)

// BenchmarkRevise revises the example party by two hundred readings of core and
// grate, five hours into the brisket.
func BenchmarkRevise(b *testing.B) {
	p := plantest.Party(b, "../..")
	on := plantest.StepAt(b, p, schedule.StepPutOn, "brisket")
	entries := twoHundredReadings(b, p, on)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := planner.Revise(context.Background(), p, entries, on.Add(300*time.Minute)); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkReviseCores is the same with two hundred of the core, where nothing was read of
// the fire.
func BenchmarkReviseCores(b *testing.B) {
	p := plantest.Party(b, "../..")
	on := plantest.StepAt(b, p, schedule.StepPutOn, "brisket")
	entries := slices.DeleteFunc(readingsEvery(b, p, on, 200), func(e schedule.Entry) bool { return e.Kind == schedule.LogGrate })
	b.ReportAllocs()
	for b.Loop() {
		if _, err := planner.Revise(context.Background(), p, entries, on.Add(300*time.Minute)); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkReviseLong is the same with as many readings as a log may hold.
func BenchmarkReviseLong(b *testing.B) {
	p := plantest.Party(b, "../..")
	on := plantest.StepAt(b, p, schedule.StepPutOn, "brisket")
	entries := readingsEvery(b, p, on, 2499)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := planner.Revise(context.Background(), p, entries, on.Add(300*time.Minute)); err != nil {
			b.Fatal(err)
		}
	}
}

// twoHundredReadings are a hundred of the core and a hundred of the grate.
func twoHundredReadings(t testing.TB, p schedule.Plan, on time.Time) []schedule.Entry {
	t.Helper()
	return readingsEvery(t, p, on, 100)
}

// readingsEvery are so many of the core and of the grate, over five hours.
func readingsEvery(t testing.TB, p schedule.Plan, on time.Time, n int) []schedule.Entry {
	t.Helper()
	log := fmt.Sprintf("time,dish,kind,value\n%s,brisket,on,\n", on.Format(time.RFC3339))
	for i := range n {
		at := on.Add(time.Duration(i) * 300 * time.Minute / time.Duration(n)).Truncate(time.Second).Format(time.RFC3339)
		log += fmt.Sprintf("%s,brisket,core,%.1f F\n%s,,grate,%d F\n", at, 40+110*float64(i)/float64(n), at, 268+i*100/n%7)
	}
	entries, err := schedule.ReadLog([]byte(log), p)
	if err != nil {
		t.Fatal(err)
	}
	return entries
}
