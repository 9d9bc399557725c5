package main

import (
	"slices"
	"strings"
	"unicode/utf8"
)

// page collects lines of at most so many columns. What it prints is this program's
// own words, which are one column a letter.
type page struct {
	strings.Builder
	columns int
}

func (p *page) line(text string) { p.WriteString(strings.TrimRight(text, " ") + "\n") }

// item writes a text behind a mark, its further lines indented as far.
func (p *page) item(mark, text string) {
	line, empty := mark, true
	for _, word := range glued(text) {
		if !empty && utf8.RuneCountInString(line+word) >= p.columns {
			p.line(line)
			line, empty = strings.Repeat(" ", utf8.RuneCountInString(mark)), true
		}
		if !empty {
			line += " "
		}
		line, empty = line+word, false
	}
	p.line(line)
}

// glued are the words of a text, a number and its unit as one: "203 F" is not torn.
func glued(text string) []string {
	var words []string
	for word := range strings.FieldsSeq(text) {
		last := len(words) - 1
		if last >= 0 && slices.Contains(unitWords, strings.TrimRight(word, ".,;:)")) && words[last][len(words[last])-1] <= '9' {
			words[last] += " " + word
			continue
		}
		words = append(words, word)
	}
	return words
}

// unitWords are the units behind a number in this program's texts.
var unitWords = []string{"F", "°C", "lb", "oz", "kg", "g", "in", "cm", "mm", "h", "min", "%"}

// row writes a label and its text in two columns.
func (p *page) row(label, text string) {
	const width = 14
	p.item(label+strings.Repeat(" ", max(1, width-utf8.RuneCountInString(label))), text)
}
