package safety

// Spent is a point of a clock: how many minutes it has counted by a minute.
type Spent struct{ Minute, Minutes float64 }

// Air that gives a raw piece no heat to speak of, degC. Judgment: below the first the
// clock runs in full, below the second at half speed, and below the third for a while it
// is said. 300 F where 350 was meant is heat.
const (
	NoHeatC   = (170.0 - 32) * 5 / 9
	HalfHeatC = (200.0 - 32) * 5 / 9
	LowHeatC  = (225.0 - 32) * 5 / 9
	// LowHeatMinutes is how long air may be below LowHeatC before it is said.
	LowHeatMinutes = 30.0
)

// HeatlessShare is how much of a minute counts as one without heat, by the core and the
// air beside it: a hot core is kept by air that is above 140 F and above itself.
func HeatlessShare(coreC, airC float64) float64 {
	switch {
	case coreC >= DangerHighC && airC > DangerHighC && airC > coreC:
		return 0
	case coreC >= DangerHighC, airC < NoHeatC:
		return 1
	case airC < HalfHeatC:
		return 0.5
	}
	return 0
}

// HeatlessClock counts the minutes in which the coldest place of a piece lies between 40
// and 140 F while the air beside it gives no heat. The zero value is ready.
type HeatlessClock struct {
	Spent []Spent
	total float64
}

// Spend adds a stretch of a simulation: the coldest place at both of its ends, the core
// and the air in it.
func (h *HeatlessClock) Spend(from, to, coldFromC, coldToC, coreC, airC float64) {
	if len(h.Spent) == 0 {
		h.Spent = append(h.Spent, Spent{from, h.total})
	}
	h.total += (to - from) * HeatlessShare(coreC, airC) * shareBetween(coldFromC, coldToC, DangerLowC, DangerHighC)
	h.Spent = append(h.Spent, Spent{to, h.total})
}

// Minutes are those counted so far.
func (h *HeatlessClock) Minutes() float64 { return h.total }

// OutLimit is how long food may be without heat or cold, minutes, in air of airC.
func OutLimit(airC float64) float64 { return outLimit(airC) }

// counted is what an episode's own clock says: its minutes, and when they came to budget.
func (e Episode) counted(budget float64) (minutes, overAt float64) {
	overAt = e.ToMinute
	if budget < 0 {
		overAt = e.FromMinute
	}
	base := e.Spent[0].Minutes
	for i := 1; i < len(e.Spent); i++ {
		a, b := e.Spent[i-1], e.Spent[i]
		before, after := a.Minutes-base, b.Minutes-base
		if before <= budget && after > budget {
			overAt = a.Minute + (b.Minute-a.Minute)*(budget-before)/(after-before)
		}
		minutes = after
	}
	return minutes, overAt
}
