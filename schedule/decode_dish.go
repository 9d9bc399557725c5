package schedule

import (
	"regexp"

	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

func (d decoder) dish(x *Dish) strict.Reader {
	return func(n *strict.Node, path string) {
		d.Object(n, path,
			strict.Optional("id", d.Text(&x.ID)),
			strict.Optional("name", d.Text(&x.Name)),
			strict.Required("cut", d.Text(&x.Cut)),
			strict.Optional("weight", strict.NotZero(d.Decoder, &x.Weight, d.mass(&x.Weight))),
			strict.Optional("weights", d.atLeastOne(strict.List(d.Decoder, &x.Weights, maxPieces, d.mass))),
			strict.Optional("count", strict.NotZero(d.Decoder, &x.Count, d.Whole(&x.Count, "2"))),
			strict.Optional("thickness", strict.NotZero(d.Decoder, &x.Thickness, strict.Quantity(d.Decoder, &x.Thickness, unit.ParseLength))),
			strict.Optional("target", strict.Pointed(&x.Target, d.target)),
			strict.Optional("start", strict.Pointed(&x.Start, d.start)),
			strict.Optional("prep", d.listed(&x.Prep)),
			strict.Optional("wrap", strict.Pointed(&x.Wrap, d.wrap)),
			strict.Optional("zone", d.Text(&x.Zone)),
			strict.Optional("lies", d.Text(&x.Lies)),
			strict.Optional("level", strict.Pointed(&x.Level, d.temperature)),
			strict.Optional("rest", strict.Pointed(&x.Rest, d.duration)),
			strict.Optional("hold", d.atLeastOne(d.words(&x.Hold))),
			strict.Optional("finish", d.Text(&x.Finish)),
			strict.Optional("serve", strict.Pointed(&x.Serve, d.clock)),
			strict.Optional("earliest", strict.Pointed(&x.Earliest, d.clock)),
			strict.Optional("travel", strict.Pointed(&x.Travel, d.duration)),
			strict.Optional("ready", d.Text(&x.Ready)),
			strict.Optional("assumed", strict.List(d.Decoder, &x.Assumed, maxChoices, d.Text)),
			strict.Optional("went_on", strict.Pointed(&x.WentOn, d.clock)),
			strict.Optional("measured", d.measured(&x.Measured)),
		)
	}
}

// measured reads {at: "08:00", core: 141 F} or a list of them.
func (d decoder) measured(to *[]Measured) strict.Reader {
	one := func(m *Measured) strict.Reader {
		return func(n *strict.Node, path string) {
			d.Object(n, path, strict.Required("at", d.clock(&m.At)), strict.Required("core", d.temperature(&m.Core)))
		}
	}
	return func(n *strict.Node, path string) {
		if n.Kind == strict.NodeList {
			strict.List(d.Decoder, to, maxMeasured, one)(n, path)
			return
		}
		var m Measured
		one(&m)(n, path)
		*to = []Measured{m}
	}
}

func (d decoder) mass(m *unit.Mass) strict.Reader {
	return strict.Quantity(d.Decoder, m, unit.ParseMass)
}

// listed reads a list of words; an empty one is something said: none of them.
func (d decoder) listed(to *[]string) strict.Reader {
	return func(n *strict.Node, path string) {
		if n.Kind == strict.NodeList {
			*to = []string{}
		}
		strict.List(d.Decoder, to, maxChoices, d.word)(n, path)
	}
}

// atLeastOne refuses an empty list, which reads like "none" but would mean "any".
func (d decoder) atLeastOne(read strict.Reader) strict.Reader {
	return func(n *strict.Node, path string) {
		if n.Kind == strict.NodeList && len(n.Items) == 0 {
			d.Faults.AddLine(path, n.Line, "is an empty list; name at least one or leave the field out")
			return
		}
		read(n, path)
	}
}

// words reads a list of words or one word alone.
func (d decoder) words(to *[]string) strict.Reader {
	return func(n *strict.Node, path string) {
		if n.Kind == strict.NodeList {
			strict.List(d.Decoder, to, maxChoices, d.word)(n, path)
			return
		}
		var word string
		d.word(&word)(n, path)
		*to = []string{word}
	}
}

// word reads one of the words of a request, in the spelling that the format has for it.
func (d decoder) word(to *string) strict.Reader {
	return func(n *strict.Node, path string) {
		d.Text(to)(n, path)
		*to = asInFormat(*to)
	}
}

// alsoWritten are other words for those of the format.
var alsoWritten = map[string]string{"tenderized": PrepTenderised, "cooler": HoldBox, "rectangular": GrillBox}

// asInFormat is a word in the spelling that the format has for it.
func asInFormat(word string) string {
	if ours, ok := alsoWritten[word]; ok {
		return ours
	}
	return word
}

var startsLikeNumber = regexp.MustCompile(`^\s*[-+.0-9]`)

// target reads "203 F", "medium-rare" or {final: 130 F}.
func (d decoder) target(t *Target) strict.Reader {
	return func(n *strict.Node, path string) {
		switch {
		case n.Kind == strict.NodeObject:
			d.Object(n, path, strict.Required("final", strict.Pointed(&t.Final, d.temperature)))
		case n.Kind == strict.NodeNumber || startsLikeNumber.MatchString(n.Text):
			strict.Pointed(&t.Core, d.temperature)(n, path)
		default:
			d.Text(&t.Doneness)(n, path)
		}
	}
}

// start reads "38 F" or frozen.
func (d decoder) start(s *Start) strict.Reader {
	return func(n *strict.Node, path string) {
		if n.Kind == strict.NodeText && n.Text == startFrozen {
			s.Frozen = true
			return
		}
		if n.Kind == strict.NodeText && !startsLikeNumber.MatchString(n.Text) {
			d.Faults.AddLine(path, n.Line, "%s must be a temperature such as 38 F, or %s", say.Quoted(n.Text), startFrozen)
			return
		}
		d.temperature(&s.Core)(n, path)
	}
}

const startFrozen = "frozen"

// wrap reads none, foil, paper, {with: foil, from: 150 F} or {with: paper, after: 4h}.
func (d decoder) wrap(w *Wrap) strict.Reader {
	return func(n *strict.Node, path string) {
		if n.Kind != strict.NodeObject {
			d.Text(&w.With)(n, path)
			return
		}
		d.Object(n, path,
			strict.Required("with", d.Text(&w.With)),
			strict.Optional("from", strict.Pointed(&w.From, d.temperature)),
			strict.Optional("after", strict.Pointed(&w.After, d.duration)),
		)
	}
}
