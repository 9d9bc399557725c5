package export

import (
	"math"
	"slices"
	"strings"

	"example.com/cookday/schedule"
)

// levels draws take-off and published minimum, the upper one with its words above and
// the lower one with them below, where the curve is not; where they are one, it is said once.
func (c *curve) levels() {
	const above, below = -4.0, 16.0
	target, minimum := c.dish.TargetC, c.dish.MinimumC
	if !c.offByCore() {
		target = 0
	}
	line := func(class string, core, dy float64, text string) {
		if core <= 0 {
			return
		}
		x, anchor := curveLeft+4, "left"
		if dy == below {
			x, anchor = c.axis.right-4, "right"
		}
		y := c.height(core)
		c.shape("path", "class", class, "d", "M"+short(curveLeft)+" "+short(y)+"H"+short(c.axis.right))
		c.label(x, y+dy, anchor, text+" "+c.core(core))
	}
	switch {
	case target > 0 && math.Abs(target-minimum) < 0.6: // one degree F
		line("minimum", minimum, above, "minimum and take-off")
	case target > minimum:
		line("minimum", minimum, below, "USDA minimum")
		line("target", target, above, "take-off")
	default:
		line("minimum", minimum, above, "USDA minimum")
		line("target", target, below, "take-off")
	}
}

// offByCore says whether the core decides when the piece comes off: where its bend does, the
// step has the range in which the core usually is by then, and one figure would be another.
func (c *curve) offByCore() bool {
	return !slices.ContainsFunc(c.Steps, func(s schedule.Step) bool {
		return s.Kind == schedule.StepTakeOff && s.Dish == c.dish.ID && strings.Contains(s.Text, "usually at ")
	})
}

// stall shades the time between its two milestones.
func (c *curve) stall() {
	from, to := c.milestone(schedule.MilestoneStallBegins), c.milestone(schedule.MilestoneStallEnds)
	if from.IsZero() {
		return
	}
	if to.IsZero() {
		to = from
	}
	x0, x1 := c.axis.x(from), c.axis.x(to)
	c.shape("rect", "x", x0, "y", c.top, "width", max(x1-x0, 1.5), "height", c.bottom-c.top, "fill", c.fill("quiet"))
	half := size("stall", false) / 2
	c.label(min(max((x0+x1)/2, curveLeft+half), c.axis.right-half), c.bottom-24, "middle", "stall")
}

func (c *curve) wrapped() {
	at := c.milestone(schedule.MilestoneWrap)
	if at.IsZero() {
		return
	}
	x := c.axis.x(at)
	c.shape("path", "class", "wrap", "d", "M"+short(x)+" "+short(c.top)+"V"+short(c.bottom))
	half := size("wrap", false) / 2
	c.label(min(max(x, curveLeft+half), c.axis.right-half), c.bottom-6, "middle", "wrap")
}
