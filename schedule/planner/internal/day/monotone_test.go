package day

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/unit"
)

// drawWay is the bare way of cooking some large piece beside the coals on a day; it
// is empty where that never arrives.
func drawWay(t *rapid.T, weather string, label string) (*Day, *Item, Way) {
	dish := rapid.SampledFrom([]struct {
		cut         string
		least, most float64 // lb
		gratesF     []float64
		band        string
	}{
		{"brisket", 8, 16, []float64{225, 250, 275}, schedule.BandLow},
		{"pork-butt", 5, 10, []float64{225, 250, 275}, schedule.BandLow},
		{"chicken", 3, 7, []float64{350, 375, 400}, schedule.BandHot},
		{"turkey", 10, 18, []float64{325, 350}, schedule.BandHot},
		{"rib-roast-boneless", 4, 9, []float64{250, 275}, schedule.BandLow},
	}).Draw(t, label+"cut")
	lb := rapid.Float64Range(dish.least, dish.most).Draw(t, label+"lb")
	grate := rapid.SampledFrom(dish.gratesF).Draw(t, label+"grate")
	return wayOn(t, weather, dish.cut, lb, grate, dish.band)
}

// resolved is the day of an evening in July, of a request that goes on with further fields.
func resolved(t interface{ Fatal(...any) }, rest string) *Day {
	r, err := schedule.Read([]byte("format: 1\nserve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\n" + rest))
	if err != nil {
		t.Fatal(err)
	}
	sound, err := Examine(r)
	if err != nil {
		t.Fatal(err)
	}
	d, err := Resolve(sound, Options{})
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func wayOn(t interface{ Fatal(...any) }, weather, cutName string, lb, grateF float64, band string) (*Day, *Item, Way) {
	d := resolved(t, fmt.Sprintf("grill: {kind: kettle, diameter: 22 in}\noven: {hold: 170 F}\n%s\ndishes:\n  - {cut: %s, weight: %.4f lb}\n", weather, cutName, lb))
	it := &d.Items[0]
	ways := d.indirectWays(it, it.Lots[0], band, unit.FToC(grateF))
	for _, w := range ways {
		if w.With == "" {
			return d, it, w
		}
	}
	return d, it, Way{}
}

// At the same grate a colder or windier day never cooks faster. The model's own grid
// is good for a few parts in a thousand.
func TestHarderDaysNeverCookFaster(t *testing.T) {
	const grid = 0.004
	rapid.Check(t, func(t *rapid.T) {
		air, wind := rapid.Float64Range(12, 95).Draw(t, "air F"), rapid.Float64Range(0, 15).Draw(t, "wind mph")
		colder, windier := rapid.Float64Range(0, 50).Draw(t, "colder"), rapid.Float64Range(0, 15).Draw(t, "windier")
		say := func(air, wind float64) string {
			return fmt.Sprintf("weather: {air: %.3f F, wind: %.3f mph}\n", air, wind)
		}
		_, it, mild := drawWay(t, say(air, wind), "")
		if mild.First.Expected == 0 {
			return // never arrives, and a harder day is not asked to
		}
		grateF := fahrenheit(mild.LevelC)
		_, _, hard := wayOn(t, say(air-colder, wind+windier), it.Cut.Name, float64(it.Lots[0].MassKg)/0.45359237, grateF, mild.Band)
		if hard.First.Expected > 0 && hard.ModelDone < mild.ModelDone*(1-grid) {
			t.Errorf("%s at %.0f F: %.1f min on the mild day, %.1f on the harder", it.Cut.Name, grateF, mild.ModelDone, hard.ModelDone)
		}
	})
}

// Whatever waits, the poor end is never later than the expected one, a better box
// and more pieces in it never cool faster, and an open stand never lengthens a hold.
func TestHoldsAreMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, it, w := drawWay(t, "weather: {air: 60 F}\n", "")
		if w.State == nil || w.PullC < safety.HoldFromC {
			return
		}
		method := rapid.SampledFrom([]string{schedule.HoldTent, schedule.HoldBox, schedule.HoldOven, schedule.HoldGrill, schedule.HoldCounter}).Draw(t, "method")
		pieces := rapid.IntRange(1, 6).Draw(t, "pieces")
		held := Waiting{Method: method, Pieces: pieces, Vent: leastVent(it, method), OvenC: unit.FToC(170)}
		more := held
		more.Pieces++
		s := *w.State
		usual := d.Course(w, held, ExpectedEnd).untilOuterBelow(&s, safety.DangerHighC)
		poor := d.HotFor(w, held)
		if poor > usual+0.01 {
			t.Errorf("%s in %s: %.1f min at the poor end, %.1f expected", it.Cut.Name, method, poor, usual)
		}
		if more := d.HotFor(w, more); more < poor-0.01 {
			t.Errorf("%s in %s: %.1f min, %.1f with one more piece", it.Cut.Name, method, poor, more)
		}
		better, worse := rapid.Float64Range(2, 5).Draw(t, "u"), rapid.Float64Range(0, 3).Draw(t, "worse")
		hot := func(u float64) float64 {
			s := *w.State
			return course{{0, heat.Boxed(RoomC, u)}}.untilOuterBelow(&s, safety.DangerHighC)
		}
		if a, b := hot(better), hot(better+worse); b > a+0.01 {
			t.Errorf("%s: %.1f min at %.2f W/(m2 K), %.1f at %.2f", it.Cut.Name, a, better, b, better+worse)
		}
	})
}
