package export

import (
	_ "embed"
	"encoding/xml"
	"fmt"
	"io"
	"strings"
)

// pictureWidth is the width of every picture in its own units. A letter is 15 of
// them: a picture that fills a phone of 360 px, less the margins of the page, has text
// of 14 px, to be read beside a smoking grill.
const (
	pictureWidth = 340.0
	pictureEdge  = 6.0 // left free at both sides
	letterSize   = 15.0
	lineHeight   = 19.0
)

//go:embed picture.css
var pictureCSS string

// svg collects the elements of a picture. Texts and attributes are escaped here and
// nowhere else.
type svg struct {
	body  strings.Builder
	texts strings.Builder // above all shapes, so that no line crosses a word
	id    string          // before every id, so that several pictures can share a page
	y     float64
	alone bool // a document of its own and not a part of a page
}

// attrs are names and values by turns; a value is a text or a number.
func attrs(b *strings.Builder, pairs []any) {
	for i := 0; i+1 < len(pairs); i += 2 {
		b.WriteString(" " + pairs[i].(string) + `="`)
		switch value := pairs[i+1].(type) {
		case float64:
			b.WriteString(short(value))
		default:
			escapeXML(b, fmt.Sprint(value))
		}
		b.WriteByte('"')
	}
}

func escapeXML(b *strings.Builder, text string) {
	xml.EscapeText(b, []byte(text)) // a strings.Builder never fails
}

func (s *svg) open(name string, pairs ...any) {
	s.body.WriteString("<" + name)
	attrs(&s.body, pairs)
	s.body.WriteString(">")
}

func (s *svg) close(name string) { s.body.WriteString("</" + name + ">\n") }

func (s *svg) shape(name string, pairs ...any) {
	s.body.WriteString("<" + name)
	attrs(&s.body, pairs)
	s.body.WriteString("/>\n")
}

// label writes one line of text with its baseline at y.
func (s *svg) label(x, y float64, class, text string, pairs ...any) {
	s.texts.WriteString("<text")
	attrs(&s.texts, append([]any{"x", x, "y", y, "class", class}, pairs...))
	s.texts.WriteString(">")
	escapeXML(&s.texts, text)
	s.texts.WriteString("</text>\n")
}

// add puts another drawing on top of this one.
func (s *svg) add(front *svg) {
	s.body.WriteString(front.body.String())
	s.texts.WriteString(front.texts.String())
}

// fill gives the paint of a pattern of this picture.
func (s *svg) fill(pattern string) string { return "url(#" + s.id + pattern + ")" }

// short prints a coordinate with one decimal at most, which is finer than a pixel
// and the same on every processor.
func short(x float64) string { return strings.TrimSuffix(number(x, 1), ".0") }

// patterns tell surfaces apart without colour: strokes of the colours of the style
// sheet on the ground of the shape.
func (s *svg) patterns() {
	tile := func(name string, size float64, turn string, draw func()) {
		s.open("pattern", "id", s.id+name, "width", size, "height", size, "patternUnits", "userSpaceOnUse", "patternTransform", turn)
		draw()
		s.close("pattern")
	}
	ground := func(size float64, class string) { s.shape("rect", "width", size, "height", size, "class", class) }
	stroke := func(d, class string) { s.shape("path", "d", d, "class", class) }
	s.open("defs")
	tile("wrapped", 6, "rotate(45)", func() { ground(6, "wrapped-ground"); stroke("M0 3H6", "wrapped-stroke") })
	tile("rest", 6, "rotate(0)", func() {
		ground(6, "rest-ground")
		s.shape("circle", "cx", 3.0, "cy", 3.0, "r", 1.1, "class", "rest-dot")
	})
	tile("hold", 5, "rotate(0)", func() { ground(5, "hold-ground"); stroke("M0 2.5H5", "hold-stroke") })
	tile("sear", 5, "rotate(45)", func() { ground(5, "sear-ground"); stroke("M0 2.5H5M2.5 0V5", "sear-stroke") })
	tile("setup", 5, "rotate(-45)", func() { ground(5, "setup-ground"); stroke("M0 2.5H5", "setup-stroke") })
	tile("warm", 5, "rotate(90)", func() { ground(5, "setup-ground"); stroke("M0 2.5H5", "hold-stroke") })
	tile("quiet", 7, "rotate(-45)", func() { ground(7, "quiet-ground"); stroke("M0 3.5H7", "quiet-stroke") })
	tile("coals", 9, "rotate(12)", func() {
		ground(9, "coal-ground")
		s.shape("rect", "x", 1.2, "y", 1.2, "width", 6.6, "height", 6.2, "rx", 2.2, "class", "coal")
	})
	s.close("defs")
}

// finish writes the picture with its title and what it shows in words.
func (s *svg) finish(w io.Writer, title, desc string) error {
	head := &svg{id: s.id}
	pairs := []any{"xmlns", "http://www.w3.org/2000/svg", "class", "picture", "role", "img", "viewBox", "0 0 " + short(pictureWidth) + " " + short(s.y),
		"aria-labelledby", s.id + "title " + s.id + "desc"}
	if s.alone {
		pairs = append(pairs, "width", 2*pictureWidth, "height", 2*s.y)
	}
	head.open("svg", pairs...)
	for _, part := range [][2]string{{"title", title}, {"desc", desc}} {
		head.open(part[0], "id", s.id+part[0])
		escapeXML(&head.body, part[1])
		head.close(part[0])
	}
	if s.alone {
		head.body.WriteString("<style>" + pictureCSS + "</style>\n")
	}
	head.patterns()
	_, err := io.WriteString(w, head.body.String()+s.body.String()+s.texts.String()+"</svg>\n")
	return err
}
