package safety

import "math"

// Piece is a row of the table of holds.
type Piece string

// The rows.
const (
	Shoulder Piece = "shoulder" // shoulders, briskets and other thick tough cuts
	Ribs     Piece = "ribs"     // racks
	Joint    Piece = "joint"    // roasts that come off at a doneness
	Turkey   Piece = "turkey"   // of 10 lb or more
	Bird     Piece = "bird"     // the others
	Portion  Piece = "portion"  // steaks, chops, patties, parts of birds: minutes on the grill
)

func (p Piece) isBird() bool { return p == Turkey || p == Bird }

// TurkeyFromKg is what a turkey weighs to be held longer than other birds: 10 lb (judgment).
const TurkeyFromKg = 10 * 0.45359237

// HoldPlace is a column of the table.
type HoldPlace string

// The columns.
const (
	InOpen HoldPlace = "open"  // under a tent, or bare on a counter
	InBox  HoldPlace = "box"   // insulated, wrapped, with towels
	InOven HoldPlace = "oven"  // warm
	OnFire HoldPlace = "grill" // over a dying fire
)

// holdTable is the longest that a finished piece waits, minutes from the take-off, however
// hot it still is; what is not in it does not wait there. Birds and portions: judgment, no
// source. Ribs, shoulders and the 16 h: the end of what is practised, no source. In the
// open the clock is shorter than any of them but that of birds.
var holdTable = map[Piece]map[HoldPlace]float64{
	Shoulder: {InOpen: OutMinutes, InBox: 8 * 60, InOven: OvernightMostMinutes, OnFire: 8 * 60},
	Ribs:     {InOpen: OutMinutes, InBox: 3 * 60, InOven: 4 * 60, OnFire: 3 * 60},
	Joint:    {InOpen: OutMinutes, InBox: 4 * 60, InOven: 4 * 60, OnFire: 2 * 60},
	Turkey:   {InOpen: 30, InBox: 2 * 60, InOven: 2 * 60, OnFire: 60},
	Bird:     {InOpen: 30, InBox: 60, InOven: 2 * 60, OnFire: 60},
	Portion:  {InOven: 30},
}

// mostMinutes is the table's entry for a piece; false where it does not wait there.
func mostMinutes(f Finished) (float64, bool) {
	most, ok := holdTable[f.Piece][f.Place]
	switch {
	case !ok, f.Place == InBox && f.Prep.Stuffed, f.Piece == Portion && f.CoreC < DangerHighC:
		return 0, false
	case f.Place == InBox && f.Piece.isBird():
		most = math.Min(most, birdHot(f))
	}
	return most, true
}

// Birds cool faster than the heat model has them: so much of what they are above the air
// they lose in an hour, in a box, as measured (holding_2.csv, cooldown.csv).
const (
	birdRate   = 0.25
	turkeyRate = 0.14
)

// birdHot is how many minutes a bird in a box stays above 140 F by those rates.
func birdHot(f Finished) float64 {
	rate := birdRate
	if f.Piece == Turkey {
		rate = turkeyRate
	}
	if f.CoreC <= DangerHighC {
		return 0
	}
	if f.BoxAirC >= DangerHighC {
		return math.Inf(1)
	}
	return 60 * math.Log((f.CoreC-f.BoxAirC)/(DangerHighC-f.BoxAirC)) / rate
}

// BirdOvenC is what an oven is set to for birds and portions: 200 F (judgment, no source).
const BirdOvenC = (200.0 - 32) * 5 / 9

// OvenSettingC is what the oven is set to for a piece, where the request has it at ovenC.
func OvenSettingC(p Piece, ovenC float64) float64 {
	if p.isBird() || p == Portion {
		return math.Max(ovenC, BirdOvenC)
	}
	return ovenC
}

// AlarmC is where a probe in the middle calls somebody to measure just under the surface,
// which has then come near 140 F, at the poor end; false where the middle tells nothing.
func AlarmC(p Piece) (float64, bool) {
	switch p {
	case Shoulder:
		return celsius(170), true
	case Turkey:
		return celsius(160), true
	case Ribs:
		return celsius(155), true
	}
	return 0, false
}
