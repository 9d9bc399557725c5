package arrange

import (
	"math"
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/planner/internal/day"
)

// Hearth is the fires of the day.
type Hearth struct {
	Fires  []fire.Fire
	Zones  [][]fire.Zone
	least  float64 // what the smallest batch takes, m2
	Levels int     // grates one above another that may be used; 0 for all
	apart  bool    // a sear has a fire of its own
}

// layFires offers every fire that some dish can use: what sears need, then every dish's
// best place, then its next best, and so on.
func (d *Arranger) layFires() Hearth {
	var h Hearth
	for i := range d.Items {
		if it := &d.Items[i]; it.Dish.Finish != "" {
			h.addFor(d, it, day.SearSpot(it))
		}
	}
	for rank, more := 0, true; more; rank++ {
		more = false
		for i := range d.Items {
			if spots := d.Items[i].Spots(); rank < len(spots) {
				h.addFor(d, &d.Items[i], spots[rank])
				more = true
			}
		}
	}
	return h
}

// addFor offers the fires for one place of a dish, but those that give it and all others
// no more than one on offer.
func (h *Hearth) addFor(d *Arranger, it *day.Item, s day.Spot) {
	for _, f := range d.FiresFor(it, s) {
		twoZonesForOne := s.Direct && f.Layout == fire.TwoZone && d.heeded(it) != fire.TwoZone
		if !twoZonesForOne && !h.has(f, it.Dish.Level == nil && d.heeded(it) == "") {
			h.Fires, h.Zones = append(h.Fires, f), append(h.Zones, d.Grill.Zones(f))
		}
	}
}

// has says whether a fire is on offer. Of fires that are all coals any will do, unless a
// level is asked for: over the coals it is the band that counts.
func (h *Hearth) has(f fire.Fire, anyLevel bool) bool {
	all := anyLevel && (f.Layout == fire.Spread || f.Layout == fire.Heap)
	return slices.ContainsFunc(h.Fires, func(o fire.Fire) bool {
		return o.Layout == f.Layout && (all || math.Abs(o.LevelC-f.LevelC) < 1)
	})
}

// FiresFor are the fires on which a place of a dish can be had: those of the layout that is asked for, where it serves.
func (d *Arranger) FiresFor(it *day.Item, s day.Spot) []fire.Fire {
	if !d.Grill.Lays() {
		return []fire.Fire{{Layout: fire.Other, LevelC: s.LevelC}}
	}
	asked := d.heeded(it)
	fires := fire.Serving(s.Direct, s.Band, s.LevelC, d.LongestQuiet() > 0 || asked == fire.Ring)
	if serves(asked, s) {
		fires = slices.DeleteFunc(fires, func(f fire.Fire) bool { return f.Layout != asked })
	}
	return fires
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
