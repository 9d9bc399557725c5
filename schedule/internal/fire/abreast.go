package fire

import "math"

// Many fires of one hearth are stepped abreast: what one of them waits for, a root or a power of e, the next ones need not.
// Every figure is worked out as [Hearth.Step] does it, to the last bit; it takes half the time.

// Burning is one of them: its grill's traits, its coals, what multiplies the setting's loss for it, and what its vents let
// through in place of the setting's.
type Burning struct {
	Traits      *Traits
	Coals       *Coals
	Loss        float64
	Top, Bottom float64
}

// abreast is how many go side by side; more would not stay near the processor.
const abreast = 32

// row is a figure of each of them.
type row [abreast]float64

// StepAbreast is Step for n fires, in place; each hands out one of them.
func (h *Hearth) StepAbreast(n int, each func(i int) Burning, s *Setting, minutes float64) {
	if s.LidOff {
		for i := range n {
			b := each(i)
			*b.Coals = h.lidOff(b.Traits, *b.Coals, minutes)
		}
		return
	}
	var some [abreast]Burning
	for from := 0; from < n; from += abreast {
		k := min(n-from, abreast)
		for i := range k {
			some[i] = each(from + i)
		}
		h.stepSome(some[:k], s, minutes)
	}
}

func (h *Hearth) stepSome(some []Burning, s *Setting, minutes float64) {
	var aims, q, qa, left row
	h.aims(some, s, &aims, &q, &qa)
	for i := range some {
		t, c := some[i].Traits, some[i].Coals
		tau := t.UpMinutes
		if aims[i] < c.RiseK {
			tau = t.DownMinutes
		}
		left[i] = minutes / tau
	}
	decays(left[:len(some)])
	for i := range some {
		t, c := some[i].Traits, some[i].Coals
		c.RiseK = aims[i] + (c.RiseK-aims[i])*left[i]
		burn := burntPerK * q[i] * h.size
		out := max(0, c.Lit-t.Full*h.size*qa[i]/t.LitK) / t.StarveTau * 60
		h.consume(t, c, burn, t.Spread*burn, out, minutes/60)
	}
}

// aims is aim for some fires.
func (h *Hearth) aims(some []Burning, s *Setting, rises, qs, qas *row) {
	var open, x row
	var turning [abreast]int
	for i := range some {
		x[i] = some[i].Coals.Burnt / (some[i].Traits.AshHold * h.size * h.size * h.hold)
		turning[i], rises[i] = i, max(some[i].Coals.RiseK, leastRiseK)
	}
	decays(x[:len(some)])
	for i := range some {
		t := some[i].Traits
		top, bottom := some[i].Top+t.Leak, t.Ratio*some[i].Bottom+t.Leak
		bed := t.Bed * x[i]
		open[i] = 1 / math.Sqrt(1/(top*top)+1/(bottom*bottom)+1/(bed*bed))
	}
	at, still := *s, turning[:len(some)]
	for range settleTurns {
		for k, i := range still {
			t := some[i].Traits
			qas[i] = airK(t, open[i], rises[i], s)
			x[k] = min(t.LitK*some[i].Coals.Lit/(h.size*qas[i]), mostShareN)
		}
		decays(x[:len(still)])
		n := 0
		for k, i := range still {
			qs[i] = qas[i] * (1 - x[k])
			at.Loss = s.Loss * some[i].Loss
			was := rises[i]
			rises[i] = h.riseOf(qs[i], &at)
			if !(math.Abs(rises[i]-was) < settledK) {
				still[n] = i
				n++
			}
		}
		still = still[:n]
	}
}
