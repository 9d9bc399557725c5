package fire

import "math"

// VentAdvice is where the vents start; the fire is then trimmed with the top one.
type VentAdvice struct {
	OpenTop, OpenBottom float64 // share open
	LidOff              bool
	TopOverMeat         bool      // turn the lid so that the top vent is opposite the coals: smoke crosses the meat
	GaugeOverCoals      bool      // the lid gauge then sits over the coals and is no guide
	TrimTop             bool      // fine control with the top vent
	TrimBottom          bool      // or with the bottom one: an upright cooker
	MarkBottom          []float64 // positions worth marking on the bottom vent, share open
	SettleMinutes       int       // until a change shows
}

// Vents are the vents to start from (common practice, no source). A banked fire above 275 F starts half open.
func Vents(f Fire) VentAdvice {
	d := describe(f.Layout)
	if d == nil {
		return VentAdvice{}
	}
	v := VentAdvice{
		OpenTop: d.OpenTop, OpenBottom: d.OpenBottom, LidOff: d.LidOff, TrimTop: !d.LidOff,
		MarkBottom: []float64{0.25, 0.5, 0.75}, SettleMinutes: ventMinutes,
	}
	v.TopOverMeat = f.Layout == Banked || f.Layout == TwoZone || f.Layout == Ring
	v.GaugeOverCoals = f.Layout == Banked || f.Layout == TwoZone
	if f.Layout == Banked && Band(f.LevelC) != "low" {
		v.OpenTop, v.OpenBottom = 0.5, 0.5
	}
	return v
}

// Closing is the end of the day: all vents shut.
type Closing struct {
	TouchMinutes int // until the shell is below 50 C, by the slow cool-down (assumption)
	ColdHours    int // until ash may be thrown away: it stays hot for days; 48 h in metal is common practice, no source
}

// CloseDown says how long a fire takes to become harmless after its vents are shut. A grate at or below 50 C needs no
// minutes; air at 45 C or more is taken as 45.
func CloseDown(levelC, airC float64) Closing {
	const touchC = 50
	air := min(airC, touchC-5)
	minutes := 0.0
	if levelC > touchC {
		minutes = coolMinutes * math.Log((levelC-air)/(touchC-air))
	}
	return Closing{TouchMinutes: 5 * ceilInt(minutes/5), ColdHours: 48}
}
