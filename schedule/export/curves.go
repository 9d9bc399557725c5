package export

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/unit"
)

// Curves draws the predicted core temperature of each batch as an SVG picture: the
// expected curve in its 80 % band, stall and wrap marked, the published minimum and
// the temperature at take-off as lines. It says so where a plan has no curves. The
// error names an unknown time zone or is that of the writer.
func Curves(w io.Writer, p schedule.Plan, o Options) error {
	v, err := look(p, o.Now)
	if err != nil {
		return err
	}
	return v.curves(w, "c-", true)
}

func (v *view) curves(w io.Writer, id string, alone bool) error {
	s := &svg{id: id, alone: alone}
	if alone {
		s.y = 8
		s.label(pictureEdge, s.y+16, "head", shorten(isolated(v.title()), pictureWidth-30, true))
		s.y += 26
	}
	var words, without []string
	for _, d := range v.Dishes {
		for _, b := range d.Batches {
			if len(b.Curve) < 2 {
				if name := isolated(v.dish(d.ID)); !slices.Contains(without, name) {
					without = append(without, name)
				}
				continue
			}
			c := curve{view: v, svg: s, dish: d, batch: b}
			c.draw()
			words = append(words, c.words())
		}
	}
	switch {
	case len(words) == 0:
		s.paragraph(pictureEdge, laneRoom, "strong", "This plan has no curves.")
		words = []string{"This plan has no curves."}
	default:
		note := "Line: likely; it ends where the food comes off. Band: 8 of 10 cooks."
		if len(without) > 0 {
			note += " Too quick for a curve, or done by the look: " + list(without) + "."
		}
		s.paragraph(pictureEdge, laneRoom, "soft", note)
	}
	s.y += 8
	return s.finish(w, "Core temperatures: "+isolated(v.title()), strings.Join(words, " "))
}

// HasCurves tells whether there is anything to draw for [Curves].
func HasCurves(p schedule.Plan) bool {
	for _, d := range p.Dishes {
		for _, b := range d.Batches {
			if len(b.Curve) > 1 {
				return true
			}
		}
	}
	return false
}

// curve is one panel.
type curve struct {
	*view
	*svg
	dish        schedule.DishPlan
	batch       schedule.Batch
	axis        axis
	lowC, highC float64
	top, bottom float64
}

const (
	curveHeight = 120.0
	curveLeft   = 62.0
)

func (c *curve) draw() {
	c.label(pictureEdge, c.svg.y+letterSize, "strong", shorten(c.batchTitle(c.dish, c.batch), laneRoom, true))
	c.svg.y += lineHeight
	points := c.batch.Curve
	c.axis = axis{view: c.view, from: points[0].At, to: points[len(points)-1].At, left: curveLeft, right: pictureWidth - 12}
	c.top = c.svg.y + lineHeight
	c.bottom = c.top + curveHeight
	c.cover()
	c.stall()
	c.axis.scale(c.svg, c.top, c.bottom)
	c.degrees()
	c.band()
	c.levels()
	c.wrapped()
	c.svg.y = c.bottom + 14
}

// cover fits the scale to the curve, the minimum and the target with a little room.
func (c *curve) cover() {
	c.lowC, c.highC = math.Inf(1), math.Max(c.dish.MinimumC, c.dish.TargetC)
	for _, p := range c.batch.Curve {
		c.lowC = min(c.lowC, p.LowC, p.CoreC)
		c.highC = max(c.highC, p.HighC, p.CoreC)
	}
	c.lowC -= 2
	c.highC += 0.16 * (c.highC - c.lowC) // for the words above the upper line
}

func (c *curve) height(core float64) float64 {
	return c.bottom - (core-c.lowC)/(c.highC-c.lowC)*(c.bottom-c.top)
}

// degrees draws the scale of temperature at the left: every 50 F or 25 °C.
func (c *curve) degrees() {
	for step := -2; step < 12; step++ {
		core := float64(step) * 25
		if c.sys == unit.US {
			core = float64(unit.FromFahrenheit(float64(step) * 50))
		}
		if core < c.lowC || core > c.highC {
			continue
		}
		y := c.height(core)
		c.shape("path", "class", "rule", "d", "M"+short(curveLeft)+" "+short(y)+"H"+short(c.axis.right))
		c.label(curveLeft-5, y+5, "soft right", c.core(core))
	}
}

// band draws the area between the percentiles, and the expected line as far as it is
// expected to cook: a dot where it comes off.
func (c *curve) band() {
	var upper, lower, middle strings.Builder
	off := c.milestone(schedule.MilestoneTakeOff)
	endX, endY := 0.0, 0.0
	for i, p := range c.batch.Curve {
		x, join := c.axis.x(p.At), "L"
		if i == 0 {
			join = "M"
		}
		fmt.Fprintf(&upper, "%s%s %s", join, short(x), short(c.height(p.HighC)))
		if !off.IsZero() && p.At.After(off) {
			continue
		}
		endX, endY = x, c.height(p.CoreC)
		fmt.Fprintf(&middle, "%s%s %s", join, short(x), short(endY))
	}
	if at := c.axis.x(off); !off.IsZero() && at > endX && c.axis.holds(off) {
		endX, endY = at, c.height(c.coreAt(off))
		fmt.Fprintf(&middle, "L%s %s", short(endX), short(endY))
	}
	for i := len(c.batch.Curve) - 1; i >= 0; i-- {
		p := c.batch.Curve[i]
		fmt.Fprintf(&lower, "L%s %s", short(c.axis.x(p.At)), short(c.height(p.LowC)))
	}
	c.shape("path", "class", "band", "d", upper.String()+lower.String()+"z")
	c.shape("path", "class", "curve", "d", middle.String())
	c.shape("circle", "class", "end", "cx", endX, "cy", endY, "r", 4.5)
}

// coreAt is the expected core at an instant between two points of the curve.
func (c *curve) coreAt(t time.Time) float64 {
	points := c.batch.Curve
	for i := 1; i < len(points); i++ {
		if a, b := points[i-1], points[i]; !t.After(b.At) {
			share := t.Sub(a.At).Seconds() / max(b.At.Sub(a.At).Seconds(), 1)
			return a.CoreC + share*(b.CoreC-a.CoreC)
		}
	}
	return points[len(points)-1].CoreC
}

func (c *curve) milestone(kind schedule.MilestoneKind) time.Time {
	m, _ := c.batch.Milestone(kind)
	return m.Window.Expected
}

func (c *curve) words() string {
	points := c.batch.Curve
	first, off := points[0], points[len(points)-1].At
	if at := c.milestone(schedule.MilestoneTakeOff); !at.IsZero() && at.Before(off) { // the line ends there
		off = at
	}
	text := fmt.Sprintf("%s: from %s at %s to %s at %s", c.batchTitle(c.dish, c.batch), c.core(first.CoreC), c.clock(first.At), c.core(c.coreAt(off)), c.clockBy(off, first.At))
	if c.dish.MinimumC > 0 {
		text += "; USDA minimum " + c.core(c.dish.MinimumC)
	}
	return text + "; " + c.batchTimes(c.batch) + "."
}
