package schedule

import (
	"fmt"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/safety"
)

// holdAdvice says how a finished batch may wait, gentlest first.
func (d *day) holdAdvice(p *placed) []HoldAdvice {
	var out []HoldAdvice
	early := p.on - p.way.total().early
	for i, o := range p.options {
		out = append(out, HoldAdvice{
			Method: o.method, Chosen: i == p.hold, LimitMinutes: o.minutes, Until: d.at(early - o.minutes),
			Rule: o.rule.Sentence, Text: d.holdText(p, o, p.it.dish.Name),
		})
	}
	return out
}

// holdText says how to hold.
func (d *day) holdText(p *placed, o holdOption, name string) string {
	limit := d.about(o.minutes)
	switch o.method {
	case HoldBox:
		text := "Stand %s unwrapped or vented until it stops cooking, about 15 min, then wrap it, towel it and close it in an insulated box, warmed with hot water first. Good for about %s: until it is %s just under the surface."
		if p.it.cut.Style == cut.Tough {
			return fmt.Sprintf(text, name, limit, d.core(safety.DangerHighC))
		}
		return fmt.Sprintf("Wrap %s and close it in an insulated box, warmed with hot water first. Good for about %s: until it is %s just under the surface.",
			name, limit, d.core(safety.DangerHighC))
	case HoldOven:
		return fmt.Sprintf("Put %s, wrapped, into the oven at %s.", name, d.grate(d.ovenC()))
	case HoldGrill:
		return fmt.Sprintf("Leave %s, wrapped, on the grate over the dying fire.", name)
	case HoldCounter:
		return fmt.Sprintf("Leave %s on the counter, %s at most.", name, limit)
	}
	return fmt.Sprintf("Tent %s loosely with foil. Good for about %s.", name, limit)
}

// noteHolds says it where the early end of a window cannot be held.
func (d *day) noteHolds(all []*placed) {
	for _, p := range all {
		if p.it.cut.Style == cut.Timed {
			continue
		}
		gap := p.earlyGap()
		limit := p.it.restMinutes() + p.it.slack()
		if p.hold >= 0 {
			limit = p.options[p.hold].minutes
		}
		if gap <= limit+holdTolerance {
			continue
		}
		d.find(Finding{
			Code: codeHoldShort, Severity: Warning, Path: p.it.path("hold"), Dishes: []string{p.it.dish.ID},
			Text: fmt.Sprintf("On a fast day %s is done at %s and can wait until about %s, not until %s. A warm oven, an insulated box, or putting it on later once you see how it goes would help.",
				p.it.dish.Name, localClock(d.at(p.on-p.way.total().early)), localClock(d.at(p.on-p.way.total().early-limit)), localClock(d.at(float64(p.it.serve)))),
		})
	}
}

// holdTolerance is how far, in minutes, the early end may overrun a hold before
// it is worth saying.
const holdTolerance = 5
