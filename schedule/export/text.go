package export

import (
	"io"

	"example.com/cookday/schedule"
)

// Text writes the sheet for a terminal or a plain printer: headline, what matters
// most, shopping, the steps by time, holds, findings, remedies, cautions. With
// Options.Brief it is the next steps only. The error names an unknown time zone or
// is that of the writer.
func Text(w io.Writer, p schedule.Plan, o Options) error {
	v, err := look(p, o.Now)
	if err != nil {
		return err
	}
	v.tellOnce()
	t := &textSheet{view: v, width: max(o.Width, 40), colour: o.Colour}
	if o.Width == 0 {
		t.width = 80
	}
	switch {
	case o.Brief > 0 && p.Feasible:
		t.brief(o.Brief)
	case !p.Feasible:
		t.infeasible()
	default:
		t.whole()
	}
	_, err = io.WriteString(w, t.String())
	return err
}

func (t *textSheet) whole() {
	first, rest := t.bySeverity()
	if t.Revision == 0 {
		first, rest = beforeLighting(first, rest)
	}
	t.headline()
	if t.Revision > 0 { // while it cooks, what goes wrong comes before what moves
		t.findings("What the log shows", t.Findings)
		t.remedies("What you could do now")
	}
	before, after := "Before you light", "Safety"
	if t.Revision > 0 { // it burns
		before, after = "Safety", "More on safety"
	}
	t.cautions(before, first)
	if t.Revision == 0 {
		grave, rest := t.gravest()
		t.findings("Heads up", grave)
		t.shopping()
		t.fires()
		t.steps(0)
		t.holds()
		t.findings("Good to know", rest)
		t.remedies(otherWays)
	} else {
		t.steps(0)
		t.holds()
		t.changed()
		t.shopping()
		t.fires()
	}
	t.cautions(after, rest)
	t.footer()
}

// gravest are the findings that ask for something, and the rest.
func (v *view) gravest() (grave, rest []schedule.Finding) {
	for _, f := range v.Findings {
		if f.Severity == schedule.Info {
			rest = append(rest, f)
		} else {
			grave = append(grave, f)
		}
	}
	return grave, rest
}

// beforeLighting parts the dangers of which somebody must know before the fire is lit from
// those of a fire that burns: these come first among the rest.
func beforeLighting(first, rest []schedule.Caution) (before, after []schedule.Caution) {
	var burning []schedule.Caution
	for _, c := range first {
		switch c.Code {
		case "flare-on-opening", "lit-coals-moved":
			burning = append(burning, c)
		default:
			before = append(before, c)
		}
	}
	return before, append(burning, rest...)
}

// infeasible says so first: nobody should shop for a day that does not fit.
func (t *textSheet) infeasible() {
	t.heading(t.title(), '=')
	t.item("", t.styled(bold, "This day won't work as planned."))
	t.item("", "Asked: "+t.menu()+", to eat at "+t.clock(t.ServeAt)+" on "+t.date(t.ServeAt)+".")
	t.findings("Why not", t.Findings)
	t.remedies("What would make it work")
	first, rest := t.bySeverity()
	t.cautions("Safety", append(first, rest...))
}

func (t *textSheet) brief(n int) {
	t.heading(t.title(), '=')
	now := ""
	if !t.now.IsZero() {
		now = t.clock(t.now) + " now. "
	}
	t.item("", now+"Eat at "+t.eatAt()+". Odds: "+lower(t.sure())+".")
	t.warnings()
	t.steps(n)
	if len(t.agenda(n)) == 0 {
		t.item("", "No steps are left.")
	}
	for _, c := range t.Cautions {
		if c.Severity == schedule.Danger {
			t.item("! ", sentence(c.Text))
		}
	}
}

// briefWarnings is how many warnings below danger a brief form carries.
const briefWarnings = 2

// warnings are all dangers, and the first of what else goes wrong.
func (t *textSheet) warnings() {
	if t.Revision == 0 {
		return // nothing has gone wrong yet
	}
	left := briefWarnings
	for _, f := range t.Findings {
		switch {
		case f.Severity == schedule.Danger:
			t.item(t.styled(danger, "! "), sentence(f.Text))
		case f.Severity == schedule.Warning && left > 0:
			left--
			t.item("! ", sentence(f.Text))
		}
	}
}

func (t *textSheet) changed() {
	if len(t.Changes) == 0 {
		return
	}
	t.heading("What this revision changed", '-')
	for _, text := range t.changeTexts() {
		t.item("* ", text)
	}
}

func (t *textSheet) cautions(title string, cautions []schedule.Caution) {
	if len(cautions) == 0 {
		return
	}
	t.heading(title, '-')
	for _, c := range cautions {
		mark := "- "
		switch c.Severity {
		case schedule.Danger:
			mark = t.styled(danger, "! ")
		case schedule.Warning:
			mark = "! "
		}
		t.item(mark, sentence(c.Text))
	}
}
