package logbook

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

var (
	noteRange  = regexp.MustCompile(`\b(?:(?:anywhere |somewhere |all )?(?:between|from|in between) )?\d{2,3}(?: ?(?:-|to|and|through|up to|or|/|,) ?\d{2,3})+\b`)
	rangeMoved = regexp.MustCompile(`\b(went|gone|climbed|rose|risen|dropped|fell|jumped|moved|up|down|wrapped|off|on|lit|unlit|fire|dinner|coals|vents?|min|minutes|hours?|ago|wind|mph|at \d{3,4} (and|or|to) \d)\b`)
	rangeOfAir = regexp.MustCompile(`\b(grate|grill|pit|smoker|lid|dome|oven)\b`)
	rangeDigit = regexp.MustCompile(`\d+`)
)

// rangeRead reads of pieces that differ the coldest: thighs 158 to 172, thighs 158, 166 and
// 172. What they went from and to is no range.
func (n *noteReader) rangeRead(words []string, dish string) (row Row, sentence string, ok bool) {
	said := strings.Join(words, " ")
	m := noteRange.FindString(said)
	if m == "" || strings.ContainsAny(said, ":.") {
		return row, "", false
	}
	var figures []int
	for _, f := range rangeDigit.FindAllString(m, -1) {
		v, _ := strconv.Atoi(f) // digits, by the pattern
		figures = append(figures, v)
	}
	low, high := slices.Min(figures), slices.Max(figures)
	rest := strings.Fields(strings.Replace(said, m, "", 1))
	switch {
	case low == high || rangeMoved.MatchString(said):
		return row, "", false
	case rangeOfAir.MatchString(said):
		return row, fmt.Sprintf("one figure, please: what it reads now. Nothing was noted. Note grate %d; the day goes by what it reads most of the time", (low+high)/2), true
	}
	single := append(rest, strconv.Itoa(low))
	row, sentence, ok = n.thing(single, dish)
	if !ok || sentence != "" || !Kind(row.kind).ofPlace() {
		return row, sentence, ok && sentence != ""
	}
	if _, doubt := n.degrees(Core, row.dish, strconv.Itoa(high)); doubt != "" {
		return row, doubt, true
	}
	row.kind = string(Coldest)
	row.aside = fmt.Sprintf("The coldest counts, %d: leave that one on. What is done may come off", low)
	return row, "", true
}
