package revise

import (
	"context"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
)

// earnedBefore is what pieces had earned by a fire that was told out and lit again, before any of
// them was read after that: hot again clears nothing (a reading lowers no clock over a told
// relighting). By dish and batch; empty where no fire was lit again, or none was read since.
func (v *Revision) earnedBefore(ctx context.Context, p schedule.Plan, chilled bool) (map[pieceKey][]safety.Finding, error) {
	at, ok := v.readSinceRelit()
	if !ok {
		return nil, nil
	}
	known := slices.DeleteFunc(slices.Clone(v.log), func(e schedule.Entry) bool { return !e.At.Before(at) })
	p.Log = nil
	w, err := New(ctx, p, known, instant.Later(at.Add(-time.Minute), known[len(known)-1].At), chilled)
	if err != nil {
		return nil, ctx.Err() // what is wrong with the log is told of the whole of it
	}
	earned := map[pieceKey][]safety.Finding{}
	for _, a := range w.batches {
		over := slices.DeleteFunc(slices.Clone(a.verdict), func(f safety.Finding) bool { return f.Severity != safety.Danger })
		if a.condemned && len(over) > 0 {
			earned[a.key()] = over
		}
	}
	return earned, nil
}

// readSinceRelit is when a piece was first read after the last time that a fire which was told out
// was lit again.
func (v *Revision) readSinceRelit() (at time.Time, ok bool) {
	out, lit := false, false
	for _, e := range v.log {
		switch {
		case e.Kind == schedule.LogFireOut:
			out = true
		case e.Kind == schedule.LogLit && out:
			out, lit = false, true
		case (e.Kind == schedule.LogCore || e.Kind == schedule.LogColdest) && lit:
			at, ok, lit = e.At, true, false
		}
	}
	return at, ok
}

// pieceKey names a batch of a dish.
type pieceKey struct {
	dish  string
	batch int
}

func (a *liveBatch) key() pieceKey { return pieceKey{a.batch.It.Dish.ID, a.batch.Number} }

// keepVerdict holds a piece to what it had earned before its fire was lit again.
func (v *Revision) keepVerdict(a *liveBatch) {
	over := v.earlier[a.key()]
	if len(over) == 0 || a.condemned {
		return
	}
	a.condemned, a.suspect, a.unread = true, false, false
	a.verdict = append(slices.DeleteFunc(slices.Clone(a.verdict), func(f safety.Finding) bool {
		return slices.ContainsFunc(over, func(o safety.Finding) bool { return o.Code == f.Code })
	}), over...)
}
