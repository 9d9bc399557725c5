package schedule

import (
	"fmt"
	"slices"
	"strings"

	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/strict"
)

// OwnGrill is what finished cooks taught of one grill. A request's grill carries it, and the fire of a plan and of its
// revisions is then that of this grill.
type OwnGrill struct {
	Cooks   int         `json:"cooks"` // that taught it
	Figures []OwnFigure `json:"figures"`
}

// OwnFigure is one thing that differs from grill to grill.
type OwnFigure struct {
	Name   string  `json:"name"`
	Times  float64 `json:"times"`  // of the usual grill's
	Spread float64 `json:"spread"` // of its logarithm: how unsure it still is
}

// GrillLesson is what a finished cook taught of its grill.
type GrillLesson struct {
	Own    *OwnGrill `json:"own,omitempty"` // the record after it; nil if nothing is known yet
	Taught bool      `json:"taught"`        // this cook added to it
	Text   string    `json:"text"`
	Holds  []string  `json:"holds,omitempty"` // vents that hold common levels on this grill, in words
}

// OwnPace is the figure of the minutes of what cooks low beside the coals, of the model's; the others are of the fire.
const OwnPace = "pace"

// OwnFigures are the names of the figures, in their order.
func OwnFigures() []string {
	return []string{"gain", "leak", "bed", "ratio", "lit-heat", "catching", "warming", "cooling", "full", "ash", "gauge", OwnPace}
}

// Figure is a figure of a record; false where it has none, or there is none.
func (o *OwnGrill) Figure(name string) (OwnFigure, bool) {
	if o == nil {
		return OwnFigure{}, false
	}
	for _, f := range o.Figures {
		if f.Name == name && f.Times > 0 {
			return f, true
		}
	}
	return OwnFigure{}, false
}

// Bounds of a record: no grill is farther from the usual one.
const (
	mostOwnCooks  = 1000
	leastOwnTimes = 1. / 8
	mostOwnTimes  = 8
	mostOwnSpread = 1.5
)

// ReadOwnGrill reads a record, YAML or JSON. All faults come as one *[InputError].
func ReadOwnGrill(data []byte) (OwnGrill, error) {
	tree, faults := strict.ParseDocument(data, strict.MaxRequestBytes)
	if tree == nil {
		return OwnGrill{}, inputError(faults)
	}
	var own OwnGrill
	newDecoder(faults).ownGrill(&own)(tree, "")
	if faults.Len() == 0 {
		own.within("", faults)
	}
	return own, inputError(faults)
}

// Text is the record as YAML, for a request's grill or a file of its own.
func (o OwnGrill) Text() string {
	var b strings.Builder
	fmt.Fprintf(&b, "cooks: %d\nfigures:\n", o.Cooks)
	for _, f := range o.Figures {
		fmt.Fprintf(&b, "  - {name: %s, times: %g, spread: %g}\n", f.Name, f.Times, f.Spread)
	}
	return b.String()
}

func (d decoder) ownGrill(o *OwnGrill) strict.Reader {
	return strict.Named("own", func(n *strict.Node, path string) {
		d.Object(n, path,
			strict.Required("cooks", d.Whole(&o.Cooks, "3")),
			strict.Required("figures", strict.List(d.Decoder, &o.Figures, len(OwnFigures()), d.ownFigure)),
		)
	})
}

func (d decoder) ownFigure(f *OwnFigure) strict.Reader {
	return func(n *strict.Node, path string) {
		d.Object(n, path,
			strict.Required("name", d.word(&f.Name, OwnFigures()...)),
			strict.Required("times", d.Number(&f.Times, "1.1")),
			strict.Required("spread", d.Number(&f.Spread, "0.2")),
		)
	}
}

// within says what no grill's record has.
func (o OwnGrill) within(path string, faults *strict.FaultList) {
	at := func(name string) string { return strings.TrimPrefix(path+"."+name, ".") }
	if o.Cooks < 1 || o.Cooks > mostOwnCooks {
		faults.Add(at("cooks"), "%d must be the number of cooks that taught the grill, from 1 to %d", o.Cooks, mostOwnCooks)
	}
	var names []string
	for i, f := range o.Figures {
		here := strict.ItemPath(at("figures"), i)
		if !slices.Contains(OwnFigures(), f.Name) {
			faults.Add(here+".name", "%s is no figure of a grill; there are %s", say.Quoted(f.Name), say.Listed(OwnFigures(), "and"))
		} else if slices.Contains(names, f.Name) {
			faults.Add(here+".name", "%s is there twice", say.Quoted(f.Name))
		}
		names = append(names, f.Name)
		if !(f.Times >= leastOwnTimes && f.Times <= mostOwnTimes) {
			faults.Add(here+".times", "%g must lie between %g and %d times the usual grill's", f.Times, leastOwnTimes, mostOwnTimes)
		}
		if !(f.Spread > 0 && f.Spread <= mostOwnSpread) {
			faults.Add(here+".spread", "%g must be above 0 and at most %g", f.Spread, mostOwnSpread)
		}
	}
}
