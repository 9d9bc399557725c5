package meant

import (
	_ "embed"
	"encoding/csv"
	"regexp"
	"slices"
	"strings"
	"sync"
	"time"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

//go:embed meant.csv
var meantCSV string

// guess is what people write for a field that goes by another name.
type guess struct {
	in    string // the group of fields: dishes[]
	words []string
	right string // the line that would be right; empty where nothing would
	why   string
}

// guesses are a table of common practice; it has no source.
var guesses = sync.OnceValue(func() []guess {
	rows, err := csv.NewReader(strings.NewReader(meantCSV)).ReadAll()
	if err != nil {
		panic(err) // the table is a part of this program
	}
	var all []guess
	for _, row := range rows[1:] {
		all = append(all, guess{in: row[0], words: strings.Fields(row[1]), right: row[2], why: row[3]})
	}
	return all
})

// guessed are the guesses by their group of fields and their word; of two the first counts.
var guessed = sync.OnceValue(func() map[[2]string]guess {
	all := map[[2]string]guess{}
	for _, g := range guesses() {
		for _, w := range g.words {
			key := [2]string{strings.TrimSuffix(g.in, "[]"), plainWord(w)}
			if _, known := all[key]; !known {
				all[key] = g
			}
		}
	}
	return all
})

var joints = strings.NewReplacer("_", "", "-", "", " ", "")

// plainWord is the name of a field without what joins its words: cook_temp, Cook Temp.
func plainWord(name string) string { return joints.Replace(strings.ToLower(name)) }

// groupOf is the group of fields of a path, without the numbers of its items.
func groupOf(within string) string {
	within = strings.TrimPrefix(strings.TrimPrefix(within, "request."), "request")
	return strings.TrimSuffix(strict.Unnumbered(within), "[]")
}

// Day is what is known of a day while its request is read.
type Day struct {
	Serve  string            // the line that would be right for when people eat, with all that the request says of it
	Whole  bool              // Serve is certain
	Open   string            // what is written of it and not understood, with what to write; empty where nothing is
	Heads  string            // adults and children, as in "4, children: 2"; empty where they are not told apart
	Lines  map[string]string // those that would be right within serve, by their paths
	Eaters int               // how many people eat; 0: nobody said
	Some   Some              // parts of the guests for whom a dish may be
	Now    time.Time         // on the cook's clock; zero where that is not known
	Date   string            // on which people eat, where it is said and no time is; else empty
	Zone   string            // of the clock; empty where it is not known
	Fields []string          // those that say when people eat
	When   When              // when people eat, taken; its Node is nil where that is not certain
}

// Field says what a field that does not exist was likely meant to be, by its meaning.
func (d Day) Field(within, name string, value *strict.Node) strict.Meaning {
	group := groupOf(within)
	if group == "" && (isMealTime(name, value) || isDayField(name, value)) {
		return d.serve(name)
	}
	if m := d.special(group, name, value); m.Sentence != "" {
		return m
	}
	if g, ok := guessOf(group, name); ok {
		return d.of(g, name, value)
	}
	if group == "" || group == "dishes" {
		return meantDish(group, name, value)
	}
	return strict.Meaning{}
}

// guessOf is what people write by a name in a group.
func guessOf(group, name string) (guess, bool) {
	g, ok := guessed()[[2]string{group, plainWord(name)}]
	return g, ok
}

// serve is the meaning of a field that says when people eat.
func (d Day) serve(name string) strict.Meaning {
	m := strict.Meaning{Sentence: "write " + d.Serve, Instead: []string{"serve"}}
	if d.Open != "" {
		m.Sentence = d.Open
	}
	if d.Whole {
		m.Old, m.New, m.Whole = name, d.Serve, true
	}
	return m
}

// of is the meaning of a field that goes by another name, with its value where that fits.
func (d Day) of(g guess, name string, value *strict.Node) strict.Meaning {
	if g.right == "" {
		return strict.Meaning{Sentence: g.why}
	}
	field, _, _ := strings.Cut(g.right, ": ")
	if field == "serve" && g.in == "" {
		m := d.serve(name)
		if g.why != "" {
			m.Sentence += "; " + g.why
		}
		return m
	}
	if yes, known := value.Says(); known && field != "quiet" && field != "oven" && field != "guests" { // frozen: yes
		if !yes {
			return strict.Meaning{Sentence: "leave it out", Instead: []string{field}, Whole: true, Old: name}
		}
		m := strict.Meaning{Sentence: "write " + g.right, Instead: []string{field}}
		if value.Text != "" && g.why == "" {
			m.Old, m.New = name+": "+value.Text, g.right
		}
		return m
	}
	if field == "count" && value.Kind == strict.NodeText { // "amount: 8 lb"
		if s := cut.Speak(value.Text); s.Weight != "" && s.Count == 0 {
			field, g.right = "weight", "weight: "+value.Text
		}
	}
	if line := d.Lines["serve."+field]; g.in == "serve" && line != "" {
		return strict.Meaning{Sentence: "write " + line, Instead: []string{field}}
	}
	right, same := withValue(g.right, value)
	m := strict.Meaning{Sentence: "write " + right, Instead: []string{field}}
	if field == "count" { // which stands for a weight too
		m.Instead = append(m.Instead, "weight")
	}
	if g.why != "" {
		m.Sentence += "; " + g.why
		return m
	}
	m.As, m.Read = field, value
	if same {
		_, text, _ := strings.Cut(right, ": ")
		m.Old, m.New = name+": "+value.Text, right
		if value.Kind == strict.NodeNumber && text != value.Text {
			m.Read = strict.NewText(text, value.Line)
		}
		return m
	}
	return d.renamed(m, field, name, value)
}

// renamed is the meaning of a field whose value is right, or is read as it stands.
func (d Day) renamed(m strict.Meaning, field, name string, value *strict.Node) strict.Meaning {
	m.Old, m.New = name+":", field+":"
	switch {
	case field == "dishes":
		if list, open, _, _ := Dishes(value, d.Eaters); list != nil && (value.Kind == strict.NodeText || value.Kind == strict.NodeList && !hasGroups(value)) {
			m.Sentence = "write dishes: " + list.Flow() + open
			return m
		}
		m.Sentence = "write dishes in its place"
	case field == "quiet" || field == "guests" || field == "weather":
		if said := d.Understood("", field, value); said != nil {
			m.Sentence = "write " + field + ": " + said.Flow()
			return m
		}
	case value.Kind == strict.NodeText || value.Kind == strict.NodeNumber:
		if field == "cut" || field == "grill" || field == "target" || field == "count" || field == "weight" {
			m.Sentence = "write " + field + ": " + value.Text
		}
	}
	if value.Kind == strict.NodeObject || value.Kind == strict.NodeList {
		m.Sentence = "write " + field + " in its place"
	}
	return m
}

// hasGroups says whether an item of a list is no text.
func hasGroups(list *strict.Node) bool {
	return slices.ContainsFunc(list.Items, func(n *strict.Node) bool { return n.Kind != strict.NodeText })
}

// oneValue is a line with one number and its unit, or with a word.
var oneValue = regexp.MustCompile(`^([a-z_]+): (?:([0-9.]+)( [A-Za-z]+)?|[a-z]+|kettle 22 in)$`)

// withValue is an example with the value that was given, where that is one of its kind.
func withValue(right string, value *strict.Node) (line string, same bool) {
	m := oneValue.FindStringSubmatch(right)
	if m == nil {
		return right, false
	}
	field, number, of := m[1], m[2] != "", m[3]
	switch {
	case number && value.Kind == strict.NodeNumber:
		if of == " F" && field != "air" && likelyCelsius(field, value.Text) {
			of = " C"
		}
		return field + ": " + value.Text + of, true
	case of != "" && value.Kind == strict.NodeText && isQuantity(value.Text):
		return field + ": " + value.Text, true
	case field == "target" && value.Kind == strict.NodeText && !value.LikeNumber(): // medium rare
		return field + ": " + value.Text, true
	case (field == "cut" || field == "grill") && value.Kind == strict.NodeText:
		if field == "cut" {
			if _, unknown := cut.One(value.Text); unknown != "" {
				return right, false
			}
		}
		return field + ": " + value.Text, true
	}
	return right, false
}

// likelyCelsius says whether the number of a heat is too low to be Fahrenheit (an assumption).
func likelyCelsius(field, number string) bool {
	most := 130.0 // no grate and no oven is held below it
	if field == "target" {
		most = 100 // no meat is done below it
	}
	t, err := unit.ParseTemperature(number + " F")
	return err == nil && t.Fahrenheit() <= most
}

func isQuantity(text string) bool {
	_, mass := unit.ParseMass(text)
	_, length := unit.ParseLength(text)
	_, heat := unit.ParseTemperature(text)
	return mass == nil || length == nil || heat == nil
}
