package revise

import (
	"fmt"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner/internal/arrange"
)

// Of several pieces that lie on the grate together one may come off before the others: the log
// says so of that piece, and from then on it is a batch of its own, which waits, while what is
// left goes on.

// pieceLine is an entry by which one piece of several came off; its name is the cook's.
type pieceLine struct {
	at   time.Time
	name string
	said string // its time, as it is told
}

// pieceLines are those of a dish, in order.
func (v *Revision) pieceLines(id string) (all []pieceLine) {
	for _, e := range v.log {
		if e.Dish != id || e.Kind != schedule.LogPulled || e.Value == "" {
			continue
		}
		line := pieceLine{e.At, e.Value, v.clock(e.At)}
		if !slices.ContainsFunc(all, func(o pieceLine) bool { return o.name == line.name && line.name != schedule.OnePiece }) {
			all = append(all, line)
		}
	}
	return all
}

// part makes a batch of every piece that came off by itself, as the log tells. The last piece
// of a batch takes the batch along.
func (v *Revision) part() {
	for i := range v.day.Items {
		id := v.day.Items[i].Dish.ID
		lines := v.pieceLines(id)
		var all []*liveBatch
		for _, a := range v.batches {
			if a.batch.It.Dish.ID == id {
				all = append(all, a)
			}
		}
		for _, line := range lines {
			k := partOf(all, line.name)
			if k < 0 || len(v.batches) >= arrange.MostBatches {
				break
			}
			rest := all[k]
			if rest.batch.Count < 2 {
				if len(all) > 1 {
					rest.piece = &line
				}
				continue
			}
			off := &liveBatch{first: onlySome(rest.first, 1, len(all)+1), batch: someOf(rest.batch, 1, len(all)+1), piece: &line}
			rest.first, rest.batch = onlySome(rest.first, rest.batch.Count-1, rest.batch.Number), someOf(rest.batch, rest.batch.Count-1, rest.batch.Number)
			at := slices.Index(v.batches, all[len(all)-1]) + 1
			v.batches = slices.Insert(v.batches, at, off)
			all = append(all, off)
		}
	}
}

// partOf is the batch of which a piece came off: of unequal ones the small one or the big one, where
// it was called so, else the first that has one left; -1 for none.
func partOf(all []*liveBatch, name string) int {
	best := -1
	for k, a := range all {
		switch {
		case a.piece != nil:
		case best < 0, name == "small" && a.batch.MassKg < all[best].batch.MassKg, name == "big" && a.batch.MassKg > all[best].batch.MassKg:
			best = k
		}
	}
	return best
}

// someOf is a batch of so many of its pieces, by another number.
func someOf(b *arrange.Batch, count, number int) *arrange.Batch {
	some := *b
	some.Count, some.Number = count, number
	return &some
}

// onlySome is the same of one that was placed; nil of none.
func onlySome(p *arrange.Placed, count, number int) *arrange.Placed {
	if p == nil {
		return nil
	}
	some := *p
	some.Batch = someOf(p.Batch, count, number)
	return &some
}

// apartFor is for how long before a piece came off a reading may be of that piece alone
// (assumption).
const apartFor = 30 * time.Minute

// meant says which batches of a dish an entry is of. Where no piece came off by itself it is
// all of them; else what is told of one piece is of that piece, what is told of a wait is of
// what is off and waits nowhere yet, and what is told of the fire is of what is on.
func meant(e schedule.Entry, all []*liveBatch, log []schedule.Entry) []*liveBatch {
	if !slices.ContainsFunc(all, func(a *liveBatch) bool { return a.piece != nil }) {
		return all
	}
	isOff := func(a *liveBatch) bool { return a.off.set }
	var out []*liveBatch
	switch e.Kind {
	case schedule.LogPulled:
		for _, a := range all {
			if mine := a.piece != nil && a.piece.at.Equal(e.At) && a.piece.name == e.Value; mine || e.Value == "" && a.piece == nil {
				out = append(out, a)
			}
		}
		return out
	case schedule.LogCore, schedule.LogColdest:
		for _, a := range all {
			if a.hasReading(e, all, log) {
				out = append(out, a)
			}
		}
		return out
	case schedule.LogBoxed, schedule.LogCounter, schedule.LogOuter, schedule.LogChilled, schedule.LogToOven:
		if e.Kind == schedule.LogToOven && e.C >= cooksFromC && !slices.ContainsFunc(all, isOff) {
			return all
		}
		for _, a := range all {
			if isOff(a) && !a.boxed.set && len(a.waits()) == 0 {
				out = append(out, a)
			}
		}
		if len(out) > 0 {
			return out
		}
	case schedule.LogWrapped, schedule.LogStopped, schedule.LogRestarted:
	default:
		return all
	}
	on := slices.DeleteFunc(slices.Clone(all), isOff)
	if len(on) == 0 {
		return all
	}
	return on
}

// hasReading says whether a reading is of a batch, where one piece came off by itself.
func (a *liveBatch) hasReading(e schedule.Entry, all []*liveBatch, log []schedule.Entry) bool {
	named := func(o *liveBatch) bool {
		return o.piece != nil && o.piece.name == e.Value && e.Value != schedule.OnePiece
	}
	switch {
	case slices.ContainsFunc(all, named):
		return named(a)
	case e.Value != "" && a.piece != nil && a.piece.name != schedule.OnePiece && e.OfPiece():
		return false // of another piece
	case e.Kind == schedule.LogColdest:
		return a.piece == nil || !e.At.After(a.piece.at)
	}
	for _, o := range all { // what was read as a piece came off is of that piece
		if o.piece == nil || e.At.After(o.piece.at) || e.At.Before(o.piece.at.Add(-apartFor)) || e.C < o.way().PullC-feltWithinK {
			continue
		}
		if hottest(e, log, o.piece.at) {
			return a == o
		}
	}
	return a.piece == nil || !e.At.After(a.piece.at)
}

// hottest says whether no other reading of a dish within a while before an instant was hotter.
func hottest(e schedule.Entry, log []schedule.Entry, until time.Time) bool {
	return !slices.ContainsFunc(log, func(o schedule.Entry) bool {
		return o.Dish == e.Dish && o.Kind == schedule.LogCore && o.C > e.C && !o.At.After(until) && !o.At.Before(until.Add(-apartFor))
	})
}

// label is the name of a dish, and of one piece that came off by itself says that it is that.
func (a *liveBatch) label() string {
	if name := a.batch.It.Dish.Name; a.piece != nil {
		return fmt.Sprintf("%s (the one off at %s)", name, a.piece.said)
	}
	return a.batch.It.Dish.Name
}
