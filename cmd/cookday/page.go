package main

import (
	"strings"
	"unicode/utf8"

	"example.com/cookday/schedule/export"
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
	width := utf8.RuneCountInString(mark)
	for _, line := range export.Wrap(text, max(p.columns-width, 20)) {
		p.line(mark + line)
		mark = strings.Repeat(" ", width)
	}
}

// row writes a label and its text in two columns.
func (p *page) row(label, text string) {
	const width = 14
	p.item(label+strings.Repeat(" ", max(1, width-utf8.RuneCountInString(label))), text)
}
