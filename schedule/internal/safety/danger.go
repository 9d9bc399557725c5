package safety

import (
	"fmt"
)

// The danger zone, 40-140 F (USDA FSIS, Danger Zone), in degC.
const (
	DangerLowC  = (40.0 - 32) * 5 / 9
	DangerHighC = (140.0 - 32) * 5 / 9
)

const (
	// DangerWarnMinutes: a piece whose inside may carry what is on its surface should
	// be through 140 F in 4 h. Common practice, no source.
	DangerWarnMinutes = 240.0
	// OutMinutes and OutHotMinutes are how long food may stand without heat or cold,
	// the second in air above 90 F (USDA FSIS, Danger Zone).
	OutMinutes    = 120.0
	OutHotMinutes = 60.0
)

// HotAirC is the air temperature above which OutHotMinutes holds, 90 F.
const HotAirC = (90.0 - 32) * 5 / 9

// outLimit is the clock for food without heat or cold in air of airC.
func outLimit(airC float64) float64 {
	if airC > HotAirC {
		return OutHotMinutes
	}
	return OutMinutes
}

// DangerClock adds up the minutes that a core temperature spends between 40 and
// 140 F. The zero value is ready. It warns and never forbids: more heat is its remedy.
type DangerClock struct {
	minutes float64
	last    Sample
	running bool
}

// Add takes the next sample of the history; its minute may not lie before the last one.
func (d *DangerClock) Add(s Sample) error {
	pair := []Sample{s, s}
	if d.running {
		pair[0] = d.last
	}
	if err := checkSamples(pair); err != nil {
		return err
	}
	d.Spend(s.Minute-pair[0].Minute, pair[0].C, s.C)
	d.last, d.running = s, true
	return nil
}

// Spend adds one step of a simulation: minutes from fromC to toC, changing evenly.
func (d *DangerClock) Spend(minutes, fromC, toC float64) {
	d.minutes += minutes * shareBetween(fromC, toC, DangerLowC, DangerHighC)
}

// DangerApplies reports whether the 4 h warning concerns a piece: poultry, ground, stuffed,
// injected, tenderised, rolled and boned ones. The inside of an intact muscle is not
// where the trade looks.
func DangerApplies(c Category, p Prep) bool {
	switch c {
	case None, Vegetable:
		return p.Stuffed
	case Leftovers:
		return p.opened()
	}
	return SurfaceInside(c, p)
}

// Finding is the warning, if the clock is past 4 h and concerns such a piece.
func (d *DangerClock) Finding(c Category, p Prep) (Finding, bool) {
	if !DangerApplies(c, p) || d.minutes <= DangerWarnMinutes {
		return Finding{}, false
	}
	measured := fmt.Sprintf("The core spends %s between 40 and 140 °F (4 and 60 °C).", spokenMinutes(d.minutes))
	return found("slow-through-danger-zone", measured, d.last.Minute, d.minutes-DangerWarnMinutes), true
}
