package schedule

import (
	"context"
	"fmt"
	"testing"
	"time"
)

// BenchmarkRevise revises the example party by two hundred readings of core and
// grate, five hours into the brisket.
func BenchmarkRevise(b *testing.B) {
	p := revisionParty(b)
	on := revisionStep(b, p, StepPutOn, "brisket")
	entries := twoHundredReadings(b, p, on)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Revise(context.Background(), p, entries, on.Add(300*time.Minute)); err != nil {
			b.Fatal(err)
		}
	}
}

// twoHundredReadings are a hundred of the core and a hundred of the grate.
func twoHundredReadings(t testing.TB, p Plan, on time.Time) []Entry {
	t.Helper()
	log := fmt.Sprintf("time,dish,kind,value\n%s,brisket,on,\n", on.Format(time.RFC3339))
	for i := range 100 {
		at := on.Add(time.Duration(i*3) * time.Minute).Format(time.RFC3339)
		log += fmt.Sprintf("%s,brisket,core,%.1f F\n%s,,grate,%d F\n", at, 40+110*float64(i)/100, at, 268+i%7)
	}
	entries, err := ReadLog([]byte(log), p)
	if err != nil {
		t.Fatal(err)
	}
	return entries
}
