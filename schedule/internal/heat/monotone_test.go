package heat

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// noise is how far two runs may differ by step control alone.
const noise = 0.004

func (c cuts) names() []string {
	var names []string
	for name := range c {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}

// timed is the time in s to a core temperature; false when it never comes.
func timed(b Body, in Surroundings, coreC float64) (float64, bool) {
	var s Sim
	s.Start(b, in)
	status := s.RunTo(coreC, MaxRunS)
	return s.ElapsedS(), status == Reached
}

func TestHotterAirIsFasterAndMoreIsSlower(t *testing.T) {
	c := readCuts(t)
	rapid.Check(t, func(rt *rapid.T) {
		name := rapid.SampledFrom(c.names()).Draw(rt, "cut")
		weight := c[name].Number(t, "w0_lb") * rapid.Float64Range(0.6, 1.6).Draw(rt, "weight")
		airC := rapid.Float64Range(110, 220).Draw(rt, "air")
		target := rapid.Float64Range(50, 90).Draw(rt, "target")
		surroundings := rapid.SampledFrom([]func(float64) Surroundings{Oven,
			func(c float64) Surroundings { return Grate(c, CalmDay()) },
			func(c float64) Surroundings { return Grate(c, CalmDay()).InFoil() },
		}).Draw(rt, "surroundings")
		b := c.body(t, name, weight, 0)
		base, ok := timed(b, surroundings(airC), target)
		if !ok {
			rt.Skip("never arrives")
		}
		if hot, _ := timed(b, surroundings(airC+5), target); hot > base*(1+noise) {
			rt.Errorf("5 K hotter air: %.0f s, before %.0f s", hot, base)
		}
		if heavy, _ := timed(c.body(t, name, weight*1.1, 0), surroundings(airC), target); heavy < base*(1-noise) {
			rt.Errorf("10 %% heavier: %.0f s, before %.0f s", heavy, base)
		}
		if more, ok := timed(b, surroundings(airC), target+1); ok && more < base {
			rt.Errorf("1 K more: %.0f s, before %.0f s", more, base)
		}
	})
}

func TestColderDayIsNeverFaster(t *testing.T) {
	c := readCuts(t)
	rapid.Check(t, func(rt *rapid.T) {
		name := rapid.SampledFrom(c.names()).Draw(rt, "cut")
		level := rapid.Float64Range(107, 200).Draw(rt, "level")
		warm := Outdoors{
			AirC:             rapid.Float64Range(-20, 40).Draw(rt, "air"),
			RelativeHumidity: rapid.Float64Range(0, 1).Draw(rt, "humidity"),
			AltitudeM:        rapid.Float64Range(0, 3000).Draw(rt, "altitude"),
			WaterPan:         rapid.Bool().Draw(rt, "pan"),
		}
		cold := warm
		cold.AirC -= rapid.Float64Range(1, 20).Draw(rt, "colder")
		target := rapid.Float64Range(50, 85).Draw(rt, "target")
		b := c.body(t, name, c[name].Number(t, "w0_lb"), 0)
		fast, ok := timed(b, Grate(level, warm), target)
		if !ok {
			rt.Skip("never arrives")
		}
		if slow, ok := timed(b, Grate(level, cold), target); ok && slow < fast*(1-noise) {
			rt.Errorf("%s at %.0f degC: %.0f s at %.0f degC outside, %.0f s at %.0f degC", name, level, slow, cold.AirC, fast, warm.AirC)
		}
	})
}

func TestBetterBoxHoldsLonger(t *testing.T) {
	var cooked Sim
	cooked.Start(readCuts(t).body(t, "pork-butt", 8, 0), Oven(150))
	cooked.RunTo(93, MaxRunS)
	last := 0.0
	for _, h := range []float64{BoxPoorWM2K, BoxWM2K, BoxGoodWM2K, BoxVeryGoodWM2K} {
		s := cooked
		s.Change(Boxed(21, h))
		start := s.ElapsedS()
		s.RunUntilOuterBelow(60, MaxRunS)
		if held := s.ElapsedS() - start; held <= last {
			t.Errorf("box of %g W/(m2 K) holds %.0f s, a worse one %.0f s", h, held, last)
		} else {
			last = held
		}
	}
}
