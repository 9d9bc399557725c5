package steer

import (
	"testing"

	"pgregory.net/rapid"
)

// What is off its level and stays so is never left alone as if it came right: vents that have something to give are moved,
// and where they are left the reason is true of what is expected.
func TestWhatStaysOffIsNotLeftAlone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := poured(rapid.Float64Range(6, 40).Draw(t, "lit"), rapid.Float64Range(20, 120).Draw(t, "unlit"))
		top, bottom := rapid.SampledFrom(topMarks()).Draw(t, "top"), rapid.SampledFrom(bottomMarks()).Draw(t, "bottom")
		if rapid.Bool().Draw(t, "met") {
			b = met(top, bottom)
		}
		b.Top, b.Bottom, b.VentsUnsure = top, bottom, rapid.Bool().Draw(t, "unsure")
		level := rapid.Float64Range(225, 325).Draw(t, "level")
		off := rapid.Float64Range(28, 60).Draw(t, "off") * rapid.SampledFrom([]float64{1, -1}).Draw(t, "side")
		from := rapid.Float64Range(60, 240).Draw(t, "from")
		log := []Event{read(from, level+off-rapid.Float64Range(-3, 6).Draw(t, "drift")), read(from+rapid.Float64Range(10, 40).Draw(t, "apart"), level+off)}
		f := Follow(b, log, log[1].Minute)
		a := f.Advise(Want{LevelC: toC(level)})
		if a.Do != Leave || a.Trust != Trusted {
			return
		}
		now, late := toF(a.Now.Middle)-level, toF(f.plain(f.bits(), f.Vents(), lookLast).Middle)-level
		switch {
		case a.Why == InBand && (abs(now) > 25 || abs(late) > 25):
			t.Fatalf("%.0f F off, later %.0f: it is said to stay", now, late)
		case a.Why == ComingRight && now*late > 0 && abs(late) > abs(now)-5:
			t.Fatalf("%.0f F off, later %.0f: it is said to come back", now, late)
		case now > 25 && late > 30 && top >= 1./4 && bottom >= 1./4, now < -25 && late < -30 && top <= 1./4 && bottom <= 1./4 && a.Why != FewLit && a.Why != Spent && a.Why != Ashed:
			t.Fatalf("%.0f F off, later %.0f with vents at %.2f and %.2f, and they are left: why %v", now, late, top, bottom, a.Why)
		}
	})
}

// The grate at 315 and then 318 F under half open vents, and 275 F wanted: whatever else is known, air is taken away.
func TestHotUnderHalfVentsIsClosed(t *testing.T) {
	for name, b := range map[string]Begin{"poured": poured(13, 107), "met": met(0.5, 0.5), "poured hot": poured(40, 60)} {
		for _, unsure := range []bool{false, true} {
			b.Top, b.Bottom, b.VentsUnsure = 0.5, 0.5, unsure
			f := Follow(b, []Event{read(105, 315), read(135, 318)}, 135)
			if a := f.Advise(Want{LevelC: toC(275)}); a.Do != Move || !f.lessAir(a) {
				t.Errorf("%s, unsure %v: %v, why %v, vents to %+v", name, unsure, a.Do, a.Why, a.To)
			}
		}
	}
}
