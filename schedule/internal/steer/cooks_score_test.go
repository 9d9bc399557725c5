package steer

import (
	"flag"
	"fmt"
	"testing"
)

func (a score) plus(b score) score {
	return score{a.moves + b.moves, a.looks + b.looks, a.asks + b.asks, a.overs + b.overs, a.outside + b.outside, a.reached + b.reached, a.off + b.off, a.counted + b.counted}
}

func (a score) told(cooks int) string {
	k := float64(cooks)
	return fmt.Sprintf("moves %5.2f, looks %5.1f (%.1f asked without one), overshoots %4.2f, outside %6.1f min, in the band after %5.1f min, off by %4.1f F",
		a.moves/k, a.looks/k, a.asks/k, a.overs/k, a.outside/k, a.reached/k, a.off/a.counted)
}

// tally is many cooks, by each way of steering.
type tally struct {
	cooks, drawn  int
	by            map[string]score
	better, worse int // cooks in which the advice was outside the band by 5 min less, or more, than the rule
}

// ratio is the advice's figure of the rule's.
func (a tally) ratio(way string, of func(score) float64) float64 {
	return of(a.by[way]) / of(a.by["rule"])
}

func outside(s score) float64 { return s.outside }
func moves(s score) float64   { return s.moves }
func overs(s score) float64   { return s.overs }

// way is a way of steering one cook.
type way struct {
	name string
	run  func(*course) score
}

func ruleOf(wait, from float64) func(*course) score {
	return func(r *course) score { return r.rule(wait, from) }
}

func advisedBy(r *course) score {
	s, _ := r.advised(nil)
	return s
}

// steered runs every way on the same draws, the work shared by a few.
func steered(n int, seed uint64, by float64, other *otherForm, ways ...way) tally {
	const hands = 2
	parts := make(chan tally, hands)
	for h := range hands {
		go func() { parts <- steeredBy((n+hands-1)/hands, seed+uint64(h), by, other, ways) }()
	}
	all := tally{by: map[string]score{}}
	for range hands {
		p := <-parts
		all.cooks, all.drawn, all.better, all.worse = all.cooks+p.cooks, all.drawn+p.drawn, all.better+p.better, all.worse+p.worse
		for name, s := range p.by {
			all.by[name] = all.by[name].plus(s)
		}
	}
	return all
}

func steeredBy(n int, seed uint64, by float64, other *otherForm, ways []way) tally {
	d := dice{state: seed}
	all := tally{by: map[string]score{}}
	for all.cooks < n {
		truth, power := drawTruth(&d, by)
		c := drawCook(&d, truth, power)
		c.other = other
		all.drawn++
		if !c.holdable() {
			continue
		}
		all.cooks++
		got := map[string]score{}
		for _, w := range ways {
			got[w.name] = w.run(c.begin())
			all.by[w.name] = all.by[w.name].plus(got[w.name])
		}
		if gain := got["rule"].outside - got["advice"].outside; gain > 5 {
			all.better++
		} else if gain < -5 {
			all.worse++
		}
	}
	return all
}

func (a tally) log(t *testing.T, title string) {
	t.Helper()
	t.Logf("%s: %d cooks of %d drawn; the advice better in %d, worse in %d", title, a.cooks, a.drawn, a.better, a.worse)
	for name, s := range a.by {
		t.Logf("  %-28s %s", name, s.told(a.cooks))
	}
	t.Logf("  advice of rule: outside %.3f, moves %.3f, overshoots %.3f", a.ratio("advice", outside), a.ratio("advice", moves), a.ratio("advice", overs))
}

// seedOfCooks is any number; another one gives other draws.
const seedOfCooks = 20270703

// long is how many cooks the long run steers; .ci/full.d/fire.sh asks for 500.
var long = flag.Int("cooks", 0, "steer so many simulated cooks by every way; minutes")

// other seeds than that of the table, from which the figures of the advice were chosen, tell what they are worth.
var seed = flag.Uint64("cooks-seed", 0, "draw them from this seed, by rule and advice alone")

// A hundred and twenty cooks in the gate. So few draws scatter by a tenth or so: the bounds are those of the long run, wider by that.
func TestAdviceBeatsTheRuleOfThumb(t *testing.T) {
	if testing.Short() {
		t.Skip("cooks of five hours")
	}
	all := steered(120, seedOfCooks, 1, nil, way{"rule", ruleOf(15, 25)}, way{"advice", advisedBy})
	all.log(t, "as far off as grills differ")
	if all.ratio("advice", outside) > 0.98 || all.ratio("advice", moves) > 0.98 || all.ratio("advice", overs) > 0.90 {
		t.Error("the advice is no better than the rule of thumb")
	}
}

// The long run. What was asked for and what is reached stands beside each figure.
func TestManyCooks(t *testing.T) {
	if *long == 0 {
		t.Skip("-cooks 500 asks for it")
	}
	rule, advice := way{"rule", ruleOf(15, 25)}, way{"advice", advisedBy}
	if *seed != 0 {
		steered(*long, *seed, 1, nil, rule, advice).log(t, "another seed")
		return
	}
	all := steered(*long, seedOfCooks, 1, nil, rule, advice, way{"rule, 30 min", ruleOf(30, 25)}, way{"never touched", (*course).start})
	all.log(t, "as far off as grills differ")
	if all.ratio("advice", outside) > mostOutside || all.ratio("advice", moves) > mostMoves || all.ratio("advice", overs) > mostOvers {
		t.Error("worse than it was")
	}
	wide := steered(*long/2, seedOfCooks, 1.5, nil, rule, advice)
	wide.log(t, "half as far off again")
	if wide.ratio("advice", outside) > 1 || wide.ratio("advice", moves) > 1 || wide.ratio("advice", overs) > 1 {
		t.Error("with errors half as large again the advice is worse than the rule")
	}
	steered(*long/5, seedOfCooks, 1, &otherForm{bedTau: 12}, rule, advice).log(t, "a fire of another form")
}

// What was asked for, and is reached by the five hundred of this seed. Five hundred cooks tell minutes to 0.02 and overshoots to 0.05 or
// so: another seed, by which nothing was chosen, has 0.79, 0.82 and 0.67.
const (
	mostOutside = 0.82
	mostMoves   = 0.82
	mostOvers   = 0.65
)
