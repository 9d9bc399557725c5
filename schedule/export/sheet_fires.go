package export

import (
	"fmt"
	"html/template"
	"io"
	"strings"

	"example.com/cookday/schedule"
)

// cardData is a picture of the grate with what it shows; the first of a fire says how the
// fire is.
type cardData struct {
	Fire, Brief, When string
	Who               []string
	Picture           template.HTML
}

// draw puts the pictures into a sheet: the timeline, the curves if there are any, and each
// fire, that of the day before first.
func (v *view) draw(d *sheetData) (err error) {
	if d.Timeline, err = drawn(func(w io.Writer) error { return v.timeline(w, "t-", false) }); err != nil {
		return err
	}
	if d.CloseUps, err = v.closeUps("l-"); err != nil {
		return err
	}
	if HasCurves(v.Plan) {
		if d.Curves, err = drawn(func(w io.Writer) error { return v.curves(w, "c-", false) }); err != nil {
			return err
		}
	}
	if b := v.dayBefore(); b != nil {
		before, err := look(*b, v.now)
		if err != nil {
			return err
		}
		if d.Fires, err = before.cards("b", ", the day before"); err != nil {
			return err
		}
	}
	cards, err := v.cards("g", "")
	d.Fires = append(d.Fires, cards...)
	return err
}

func drawn(picture func(io.Writer) error) (template.HTML, error) {
	var b strings.Builder
	err := picture(&b)
	return template.HTML(b.String()), err
}

// cards are the fires of a day in words and pictures; ids of the pictures begin with id.
func (v *view) cards(id, when string) (all []cardData, err error) {
	for _, f := range v.Phases {
		for i, g := range v.sittings(f) {
			c, err := v.card(f, g, fmt.Sprintf("%s%d-%d-", id, f.Number, i+1))
			if err != nil {
				return nil, err
			}
			c.Fire = fmt.Sprintf("Fire %d%s", f.Number, when)
			if i == 0 {
				c.Brief = unbroken(v.apart.Replace(strings.TrimSpace(v.fire(f) + " " + v.howTo(f))))
			}
			all = append(all, c)
		}
	}
	return all, nil
}

// card draws a single picture for a page that says the rest beside it.
func (v *view) card(f schedule.Phase, g sitting, id string) (c cardData, err error) {
	m := &grateMap{view: v, svg: &svg{id: id}, phase: f, sitting: g}
	m.draw(v.Request.Grill)
	c.When = v.span(g.from, g.to)
	for _, who := range m.who() {
		c.Who = append(c.Who, unbroken(v.apart.Replace(who)))
	}
	c.Picture, err = drawn(func(w io.Writer) error {
		return m.finish(w, fmt.Sprintf("The grate from above, fire %d", f.Number), m.words())
	})
	return c, err
}
