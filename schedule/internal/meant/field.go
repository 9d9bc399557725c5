package meant

import (
	_ "embed"
	"encoding/csv"
	"regexp"
	"slices"
	"strings"
	"sync"

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

// plainWord is the name of a field without what joins its words: cook_temp, Cook Temp.
func plainWord(name string) string {
	return strings.NewReplacer("_", "", "-", "", " ", "").Replace(strings.ToLower(name))
}

// groupOf is the group of fields of a path, without the numbers of its items.
func groupOf(within string) string {
	within = strings.TrimPrefix(strings.TrimPrefix(within, "request."), "request")
	return strings.TrimSuffix(strict.Unnumbered(within), "[]")
}

// Field says what a field that does not exist was likely meant to be, by its meaning.
func Field(within, name string, value *strict.Node) strict.Meaning {
	group := groupOf(within)
	word := plainWord(name)
	for _, g := range guesses() {
		if strings.TrimSuffix(g.in, "[]") != group || !slices.ContainsFunc(g.words, func(w string) bool { return plainWord(w) == word }) {
			continue
		}
		return g.of(name, value)
	}
	if group == "" || group == "dishes" {
		return meantDish(group, name, value)
	}
	return strict.Meaning{}
}

// of is the meaning of a field that goes by another name, with its value where that fits.
func (g guess) of(name string, value *strict.Node) strict.Meaning {
	if g.right == "" {
		return strict.Meaning{Sentence: g.why}
	}
	field, _, _ := strings.Cut(g.right, ":")
	right, same := withValue(g.right, value)
	m := strict.Meaning{Sentence: "write " + right, Instead: []string{field}}
	if field == "count" { // which stands for a weight too
		m.Instead = append(m.Instead, "weight")
	}
	if g.why != "" {
		m.Sentence += "; " + g.why
	}
	if said := quiet(field, value); field == "quiet" && said.Sentence != "" {
		m.Sentence, m.Old, m.New = said.Sentence, name+": "+said.Old, "quiet: "+said.New
		return m
	}
	if field == "dishes" && (value.Kind == strict.NodeText || value.Kind == strict.NodeList) {
		if list, unclear := Dishes(value); list != "" {
			m.Sentence = "write dishes: " + list + unclear
		}
	}
	if same && g.why == "" {
		m.Old, m.New = name+": "+value.Text, right
	}
	return m
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
