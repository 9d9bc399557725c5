package schedule

import (
	"fmt"
	"math"

	"example.com/cookday/schedule/internal/heat"
)

// doubtfulC is the grate temperature below which a fire that brings meat to
// doubtfulTargetC is more likely misread than real: cooks' logs at 200-208 F end
// hours before the model lets them. believedC is what such a grate has instead.
var (
	doubtfulC       = celsius(215)
	doubtfulTargetC = celsius(195)
	believedC       = celsius(220)
)

// doubtful says whether a level is hardly what the grate has.
func doubtful(levelC, targetC float64) bool { return levelC < doubtfulC && targetC >= doubtfulTargetC }

// believed is the level that the model is given for a level as stated.
func believed(levelC, targetC float64) float64 {
	if doubtful(levelC, targetC) {
		return believedC
	}
	return levelC
}

// setAir sets the air that the model is given for the level of the way at hand, bare
// or under a wrap. Where the cook asks for a level at which the core would stop just
// short of its aim, the air is the least, within the error of a grate, that brings it
// there: cooks at 225 degF do get to 203 degF, since no fire keeps still (common
// practice, no source; one log of 15.7 h for 9 lb of pork butt).
func (k *kitchen) setAir(with string) {
	levelC := k.base.levelC
	air := believed(levelC, k.it.targetC)
	if k.it.dish.Level != nil && levelC >= doubtfulC {
		if least := k.leastAir(air, air+grateErrorK, with); least > 0 {
			air = least
		}
	}
	k.base.airC, k.in = air, heat.Grate(air, k.d.outdoors)
}

// arrivesIn says whether air of that temperature brings the core to its aim.
func (k *kitchen) arrivesIn(airC float64, with string) bool {
	return k.aimC() <= k.stopsAt(airC, with)
}

// leastAir is the least air between two that brings the core to its aim, degC; 0 where
// none does.
func (k *kitchen) leastAir(lowC, highC float64, with string) float64 {
	switch {
	case k.arrivesIn(lowC, with):
		return lowC
	case !k.arrivesIn(highC, with):
		return 0
	}
	const closeK = 0.05
	for highC-lowC > closeK {
		if mid := (lowC + highC) / 2; k.arrivesIn(mid, with) {
			highC = mid
		} else {
			lowC = mid
		}
	}
	return highC
}

// aimC is the core temperature that a cook creeps up to.
func (k *kitchen) aimC() float64 {
	if k.tenderS > 0 {
		return k.it.cut.TenderAboveC
	}
	return k.base.pullC
}

// noteAir says it where the model is given another air than the level.
func (d *day) noteAir(path string, it *item, w way) {
	switch {
	case w.direct || w.airC == w.levelC:
	case doubtful(w.levelC, it.targetC):
		d.find(Finding{Code: "grate-doubtful", Severity: Warning, Path: path, Dishes: []string{it.dish.ID}, Text: fmt.Sprintf(
			"A grate at %s hardly brings meat to %s. Where it seems to, the grate is hotter than its gauge says: the times are for %s. Measure beside the meat.",
			d.grate(w.levelC), d.core(it.targetC), d.grate(w.airC))})
	default:
		wrap := ""
		if w.with == "" && it.cut.Wrap.FromC > 0 {
			wrap = "wrap it, or "
		}
		d.find(Finding{Code: "grate-creeps", Severity: Warning, Path: path, Dishes: []string{it.dish.ID}, Text: fmt.Sprintf(
			"At %s the core only just creeps up to %s, and a little cooler it never gets there. The times are for %s on average. Surer: %skeep %s or more.",
			d.grate(w.levelC), d.core(it.targetC), d.core(w.airC), wrap, d.grate(w.airC+grateErrorK))})
	}
}

// soughtC is how far a grate is looked for that brings a dish to its target, degC.
var soughtC = celsius(400)

// neverArrives is the finding of a dish that no fire on offer brings to its target.
func (d *day) neverArrives(it *item) Finding {
	f := Finding{Code: codeNeverArrives, Severity: Danger, Path: it.path("level"), Dishes: []string{it.dish.ID}}
	f.Text = fmt.Sprintf("%s will not get to %s on any fire that it may cook on: the air is too cool for that, and the meat stops short of it. Use a hotter grate or a lower target.",
		it.dish.Name, d.core(it.targetC))
	if it.dish.Level == nil || it.dish.Finish != "" {
		return f
	}
	levelC, with := float64(*it.dish.Level), ""
	if wraps, bare := it.wraps(); !bare && len(wraps) > 0 {
		with = wraps[0].With
	}
	k := kitchen{d: d, it: it, body: it.body(it.lots[0].massKg)}
	k.base = way{levelC: levelC, pullC: it.targetC}
	takes := "No grate brings it there."
	if least := k.leastAir(levelC, math.Max(levelC, soughtC), with); least > 0 {
		takes = fmt.Sprintf("It takes about %s, or a lower target.", d.grate(least+grateErrorK/2))
	}
	f.Text = fmt.Sprintf("%s will not get to %s with the grate at %s: the core stops short of it, near %s. %s",
		it.dish.Name, d.core(it.targetC), d.grate(levelC), d.core(k.stopsAt(levelC, with)), takes)
	return f
}

// stopsAt is the core temperature that air of that temperature brings the core close to.
func (k *kitchen) stopsAt(airC float64, with string) float64 {
	in := heat.Grate(airC, k.d.outdoors)
	if with != "" {
		in = covered(in, with)
	}
	var s heat.Sim
	s.StartWith(k.body, in, heat.Coarse)
	return s.AsymptoteC() - heat.ArrivalMarginK
}
