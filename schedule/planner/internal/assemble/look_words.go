package assemble

import (
	"slices"
	"strings"

	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/arrange"
)

// readyCues begin the part of a look that tells when a piece is done.
var readyCues = []string{"; ready when ", "; tender when ", "; a fork turns "}

// partLook parts how the catalogue says to look at a cut: where the probe goes, which is said as it goes on, and how to tell
// that it is done, which is said when that is looked for. Either may be empty.
func partLook(look string) (place, ready string) {
	for _, cue := range readyCues {
		if before, _, found := strings.Cut(look, cue); found {
			place, ready = before+".", strings.TrimPrefix(look[len(before):], "; ")
			ready = strings.ToUpper(ready[:1]) + ready[1:]
			break
		}
	}
	if ready == "" {
		place = look
	}
	if !strings.Contains(strings.ToLower(place), "probe") { // where it is lifted, which belongs to the cue
		return "", look
	}
	return place, ready
}

// readyText is how to tell at the look that a piece is done, besides its core; empty where that is said.
func readyText(p *arrange.Placed) string {
	if _, ready := partLook(p.It.Cut.Look); ready != "" && !p.It.Cut.Quick() && !p.It.ByTheBend() {
		return " " + ready
	}
	return ""
}

// afterRaw says whether bread, fruit or vegetables go onto a fire on which raw meat lay, and nobody took the grate off since.
func (it *Itinerary) afterRaw(p *arrange.Placed) bool {
	if p.Oven || !plants(p) || p.Phases[0].First < 0 {
		return false
	}
	return slices.ContainsFunc(it.All, func(o *arrange.Placed) bool {
		return o.It != p.It && !o.Oven && !plants(o) && o.On > p.On && (o.Zones[0] == p.Zones[0] || o.Zones[1] == p.Zones[0]) && o.Phases[0].First <= p.Phases[0].First && o.Phases[0].Last >= p.Phases[0].First
	})
}

// plants says of a dish that it is bread, fruit or vegetables.
func plants(p *arrange.Placed) bool {
	return p.It.Category == safety.Vegetable || p.It.Category == safety.None
}
