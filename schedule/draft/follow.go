package draft

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/unit"
)

// follow is one question about a dish.
type follow struct {
	key   string
	wants func(*dish) bool
	text  func(*Interview, *dish) string
	usual func(*Interview, *dish) string
	take  func(*Interview, *dish, string) error
}

var followUps = []follow{
	{KeyWhich, func(d *dish) bool { return len(d.which) > 0 }, whichText, func(*Interview, *dish) string { return "" }, takeWhich},
	{KeyAmount, always, amountText, func(*Interview, *dish) string { return enough }, takeAmount},
	{KeyLabel, (*dish).hasLabel, labelText, func(*Interview, *dish) string { return notRead }, takeLabel},
	{KeyDone, (*dish).hasChoice, doneText, usualDone, takeDone},
}

func always(*dish) bool { return true }

// next is the question about a dish that is open; nil for none.
func (d *dish) next() *follow {
	for i, f := range followUps {
		if !d.told[f.key] && f.wants(d) {
			return &followUps[i]
		}
	}
	return nil
}

// try keeps what an answer says of a dish unless a request would refuse it.
func (i *Interview) try(d *dish, key string, change func(*dish)) error {
	changed := *d
	changed.told = maps.Clone(d.told)
	change(&changed)
	if err := i.faultOf(changed); err != nil {
		return err
	}
	changed.told[key] = true
	*d = changed
	return nil
}

func whichText(_ *Interview, d *dish) string {
	var names []string
	for _, c := range d.which {
		names = append(names, c.Name)
	}
	return fmt.Sprintf("%s: which? %s", d.title(), strings.Join(names, ", "))
}

// takeWhich takes one of the foods that go by the dish's name.
func takeWhich(i *Interview, d *dish, text string) error {
	meant, _ := cut.Named(text)
	for _, c := range d.which {
		if len(meant) == 1 && meant[0].Name == c.Name || len(meant) > 1 && strings.EqualFold(strings.ReplaceAll(text, " ", "-"), c.Name) {
			return i.try(d, KeyWhich, func(d *dish) { d.cut, d.which = c, nil })
		}
	}
	return fmt.Errorf("%q is none of them; write one: %s", text, whichText(i, d))
}

const enough = "enough for the guests"

func amountText(i *Interview, d *dish) string {
	if d.cut.Style == cut.Small {
		return fmt.Sprintf("%s: how much? Pieces, the weight of one or how thick. Such as: 2 of %s", d.title(), i.usualPiece(d.cut))
	}
	return fmt.Sprintf("%s: how much? Pieces, the weight of one, or both. Such as: 2 of %s", d.title(), i.usualPiece(d.cut))
}

func (i *Interview) usualPiece(c cut.Cut) string { return i.units.Mass(unit.Mass(c.Typical)) }

func takeAmount(i *Interview, d *dish, text string) error {
	if strings.EqualFold(text, enough) {
		d.told[KeyAmount] = true
		return nil
	}
	s := cut.Speak(text)
	if s.Name != "" || s.Count == 0 && s.Weight == "" && s.Thickness == "" {
		return fmt.Errorf("%q is no amount; write pieces, the weight of one, or both: 2, 10 lb, 2 of 4.5 lb", text)
	}
	return i.try(d, KeyAmount, func(d *dish) { d.amount(s) })
}

// hasLabel says whether a dish comes with a label that matters: whole meat.
func (d *dish) hasLabel() bool {
	switch d.cut.Food {
	case "fish", "ground", "sausage", "leftovers", "ham-cooked":
		return false
	}
	return d.cut.IsMain()
}

func labelText(_ *Interview, d *dish) string {
	return fmt.Sprintf("%s: what does the label say? A solution, tenderized, rolled, stuffed, brined, or: none", d.title())
}

func takeLabel(i *Interview, d *dish, text string) error {
	if s := cut.Speak(text); s.Name == "" && (s.Weight != "" || s.Thickness != "") { // what was said too late is taken, and asked again
		return i.try(d, KeyAmount, func(d *dish) { d.amount(s) })
	}
	heard := *d
	heard.told = maps.Clone(d.told)
	if err := heard.takeLabel(text); err != nil {
		return err
	}
	return i.try(d, KeyLabel, func(d *dish) { d.prep, d.label = heard.prep, heard.label })
}

// hasChoice says whether people eat it less done than the published minimum.
func (d *dish) hasChoice() bool {
	return len(d.cut.Doneness) > 1 && d.cut.Doneness[0].CoreC < d.minimumC()
}

// minimumC is the published minimum of the core; 0 for none.
func (d *dish) minimumC() float64 {
	c, err := schedule.FindCut(d.cut.Name)
	if err != nil {
		return 0
	}
	return c.MinimumC
}

func doneText(i *Interview, d *dish) string {
	var words []string
	for _, x := range d.cut.Doneness {
		word := x.Name + " " + i.units.Core(unit.Temperature(x.CoreC))
		if x.CoreC < d.minimumC() {
			word += " (below the USDA minimum)"
		}
		words = append(words, word)
	}
	return fmt.Sprintf("%s: how done? %s, or a temperature", d.title(), strings.Join(words, ", "))
}

// usualDone is the usual doneness of a cut, or the next one up that may be planned for
// these guests and this label; empty where none may.
func usualDone(i *Interview, d *dish) string {
	usual, ok := d.cut.DefaultDoneness()
	if !ok {
		return ""
	}
	from := slices.IndexFunc(d.cut.Doneness, func(x cut.Doneness) bool { return x.Name == usual.Name })
	for _, x := range d.cut.Doneness[from:] {
		try := *d
		try.done = x.Name
		if i.faultAsIs(try) == nil {
			return x.Name
		}
	}
	return ""
}

func takeDone(i *Interview, d *dish, text string) error {
	word := strings.ReplaceAll(strings.ToLower(text), " ", "-")
	if !d.isDoneness(word) {
		word = text
	}
	return i.try(d, KeyDone, func(d *dish) { d.done = word })
}
