package steer

import (
	"math"

	"example.com/cookday/schedule/internal/fire"
)

// guess is one idea of the grill and of the fire in it.
type guess struct {
	traits fire.Traits
	coals  fire.Coals
	cold   float64 // heat that cold food takes, of what it is taken to
	top    vent
	bottom vent
}

// vent is what one guess takes the marks of a vent for: a share open lets through that share to a power.
type vent struct{ power, share, at, let float64 }

// lets is what it lets through, of what it lets through fully open.
func (v *vent) lets(share float64) float64 {
	if share <= 0 || share >= 1 {
		return share
	}
	if v.share != share || v.at != v.power {
		v.share, v.at, v.let = share, v.power, math.Pow(share, v.power)
	}
	return v.let
}

// stepAll lets guesses burn on under a setting without their cold food.
func stepAll(all []guess, h *fire.Hearth, s *fire.Setting, cold, minutes float64) {
	left := math.Exp(-minutes / gustMinutes)
	h.StepAbreast(len(all), func(i int) fire.Burning {
		g := &all[i]
		g.traits.Gust *= left
		return fire.Burning{Traits: &g.traits, Coals: &g.coals, Loss: 1 + cold*g.cold, Top: g.top.lets(s.Top), Bottom: g.bottom.lets(s.Bottom)}
	}, s, minutes)
}

// A fire is no clock: from step to step it wanders by so much in five minutes (assumptions).
const (
	wanderGain = 0.025
	wanderLit  = 0.05
	wanderK    = 1.2

	// Wind that nobody tells of comes and goes within half an hour or so. What it did is not the grill's and does not stay: a
	// fire that it pushed comes back by itself.
	gustSpread  = 0.3 // of the draught squared, 1 being that of a rise of 100 K
	gustMinutes = 25.0
)

// gusts is how far the wind that nobody tells of wanders, of a step whose share of five minutes has a root.
func gusts(root float64) float64 {
	minutes := 5 * root * root
	return gustSpread * math.Sqrt(-math.Expm1(-2*minutes/gustMinutes))
}

func (g *guess) wander(d *dice, root, gusts float64) {
	g.traits.Gust += gusts * d.normal()
	g.traits.Gain *= d.factor(wanderGain * root)
	g.coals.Lit *= d.factor(wanderLit * root)
	g.coals.RiseK = max(g.coals.RiseK+wanderK*root*d.normal(), 0)
}

// jitter lets a guess wander at each reading: a hundred of them agree too soon, and a fire told as sure as they are is not
// looked at in time (chosen on simulated cooks together with the wind that passes).
func (g *guess) jitter(d *dice, by *sway) {
	t := &g.traits
	t.Gain *= d.factor(by.gain)
	t.Leak *= d.factor(by.leak)
	t.Spread *= d.factor(by.catching)
	t.Bed *= d.factor(by.bed)
	t.UpMinutes *= d.factor(by.up)
	t.DownMinutes *= d.factor(by.down)
	g.coals.Lit *= d.factor(0.05)
	g.coals.RiseK = max(g.coals.RiseK+d.normal(), 0)
}

// sway is by how much guesses wander at a reading, as spreads of logarithms.
type sway struct{ gain, leak, catching, bed, up, down float64 }

// swayOf a grill: of what was learned of it already guesses wander less, down to a half of it, for what differs from day to
// day is not of the grill (of a grill that was known to the last figure a third served as well on simulated cooks).
func swayOf(known map[string]Figure) sway {
	usual := usualRecord(&Begin{})
	of := func(key string, by float64) float64 {
		return by * min(max(known[key].Spread/usual[key].Spread, leastSway), 1)
	}
	return sway{of("gain", 0.05), of("leak", 0.10), of("catching", 0.17), of("bed", 0.03), of("warming", 0.03), of("cooling", 0.04)}
}

const leastSway = 0.5

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

// takeOut takes so many burning coals out, give or take a factor; below 1 a share of all.
func (g *guess) takeOut(count, unsure float64) {
	if count < 1 {
		left := 1 - min(count*unsure, 1)
		g.coals.Lit, g.coals.Unlit = g.coals.Lit*left, g.coals.Unlit*left
		return
	}
	g.coals.Lit = max(0, g.coals.Lit-count*unsure)
}
