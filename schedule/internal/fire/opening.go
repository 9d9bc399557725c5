package fire

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// mark is an opening that cooks have a word for. A hand sets an eighth, and half of it; nobody sets a sixteenth.
type mark struct {
	share float64
	words string
	short string
}

func marks() []mark {
	return []mark{
		{0, "shut", "0"}, {1. / 32, "a sliver", "1/32"}, {1. / 16, "half an eighth", "1/16"}, {1. / 10, "a tenth", "1/10"}, {1. / 8, "an eighth", "1/8"},
		{1. / 6, "a sixth", "1/6"}, {1. / 4, "a quarter", "1/4"}, {1. / 3, "a third", "1/3"}, {1. / 2, "a half", "1/2"}, {2. / 3, "two thirds", "2/3"},
		{3. / 4, "three quarters", "3/4"}, {1, "fully open", "1"},
	}
}

// MarkWords is the nearest opening that cooks have a word for: "a sixth".
func MarkWords(share float64) string { return nearestMark(share).words }

// MarkText is the same as it is typed: "1/6".
func MarkText(share float64) string { return nearestMark(share).short }

func nearestMark(share float64) mark {
	best, off := mark{}, math.Inf(1)
	for _, m := range marks() {
		if d := math.Abs(math.Log((share + 0.01) / (m.share + 0.01))); d < off {
			best, off = m, d
		}
	}
	return best
}

// OpeningError says what is wrong with the text of a vent.
type OpeningError struct{ Text string }

func (e *OpeningError) Error() string {
	return fmt.Sprintf("%q is no opening of a vent; write 1/4, 25 %%, a quarter, open or shut", e.Text)
}

var (
	fractionText = regexp.MustCompile(`^(\d{1,2}) ?/ ?(\d{1,2})$`)
	percentText  = regexp.MustCompile(`^(\d{1,3}(?:\.\d+)?) ?%$`)
	decimalText  = regexp.MustCompile(`^(?:0?\.\d+|[01](?:\.0+)?)$`)
)

// openingWords are words beside those of the marks.
func openingWords(text string) (share float64, ok bool) {
	switch text {
	case "open", "wide open", "full", "fully open", "all open", "wide":
		return 1, true
	case "shut", "closed", "off", "all shut", "fully closed":
		return 0, true
	case "half", "half open", "one half":
		return 1. / 2, true
	case "quarter", "one quarter", "quarter open":
		return 1. / 4, true
	case "third", "one third":
		return 1. / 3, true
	case "eighth", "one eighth":
		return 1. / 8, true
	case "sixth":
		return 1. / 6, true
	case "sixteenth", "a sixteenth", "half of an eighth":
		return 1. / 16, true
	case "crack", "a crack", "cracked", "sliver", "barely open":
		return 1. / 32, true
	case "three quarters", "three-quarters", "2 thirds", "two-thirds":
		return map[bool]float64{true: 3. / 4, false: 2. / 3}[strings.HasPrefix(text, "three")], true
	}
	for _, m := range marks() {
		if m.words == text {
			return m.share, true
		}
	}
	return 0, false
}

// ParseOpening reads one opening: 1/4, 25 %, 0.25, a quarter, open, shut.
func ParseOpening(text string) (float64, error) {
	t := strings.ToLower(strings.Join(strings.Fields(text), " "))
	if share, ok := openingWords(t); ok {
		return share, nil
	}
	if m := fractionText.FindStringSubmatch(t); m != nil {
		a, _ := strconv.Atoi(m[1])
		b, _ := strconv.Atoi(m[2])
		if b > 0 && a <= b {
			return float64(a) / float64(b), nil
		}
	}
	if m := percentText.FindStringSubmatch(t); m != nil {
		if p, err := strconv.ParseFloat(m[1], 64); err == nil && p <= 100 {
			return p / 100, nil
		}
	}
	if decimalText.MatchString(t) {
		if x, err := strconv.ParseFloat(t, 64); err == nil && x <= 1 {
			return x, nil
		}
	}
	return 0, &OpeningError{Text: text}
}

var (
	ventNames = regexp.MustCompile(`\b(top|bottom|both|lid|intake)\b`)
	ventSplit = regexp.MustCompile(`[,;]| and `)
)

// ParseVents reads "top 1/4, bottom 1/2", one of them, or "both a quarter". A vent that is not named is below zero: it
// stays as it is.
func ParseVents(text string) (top, bottom float64, err error) {
	top, bottom = -1, -1
	for _, part := range ventSplit.Split(strings.ToLower(text), -1) {
		if strings.TrimSpace(part) == "" {
			continue
		}
		name := ventNames.FindString(part)
		share, fault := ParseOpening(strings.NewReplacer("vents", "", "vent", "").Replace(ventNames.ReplaceAllString(part, "")))
		if fault != nil || name == "" && ventNames.MatchString(text) {
			return -1, -1, &OpeningError{Text: strings.TrimSpace(part)}
		}
		if name != "bottom" && name != "intake" {
			top = share
		}
		if name != "top" && name != "lid" {
			bottom = share
		}
	}
	if top < 0 && bottom < 0 {
		return -1, -1, &OpeningError{Text: text}
	}
	return top, bottom, nil
}
