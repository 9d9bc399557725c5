package day

import (
	"math"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/planner/internal/spread"
	"example.com/cookday/schedule/unit"
)

// own is how a kind of cook scatters on a grate that is known: median and standard
// deviation of the logarithm of real over modelled minutes.
type own struct{ median, sd float64 }

// scatters are those of a kind of cut, on a cool grate and on a hot one, by the words of
// the catalogue. From the logs of home cooks (220 clean ones, medians shrunk by
// n/(n+4); deviations drawn toward 0.29 with a weight of 8) and from government charts
// for what is cooked hot.
var scatters = map[string]struct{ low, hot own }{
	"brisket":    {own{-0.03, 0.21}, own{-0.03, 0.21}},
	"tough":      {own{-0.03, 0.20}, own{-0.03, 0.20}},
	"chuck":      {own{-0.15, 0.35}, own{-0.15, 0.35}},
	"tough-thin": {own{0.12, 0.22}, own{0.12, 0.22}},
	"flat-bird":  {own{0.08, 0.29}, own{0.08, 0.29}},
	"bird":       {own{-0.08, 0.35}, own{-0.05, 0.20}},
	"roast":      {own{0.02, 0.36}, own{0, 0.18}},
	"lamb":       {own{-0.32, 0.33}, own{-0.17, 0.18}},
	"small":      {own{0.20, 0.26}, own{0, 0.20}},
}

// clockScatter is that of ribs by the clock of tenderness, whose times are told ones.
var clockScatter = own{0.05, 0.22}

// directScatter is that of what cooks over the coals.
var directScatter = own{0, 0.20}

// Between these typed levels low goes over into hot evenly.
var lowTopC, hotFootC = unit.FToC(250), unit.FToC(325)

// scatterOf is the scatter of a cut beside the coals at a typed level.
func scatterOf(c cut.Cut, levelC float64) own {
	kind := c.Spread
	if c.Style == cut.Small { // the word of what belongs over the coals
		kind = "small"
	}
	s := scatters[kind]
	share := math.Min(math.Max((levelC-lowTopC)/(hotFootC-lowTopC), 0), 1)
	return own{
		median: s.low.median + share*(s.hot.median-s.low.median),
		sd:     s.low.sd + share*(s.hot.sd-s.low.sd),
	}
}

// mixed is the spread of a cook with its own scatter and the grate's error: slow and
// fast are as [spread.Mix] takes them.
func (o own) mixed(slow, fast float64) spread.Spread {
	s := spread.Mix(o.sd, slow, fast)
	s.Median += o.median
	return s
}

// paced is a scatter with what cooks on this grill taught of their pace.
func (d *Day) paced(o own) own {
	if f, ok := d.Req.Grill.Own.Figure(schedule.OwnPace); ok {
		lean := spread.Lean{Mean: math.Log(f.Times), SD: f.Spread}
		o.median, o.sd = o.median+lean.Mean, lean.Left(o.sd)
	}
	return o
}
