package schedule

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/meant"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

var (
	metricUnits = regexp.MustCompile(`(?i)\d\s*(?:kg|kilos?|g|grams?|cm|mm)\b|\d\s*°?\s*C\b|_(?:kg|cm|mm|g)"?:`)
	usUnits     = regexp.MustCompile(`(?i)\d\s*(?:lbs?|pounds?|oz|ounces?|#|in|inch(?:es)?)\b|\d\s*(?:"|°?\s*F\b)|\b(?:lbs?|pounds?|oz|inch(?:es)?)\b`)
)

// writtenHere is a length or a difference as a request has it that this program wrote: those are
// in the units of the model, and say nothing of the cook's.
var writtenHere = regexp.MustCompile(`"\d[\d.eE+-]* (?:m|K)"`)

// quotedText is a text in quotes, whose second one is no inch; comments are not read.
var (
	quotedText = regexp.MustCompile(`"([^"\n]*)"`)
	comment    = regexp.MustCompile(`(?m)(?:^|\s)#\s.*$`)
)

// allMetric says whether a text has quantities, and all of them in metric units.
func allMetric(data []byte) bool {
	if writtenHere.Match(data) {
		return false
	}
	data = comment.ReplaceAll(quotedText.ReplaceAll(data, []byte("$1 ")), nil)
	return metricUnits.Match(data) && !usUnits.Match(data)
}

// Understand reads a request that a cook wrote without knowing the form: fields by other
// names, times and amounts in words, a menu in any shape. What means one thing without doubt
// is taken, and what a cook has to see of that is in Heard; all else is a fault with the
// line that would be right. Now is as for [ReadOn].
func Understand(data []byte, now time.Time) (Request, error) { return understand(data, now, false) }

// UnderstandOnTheDay is [Understand] while a day is cooked: then Saturday and tomorrow are
// not the days that they were when they were written, and are refused.
func UnderstandOnTheDay(data []byte, now time.Time) (Request, error) {
	return understand(data, now, true)
}

func understand(data []byte, now time.Time, pinned bool) (Request, error) {
	data = asWritten(data)
	tree, faults := requestTree(data, now)
	if tree == nil {
		return Request{}, inputError(faults)
	}
	d := newDecoderOn(faults, now)
	d.pinned, d.nowhere = pinned, !pinned && !now.IsZero() && d.ownZone() == ""
	d.metric = allMetric(data)
	taken := d.take(tree)
	var r Request
	for _, dish := range taken.Dropped {
		faults.AddLine("dishes", dish.Line, "%s is nothing for the grill, and there is no other dish; write one that is, such as {cut: corn, count: 8}", say.Quoted(dish.Text))
	}
	d.request(&r)(taken.Request, "")
	r.Heard = slices.Concat(r.Heard, taken.Heard, *d.heard)
	if d.nowhere && r.Serve.TZ == "UTC" && !bytes.Contains(data, []byte("UTC")) {
		r.Heard = append([]string{"nobody said where you are, and this machine does not: the times are on a clock that knows no place. Before the day write tz: with your large city, for calendars and for what to do now"}, r.Heard...)
	}
	if r.Units == "" && allMetric(data) {
		r.Units = unit.Metric
	}
	r = raisedForFrail(raisedForPoultry(r.WithDefaults()))
	faults.Adopt(r.faults(nil), d.Decoder)
	if err := inputError(faults); err != nil {
		return Request{}, err
	}
	return r, nil
}

// requestTree is the document of a request; one that has no fields, as a note or a table, with
// its parts in those that they are of.
func requestTree(data []byte, now time.Time) (*strict.Node, *strict.FaultList) {
	if text, _ := strict.Unreadable(data, strict.MaxRequestBytes); text == "" {
		if plain, left := meant.Plain(data, now); plain != nil {
			return plain, unheard(left)
		}
	}
	tree, faults := strict.ParseDocument(data, strict.MaxRequestBytes)
	if tree == nil || tree.Kind == strict.NodeText {
		if letter, left := meant.Letter(data, now); letter != nil {
			return letter, unheard(left)
		}
	}
	return tree, faults
}

// sayAsField are words of what is no dish: a time, people, a grill.
var sayAsField = regexp.MustCompile(`(?i)\b(?:people|guests|kids|of us|somos|we|by \d|at \d|before|grill|smoker|barbie|parrilla)\b|\d:\d\d|\d ?[ap]m\b`)

// unheard are the parts of a note that are not understood.
func unheard(left []*strict.Node) *strict.FaultList {
	faults := &strict.FaultList{}
	for _, words := range left {
		if sayAsField.MatchString(words.Text) {
			faults.AddLine("", words.Line, "%s is not understood; if it is of the day write it in one of these lines: serve: Saturday 6 PM, guests: 8, grill: kettle 22 in, earliest: 5 AM; else leave it out, or write it behind a #", say.Quoted(words.Text))
			continue
		}
		faults.AddLine("", words.Line, "%s is not understood; leave it out, or write it behind a #", say.Quoted(words.Text))
	}
	return faults
}

// take is a request in the form's words, as far as they are certain.
func (d decoder) take(tree *strict.Node) meant.Taken {
	tree = meant.Shaped(tree)
	d.lookAhead(tree)
	return d.day.Take(tree)
}

// poultryName is poultry in the name of a dish that is ground.
var poultryName = regexp.MustCompile(`(?i)\b(?:turkey|chicken|duck|goose|poultry)\b`)

// raisedForPoultry has ground poultry done as far as poultry must be (fsg_safemin_2019), where its
// cut is one of red meat and nobody said how done it is to be.
func raisedForPoultry(r Request) Request {
	for i, dish := range r.Dishes {
		c, ok := cut.Find(dish.Cut)
		hotter := slices.IndexFunc(c.Doneness, func(d cut.Doneness) bool { return d.CoreC >= poultryCoreC })
		if !ok || !c.Ground || dish.Target != nil || !poultryName.MatchString(dish.Name) || hotter < 0 {
			continue
		}
		r.Dishes = slices.Clone(r.Dishes)
		r.Dishes[i].Target = &Target{Doneness: c.Doneness[hotter].Name}
		r.Heard = append(slices.Clone(r.Heard), dish.Name+": done at "+r.Units.Core(unit.Temperature(c.Doneness[hotter].CoreC))+", the USDA minimum of ground poultry")
	}
	return r
}

// poultryCoreC is the USDA minimum of all poultry (fsg_safemin_2019), 165 °F.
var poultryCoreC = float64(unit.FromFahrenheit(165)) - 0.01

// raisedForFrail has dishes done as far as they must be where somebody is very young, old,
// pregnant or ill, if nobody said how done they are to be.
func raisedForFrail(r Request) Request {
	if r.Guests == nil || !r.Guests.Frail {
		return r
	}
	for i, dish := range r.Dishes {
		c, ok := cut.Find(dish.Cut)
		if !ok || dish.Target != nil {
			continue
		}
		usual, ok := c.DefaultDoneness()
		from := slices.IndexFunc(c.Doneness, func(d cut.Doneness) bool { return d.Name == usual.Name })
		if !ok || from < 0 || len(faultsOfTarget(r, i)) == 0 {
			continue
		}
		for _, d := range c.Doneness[from+1:] {
			try := r
			try.Dishes = slices.Clone(r.Dishes)
			try.Dishes[i].Target = &Target{Doneness: d.Name}
			if len(faultsOfTarget(try, i)) == 0 {
				r = try
				r.Heard = append(slices.Clone(r.Heard), dish.Name+": "+d.Name+" and not "+usual.Name+", because somebody very young, old, pregnant or ill eats too")
				break
			}
		}
	}
	return r
}

// faultsOfTarget are those of how done a dish is to be.
func faultsOfTarget(r Request, dish int) (found []strict.Fault) {
	path := fmt.Sprintf("dishes[%d].target", dish)
	for _, f := range r.faults(nil) {
		if strings.HasPrefix(f.Path, path) {
			found = append(found, f)
		}
	}
	return found
}
