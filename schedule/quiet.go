package schedule

import "github.com/rickb777/date/clock"

// UsualQuiet are the quiet hours of a request that says nothing of them: from 23:00 to
// 05:00 (common practice, no source).
func UsualQuiet() []Quiet {
	return []Quiet{{From: clock.New(23, 0, 0, 0), To: clock.New(5, 0, 0, 0)}}
}

// QuietHours are the hours in which nobody tends anything, as far as a request says it.
// Where it says nothing the usual ones are tried first, and a plan may give up a part of
// them: its [Night] has what is left.
func (r Request) QuietHours() []Quiet {
	if r.Quiet == nil {
		return UsualQuiet()
	}
	return r.Quiet
}

// nightEnds is the hour before which quiet hours end that are for sleep.
const nightEnds = 8

// ForSleep says whether quiet hours are a night: over midnight, or before dawn.
func (q Quiet) ForSleep() bool { return q.To <= q.From || q.To.Hours() < nightEnds }

// Night says how a plan spends the night where somebody may sleep.
type Night struct {
	Way   NightWay `json:"way"`
	Quiet []Quiet  `json:"quiet"` // the hours in which nobody tends anything, as planned
}

// NightWay is a way to spend the night.
type NightWay string

// Ways to spend the night, in the order in which they are offered.
const (
	NightDay   NightWay = "day"       // nothing is on the fire while people sleep
	NightOven  NightWay = "oven"      // cooked in the evening, it waits in the oven
	NightEarly NightWay = "early"     // the usual quiet hours end early
	NightFire  NightWay = "overnight" // the fire burns unwatched
	NightAwake NightWay = "awake"     // somebody stays up
)

// Codes of the findings that say it.
const (
	CodeNightDay   = "night-day"
	CodeNightOven  = "night-oven"
	CodeNightEarly = "night-early"
	CodeNightFire  = "night-fire"
	CodeNightAwake = "night-awake"
)

// Code is that of the finding that says the way.
func (w NightWay) Code() string {
	return map[NightWay]string{
		NightDay: CodeNightDay, NightOven: CodeNightOven, NightEarly: CodeNightEarly, NightFire: CodeNightFire, NightAwake: CodeNightAwake,
	}[w]
}
