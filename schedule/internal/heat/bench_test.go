package heat

import "testing"

func BenchmarkBrisket14h(b *testing.B) {
	body, in := readCuts(b).body(b, "brisket", 12, 0), Grate(celsius(237), CalmDay())
	var s Sim
	b.ReportAllocs()
	for b.Loop() {
		s.Start(body, in)
		if s.RunTo(celsius(195), MaxRunS) != Reached {
			b.Fatal("not reached")
		}
	}
	b.ReportMetric(float64(s.steps), "steps")
}

func BenchmarkBrisketCoarse(b *testing.B) {
	body, in := readCuts(b).body(b, "brisket", 12, 0), Grate(celsius(237), CalmDay())
	var s Sim
	b.ReportAllocs()
	for b.Loop() {
		s.StartWith(body, in, Coarse)
		s.RunTo(celsius(195), MaxRunS)
	}
}

func BenchmarkChicken(b *testing.B) {
	body, in := readCuts(b).body(b, "chicken", 4, 0), Oven(celsius(350))
	var s Sim
	b.ReportAllocs()
	for b.Loop() {
		s.Start(body, in)
		s.RunTo(celsius(165), MaxRunS)
	}
}

func BenchmarkBoxedHold(b *testing.B) {
	var cooked Sim
	cooked.Start(readCuts(b).body(b, "brisket", 12, 0), Grate(celsius(250), CalmDay()))
	cooked.RunTo(95, MaxRunS)
	b.ReportAllocs()
	for b.Loop() {
		s := cooked
		s.Change(Boxed(21, BoxWM2K))
		s.RunUntilOuterBelow(60, MaxRunS)
	}
}

func BenchmarkPattyTurnedOnce(b *testing.B) {
	body := readCuts(b).body(b, "burger", 0.375, 0)
	var s Slab
	b.ReportAllocs()
	for b.Loop() {
		s.Start(body, DirectFire(true))
		s.RunToTurnedOnce(celsius(160), MaxDirectS)
	}
}
