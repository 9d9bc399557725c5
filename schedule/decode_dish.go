package schedule

import (
	"regexp"

	"example.com/cookday/schedule/unit"
)

func (d *decoder) dish(x *Dish) reader {
	return func(n *node, path string) {
		d.object(n, path,
			optional("id", d.text(&x.ID)),
			optional("name", d.text(&x.Name)),
			required("cut", d.text(&x.Cut)),
			optional("weight", d.mass(&x.Weight)),
			optional("weights", d.atLeastOne(list(d, &x.Weights, maxPieces, d.mass))),
			optional("count", notZero(d, &x.Count, d.whole(&x.Count, "2"))),
			optional("thickness", notZero(d, &x.Thickness, quantity(d, &x.Thickness, unit.ParseLength))),
			optional("target", pointed(&x.Target, d.target)),
			optional("start", pointed(&x.Start, d.start)),
			optional("prep", list(d, &x.Prep, maxChoices, d.text)),
			optional("wrap", pointed(&x.Wrap, d.wrap)),
			optional("zone", d.text(&x.Zone)),
			optional("level", pointed(&x.Level, d.temperature)),
			optional("rest", pointed(&x.Rest, d.duration)),
			optional("hold", d.atLeastOne(d.words(&x.Hold))),
			optional("finish", d.text(&x.Finish)),
			optional("serve", pointed(&x.Serve, d.clock)),
			optional("earliest", pointed(&x.Earliest, d.clock)),
			optional("travel", pointed(&x.Travel, d.duration)),
			optional("ready", d.text(&x.Ready)),
		)
	}
}

func (d *decoder) mass(m *unit.Mass) reader { return quantity(d, m, unit.ParseMass) }

// atLeastOne refuses an empty list, which reads like "none" but would mean "any".
func (d *decoder) atLeastOne(read reader) reader {
	return func(n *node, path string) {
		if n.kind == nodeList && len(n.items) == 0 {
			d.faults.addLine(path, n.line, "is an empty list; name at least one or leave the field out")
			return
		}
		read(n, path)
	}
}

// words reads a list of words or one word alone.
func (d *decoder) words(to *[]string) reader {
	return func(n *node, path string) {
		if n.kind == nodeList {
			list(d, to, maxChoices, d.text)(n, path)
			return
		}
		var word string
		d.text(&word)(n, path)
		*to = []string{word}
	}
}

var startsLikeNumber = regexp.MustCompile(`^\s*[-+.0-9]`)

// target reads "203 F", "medium-rare" or {final: 130 F}.
func (d *decoder) target(t *Target) reader {
	return func(n *node, path string) {
		switch {
		case n.kind == nodeObject:
			d.object(n, path, required("final", pointed(&t.Final, d.temperature)))
		case n.kind == nodeNumber || startsLikeNumber.MatchString(n.text):
			pointed(&t.Core, d.temperature)(n, path)
		default:
			d.text(&t.Doneness)(n, path)
		}
	}
}

// start reads "38 F" or frozen.
func (d *decoder) start(s *Start) reader {
	return func(n *node, path string) {
		if n.kind == nodeText && n.text == startFrozen {
			s.Frozen = true
			return
		}
		if n.kind == nodeText && !startsLikeNumber.MatchString(n.text) {
			d.faults.addLine(path, n.line, "%s must be a temperature such as 38 F, or %s", quoted(n.text), startFrozen)
			return
		}
		d.temperature(&s.Core)(n, path)
	}
}

const startFrozen = "frozen"

// wrap reads none, foil, paper, {with: foil, from: 150 F} or {with: paper, after: 4h}.
func (d *decoder) wrap(w *Wrap) reader {
	return func(n *node, path string) {
		if n.kind != nodeObject {
			d.text(&w.With)(n, path)
			return
		}
		d.object(n, path,
			required("with", d.text(&w.With)),
			optional("from", pointed(&w.From, d.temperature)),
			optional("after", pointed(&w.After, d.duration)),
		)
	}
}
