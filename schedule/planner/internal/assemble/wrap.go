package assemble

import (
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner/internal/arrange"
)

// noteWraps says it where a dish is done before its asked wrap, and where its grate
// is hardly as cool as asked.
func (d *Assembler) noteWraps(all []*arrange.Placed) {
	for _, p := range all {
		if staysBare(p) {
			name := p.It.Dish.Name
			if slices.ContainsFunc(all, func(o *arrange.Placed) bool { return o.It == p.It && !staysBare(o) }) {
				name = labelAmong(p, all, d.Req.Units)
			}
			d.find("done-before-wrap", p.It.Path("wrap"), p.It, name+": done before it would be wrapped, so it stays bare.")
		}
		d.findings.Add(d.AirFindings(p.It.Path("level"), p.It, p.Way)...)
	}
}

// staysBare says whether a batch is done before the wrap that was asked for.
func staysBare(p *arrange.Placed) bool {
	w := p.It.Dish.Wrap
	return w != nil && w.With != schedule.WrapNone && p.Stages() == 1
}
