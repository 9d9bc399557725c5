package export

import (
	"slices"
	"strings"
	"unicode"

	"example.com/cookday/schedule"
)

// breadth estimates the width of a text in letter heights. Fonts differ and are not
// known here; the figures are those of a wide sans serif, so that most are narrower
// (measured from DejaVu Sans, rounded up).
func breadth(s string) float64 {
	sum := 0.0
	for _, r := range s {
		switch {
		case columnsOf(r) != 1:
			sum += float64(columnsOf(r)) / 2 * 1.05
		case strings.ContainsRune("iljtfrI.,:;'|!()[] /-", r):
			sum += 0.41
		case strings.ContainsRune("mwMW@%&", r):
			sum += 0.98
		case unicode.IsUpper(r):
			sum += 0.78
		case r > 0x2000:
			sum += 1.05
		default:
			sum += 0.64
		}
	}
	return sum
}

// size is the estimated width of a line in a picture.
func size(s string, bold bool) float64 {
	if bold {
		return breadth(s) * letterSize * 1.12
	}
	return breadth(s) * letterSize
}

// lines breaks a text for a picture.
func lines(s string, room float64) []string {
	var out []string
	line := ""
	for _, word := range glued(strings.Fields(s)) {
		switch {
		case line == "":
			line = word
		case size(line+" "+word, false) <= room:
			line += " " + word
		default:
			out, line = append(out, line), word
		}
	}
	if line != "" {
		out = append(out, line)
	}
	for i, line := range out {
		out[i] = shorten(line, room, false)
	}
	return balanced(out)
}

// shorten cuts a text that is too long, and shows that it did.
func shorten(s string, room float64, bold bool) string {
	if size(s, bold) <= room {
		return s
	}
	runes := []rune(s)
	for len(runes) > 1 && size(string(runes)+"…", bold) > room {
		runes = runes[:len(runes)-1]
	}
	return balanced([]string{strings.TrimRight(string(runes), " ") + "…"})[0]
}

// balanced closes the isolates that are open at the end of a line, because each line
// is a text of its own, and opens them again on the next.
func balanced(lines []string) []string {
	open := 0
	for i, line := range lines {
		line = strings.Repeat(string(isolateStart), open) + line
		open = max(strings.Count(line, string(isolateStart))-strings.Count(line, string(isolateEnd)), 0)
		lines[i] = line + strings.Repeat(string(isolateEnd), open)
	}
	return lines
}

// Marks that keep a text of its own direction from reordering its neighbours
// (Unicode Standard Annex 9, section 2.4).
const (
	isolateStart = '\u2068'
	isolateEnd   = '\u2069'
)

// isolated wraps a name that may run from right to left.
func isolated(s string) string {
	if strings.IndexFunc(s, rightToLeft) < 0 {
		return s
	}
	return string(isolateStart) + s + string(isolateEnd)
}

// isolator wraps the names of plan and dishes that run from right to left wherever a
// text has them, the longer of two names that begin alike first.
func isolator(p schedule.Plan) *strings.Replacer {
	var names []string
	add := func(name string) {
		if name = clean(name); isolated(name) != name {
			names = append(names, name)
		}
	}
	add(p.Name)
	for _, d := range p.Dishes {
		add(d.Name)
	}
	slices.SortStableFunc(names, func(a, b string) int { return len(b) - len(a) })
	var pairs []string
	for _, name := range names {
		pairs = append(pairs, name, isolated(name))
	}
	return strings.NewReplacer(pairs...)
}

func rightToLeft(r rune) bool {
	return slices.ContainsFunc([]*unicode.RangeTable{unicode.Hebrew, unicode.Arabic, unicode.Syriac, unicode.Thaana, unicode.Nko, unicode.Adlam},
		func(t *unicode.RangeTable) bool { return unicode.Is(t, r) })
}

// paragraph writes a text as lines below each other and moves on.
func (s *svg) paragraph(x, room float64, class, text string) {
	for _, line := range lines(text, room) {
		s.label(x, s.y+letterSize, class, line)
		s.y += lineHeight
	}
}
