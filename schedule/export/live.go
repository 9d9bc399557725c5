package export

import (
	"bytes"
	_ "embed"
	"html/template"
	"io"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
)

//go:embed live.html.tmpl
var liveHTML string

//go:embed live.css
var liveCSS string

var liveTemplate = template.Must(template.Must(sheetTemplate.Clone()).New("live").Parse(liveHTML))

// Live is what whoever serves the sheet of a day under way adds to it: markup of their
// own, escaped already. What is empty is left out.
type Live struct {
	Notice template.HTML                       // above all else: why an entry was not taken
	Forms  template.HTML                       // to log with
	Script template.HTML                       // at the end
	Step   func(s schedule.Step) template.HTML // to log that a step was done; "" where the log cannot say it
	Remedy func(number int) template.HTML      // to take a remedy, by its number from 1
}

// Long enough to do a step that came due, and to say so where the log can tell; so many
// steps to come are seen at a glance (assumptions).
const (
	stillNow    = 10 * time.Minute
	stillAsked  = 30 * time.Minute
	atOnce      = time.Minute
	stepsToCome = 5
)

// LiveSheet writes the page on which a cook follows the day: what to do now and why, what
// comes next, what to worry about, what else is given to put there, and then the sheet.
func LiveSheet(w io.Writer, p schedule.Plan, now time.Time, l Live) error {
	v, err := look(p, now)
	if err != nil {
		return err
	}
	sheet, err := v.sheet()
	if err != nil {
		return err
	}
	d := liveData{sheetData: sheet, Live: l, Clock: v.clock(now)}
	d.Style += template.CSS(liveCSS)
	v.fillLive(&d)
	var b bytes.Buffer
	if err := liveTemplate.Execute(&b, d); err != nil {
		return err
	}
	_, err = io.WriteString(w, b.String())
	return err
}

// liveData is what the template shows beside what the sheet shows.
type liveData struct {
	sheetData
	Live
	Clock, Idle     string
	First           *doData // what comes next, where no step is due now
	Do, Then, Open  []doData
	Alarms, Asks    []string // dangers, and what else asks for hands
	Worries, More   []string // the gravest, and the rest of them
	OnFire, Known   []string
	Ways, Otherwise []wayData
	Past            []dayData
}

type doData struct {
	Time, Was, Text, Window, Why string
	Button                       template.HTML
}

type wayData struct {
	Text   string
	Button template.HTML
}

func (v *view) fillLive(d *liveData) {
	due, _ := (&textSheet{view: v}).dueAndNext()
	asked := 0
	if v.Feasible {
		for _, f := range v.alarms() {
			d.Alarms = append(d.Alarms, unbroken(v.apart.Replace(v.finding(f))))
		}
	}
	for _, f := range v.Findings {
		text := unbroken(v.apart.Replace(v.finding(f)))
		switch {
		case f.Severity == schedule.Danger && v.Feasible:
		case v.Feasible && v.Revision > 0 && asked < mostAsked && v.asksNow(f, due):
			d.Asks = append(d.Asks, text)
			asked++
		case f.Severity == schedule.Info && v.Feasible:
			d.Known = append(d.Known, text)
		default:
			d.Worries = append(d.Worries, text)
		}
	}
	if v.Feasible && len(d.Worries) > mostWorries {
		d.Worries, d.More = d.Worries[:mostWorries], d.Worries[mostWorries:]
	}
	v.fillSteps(d)
	d.OnFire = v.onTheFire()
	ways := &d.Ways
	if v.Feasible && v.Revision == 0 {
		ways = &d.Otherwise // nothing has gone wrong yet
	}
	for i, text := range d.Remedies {
		way := wayData{Text: text}
		if d.Remedy != nil {
			way.Button = d.Remedy(i + 1)
		}
		*ways = append(*ways, way)
	}
	d.Past, d.Days = v.pastDays(d.Days)
}

// onTheFire says of each piece that cooks how it stands.
func (v *view) onTheFire() (lines []string) {
	t := &textSheet{view: v}
	for _, d := range v.Dishes {
		for _, b := range d.Batches {
			if line := t.cooks(d, b); line != "" && !v.unfit(d.ID) {
				lines = append(lines, unbroken(v.apart.Replace(line)))
			}
		}
	}
	return lines
}

// fillSteps sorts what a person has to do into what is to be done now, what comes next
// and what was to be done and may not have been.
func (v *view) fillSteps(d *liveData) {
	for _, s := range v.Steps {
		if !toDo(s) {
			continue
		}
		age := v.now.Sub(s.At)
		do := v.doing(s)
		now := stillNow
		if d.Step != nil {
			if do.Button = d.Step(s); do.Button != "" {
				now = stillAsked
			}
		}
		switch {
		case age < -atOnce && len(d.Then) <= stepsToCome:
			do.Button, do.Text = "", unbroken(v.apart.Replace(v.glance(s)))
			if k := len(d.Then) - 1; k < 0 || d.Then[k].Time != do.Time || d.Then[k].Text != do.Text { // two batches may be one entry
				d.Then = append(d.Then, do)
			}
		case age < -atOnce:
		case age <= now:
			d.Do = append(d.Do, do)
		case do.Button != "":
			do.Why = ""
			d.Open = append(d.Open, do)
		}
	}
	if len(d.Do) == 0 && len(d.Then) > 0 {
		d.First, d.Then = &d.Then[0], d.Then[1:]
	}
	d.Then = d.Then[:min(len(d.Then), stepsToCome)]
	switch {
	case !v.Feasible:
		d.Idle = "Nothing: the day has no plan yet."
	case d.First != nil:
		d.Idle = "Nothing to do before " + d.First.Time + ". Then:"
	default:
		d.Idle = "Nothing is left to do."
	}
}

// glance is the first sentence of what a step asks: the rest is told when it is due, and in
// the table of the day.
func (v *view) glance(s schedule.Step) string {
	text := v.entry(s).text
	from := 0
	if name := v.dish(s.Dish); s.Dish != "" {
		from = max(strings.Index(text, name), 0) + len(name) // a name may have a full stop
	}
	if from >= len(text) {
		return text
	}
	if k := strings.Index(text[from:], ". "); k >= 0 {
		return text[:from+k+1]
	}
	return text
}

func (v *view) doing(s schedule.Step) doData {
	e := v.entry(s)
	d := doData{Time: v.clockBy(s.At, v.now), Text: unbroken(v.apart.Replace(e.text)), Window: e.window, Why: unbroken(v.apart.Replace(sentence(s.Why)))}
	if e.change != "" {
		d.Was = (&textSheet{view: v}).was(e)
	}
	return d
}

// pastDays parts the rows of the days at now.
func (v *view) pastDays(days []dayData) (past, left []dayData) {
	mark := "Now: " + v.clock(v.now) + "."
	k := slices.IndexFunc(days, func(d dayData) bool { return d.nowAt(mark) >= 0 })
	if k < 0 {
		if len(v.Steps) > 0 && v.now.After(v.Steps[len(v.Steps)-1].At) {
			return days, nil
		}
		return nil, days
	}
	i := days[k].nowAt(mark)
	past = slices.Clone(days[:k])
	if before := days[k].Rows[:i]; len(before) > 0 {
		past = append(past, dayData{days[k].Title, before})
	}
	if rows := slices.Clone(days[k].Rows[i+1:]); len(rows) > 0 {
		if rows[0].Part == "" {
			rows[0].Part = partAt(days[k].Rows[:i+1]) // it goes on
		}
		left = append(left, dayData{days[k].Title, rows})
	}
	return past, append(left, days[k+1:]...)
}

// partAt is the part of the day in which rows end.
func partAt(rows []rowData) string {
	for _, r := range slices.Backward(rows) {
		if r.Part != "" {
			return r.Part
		}
	}
	return ""
}

func (d dayData) nowAt(mark string) int {
	return slices.IndexFunc(d.Rows, func(r rowData) bool { return strings.HasPrefix(r.Remark, mark) })
}
