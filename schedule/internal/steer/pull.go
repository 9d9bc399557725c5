package steer

import "math"

// pull moves every guess towards a reading: each of its figures by as much as it goes along with what a thermometer
// shows over all guesses (a regression on what each would show, the readings' error thrown anew for each). A hundred
// guesses learn more so than by being weighed, where a grill unlike most leaves only a few of them alive.
func (f *Fire) pull(k Kind, rise, surprise float64) {
	errorK := float64(readK)
	if surprise > oddSurprise {
		errorK = wildK
	}
	n := float64(len(f.guesses))
	shows, room, mean := make([]float64, len(f.guesses)), make([]float64, len(f.guesses)), 0.0
	for i := range f.guesses {
		shows[i] = f.guesses[i].shows(k)
		mean += shows[i] / n
	}
	variance := 0.0
	for _, y := range shows {
		dy := y - mean
		variance += dy * dy / (n - 1)
	}
	push := make([]float64, len(f.guesses))
	for i := range push {
		push[i] = (rise + errorK*f.dice.normal() - shows[i]) / (variance + errorK*errorK)
	}
	for _, p := range pulledFigures {
		f.pullOne(p, room, shows, mean, variance, push)
	}
	f.each(func(g *guess) {
		g.jitter(&f.dice, &f.sway)
		g.traits.Blow = min(max(g.traits.Blow, -1), 1)
		g.coals.RiseK = max(g.coals.RiseK, 0)
	})
}

// pullRatio takes a gauge that was read beside the grate: it teaches how the two stand to each other, and nothing of the fire,
// of which the grate has told.
func (f *Fire) pullRatio(rise float64) {
	f.each(func(g *guess) {
		if rise > leastRatioK && g.coals.RiseK > leastRatioK {
			t := &g.traits
			t.GaugeRatio *= math.Exp(ratioPull * math.Log((rise+readK*f.dice.normal())/g.coals.RiseK/t.GaugeRatio))
		}
	})
}

const (
	leastRatioK = 30.0 // a cold grill's gauge tells nothing
	ratioPull   = 0.85 // of the way: the spread between grills is some three times a pair's own
)

// figure is one that readings pull at; of those that are ratios the logarithm.
type figure struct {
	of  func(*guess) *float64
	log bool
}

var pulledFigures = func() (out []figure) {
	for _, k := range traitKeys {
		out = append(out, figure{func(g *guess) *float64 { return k.of(&g.traits) }, true})
	}
	return append(out,
		figure{func(g *guess) *float64 { return &g.cold }, true},
		figure{func(g *guess) *float64 { return &g.top.power }, true},
		figure{func(g *guess) *float64 { return &g.bottom.power }, true},
		figure{func(g *guess) *float64 { return &g.traits.Blow }, false},
		figure{func(g *guess) *float64 { return &g.traits.Gust }, false},
		figure{func(g *guess) *float64 { return &g.coals.Lit }, true},
		figure{func(g *guess) *float64 { return &g.coals.Unlit }, true},
		figure{func(g *guess) *float64 { return &g.coals.Burnt }, true},
		figure{func(g *guess) *float64 { return &g.coals.RiseK }, false})
}()

const leastLog = 1e-3

func (f *Fire) pullOne(p figure, room, shows []float64, meanShown, shown float64, push []float64) {
	n, mean := float64(len(f.guesses)), 0.0
	for i := range f.guesses {
		x := *p.of(&f.guesses[i])
		if p.log {
			x = math.Log(max(x, leastLog))
		}
		room[i] = x
		mean += x / n
	}
	with, own := 0.0, 0.0
	for i, x := range room {
		dx, dy := x-mean, shows[i]-meanShown
		with += dx * dy / (n - 1)
		own += dx * dx / (n - 1)
	}
	if own <= 0 || shown <= 0 {
		return
	}
	if r2 := with * with / (own * shown); r2 < chance {
		return // no more than chance would show
	}
	for i := range f.guesses {
		x := p.of(&f.guesses[i])
		if move := with * push[i]; p.log {
			*x *= math.Exp(min(max(move, -1), 1))
		} else {
			*x += move
		}
	}
}

// chance is the square of a correlation that a hundred guesses show of nothing, about.
const chance = 0.015
