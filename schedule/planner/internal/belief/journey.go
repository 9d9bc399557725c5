package belief

import (
	"math"
	"slices"

	"example.com/cookday/schedule/internal/heat"
)

// Journey is the day of one piece so far and as it is going on: what surrounds
// it, in minutes from its put-on. A pace f runs through it f times slower than
// the model does.
type Journey struct {
	Body    heat.Body
	Past    []Surround // from minute 0; the last one holds until now
	Now     float64    // minutes from the put-on
	Coming  []Surround // timed, from now on: a fire that has to be rebuilt
	Ahead   heat.Surroundings
	Indoors bool // the error of the grate does not touch it
	Wrap    WrapAhead
	Wrapped float64 // the minute at which it was wrapped; NaN if it is bare
	TargetC float64
	TenderS float64 // how long it must be that hot, at the model's own pace; 0: it is done there
	EveryS  float64 // between samples of the curve, at the model's own pace
}

// Surround is what the piece feels from a minute on.
type Surround struct {
	From float64
	In   heat.Surroundings
}

// WrapAhead is a wrap that is still to come, at a core temperature or a minute.
type WrapAhead struct {
	In      heat.Surroundings // under the wrap
	CoreC   float64           // 0: by the minute
	Minute  float64
	Planned bool
	Waits   func(minute float64) float64 // to the end of quiet hours
}

// LongestAhead bounds, in minutes, what a piece may still take.
const LongestAhead = 48 * 60

// CurveSamples is how many samples a path keeps, about.
const CurveSamples = 150

// Same says whether a piece fares alike on another journey, if a wrap waits alike on both.
func (c *Journey) Same(o *Journey) bool {
	x, y := *c, *o
	if math.IsNaN(x.Wrapped) && math.IsNaN(y.Wrapped) {
		x.Wrapped, y.Wrapped = 0, 0
	}
	return x.Body == y.Body && x.Now == y.Now && x.Ahead == y.Ahead && x.Indoors == y.Indoors && x.Wrapped == y.Wrapped &&
		x.TargetC == y.TargetC && x.TenderS == y.TenderS && x.EveryS == y.EveryS &&
		x.Wrap.In == y.Wrap.In && x.Wrap.CoreC == y.Wrap.CoreC && x.Wrap.Minute == y.Wrap.Minute && x.Wrap.Planned == y.Wrap.Planned &&
		slices.Equal(x.Past, y.Past) && slices.Equal(x.Coming, y.Coming)
}

// endless says that a piece is not done within two days of now.
func (c *Journey) endless(minute float64) bool { return minute > c.Now+LongestAhead-1 }
