package safety

import "math"

// OvenSwingK is how far an oven may be below its setting: 10 F (assumption).
const OvenSwingK = 10 / 1.8

// A piece left in an oven while everybody sleeps.
const (
	// OvernightMostMinutes: 16 h is the end of what is practised, no source.
	OvernightMostMinutes = 16 * 60
	// OvernightOvenC is the least setting, 170 F, where no thermometer was read in the oven.
	OvernightOvenC = (170.0 - 32) * 5 / 9
	// OvernightIntoC: just under the surface it is still above 150 F when it goes in.
	OvernightIntoC = (150.0 - 32) * 5 / 9
	// OvernightAlarmC is where its probe wakes somebody.
	OvernightAlarmC = (150.0 - 32) * 5 / 9
	// UnwatchedMinutes is how long an oven is left alone of which nobody knows whether it
	// switches itself off: many do after 12 h.
	UnwatchedMinutes = 11 * 60
	// NightMinutes: a stretch in which nobody looks and that is longer than this is a night.
	// In a shorter one a piece cannot be out of heat for longer than the published 2 h.
	NightMinutes = OutMinutes
)

// mayStayLong says whether a piece is one that is held for a night at all: tough whole
// muscle finished at 195 F or above, and no frail guests.
func (f Finished) mayStayLong() bool {
	return f.Piece == Shoulder && f.wholeMuscle() && f.CoreC >= AddedFromC-1e-9 && !f.Frail
}

// Overnight says whether a finished piece may be in the oven through a stretch of so many
// minutes in which nobody looks; staysOn, whether the oven is known not to switch itself off.
func Overnight(f Finished, unwatched float64, staysOn bool) bool {
	return f.Place == InOven && f.mayStayLong() && f.OvenC >= OvernightOvenC-1e-9 &&
		(staysOn && unwatched < OvernightMostMinutes || unwatched <= UnwatchedMinutes)
}

// roastHoldC is what a roast may be held at (FDA Food Code 3-501.16).
const roastHoldC = (130.0 - 32) * 5 / 9

// The ovens of the Food Code's roasts, 3-401.11(B), still and dry: 250 F from 10 lb, 350 F
// below.
const (
	roastLargeKg = 10 * 0.45359237
	roastLargeC  = (250.0 - 32) * 5 / 9
	roastSmallC  = (350.0 - 32) * 5 / 9
)

// RoastLevelC is the coolest air that a roast is cooked in by the Food Code's rule.
func RoastLevelC(massKg float64) float64 {
	if massKg >= roastLargeKg-1e-9 {
		return roastLargeC
	}
	return roastSmallC
}

// RoastOven says whether a roast that was cooked by the Food Code's rule may be held by it:
// intact beef or lamb, its core and the oven, as cool as it may be, at 130 F or more.
func RoastOven(f Finished) bool {
	return f.Piece == Joint && (f.Category == Beef || f.Category == Lamb) && f.wholeMuscle() && !f.Frail &&
		math.Min(f.CoreC, f.OvenC-OvenSwingK) >= roastHoldC-1e-9
}
