package schedule

import (
	"regexp"

	saypkg "example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

func decoderDish(d *strict.Decoder, x *Dish) strict.Reader {
	return func(n *strict.Node, path string) {
		d.Object(n, path,
			strict.Optional("id", d.Text(&x.ID)),
			strict.Optional("name", d.Text(&x.Name)),
			strict.Required("cut", d.Text(&x.Cut)),
			strict.Optional("weight", decoderMass(d, &x.Weight)),
			strict.Optional("weights", decoderAtLeastOne(d, strict.List(d, &x.Weights, maxPieces, func(a0 *unit.Mass) strict.Reader { return decoderMass(d, a0) }))),
			strict.Optional("count", strict.NotZero(d, &x.Count, d.Whole(&x.Count, "2"))),
			strict.Optional("thickness", strict.NotZero(d, &x.Thickness, strict.Quantity(d, &x.Thickness, unit.ParseLength))),
			strict.Optional("target", strict.Pointed(&x.Target, func(a0 *Target) strict.Reader { return decoderTarget(d, a0) })),
			strict.Optional("start", strict.Pointed(&x.Start, func(a0 *Start) strict.Reader { return decoderStart(d, a0) })),
			strict.Optional("prep", strict.List(d, &x.Prep, maxChoices, d.Text)),
			strict.Optional("wrap", strict.Pointed(&x.Wrap, func(a0 *Wrap) strict.Reader { return decoderWrap(d, a0) })),
			strict.Optional("zone", d.Text(&x.Zone)),
			strict.Optional("level", strict.Pointed(&x.Level, func(a0 *unit.Temperature) strict.Reader { return decoderTemperature(d, a0) })),
			strict.Optional("rest", strict.Pointed(&x.Rest, func(a0 *unit.Duration) strict.Reader { return decoderDuration(d, a0) })),
			strict.Optional("hold", decoderAtLeastOne(d, decoderWords(d, &x.Hold))),
			strict.Optional("finish", d.Text(&x.Finish)),
			strict.Optional("serve", strict.Pointed(&x.Serve, func(a0 *Clock) strict.Reader { return decoderClock(d, a0) })),
			strict.Optional("earliest", strict.Pointed(&x.Earliest, func(a0 *Clock) strict.Reader { return decoderClock(d, a0) })),
			strict.Optional("travel", strict.Pointed(&x.Travel, func(a0 *unit.Duration) strict.Reader { return decoderDuration(d, a0) })),
			strict.Optional("ready", d.Text(&x.Ready)),
		)
	}
}

func decoderMass(d *strict.Decoder, m *unit.Mass) strict.Reader {
	return strict.Quantity(d, m, unit.ParseMass)
}

// atLeastOne refuses an empty list, which reads like "none" but would mean "any".
func decoderAtLeastOne(d *strict.Decoder, read strict.Reader) strict.Reader {
	return func(n *strict.Node, path string) {
		if n.Kind == strict.NodeList && len(n.Items) == 0 {
			d.Faults.AddLine(path, n.Line, "is an empty list; name at least one or leave the field out")
			return
		}
		read(n, path)
	}
}

// words reads a list of words or one word alone.
func decoderWords(d *strict.Decoder, to *[]string) strict.Reader {
	return func(n *strict.Node, path string) {
		if n.Kind == strict.NodeList {
			strict.List(d, to, maxChoices, d.Text)(n, path)
			return
		}
		var word string
		d.Text(&word)(n, path)
		*to = []string{word}
	}
}

var startsLikeNumber = regexp.MustCompile(`^\s*[-+.0-9]`)

// target reads "203 F", "medium-rare" or {final: 130 F}.
func decoderTarget(d *strict.Decoder, t *Target) strict.Reader {
	return func(n *strict.Node, path string) {
		switch {
		case n.Kind == strict.NodeObject:
			d.Object(n, path, strict.Required("final", strict.Pointed(&t.Final, func(a0 *unit.Temperature) strict.Reader { return decoderTemperature(d, a0) })))
		case n.Kind == strict.NodeNumber || startsLikeNumber.MatchString(n.Text):
			strict.Pointed(&t.Core, func(a0 *unit.Temperature) strict.Reader { return decoderTemperature(d, a0) })(n, path)
		default:
			d.Text(&t.Doneness)(n, path)
		}
	}
}

// start reads "38 F" or frozen.
func decoderStart(d *strict.Decoder, s *Start) strict.Reader {
	return func(n *strict.Node, path string) {
		if n.Kind == strict.NodeText && n.Text == startFrozen {
			s.Frozen = true
			return
		}
		if n.Kind == strict.NodeText && !startsLikeNumber.MatchString(n.Text) {
			d.Faults.AddLine(path, n.Line, "%s must be a temperature such as 38 F, or %s", saypkg.Quoted(n.Text), startFrozen)
			return
		}
		decoderTemperature(d, &s.Core)(n, path)
	}
}

const startFrozen = "frozen"

// wrap reads none, foil, paper, {with: foil, from: 150 F} or {with: paper, after: 4h}.
func decoderWrap(d *strict.Decoder, w *Wrap) strict.Reader {
	return func(n *strict.Node, path string) {
		if n.Kind != strict.NodeObject {
			d.Text(&w.With)(n, path)
			return
		}
		d.Object(n, path,
			strict.Required("with", d.Text(&w.With)),
			strict.Optional("from", strict.Pointed(&w.From, func(a0 *unit.Temperature) strict.Reader { return decoderTemperature(d, a0) })),
			strict.Optional("after", strict.Pointed(&w.After, func(a0 *unit.Duration) strict.Reader { return decoderDuration(d, a0) })),
		)
	}
}
