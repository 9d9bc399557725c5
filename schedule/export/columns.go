package export

import (
	"strings"
	"unicode"
)

// wide holds the blocks of letters that take two columns (Unicode Standard Annex 11:
// Hangul, CJK, full-width forms, and the pictographs that terminals draw wide).
var wide = [][2]rune{{0x1100, 0x115f}, {0x2e80, 0xa4cf}, {0xac00, 0xd7a3}, {0xf900, 0xfaff},
	{0xfe30, 0xfe6f}, {0xff00, 0xff60}, {0xffe0, 0xffe6}, {0x1f300, 0x1f64f}, {0x1f680, 0x1faff}, {0x20000, 0x3fffd}}

// columns is the room that a text takes in a terminal: none for marks that sit on
// a letter, two for wide East Asian letters and most emoji.
func columns(s string) int {
	n := 0
	for _, r := range s {
		n += columnsOf(r)
	}
	return n
}

func columnsOf(r rune) int {
	switch {
	case r < 0x300:
		return 1
	case unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf):
		return 0
	}
	for _, block := range wide {
		if r >= block[0] && r <= block[1] {
			return 2
		}
	}
	return 1
}

// pad fills a text with spaces up to a number of columns.
func pad(s string, n int) string { return s + strings.Repeat(" ", max(0, n-columns(s))) }

// Wrap breaks a text into lines of at most n columns as a terminal counts them,
// inside words only where a word is longer than a line, and never between a number
// and its unit.
func Wrap(s string, n int) []string {
	var lines []string
	line, used := "", 0
	flush := func() {
		if line != "" {
			lines = append(lines, line)
		}
		line, used = "", 0
	}
	for _, word := range glued(strings.Fields(s)) {
		size := columns(word)
		if line != "" && used+1+size > n {
			flush()
		}
		if line != "" {
			line, used = line+" ", used+1
		}
		for size > n {
			head := fit(word, n)
			lines, word = append(lines, head), word[len(head):]
			size = columns(word)
		}
		line, used = line+word, used+size
	}
	flush()
	return lines
}

// glued keeps a number and its unit on one line: "203 °F" must not be torn apart.
func glued(words []string) []string {
	var out []string
	for _, word := range words {
		switch strings.TrimRight(word, ".,;:)") {
		case "°F", "°C", "lb", "oz", "kg", "g", "in", "cm", "mm", "hr", "min", "AM", "PM":
			if n := len(out); n > 0 && strings.ContainsAny(out[n-1][len(out[n-1])-1:], "0123456789") {
				out[n-1] += " " + word
				continue
			}
		}
		out = append(out, word)
	}
	return out
}

// fit gives the head of s that takes at most n columns, at least one character.
func fit(s string, n int) string {
	used := 0
	for i, r := range s {
		if used += columnsOf(r); used > n && i > 0 {
			return s[:i]
		}
	}
	return s
}
