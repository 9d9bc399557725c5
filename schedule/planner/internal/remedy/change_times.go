package remedy

import (
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/planner/internal/arrange"
)

// times are the day before, for all of it or a part, a serving of its own, and several sittings.
func (d dishChange) times() []change {
	var out []change
	quick := d.cut.Quick()
	if !quick && d.dish.Ready == "" {
		out = append(out, d.make("day-before", "Cook {dish} the day before, chill, and warm for the table.", "a day earlier; "+d.aheadPrice(), d.aheadPain(), "ready", schedule.ReadyDayBefore))
	}
	if d.dish.Ready != "" {
		return out
	}
	out = append(out, d.partAhead()...)
	if d.cut.Style != cut.Tough && d.dish.Count > 1 && d.t.Over(arrange.RuleRoom, arrange.RuleHands) {
		out = append(out, d.sittings()...)
	}
	if len(d.r.Dishes) > 1 && (len(d.t.Dishes) > 1 || d.t.Over(arrange.RuleQuiet, arrange.RuleEarliest)) {
		out = append(out, d.courses()...)
	}
	return out
}

// aheadPain is less for what is as good warmed: cuts that are cooked until tender.
func (d dishChange) aheadPain() int {
	if d.cut.Style == cut.Tough {
		return 40
	}
	return 62
}

// aheadPrice says what warming does to a dish: it goes to the published 165 F.
func (d dishChange) aheadPrice() string {
	switch d.cut.Style {
	case cut.Tough:
		return "warmed food, a softer bark"
	case cut.Bird:
		return "warmed food, no crisp skin"
	}
	return "warmed food, no longer pink"
}

// courseMinutes are how long before or after the others a dish may be served.
var courseMinutes = []int{30, 60, 120}

// courses serve the dish before or after the others.
func (d dishChange) courses() []change {
	var out []change
	for k, m := range courseMinutes {
		by := time.Duration(m) * time.Minute
		for _, way := range []struct {
			by   time.Duration
			word string
		}{{by, " later"}, {-by, " earlier"}} {
			at := moved(d.r, &d.dish, way.by)
			c := d.make("course", "Serve {dish} at "+say.TimeOfDay(d.r.Units, at.Time)+".", d.r.Units.About(by)+way.word+" than the rest", 22+6*k, "serve", at)
			c.way = way.word
			out = append(out, c)
		}
	}
	return out
}
