package steer

import (
	"example.com/cookday/schedule/internal/fire"
)

// guess is one idea of the grill and of the fire in it.
type guess struct {
	traits fire.Traits
	coals  fire.Coals
}

// A fire is no clock: from step to step it wanders by so much in five minutes (assumptions).
const (
	wanderGain = 0.025
	wanderLit  = 0.05
	wanderK    = 1.2
)

func (g *guess) wander(d *dice, root float64) {
	g.traits.Gain *= d.factor(wanderGain * root)
	g.coals.Lit *= d.factor(wanderLit * root)
	g.coals.RiseK = max(g.coals.RiseK+wanderK*root*d.normal(), 0)
}

// jitter lets a guess wander at each reading: a hundred of them agree too soon, and a fire told as sure as they are is not
// looked at in time (by so much the moves on simulated cooks were best; half of it and twice of it were worse).
func (g *guess) jitter(d *dice) {
	t := &g.traits
	t.Gain *= d.factor(0.08)
	t.Leak *= d.factor(0.10)
	t.Spread *= d.factor(0.17)
	t.Bed *= d.factor(0.03)
	t.UpMinutes *= d.factor(0.03)
	t.DownMinutes *= d.factor(0.04)
	g.coals.Lit *= d.factor(0.05)
	g.coals.RiseK = max(g.coals.RiseK+d.normal(), 0)
}

// shows is what a thermometer would show above the air, K.
func (g *guess) shows(k Kind) float64 {
	if k == Gauge {
		return g.traits.GaugeRatio * g.coals.RiseK
	}
	return g.coals.RiseK
}

// A reading is off by readK, once in a while by wildK: a probe that touches meat, a gust, a slip of the pen.
const (
	readK = 7 / 1.8
	wildK = 22 / 1.8
)
