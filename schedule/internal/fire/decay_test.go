package fire

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Beside the library's; it falls all the way, and ends at nothing.
func TestDecayIsTheExponential(t *testing.T) {
	last, worst := 1.0, 0.0
	for x := 0.0; x < 40; x += 0.0007 {
		got, want := decay(x), math.Exp(-x)
		worst = max(worst, math.Abs(got/want-1))
		if got > last {
			t.Fatalf("at %v: %v after %v", x, got, last)
		}
		last = got
	}
	if worst > 1e-9 || decay(0) != 1 || decay(math.Inf(1)) != 0 || decay(1e9) != 0 || decay(math.NaN()) != 0 {
		t.Errorf("off by %.1e; at 0 %v, far out %v", worst, decay(0), decay(1e9))
	}
}

func BenchmarkStep(b *testing.B) {
	g := Grill{Kind: Kettle, DiameterM: 22.5 * inchM}
	h, t, s := g.Hearth(Banked, nil), g.Usual(), g.Setting(Weather{AirC: 21}, 0.25, 0.25, 0)
	for b.Loop() {
		c := Coals{Lit: 12, Unlit: 90}
		for range 100 {
			c = h.Step(&t, c, &s, 3)
		}
	}
}

// Abreast every fire is as it is alone, to the last bit: with the lid on and off, many coals and none, hot and cold.
func TestAbreastIsAlone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := drawGrill(t)
		h := g.Hearth(rapid.SampledFrom([]Layout{Banked, Ring}).Draw(t, "layout"), nil)
		s := g.Setting(drawWeather(t), rapid.Float64Range(0, 1).Draw(t, "top"), rapid.Float64Range(0, 1).Draw(t, "bottom"), 0)
		s.LidOff = rapid.IntRange(0, 9).Draw(t, "lid") == 0
		n, minutes := rapid.IntRange(0, 3*abreast).Draw(t, "fires"), rapid.Float64Range(0.1, 3).Draw(t, "minutes")
		traits, coals, alone := make([]Traits, n), make([]Coals, n), make([]Coals, n)
		for i := range coals {
			traits[i] = g.Usual()
			traits[i].Leak *= 1 + float64(i%7)/7
			traits[i].Blow = float64(i%3) - 1
			coals[i] = Coals{RiseK: float64(7*i) / 2, Lit: float64(i % 50), Unlit: float64(3 * (i % 40)), Burnt: float64(i % 90)}
			at := s
			at.Loss *= 1 + float64(i%5)/10
			alone[i] = h.Step(&traits[i], coals[i], &at, minutes)
		}
		h.StepAbreast(n, func(i int) Burning { return Burning{&traits[i], &coals[i], 1 + float64(i%5)/10, s.Top, s.Bottom} }, &s, minutes)
		for i := range coals {
			if coals[i] != alone[i] {
				t.Fatalf("fire %d: abreast %+v, alone %+v", i, coals[i], alone[i])
			}
		}
	})
}

func BenchmarkStepAbreast(b *testing.B) {
	g := Grill{Kind: Kettle, DiameterM: 22.5 * inchM}
	h, t, s := g.Hearth(Banked, nil), g.Usual(), g.Setting(Weather{AirC: 21}, 0.25, 0.25, 0)
	var coals [100]Coals
	for b.Loop() {
		for i := range coals {
			coals[i] = Coals{Lit: 12, Unlit: 90}
		}
		h.StepAbreast(len(coals), func(i int) Burning { return Burning{&t, &coals[i], 1, s.Top, s.Bottom} }, &s, 3)
	}
}
