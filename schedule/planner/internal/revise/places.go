package revise

import (
	"fmt"
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/planner/internal/surprise"
)

// One reading of a piece says nothing of its other places. Where those may lag far behind, it stays
// on until they were read too.

// Figures of places (judgment, but where said otherwise).
const (
	threePlaces = 3    // breast, thigh and the coldest spot (common practice, no source)
	farPlacesKg = 4.53 // from 10 lb a bird has places that are far from each other
)

// wasFrozen says whether a reading of ice was taken in a piece, or it went on frozen.
func (a *liveBatch) wasFrozen() bool {
	return a.batch.It.FromFrozen || slices.ContainsFunc(a.signs, func(s surprise.Verdict) bool { return !s.Settled && s.Chance(surprise.Frozen) >= surprise.AskFrom })
}

// otherPlaces says why one place of a piece is no proof of the others; nothing where it is. What comes
// off far above its minimum has that minimum everywhere.
func (a *liveBatch) otherPlaces() string {
	it, least := a.batch.It, a.leastC()
	switch {
	case least == 0 || a.way().PullC > least+nearMinK:
		return ""
	case a.wasFrozen():
		return "it was frozen in the middle"
	case it.Prep.Stuffed:
		return "it is stuffed"
	case it.Prep.Rolled, it.Prep.Boned:
		return "what was outside is rolled inside"
	case it.Prep.Tenderised:
		return "blades carried the outside into it"
	case it.Category == safety.Poultry && a.pieceKg() >= farPlacesKg:
		return "a bird this big is not as hot everywhere"
	}
	return ""
}

// placesLeft is how many places of a piece are still to be read at its minimum: none once its coldest
// was, or one reading of it at the target is enough.
func (a *liveBatch) placesLeft() int {
	if a.otherPlaces() == "" {
		return 0
	}
	least := a.leastC() - sameC
	read := 0
	var named []string
	for i, e := range a.cores {
		switch {
		case i < len(a.readings) && !a.readings[i].Counts() || e.C < least:
		case e.Kind == schedule.LogColdest:
			return 0
		case e.Value != "" && slices.Contains(named, e.Value):
		default:
			read, named = read+1, append(named, e.Value)
		}
	}
	if read == 0 {
		return 0
	}
	return max(threePlaces*max(a.batch.Count, 1)-read, 0)
}

// placesText leaves a piece on until its other places were read, and says which.
func (v *Revision) placesText(a *liveBatch) string {
	return fmt.Sprintf("%s: leave it on. Measure at least two more places now%s: %s. %s at %s was one place, and %s. Log the lowest (coldest). At %s or more there, take it off.",
		a.batch.It.Dish.Name, a.ofEach(), say.Listed(a.whichPlaces(), "and"), v.day.Core(a.readAt()), v.clock(a.readWhen()), a.otherPlaces(), v.day.Core(a.leastC()))
}

// ofEach names the pieces, where there are several.
func (a *liveBatch) ofEach() string {
	if a.batch.Count > 1 {
		return " in each piece"
	}
	return ""
}

// whichPlaces are the places of a piece that are read besides.
func (a *liveBatch) whichPlaces() []string {
	switch it := a.batch.It; {
	case it.Prep.Stuffed:
		return []string{"the middle of the stuffing", "the thickest meat"}
	case it.Category == safety.Poultry && a.pieceKg() >= smallBirdKg:
		return []string{"the breast", "the inside of both thighs away from bone", "the coldest spot you find"}
	}
	return []string{"the middle of the thickest part", "the end farthest from the coals"}
}

// pieceKg is what one piece weighs.
func (a *liveBatch) pieceKg() float64 { return a.batch.MassKg / float64(max(a.batch.Count, 1)) }

// smallBirdKg is from when a piece of poultry is a whole bird, with breast and thighs (assumption: a
// breast or a leg weighs less).
const smallBirdKg = 1.0
