package assemble

import (
	"slices"

	"example.com/cookday/schedule"
	arrangepkg "example.com/cookday/schedule/planner/internal/arrange"
	daypkg "example.com/cookday/schedule/planner/internal/day"
)

// noteWraps says it where a dish is done before its asked wrap, and where its grate
// is hardly as cool as asked.
func dayNoteWraps(d *daypkg.Day, all []*arrangepkg.Placed) {
	for _, p := range all {
		if placedStaysBare(p) {
			name := p.It.Dish.Name
			if slices.ContainsFunc(all, func(o *arrangepkg.Placed) bool { return o.It == p.It && !placedStaysBare(o) }) {
				name = placedLabelAmong(p, all, d.Req.Units)
			}
			d.Find(daypkg.Finding("done-before-wrap", p.It.Path("wrap"), p.It, name+" is done before it would be wrapped, so it stays bare."))
		}
		d.NoteAir(p.It.Path("level"), p.It, p.Way)
	}
}

// staysBare says whether a batch is done before the wrap that was asked for.
func placedStaysBare(p *arrangepkg.Placed) bool {
	w := p.It.Dish.Wrap
	return w != nil && w.With != schedule.WrapNone && p.Stages() == 1
}
