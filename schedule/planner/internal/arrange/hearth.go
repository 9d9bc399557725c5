package arrange

import (
	"math"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/planner/internal/day"
)

// mostFires is how many fires the solver is offered: enough for a low fire in
// two layouts, a hot one with two zones, an even layer and a heap.
const mostFires = 6

// Hearth is the fires of the day.
type Hearth struct {
	Fires  []fire.Fire
	Zones  [][]fire.Zone
	least  float64 // what the smallest batch takes, m2
	Levels int     // grates one above another that may be used; 0 for all
}

// layFires chooses the fires to offer: what sears need, then every dish's best
// place, then every dish's next best, until there are enough.
func (d *Arranger) layFires() Hearth {
	var h Hearth
	for i := range d.Items {
		if it := &d.Items[i]; it.Dish.Finish != "" {
			for _, f := range d.FiresFor(day.SearSpot(it)) {
				h.add(d.Grill, f)
			}
		}
	}
	for rank := 0; len(h.Fires) < mostFires; rank++ {
		more := false
		for i := range d.Items {
			spots := d.Items[i].Spots()
			if rank >= len(spots) {
				continue
			}
			more = true
			for _, f := range d.FiresFor(spots[rank]) {
				h.add(d.Grill, f)
			}
		}
		if !more {
			break
		}
	}
	return h
}

func (h *Hearth) add(g fire.Grill, f fire.Fire) {
	if len(h.Fires) >= mostFires {
		return
	}
	for _, o := range h.Fires {
		if o.Layout == f.Layout && math.Abs(o.LevelC-f.LevelC) < 1 {
			return
		}
	}
	h.Fires = append(h.Fires, f)
	h.Zones = append(h.Zones, g.Zones(f))
}

// FiresFor are the fires on which a place can be had.
func (d *Arranger) FiresFor(s day.Spot) []fire.Fire {
	if !d.Grill.Charcoal() {
		return []fire.Fire{{Layout: fire.Other, LevelC: s.LevelC}}
	}
	return fire.Serving(s.Direct, s.Band, s.LevelC, d.LongestQuiet() > 0)
}

// Place is one zone of one fire.
type Place struct{ Fire, Zone int }

// sameLevelK is how far two levels may differ and still be one: a tenth of what
// the shared error of the grate is.
const sameLevelK = 0.6

// PlacesOf are the zones in which a way can cook, fire by fire.
func (h Hearth) PlacesOf(w day.Way) []Place {
	var out []Place
	for f, fr := range h.Fires {
		for z, zone := range h.Zones[f] {
			if zone.Direct == w.Direct && (w.Direct && directFits(fr, w.Band) || !w.Direct && math.Abs(fr.LevelC+zone.LiftK-w.LevelC) < sameLevelK) {
				out = append(out, Place{f, z})
				break
			}
		}
	}
	return out
}

// directFits says whether a fire's direct zone has the heat of a band.
func directFits(f fire.Fire, band string) bool {
	return f.Layout == fire.Other || (f.Layout == fire.Heap) == (band == schedule.BandSear)
}

// tough dishes may ride through a change of fire on the indirect side.
func rides(it *day.Item) bool { return it.Cut.Style == cut.Tough }
