package meant

import (
	"regexp"
	"strconv"
	"strings"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

// meantDish is the meaning of a field that is called like a food: "ribs: 2 racks".
func meantDish(group, name string, value *strict.Node) strict.Meaning {
	if cuts, outside := cut.Named(name); len(cuts)+len(outside) == 0 {
		return strict.Meaning{}
	}
	line, unclear := Dish(asSpoken(name, value))
	if line == "" {
		return strict.Meaning{Sentence: unclear}
	}
	if group == "" {
		return strict.Meaning{Sentence: LeadTo(unclear, "dishes: ["+line+"]"), Instead: []string{"dishes"}}
	}
	return strict.Meaning{Sentence: LeadTo(unclear, line), Instead: []string{"cut", "weight", "count"}}
}

// asSpoken is a food and what stands behind it as one text.
func asSpoken(name string, value *strict.Node) string {
	switch value.Kind {
	case strict.NodeText:
		return value.Text + " " + name
	case strict.NodeNumber:
		if c, unknown := cut.One(name); unknown == "" && c.Style == cut.Tough && !c.Ribs() {
			return value.Text + " lb " + name
		}
		return value.Text + " " + name
	}
	return name
}

// LeadTo is a sentence that ends in the line to write.
func LeadTo(unclear, line string) string {
	switch {
	case unclear == "":
		return "write " + line
	case strings.HasSuffix(unclear, "write which"):
		return unclear + ": " + line
	}
	return unclear + "; such as " + line
}

// Dish is a dish in a cook's words as the form has it, and what is unclear of it:
// then the line is of one of its meanings, or empty where it has none.
func Dish(text string) (line, unclear string) {
	s := cut.Speak(text)
	c, unclear := cut.One(s.Name)
	if unclear != "" {
		cuts, _ := cut.Named(s.Name)
		if len(cuts) == 0 {
			return "", unclear
		}
		c = cuts[0]
	}
	return "{" + strings.Join(spokenFields(s, c), ", ") + "}", unclear
}

// spokenFields are the fields of a dish in a cook's words. With no amount it has the usual one.
func spokenFields(s cut.Spoken, c cut.Cut) []string {
	fields := []string{"cut: " + c.Name}
	small := c.Quick()
	if m, err := unit.ParseMass(s.Weight); small && err == nil && s.Count == 0 && float64(m) > c.MaxPieceKg { // of all of them
		s.Count, s.Weight = max(c.InPieces(float64(m)), 1), ""
	}
	if s.Weight == "" && s.Count == 0 && !small {
		s.Weight = unit.US.Mass(unit.Mass(c.Typical))
	}
	if s.Count == 0 && small {
		s.Count = 4
	}
	if s.Weight != "" {
		fields = append(fields, "weight: "+s.Weight)
	}
	if s.Count > 1 || s.Count == 1 && s.Weight == "" {
		fields = append(fields, "count: "+strconv.Itoa(s.Count))
	}
	if s.Thickness != "" {
		fields = append(fields, "thickness: "+s.Thickness)
	}
	return fields
}

var betweenDishes = regexp.MustCompile(`\s*(?:[,;&+]|\band\b)\s*`)

// Dishes is a list of dishes in a cook's words as the form has it; empty where one
// of them is no food. What is unclear of any is said too.
func Dishes(n *strict.Node) (list, unclear string) {
	var texts []string
	switch n.Kind {
	case strict.NodeText:
		if texts = []string{n.Text}; !knownDish(n.Text) {
			texts = betweenDishes.Split(n.Text, -1)
		}
	case strict.NodeList:
		for _, item := range n.Items {
			texts = append(texts, item.Text) // of what is no text it is empty, and no food
		}
	case strict.NodeObject:
		for name, value := range n.Fields() {
			texts = append(texts, asSpoken(name, value))
		}
	}
	var lines []string
	for _, text := range texts {
		line, open := Dish(text)
		if line == "" {
			return "", ""
		}
		if open != "" {
			unclear += "; " + open
		}
		lines = append(lines, line)
	}
	if len(lines) == 0 {
		return "", ""
	}
	return "[" + strings.Join(lines, ", ") + "]", unclear
}

func knownDish(text string) bool {
	line, _ := Dish(text)
	return line != ""
}
