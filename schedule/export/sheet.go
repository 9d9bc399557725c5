package export

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"io"
	"strings"

	"example.com/cookday/schedule"
)

//go:embed sheet.html.tmpl
var sheetHTML string

//go:embed sheet.css
var sheetCSS string

var sheetTemplate = template.Must(template.New("sheet").Parse(sheetHTML))

// Sheet writes the cook sheet: one HTML page that needs no script and asks for
// nothing else, to read on a phone and to print. The error names an unknown time
// zone or is that of the writer. The sheet of a day under way begins with what to do now.
func Sheet(w io.Writer, p schedule.Plan, o Options) error {
	if p.Revision > 0 && p.Feasible && p.RevisedAt != nil {
		if o.Now.IsZero() {
			o.Now = *p.RevisedAt
		}
		return LiveSheet(w, p, o.Now, Live{})
	}
	v, err := look(p, o.Now)
	if err != nil {
		return err
	}
	data, err := v.sheet()
	if err != nil {
		return err
	}
	var b bytes.Buffer
	if err := sheetTemplate.Execute(&b, data); err != nil {
		return err
	}
	_, err = io.WriteString(w, b.String())
	return err
}

// sheetData is what the template shows: texts only, which it escapes; style and
// pictures are our own and escaped already.
type sheetData struct {
	Title, EatAt, LightLabel, LightAt, Sure, Now, NextLabel, Next, Revision, TZ, Closing string

	Feasible, Spreads                                     bool
	Menu                                                  []menuItem
	Dangers, Changes, Shopping, Holds, Findings, Remedies []string
	Heads, Good, Cautions                                 []string // Heads and Good are the findings that ask for something, and the rest
	Written                                               []writtenData
	Fires                                                 []cardData
	Days                                                  []dayData
	Timeline, CloseUps, Curves                            template.HTML // CloseUps are parts of the timeline again, larger
	Style                                                 template.CSS
}

// writtenData is what to write for the remedy of a number.
type writtenData struct {
	Number int
	Text   string
}

type menuItem struct{ Name, Portion string }

type dayData struct {
	Title string
	Rows  []rowData
}

type rowData struct {
	Part, Remark, Time, Beside, Kind, Text string // Part is the name of the part of the day that begins with the row
	Attended, Done, Quiet                  bool
}

func (v *view) sheet() (sheetData, error) {
	v.tellOnce()
	first, rest := v.bySeverity()
	if v.Revision == 0 && v.Feasible {
		first, rest = beforeLighting(first, rest)
	}
	d := sheetData{Title: v.title(), EatAt: v.eatAt(), Sure: v.sure() + ".", TZ: v.TZ, Closing: closing, Feasible: v.Feasible,
		Menu: v.menuItems(), Dangers: cautionTexts(first), Cautions: cautionTexts(rest), Shopping: v.shoppingList(), Holds: v.holdLines(), LightLabel: v.lightLabel(), LightAt: v.lightAt(),
		Style: template.CSS(sheetCSS + pictureCSS)}
	if d.NextLabel, d.Next = "Next", v.next(); v.now.IsZero() {
		d.NextLabel, d.Next = "First", v.firstOfAll()
	}
	if !v.now.IsZero() {
		d.Now = v.clock(v.now) + " on " + v.day(v.now)
	}
	if v.Revision > 0 {
		d.Revision = fmt.Sprint(v.Revision)
	}
	d.Changes = v.changeTexts()
	for _, f := range v.Findings {
		d.Findings = append(d.Findings, findingMark(f)+v.finding(f))
	}
	d.Heads, d.Good = v.parted()
	for i, r := range v.Remedies {
		d.Remedies = append(d.Remedies, v.remedy(r))
		if r.Write != "" {
			d.Written = append(d.Written, writtenData{i + 1, unbroken(v.apart.Replace(clean(r.Write)))})
		}
	}
	d.Days, d.Spreads = v.dayRows()
	for _, texts := range [][]string{d.Dangers, d.Changes, d.Shopping, d.Holds, d.Findings, d.Heads, d.Good, d.Remedies, d.Cautions} {
		for i, text := range texts {
			texts[i] = unbroken(v.apart.Replace(text))
		}
	}
	d.EatAt, d.Sure, d.Next = v.apart.Replace(d.EatAt), v.apart.Replace(d.Sure), v.apart.Replace(d.Next)
	for i, m := range d.Menu {
		d.Menu[i].Name = isolated(m.Name)
	}
	if !v.Feasible {
		return d, nil
	}
	return d, v.draw(&d)
}

// parted are the findings that ask for something, and the rest.
func (v *view) parted() (heads, good []string) {
	grave, rest := v.gravest()
	for _, f := range grave {
		heads = append(heads, v.finding(f))
	}
	for _, f := range rest {
		good = append(good, v.finding(f))
	}
	return heads, good
}

// dayRows are the steps as rows; spreads says whether a window stands behind a time.
func (v *view) dayRows() (days []dayData, spreads bool) {
	t := &textSheet{view: v}
	for _, day := range v.agenda(0) {
		rows := make([]rowData, len(day.entries))
		for i, e := range day.entries {
			rows[i] = rowData{Part: day.opens(i), Remark: e.remark, Time: v.clock(e.at), Kind: capital(e.kind), Text: unbroken(v.apart.Replace(strings.TrimSpace(e.text + " " + e.more))),
				Attended: e.step.Attended && (e.step.Done || !leftOut(e.step)), Done: e.step.Done, Quiet: e.quiet && e.remark == ""}
			if e.remark == "" {
				rows[i].Beside = unbroken(v.apart.Replace(t.beside(e)))
			}
		}
		days = append(days, dayData{Title: day.title, Rows: rows})
	}
	return days, t.spreads
}

func cautionTexts(cautions []schedule.Caution) []string {
	texts := make([]string, len(cautions))
	for i, c := range cautions {
		texts[i] = sentence(c.Text)
	}
	return texts
}

// unbroken keeps numbers and their units on one line of a page.
func unbroken(text string) string {
	words := glued(strings.Fields(text))
	for i, word := range words {
		words[i] = strings.ReplaceAll(word, " ", "\u00a0")
	}
	return strings.Join(words, " ")
}
