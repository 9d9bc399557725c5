package draft

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/meant"
)

// dish is what is known of one dish so far.
type dish struct {
	raw   string // as it was answered
	name  string // as the cook calls it
	cut   cut.Cut
	which []cut.Cut // it may be any of these; none where that is known
	count int       // pieces; 0 where nothing is said
	mass  string    // of one piece, with its unit; empty where nothing is said
	thick string    // of one piece, with its unit; empty where nothing is said
	prep  []string
	label bool     // it was read
	done  string   // a doneness or a temperature; empty for the usual one
	more  []string // other fields, as a request has them

	told map[string]bool // by key: asked, or said with the dish
}

func (d dish) title() string { return strings.ToUpper(d.name[:1]) + d.name[1:] }

// readDish reads a dish as a request does: "brisket, 10 lb", "2 chickens 4.5 lb", "two
// ribeyes, medium-rare, label none". So many people eat.
func readDish(text string, eaters int) (dish, error) {
	spoken := cut.Speak(strings.Split(text, ",")[0])
	if spoken.Name == "" {
		return dish{}, fmt.Errorf("%q does not say what it is; write a dish, such as brisket, 10 lb; or 2 chickens", text)
	}
	s := meant.Dish(text, eaters, 0)
	which, outside := cut.Named(spoken.Name)
	open := len(which) > 1 || len(which) == 1 && len(outside) > 0
	switch {
	case s.Node == nil:
		return dish{}, errors.New(s.Lead())
	case len(s.Left) > 0:
		return dish{}, fmt.Errorf("%q cannot be read of %s; behind its name and amount comes what its label says, such as label none, or how done it is to be, such as medium-rare or 203 F", s.Left[0], spoken.Name)
	case s.Unclear != "" && !open:
		return dish{}, errors.New(s.Unclear)
	case s.Unclear == "":
		which = nil
	}
	d := dish{raw: text, name: s.Node.Get("cut").Text, which: which, told: map[string]bool{}}
	d.cut, _ = cut.One(d.name)
	if one, unknown := cut.One(spoken.Name); len(which) > 0 {
		d.name, d.cut = spoken.Name, which[0]
	} else if unknown == "" && one.Name == d.cut.Name {
		d.name = spoken.Name
	}
	for field, value := range s.Node.Fields() {
		switch field {
		case "cut":
		case "name":
			d.name = value.Text
		case "count":
			d.count, _ = strconv.Atoi(value.Text) // it was written by a program
		case "weight":
			d.mass = value.Text
		case "thickness":
			d.thick = value.Text
		case "target":
			d.done, d.told[KeyDone] = value.Text, true
		case "prep":
			d.label, d.told[KeyLabel] = true, true
			for _, item := range value.Items {
				d.prep = append(d.prep, item.Text)
			}
		case "start":
			if d.cut, _ = cut.One(s.Node.Get("cut").Text); d.cut.Style == cut.Timed && strings.Contains(value.Text, "frozen") { // a plan would refuse it
				return dish{}, fmt.Errorf("%s goes by the clock, which does not know frozen; thaw it first, and write it without the word", d.cut.InText())
			}
			d.more = append(d.more, field+": "+value.Flow())
		default:
			d.more = append(d.more, field+": "+value.Flow())
			d.told[KeyAmount] = d.told[KeyAmount] || field == "weights"
		}
	}
	d.told[KeyAmount] = d.told[KeyAmount] || d.mass != "" || d.count > 0
	return d, nil
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

// said is the dish as one answer, with what was answered of it later.
func (d dish) said() string {
	if d.told[KeyWhich] {
		d.raw = d.cut.Name
		if d.count > 0 {
			d.raw = strconv.Itoa(d.count) + " " + d.raw
		}
	}
	parts := []string{d.raw}
	heard, _ := readDish(d.raw, 0)
	if d.mass != "" && heard.mass == "" {
		parts = append(parts, d.mass)
	}
	if d.thick != "" && heard.thick == "" {
		parts = append(parts, d.thick)
	}
	if d.done != "" && heard.done == "" {
		parts = append(parts, d.done)
	}
	if d.label && !heard.label {
		if len(d.prep) == 0 {
			parts = append(parts, "label none")
		}
		parts = append(parts, d.prep...)
	}
	return strings.Join(parts, ", ")
}
