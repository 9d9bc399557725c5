package draft

import (
	"fmt"
	"slices"
	"strings"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/unit"
)

// dish is what is known of one dish so far.
type dish struct {
	name  string // as the cook calls it
	cut   cut.Cut
	which []cut.Cut // it may be any of these; none where that is known
	count int       // pieces; 0 where nothing is said
	mass  string    // of one piece, with its unit; empty where nothing is said
	thick string    // of one piece, with its unit; empty where nothing is said
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
	s := cut.Speak(parts[0])
	if s.Name == "" {
		return dish{}, fmt.Errorf("%q does not say what it is; write a dish, such as brisket, 10 lb; or 2 chickens", text)
	}
	found, unknown := cut.One(s.Name)
	which, _ := cut.Named(s.Name)
	switch {
	case unknown == "":
		which = nil
	case len(which) == 0:
		return dish{}, fmt.Errorf("%s", unknown)
	default:
		found = which[0]
	}
	d := dish{name: s.Name, cut: found, which: which, told: map[string]bool{}}
	d.amount(s)
	for _, part := range parts[1:] {
		if err := d.hear(strings.TrimSpace(part)); err != nil {
			return dish{}, err
		}
	}
	return d, nil
}

// hear takes one more thing that is said of a dish.
func (d *dish) hear(part string) error {
	if s := cut.Speak(part); s.Name == "" && !d.isDegree(part) && d.amount(s) {
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

// amount takes what is said of how much it is; false for nothing.
func (d *dish) amount(s cut.Spoken) bool {
	if s.Weight != "" {
		d.mass = s.Weight
	}
	if s.Count > 0 {
		d.count = s.Count
	}
	if s.Thickness != "" {
		d.thick = s.Thickness
	}
	d.told[KeyAmount] = d.told[KeyAmount] || d.mass != "" || d.count > 0
	return s.Weight != "" || s.Count > 0 || s.Thickness != ""
}

func (d *dish) isDoneness(word string) bool {
	return slices.ContainsFunc(d.cut.Doneness, func(x cut.Doneness) bool { return x.Name == word })
}

func (d *dish) isDegree(text string) bool {
	_, err := unit.ParseTemperature(text)
	return err == nil
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
			return fmt.Errorf("%q is nothing that a label says; write solution, tenderized, rolled, stuffed or brined, nothing of these, or not read", word)
		}
		if !slices.Contains(prep, labelWords[i].prep) {
			prep = append(prep, labelWords[i].prep)
		}
	}
	d.prep, d.label, d.told[KeyLabel] = prep, true, true
	return nil
}
