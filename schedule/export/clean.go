package export

import (
	"strings"
	"unicode"
)

// clean makes a text of a stranger fit for one line of any format: white space
// becomes a space; control characters, the marks that reorder text around them
// (Unicode Standard Annex 9, section 2), tags and what is no character at all are
// dropped. The joiners stay: Persian, Hindi and many emoji need them.
func clean(s string) string {
	if tidy(s) {
		return s
	}
	return strings.Join(strings.Fields(strings.Map(keep, s)), " ")
}

// tidy tells that nothing has to be done, as in most texts.
func tidy(s string) bool {
	space := true
	for i := range len(s) {
		if s[i] < ' ' || s[i] > '~' || space && s[i] == ' ' {
			return false
		}
		space = s[i] == ' '
	}
	return !space || s == ""
}

func keep(r rune) rune {
	switch {
	case r == '\u200c' || r == '\u200d': // joiners
		return r
	case unicode.IsSpace(r) || r == '\u2028' || r == '\u2029':
		return ' '
	case unicode.IsControl(r), unicode.Is(unicode.Cf, r), unicode.Is(unicode.Co, r):
		return -1
	case r == unicode.ReplacementChar, r&0xfffe == 0xfffe, r >= 0xfdd0 && r <= 0xfdef:
		return -1
	}
	return r
}
