package export

import (
	"fmt"
	"strings"
	"time"

	"example.com/cookday/schedule"
)

// textSheet collects the lines of a text.
type textSheet struct {
	*view
	strings.Builder
	width   int
	colour  bool
	spreads bool // a window was said
}

// Escape sequences (ECMA-48 SGR). Bold and red on top of the terminal's own
// colours: they read on a light and on a dark ground, and nothing is said by
// colour alone.
const (
	bold   = "\x1b[1m"
	danger = "\x1b[1;31m"
	plain  = "\x1b[0m"
)

func (t *textSheet) styled(style, s string) string {
	if !t.colour || s == "" {
		return s
	}
	return style + s + plain
}

func (t *textSheet) line(s string) {
	t.WriteString(strings.TrimRight(s, " "))
	t.WriteByte('\n')
}

// heading sets a title with a rule below, and a blank line before it.
func (t *textSheet) heading(title string, rule byte) {
	if t.Len() > 0 {
		t.line("")
	}
	size := 0
	for _, line := range Wrap(title, t.width) {
		t.line(t.styled(bold, line))
		size = max(size, columns(line))
	}
	t.line(strings.Repeat(string(rule), size))
}

// item writes a text with a mark before its first line, the others indented as far.
// Marks and texts may be styled; a styled text is shorter than a line.
func (t *textSheet) item(mark, text string) {
	indent := columns(unstyled(mark))
	if strings.HasPrefix(text, "\x1b") {
		t.line(mark + text)
		return
	}
	for i, line := range Wrap(text, t.width-indent) {
		if i > 0 {
			mark = strings.Repeat(" ", indent)
		}
		t.line(mark + line)
	}
}

func unstyled(s string) string {
	for _, style := range []string{bold, danger, plain} {
		s = strings.ReplaceAll(s, style, "")
	}
	return s
}

// row writes a label and its text in two columns.
func (t *textSheet) row(label, text string) {
	t.item(t.styled(bold, label)+strings.Repeat(" ", max(1, 10-columns(label))), text)
}

func (t *textSheet) shopping() {
	t.heading("Shopping", '-')
	for _, line := range t.shoppingList() {
		t.item("- ", line)
	}
}

func (t *textSheet) fires() {
	if len(t.Phases) == 0 {
		return
	}
	t.heading("The fire", '-')
	for _, f := range t.firesBefore() {
		t.item("- ", f)
	}
	for _, f := range t.Phases {
		t.item(fmt.Sprintf("%d. ", f.Number), t.fire(f))
		t.item("   ", t.howTo(f))
	}
}

// kindColumns is the width of the longest kind of step, "stall begins".
const kindColumns = 12

func (t *textSheet) steps(next int) {
	for _, d := range t.agenda(next) {
		t.heading(d.title, '-')
		for i, e := range d.entries {
			if part := d.opens(i); part != "" {
				t.part(part, i > 0)
			}
			t.entry(e)
		}
	}
}

// part sets the name of a part of the day over its steps, apart from those of the one before.
func (t *textSheet) part(name string, apart bool) {
	if apart {
		t.line("")
	}
	t.line(t.styled(bold, name))
}

// entry writes a step: a box to tick for what is to be done, a wave for what only
// happens, the time, the kind, the text.
func (t *textSheet) entry(e entry) {
	if e.remark != "" {
		t.item("    "+t.clockColumn(e.at)+"  ", "-- "+e.remark)
		return
	}
	mark := "[ ] "
	switch {
	case e.step.Done:
		mark = "[x] "
	case !e.step.Attended:
		mark = " ~  "
	case leftOut(e.step):
		mark = " -  "
	}
	lead := mark + t.styled(bold, t.clockColumn(e.at)) + "  "
	if t.width >= 64 {
		lead += pad(e.kind, kindColumns) + "  "
	}
	text := strings.TrimSpace(t.beside(e) + " " + e.text + " " + e.more)
	if e.quiet {
		text += " (In quiet hours.)"
	}
	t.item(lead, text)
}

// beside is what stands right behind the time of an entry: its window, and what it was before.
func (t *textSheet) beside(e entry) string {
	var notes []string
	if e.window != "" {
		t.spreads = true
		notes = append(notes, t.spread(e.step.Window, e.at))
	}
	if e.change != "" && !e.step.Done {
		notes = append(notes, t.was(e))
	}
	if len(notes) == 0 {
		return ""
	}
	return "(" + strings.Join(notes, "; ") + ")"
}

// was says when a step that has moved was to be; one that has not is new.
func (t *textSheet) was(e entry) string {
	if m := t.changes[e.step.ID].Minutes; m != 0 {
		return "was " + t.clockBy(e.at.Add(-time.Duration(m*float64(time.Minute))), e.at)
	}
	return "new"
}

func (t *textSheet) holds() {
	if lines := t.holdLines(); len(lines) > 0 {
		t.heading("Resting and holding", '-')
		for _, line := range lines {
			t.item("- ", line)
		}
	}
}

func (t *textSheet) findings(title string, findings []schedule.Finding) {
	if len(findings) == 0 {
		return
	}
	t.heading(title, '-')
	for _, f := range findings {
		mark := findingMark(f)
		if mark == "" {
			mark = "- "
		}
		t.item(mark, t.finding(f))
	}
}

// findingMark stands before what asks for something, in a text and on a page.
func findingMark(f schedule.Finding) string {
	if f.Severity == schedule.Info {
		return ""
	}
	return "! "
}

func (t *textSheet) remedies(title string) {
	if len(t.Remedies) == 0 {
		return
	}
	t.heading(title, '-')
	for _, r := range t.Remedies {
		t.item("* ", t.remedy(r))
		if r.Write != "" {
			t.item("  ", "In the request: "+clean(r.Write)+".")
		}
	}
}

func (t *textSheet) footer() {
	t.line("")
	text := "Times are those of " + t.TZ + ". "
	if t.spreads {
		text += "In parentheses stand the earliest and the latest likely time: 8 times out of 10 it falls between them. "
	}
	t.item("", text+closing)
}
