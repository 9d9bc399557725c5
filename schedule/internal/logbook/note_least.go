package logbook

import (
	"fmt"
	"slices"

	"example.com/cookday/schedule/unit"
)

// innerOvenC is what only raw meat needs that is dangerous inside, birds, ground and stuffed, degC: 325 °F and a little less for its rounding.
var innerOvenC = unit.FToC(320)

// slackC is how far under its figure a reading is still that figure, degC: thermometers show whole degrees.
const slackC = 0.3

// notDone says at once, beside the line, of what comes off or is off below the temperature that it must
// have shown: whoever notes it stands before it, and may not ask again.
func (n *noteReader) notDone(rows []Row) {
	for i, r := range rows {
		e := Entry{Kind: Kind(r.kind)}
		if !e.Kind.ofPlace() || temperatureOf(&e, r.value) != "" {
			continue
		}
		id, _ := n.dishID(r.dish)
		k := slices.IndexFunc(n.named(), func(d Dish) bool { return d.ID == id })
		if k < 0 || e.C >= n.named()[k].DoneC-slackC || n.named()[k].OvenCooks || !n.comesOff(rows, r.dish) && !n.liesOff(id) {
			continue
		}
		rows[i].aside = n.shortOf(n.named()[k], e.C)
	}
}

// shortOf is what to do with a dish that is off at a temperature below its least.
func (n *noteReader) shortOf(d Dish, c float64) string {
	least := n.day.Units.Core(unit.Temperature(d.DoneC))
	if d.RawOvenC < innerOvenC && c >= d.DoneC-5/1.8 { // it rises by as much (common practice, no source)
		return fmt.Sprintf("A little short: it needs %s. Measure again in 3 min, in the thickest place, before anybody cuts it. Still under: back on the hot grate", least)
	}
	return fmt.Sprintf("Not done: it needs %s everywhere. Back on the hot grate now, and measure again. Do not cut or serve it before that", least)
}

// comesOff says whether the rows of a note take a dish off.
func (n *noteReader) comesOff(rows []Row, dish string) bool {
	return slices.ContainsFunc(rows, func(r Row) bool { return r.dish == dish && Kind(r.kind) == Pulled })
}

// liesOff says whether a dish that was never read as done is off the heat, by the log.
func (n *noteReader) liesOff(id string) bool {
	k := slices.IndexFunc(n.named(), func(d Dish) bool { return d.ID == id })
	off := false
	for _, e := range n.log {
		if e.Dish != id {
			continue
		}
		switch e.Kind {
		case Pulled, Served:
			off = true
		case On, Restarted, ToOven, Boxed, Chilled:
			off = false
		case Core, Coldest:
			if e.C >= n.named()[k].DoneC-slackC {
				return false
			}
		}
	}
	return off
}
