package safety

import (
	"fmt"
	"math"
)

// HoldKind says what begins the clock of a hold.
type HoldKind string

// The holds.
const (
	HoldNone       HoldKind = "none"        // it does not wait there: serve at once
	HoldOuterAbove HoldKind = "outer-above" // hot until the outer layer falls to LimitC, then the clock
	HoldByClock    HoldKind = "by-clock"    // the clock runs from the take-off
	HoldRoastOven  HoldKind = "roast-oven"  // as long as the oven stays at LimitC or above
)

// HoldFromC is where a piece counts as hot when it leaves the heat: 150 F, ten degrees
// above the line it must stay above. An assumption; the 140 F is published.
const HoldFromC = (150.0 - 32) * 5 / 9

// AddedFromC is what whole muscle is finished at, or above, to earn added time in a box:
// 195 F (judgment, no source).
const AddedFromC = (195.0 - 32) * 5 / 9

// servedShare is how much of the clock may have passed when food comes to the table. The
// rest is for eating it, or for the refrigerator (judgment, no source).
const servedShare = 0.5

// HoldRule says how long a finished piece may wait in one place. There is one clock for
// the whole stretch out of heat: box below 140 F, carving, table, until it is eaten or in
// the refrigerator.
type HoldRule struct {
	Kind         HoldKind
	LimitC       float64 // degC; outer layer (HoldOuterAbove) or oven (HoldRoastOven), else 0
	LimitMinutes float64 // HoldByClock: from the take-off until it is on the table; 0 elsewhere
	AddedMinutes float64 // from the outer layer's falling to LimitC until it is on the table
	MostMinutes  float64 // from the take-off, however hot it still is: the table of hold_table.go
	LeastMinutes float64 // frail guests: the rest, which is not cut short
	EatMinutes   float64 // from the table until the last of it is eaten or chilled
	Source       string
	of           Finished
}

// HoldClock is a hold in minutes from the take-off.
type HoldClock struct {
	Hot    float64 // the outer layer is above 140 F throughout until then; 0: nothing is claimed
	Served float64 // on the table at the latest
	Eaten  float64 // eaten, or in the refrigerator, at the latest
}

// Clock is what a rule comes to where the outer layer stays above the line for so many
// minutes, at the poor end.
func (r HoldRule) Clock(hot float64) HoldClock {
	c := HoldClock{Hot: math.Min(hot, r.MostMinutes)}
	switch r.Kind {
	case HoldNone:
		return HoldClock{}
	case HoldByClock:
		c.Served = math.Min(r.LimitMinutes, r.MostMinutes)
		c.Hot = math.Min(c.Hot, c.Served)
	case HoldRoastOven: // what counts there is the oven, not the outer layer
		c = HoldClock{Served: r.MostMinutes}
	case HoldOuterAbove:
		c.Served = math.Min(hot+r.AddedMinutes, r.MostMinutes)
	}
	c.Served = math.Max(c.Served, r.LeastMinutes)
	c.Eaten = c.Served + r.EatMinutes
	return c
}

// Finished is a piece that leaves the heat and is to wait.
type Finished struct {
	Piece    Piece // the row of the table
	Category Category
	Prep     Prep
	CoreC    float64
	Place    HoldPlace
	AirC     float64 // that it would stand in, once it is out of heat
	BoxAirC  float64 // about its box
	OvenC    float64 // that the oven is set to, 0 if there is none
	ByRoast  bool    // cooked by the Food Code's rule for roasts: see RoastOven
	Frail    bool    // of the guests
	RestMin  float64 // its least rest, minutes
}

// wholeMuscle says whether a piece was never opened: no rolled, stuffed, injected, boned
// or tenderised one.
func (f Finished) wholeMuscle() bool { return !SurfaceInside(f.Category, f.Prep) }

// HoldFor is the rule for a finished piece: the only one, for the planner, for a day that
// is under way, and for the judge.
//
// The household charts hold at 140 F, the Food Code at 135 F: the stricter stands.
func HoldFor(f Finished) HoldRule {
	most, ok := mostMinutes(f)
	if !ok {
		return HoldRule{Kind: HoldNone, Source: NoSource, of: f}
	}
	served := outLimit(f.AirC) * servedShare
	r := HoldRule{MostMinutes: most, EatMinutes: outLimit(f.AirC) - served, of: f}
	switch {
	case f.Place == InOven && f.ByRoast && RoastOven(f):
		r.Kind, r.LimitC, r.Source = HoldRoastOven, roastHoldC, "fda_3_501_16"
	case !f.Frail && !f.byOuter():
		r.Kind, r.LimitMinutes, r.Source = HoldByClock, served, "usda_danger_zone"
	default:
		r.Kind, r.LimitC, r.Source = HoldOuterAbove, DangerHighC, "usda_danger_zone"
		if f.Place == InBox && f.wholeMuscle() && f.CoreC >= AddedFromC-1e-9 && !f.Frail {
			r.AddedMinutes = served
		}
		if f.Frail {
			r.LeastMinutes = f.RestMin
		}
		if f.Frail && f.Place == InOpen {
			r.MostMinutes = math.Min(most, served)
		}
	}
	return r
}

// byOuter says whether the outer layer tells how long a piece waits, and not the clock
// alone: it came off hot and is kept so, or is above 140 F in all its parts in an oven that
// stays above it.
func (f Finished) byOuter() bool {
	switch {
	case f.Piece.isBird() || f.Piece == Portion:
		return true
	case f.Place == InOven && f.OvenC-OvenSwingK >= DangerHighC && f.CoreC >= DangerHighC:
		return true
	}
	return f.Place != InOpen && f.CoreC >= HoldFromC
}

// Sentence is the rule in one sentence.
func (r HoldRule) Sentence() string {
	eat := spokenMinutes(r.EatMinutes)
	switch {
	case r.Kind == HoldNone:
		return r.of.noHold()
	case r.Kind == HoldRoastOven:
		return fmt.Sprintf("Hold it in an oven that stays at %s or above, %s at the most.", spoken(roastHoldC), spokenMinutes(r.MostMinutes))
	case r.Kind == HoldByClock:
		return fmt.Sprintf("From taking it off it is on the table within %s, and eaten or chilled within %s.", spokenMinutes(r.LimitMinutes), spokenMinutes(r.LimitMinutes+r.EatMinutes))
	case r.AddedMinutes > 0:
		return fmt.Sprintf("From when the meat just under its surface falls to %s it is on the table within %s, and eaten or chilled within %s; %s in all at the most. What took longer than %s is not kept.",
			spoken(r.LimitC), spokenMinutes(r.AddedMinutes), spokenMinutes(r.AddedMinutes+r.EatMinutes), spokenMinutes(r.MostMinutes), spokenMinutes(r.AddedMinutes))
	}
	if r.of.Frail {
		return fmt.Sprintf("For frail guests: once it has rested, serve it as soon as the meat just under its surface falls to %s, and eat or chill it within %s; %s in all at the most.", spoken(r.LimitC), eat, spokenMinutes(r.MostMinutes))
	}
	return fmt.Sprintf("Hold it hot, %s at the most. When the meat just under its surface falls to %s serve it at once, and eat or chill it within %s.",
		spokenMinutes(r.MostMinutes), spoken(r.LimitC), eat)
}

// noHold says why a piece does not wait somewhere.
func (f Finished) noHold() string {
	switch {
	case f.Piece == Portion && f.Place == InOven:
		return "Serve it straight from the grill: below 140 °F (60 °C) in the middle an oven does not hold it."
	case f.Prep.Stuffed && f.Place == InBox:
		return "Stuffed meat is not held in a box, where its middle cools unseen."
	}
	return "Serve it straight from the grill."
}
