package draft

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/unit"
)

// dish is what is known of one dish so far.
type dish struct {
	name  string // as the cook calls it
	cut   cut.Cut
	count int    // pieces; 0 where nothing is said
	mass  string // of one piece, with its unit; empty where nothing is said
	prep  []string
	label bool   // it was read
	done  string // a doneness or a temperature; empty for the usual one

	told map[string]bool // by key: asked, or said with the dish
}

func (d dish) title() string { return strings.ToUpper(d.name[:1]) + d.name[1:] }

// readDish reads "brisket, 10 lb", "2 chickens 4.5 lb", "two ribeyes, medium-rare, label
// none". What is said of label and doneness stands behind commas.
func readDish(text string) (dish, error) {
	parts := strings.Split(text, ",")
	count, mass, name := readAmount(parts[0])
	found, unknown := cut.One(name)
	if unknown != "" {
		return dish{}, fmt.Errorf("%s", unknown)
	}
	d := dish{name: name, cut: found, count: count, mass: mass, told: map[string]bool{KeyAmount: count > 0 || mass != ""}}
	for _, part := range parts[1:] {
		if err := d.hear(strings.TrimSpace(part)); err != nil {
			return dish{}, err
		}
	}
	return d, nil
}

// hear takes one more thing that is said of a dish.
func (d *dish) hear(part string) error {
	if count, mass, rest := readAmount(part); rest == "" && (count > 0 || mass != "") && !d.isDegree(part) {
		if mass != "" {
			d.mass = mass
		}
		if count > 0 {
			d.count = count
		}
		d.told[KeyAmount] = true
		return nil
	}
	low := strings.ToLower(part)
	if said, ok := strings.CutPrefix(low, "label"); ok {
		return d.takeLabel(strings.Trim(said, " :"))
	}
	if done := strings.ReplaceAll(low, " ", "-"); d.isDoneness(done) {
		d.done, d.told[KeyDone] = done, true
		return nil
	}
	if d.isDegree(part) {
		d.done, d.told[KeyDone] = part, true
		return nil
	}
	if err := d.takeLabel(low); err == nil {
		return nil
	}
	return fmt.Errorf("%q cannot be read of %s; behind its name and amount comes what its label says, such as label none, or how done it is to be, such as medium-rare or 203 F", part, d.name)
}

func (d *dish) isDoneness(word string) bool {
	return slices.ContainsFunc(d.cut.Doneness, func(x cut.Doneness) bool { return x.Name == word })
}

func (d *dish) isDegree(text string) bool {
	_, err := unit.ParseTemperature(text)
	return err == nil
}

var (
	massIn   = regexp.MustCompile(`(?i)\b\d+(?:\.\d+)?\s*(?:kg|g|lbs?|pounds?|oz|ounces?)\b(?:\s*\d+(?:\.\d+)?\s*oz\b)?`)
	countIn  = regexp.MustCompile(`(?i)^\s*(\d+|an?|one|two|three|four|five|six|seven|eight|nine|ten|twelve|a dozen)\b\s*(?:x\b|×)?\s*`)
	bindings = regexp.MustCompile(`(?i)^(?:(?:racks?|pieces?|heads?|ears?)\s+of\s+|of\s+|x\s+|×\s*)`)
	tail     = regexp.MustCompile(`(?i)\s*\b(?:each|apiece|a piece|of|at|x)\s*$`)
)

// counts are numbers that people write as words.
var counts = map[string]int{"a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10, "twelve": 12, "a dozen": 12}

// readAmount takes a count and a weight from a text, and gives what is left.
func readAmount(text string) (count int, mass, rest string) {
	if at := massIn.FindStringIndex(text); at != nil {
		mass = strings.TrimSpace(text[at[0]:at[1]])
		text = tail.ReplaceAllString(text[:at[0]], "") + " " + text[at[1]:]
	}
	if m := countIn.FindStringSubmatch(text); m != nil {
		word := strings.ToLower(m[1])
		if count = counts[word]; count == 0 {
			count, _ = strconv.Atoi(word) // digits by the pattern; too many of them are no count
		}
		text = text[len(m[0]):]
	}
	text = strings.TrimSpace(tail.ReplaceAllString(text, ""))
	return count, mass, strings.Join(strings.Fields(bindings.ReplaceAllString(text, "")), " ")
}

// labelWords are what labels say, by how their words begin.
var labelWords = []struct{ begins, prep string }{
	{"solution", schedule.PrepInjected}, {"inject", schedule.PrepInjected}, {"bast", schedule.PrepInjected}, {"enhanced", schedule.PrepInjected},
	{"tender", schedule.PrepTenderised}, {"needle", schedule.PrepTenderised}, {"blade", schedule.PrepTenderised},
	{"roll", schedule.PrepRolled}, {"tied", schedule.PrepRolled}, {"boned", schedule.PrepRolled},
	{"stuff", schedule.PrepStuffed}, {"brine", schedule.PrepBrined},
}

const notRead = "not read"

// takeLabel reads what a label says: words, nothing, or that it was not read.
func (d *dish) takeLabel(text string) error {
	text = strings.ToLower(text)
	switch text {
	case notRead, "unread", notKnown, "?":
		d.told[KeyLabel] = true
		return nil
	case "none", "nothing", "none of these", "nothing of these", "nothing of that", "no":
		d.label, d.told[KeyLabel] = true, true
		return nil
	}
	var prep []string
	for _, word := range strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == ',' || r == '+' || r == '&' }) {
		if word == "and" {
			continue
		}
		i := slices.IndexFunc(labelWords, func(l struct{ begins, prep string }) bool { return strings.HasPrefix(word, l.begins) })
		if i < 0 {
			return fmt.Errorf("%q is not known of a label; write solution, tenderized, rolled, stuffed or brined, nothing of these, or not read", word)
		}
		if !slices.Contains(prep, labelWords[i].prep) {
			prep = append(prep, labelWords[i].prep)
		}
	}
	d.prep, d.label, d.told[KeyLabel] = prep, true, true
	return nil
}
