package heat

import "testing"

// A bare brisket, the run of the benchmark BenchmarkBrisket14h, allocates nothing: time
// cannot be tested on a shared machine, and most slips that cost time allocate.
func TestALongBrisketAllocatesNothing(t *testing.T) {
	body, in := readCuts(t).body(t, "brisket", 12, 0), Grate(celsius(237), CalmDay())
	var s Sim
	runs := testing.AllocsPerRun(5, func() {
		s.Start(body, in)
		if s.RunTo(celsius(195), MaxRunS) != Reached {
			t.Fatal("not reached")
		}
	})
	hours := s.ElapsedS() / 3600
	t.Logf("%.1f h, %g allocations a run", hours, runs)
	if runs != 0 || hours < 13 || hours > 14.5 { // the stall demonstration's time: tamu_stall2013
		t.Errorf("%g allocations in a run of %.1f h, want none in one of about 14 h", runs, hours)
	}
}
