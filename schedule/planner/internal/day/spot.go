package day

import (
	"fmt"
	"math"
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/unit"
)

// Spot is one place a dish may cook: beside or over the coals at a level.
type Spot struct {
	Direct bool
	Band   string
	LevelC float64
}

// Spots lists where a dish may cook, best first, as asked and as the cut allows.
func (it *Item) Spots() []Spot {
	var out []Spot
	for _, p := range it.places() {
		if it.Prep.Stuffed && p.Band == schedule.BandLow && it.Dish.Level == nil {
			continue // 325 F or more
		}
		if p.Asked && it.Dish.Zone == "" {
			continue
		}
		if it.Dish.Zone != "" && (it.Dish.Zone == schedule.ZoneDirect) != p.Direct || it.Dish.Zone == "" && it.besideFor(p) {
			continue
		}
		levels := hotterFirst(p.LevelsC)
		if p.Direct { // what counts over the coals is the band
			levels = p.LevelsC[:1]
		}
		if it.Dish.Level != nil {
			levels = []float64{float64(*it.Dish.Level)}
		}
		for _, l := range levels {
			if it.Dish.Level == nil && l < it.leastLevelC() {
				continue
			}
			s := Spot{Direct: p.Direct, Band: p.Band, LevelC: l}
			if it.Dish.Level != nil {
				s.Band = fire.Band(l)
			}
			if !contains(out, s) {
				out = append(out, s)
			}
		}
	}
	return out
}

// besideFor says whether a place is over the coals though a heat is asked for that is cooler
// than the cut is ever grilled at: who asks for it cooks beside them, where the cut may.
func (it *Item) besideFor(p cut.Place) bool {
	return p.Direct && it.Dish.Level != nil && float64(*it.Dish.Level) < slices.Min(p.LevelsC)-1 &&
		slices.ContainsFunc(it.Cut.Places, func(o cut.Place) bool { return !o.Direct })
}

// places are the cut's own; without those over the coals where the dish is asked
// to cook beside them, is smoked first and seared at the end, or asks for a level
// below that of any fire with a place over its coals. A cut that has no other
// gets the low and the hot band.
func (it *Item) places() []cut.Place {
	gentle := it.Dish.Level != nil && float64(*it.Dish.Level) < fire.LeastDirectC()
	if it.Dish.Finish == "" && !gentle && it.Dish.Zone != schedule.ZoneIndirect {
		return it.Cut.Places
	}
	own := slices.DeleteFunc(slices.Clone(it.Cut.Places), func(p cut.Place) bool { return p.Direct })
	low := cut.Place{Band: schedule.BandLow, LevelsC: []float64{unit.FToC(250), unit.FToC(225)}}
	hot := cut.Place{Band: schedule.BandHot, LevelsC: []float64{unit.FToC(350), unit.FToC(375)}}
	switch {
	case len(own) == 0 && gentle:
		return []cut.Place{low}
	case len(own) == 0 && it.Dish.Finish == "":
		return []cut.Place{hot, low}
	case len(own) == 0:
		return []cut.Place{low, hot}
	case it.Dish.Finish == "" || gentle || slices.ContainsFunc(own, func(p cut.Place) bool { return p.Band == schedule.BandHot }):
		return own
	}
	return append(own, hot)
}

// common says whether a place is the heat that all can share: a second choice, which does
// not make a grill one that is as hot as a cut likes it.
func common(p cut.Place) bool {
	return len(p.LevelsC) == 1 && math.Abs(p.LevelsC[0]-CommonC) < 1
}

// CommonC is the heat that low and hot cooks can share, degC.
var CommonC = unit.FToC(300)

// leastSmokeC is the coolest level that stands in for a hotter one, degC (assumption).
var leastSmokeC = unit.FToC(225)

// withinZones gives a cut that has no level in any described zone beside the fire the
// nearest one that there is, and what the low band has below it: a smoker that is never
// as hot as a chicken likes it cooks chickens all the same (common practice, no source).
func withinZones(places []cut.Place, zones []fire.OtherZone) []cut.Place {
	beside := slices.DeleteFunc(slices.Clone(places), func(p cut.Place) bool { return p.Direct })
	zones = slices.DeleteFunc(slices.Clone(zones), func(z fire.OtherZone) bool { return z.Direct })
	if len(beside) == 0 || len(zones) == 0 {
		return anywhere(places)
	}
	has := func(level float64) bool {
		return slices.ContainsFunc(zones, func(z fire.OtherZone) bool { return z.MinC <= level && level <= z.MaxC })
	}
	for _, p := range beside {
		if !common(p) && slices.ContainsFunc(p.LevelsC, has) {
			return places
		}
	}
	likes := beside[0].LevelsC[0]
	nearest := math.Inf(1)
	for _, z := range zones {
		if x := min(max(likes, z.MinC), z.MaxC); math.Abs(x-likes) < math.Abs(nearest-likes) {
			nearest = x
		}
	}
	if nearest < leastSmokeC {
		return anywhere(places)
	}
	out := slices.DeleteFunc(slices.Clone(places), func(p cut.Place) bool { return !p.Direct })
	there := cut.Place{Band: fire.Band(nearest), LevelsC: []float64{nearest}}
	for _, level := range []float64{unit.FToC(275), unit.FToC(250)} {
		if level < nearest && has(level) {
			there.LevelsC = append(there.LevelsC, level)
		}
	}
	return append([]cut.Place{there}, out...)
}

// anywhere are places of which none waits to be asked for: there is no other.
func anywhere(places []cut.Place) []cut.Place {
	out := slices.Clone(places)
	for i := range out {
		out[i].Asked = false
	}
	return out
}

// CoolZones are findings of the dishes that have not the heat that their cuts like.
func (d *Day) CoolZones() []schedule.Finding {
	var out []schedule.Finding
	for i := range d.Items {
		it := &d.Items[i]
		likes := it.likes
		if it.Dish.Level != nil || len(likes) == 0 || it.Cut.Places[0].Direct || it.Cut.Places[0].LevelsC[0] == likes[0].LevelsC[0] {
			continue
		}
		out = append(out, Finding("cool-zones", it.Path("level"), it, fmt.Sprintf("%s is usually cooked at %s. No zone beside the fire has that; the nearest has %s.",
			it.Dish.Name, d.Grate(likes[0].LevelsC[0]), d.Grate(it.Cut.Places[0].LevelsC[0]))))
	}
	return out
}

// hotterFirst keeps the usual level first and puts the others hottest first: a
// hotter grate is what saves a tight day.
func hotterFirst(levels []float64) []float64 {
	out := slices.Clone(levels)
	if len(out) > 1 {
		slices.Sort(out[1:])
		slices.Reverse(out[1:])
	}
	return out
}

func contains(all []Spot, s Spot) bool {
	for _, o := range all {
		if o.Direct == s.Direct && math.Abs(o.LevelC-s.LevelC) < 1 {
			return true
		}
	}
	return false
}
