package schedule

import (
	"slices"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/meant"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

func (d decoder) dish(x *Dish) strict.Reader {
	return strict.Named("dish", func(n *strict.Node, path string) {
		if n = d.dishItem(n, path); n == nil {
			return
		}
		d.teachCut(n, path)
		d.Object(n, path,
			strict.Optional("id", d.Text(&x.ID)),
			strict.Optional("name", d.Text(&x.Name)),
			strict.Required("cut", strict.Among(d.Text(&x.Cut), true, cutNames)),
			strict.Optional("weight", strict.NotZero(d.Decoder, &x.Weight, d.mass(&x.Weight))),
			strict.Optional("weights", d.atLeastOne(strict.List(d.Decoder, &x.Weights, maxPieces, d.mass))),
			strict.Optional("count", strict.OrText(d.Decoder, strict.NotZero(d.Decoder, &x.Count, d.Whole(&x.Count, "2")))),
			strict.Optional("thickness", strict.NotZero(d.Decoder, &x.Thickness, strict.Quantity(d.Decoder, &x.Thickness, unit.ParseLength))),
			strict.Optional("target", strict.Pointed(&x.Target, d.target)),
			strict.Optional("start", strict.Pointed(&x.Start, d.start)),
			strict.Optional("prep", d.listed(&x.Prep, preps)),
			strict.Optional("wrap", strict.Pointed(&x.Wrap, d.wrap)),
			strict.Optional("zone", d.word(&x.Zone, zones...)),
			strict.Optional("lies", d.word(&x.Lies, waysToLie...)),
			strict.Optional("level", strict.Pointed(&x.Level, d.temperature)),
			strict.Optional("layout", d.word(&x.Layout, layoutNames()...)),
			strict.Optional("rest", strict.Pointed(&x.Rest, d.duration)),
			strict.Optional("hold", d.atLeastOne(d.words(&x.Hold, holds))),
			strict.Optional("finish", d.word(&x.Finish, finishes...)),
			strict.Optional("serve", strict.Pointed(&x.Serve, d.clock)),
			strict.Optional("earliest", strict.Pointed(&x.Earliest, d.clock)),
			strict.Optional("travel", strict.Pointed(&x.Travel, d.duration)),
			strict.Optional("ready", d.word(&x.Ready, readies...)),
			strict.Optional("assumed", strict.List(d.Decoder, &x.Assumed, maxChoices, d.wordOf(assumables))),
			strict.Optional("went_on", strict.Pointed(&x.WentOn, d.clock)),
			strict.Optional("measured", d.measured(&x.Measured)),
		)
	})
}

// cutNames are those of the catalogue, which an editor may offer.
func cutNames() []string {
	var names []string
	for _, c := range cut.All() {
		names = append(names, c.Name)
	}
	return names
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
func (d decoder) listed(to *[]string, of []string) strict.Reader {
	return func(n *strict.Node, path string) {
		if n.Kind == strict.NodeList {
			*to = []string{}
		}
		strict.List(d.Decoder, to, maxChoices, d.wordOf(of))(n, path)
	}
}

// atLeastOne refuses an empty list, which reads like "none" but would mean "any".
func (d decoder) atLeastOne(read strict.Reader) strict.Reader {
	return func(n *strict.Node, path string) {
		if n.Kind == strict.NodeList && len(n.Items) == 0 {
			d.Faults.AddShape(path, n.Line, "is an empty list; name at least one or leave the field out")
			return
		}
		n.AtLeastOne()
		read(n, path)
	}
}

// words reads a list of words or one word alone.
func (d decoder) words(to *[]string, of []string) strict.Reader {
	return func(n *strict.Node, path string) {
		if n.Kind == strict.NodeList {
			strict.List(d.Decoder, to, maxChoices, d.wordOf(of))(n, path)
			return
		}
		var word string
		d.word(&word, of...)(n, path)
		*to = []string{word}
	}
}

// word reads one of a few words of a request, in the spelling that the format has for it.
// Whether it is one of them is looked at later, with a better sentence.
func (d decoder) word(to *string, words ...string) strict.Reader {
	read := func(n *strict.Node, path string) {
		d.Text(to)(n, path)
		*to = asInFormat(*to)
	}
	return strict.Among(read, false, func() []string { return withOtherSpellings(words) })
}

// wordOf is word for a list of them.
func (d decoder) wordOf(words []string) func(*string) strict.Reader {
	return func(to *string) strict.Reader { return d.word(to, words...) }
}

// withOtherSpellings adds the words that are read as one of these.
func withOtherSpellings(words []string) []string {
	all := slices.Clone(words)
	for also, word := range alsoWritten {
		if slices.Contains(words, word) {
			all = append(all, also)
		}
	}
	slices.Sort(all)
	return all
}

// alsoWritten are other words for those of the format.
var alsoWritten = map[string]string{
	"tenderized": PrepTenderised, "cooler": HoldBox, "rectangular": GrillBox, "drum": GrillUpright, "smoker": GrillUpright,
	"snake": string(fire.Ring), "fuse": string(fire.Ring), "two zone": string(fire.TwoZone), "2-zone": string(fire.TwoZone),
	"charcoal": FuelBriquettes, "briquets": FuelBriquettes, "lump charcoal": FuelLump,
	"butcher paper": WrapPaper, "tinfoil": WrapFoil, "tin foil": WrapFoil, "aluminum foil": WrapFoil, "aluminium foil": WrapFoil, "unwrapped": WrapNone,
	"seared": FinishSear, "reverse sear": FinishSear,
}

// asInFormat is a word in the spelling that the format has for it.
func asInFormat(word string) string {
	if ours, ok := alsoWritten[word]; ok {
		return ours
	}
	return word
}

// target reads "203 F", "medium-rare" or {final: 130 F}.
func (d decoder) target(t *Target) strict.Reader {
	return func(n *strict.Node, path string) {
		switch {
		case n.Kind == strict.NodeObject:
			d.Object(n, path, strict.Required("final", strict.Pointed(&t.Final, d.temperature)))
		case n.Kind == strict.NodeNumber || n.LikeNumber():
			strict.Pointed(&t.Core, d.temperature)(n, path)
		default:
			d.Text(&t.Doneness)(n, path)
			t.Doneness = meant.Doneness(t.Doneness)
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
		if n.Kind == strict.NodeText && !n.LikeNumber() {
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
		if yes, said := n.Says(); said && !n.Probed() {
			w.With = map[bool]string{true: WrapFoil, false: WrapNone}[yes]
			return
		}
		n.TakesTruth()
		if n.Probed() && n.Kind == strict.NodeText {
			n.AlsoWords("yes", "no")
		}
		if n.Kind != strict.NodeObject {
			d.word(&w.With, wraps...)(n, path)
			return
		}
		d.Object(n, path,
			strict.Required("with", d.word(&w.With, wraps...)),
			strict.Optional("from", strict.Pointed(&w.From, d.temperature)),
			strict.Optional("after", strict.Pointed(&w.After, d.duration)),
		)
	}
}
