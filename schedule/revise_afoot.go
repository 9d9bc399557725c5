package schedule

import (
	"context"
	"fmt"
	"slices"
	"time"

	"example.com/cookday/schedule/internal/safety"
)

// Where a batch is at now.
type whereabouts int

const (
	waiting whereabouts = iota // not on yet
	cooking
	off // taken off
)

// known is an instant that has passed: logged, or taken as planned because
// nothing says otherwise.
type known struct {
	at     time.Time
	set    bool
	logged bool
}

// stand is a stretch off the heat, open if it lasts until now.
type stand struct {
	from, to time.Time
	open     bool
	kind     string // LogStopped, LogCounter or LogChilled
}

// afoot is one batch while the day runs.
type afoot struct {
	first  *placed // as first planned, in the first plan's day; nil for what the log added
	batch  *batch  // in the revised day
	open   *batch  // the same as it is being arranged, if it waits
	where  whereabouts
	on     known
	wrap   known
	with   string // what it was wrapped in
	bare   bool   // the cook leaves it bare
	off    known
	boxed  known
	oven   known
	ovenC  float64
	stands []stand
	cores  []Entry // core readings
	outers []Entry

	verdict   []safety.Finding // what its history has earned
	condemned bool             // it is outside the published limits: nothing brings it to the table
	gone      bool             // given up, off at an instant of ours

	readings []reading // the same cores, from the put-on, judged
	believed *belief   // nil where the model follows nothing
	journey  *journey
	live     way // what is left, as the solver and the texts take it
}

// look works out from the log where every batch is, and what is believed of it.
func (v *revision) look(ctx context.Context) error {
	for _, p := range v.placed {
		if b := v.again(p); b != nil {
			v.afoot = append(v.afoot, &afoot{first: p, batch: b})
		} else {
			v.called = append(v.called, &afoot{first: p, batch: p.batch})
		}
	}
	if err := v.addDishes(ctx); err != nil {
		return err
	}
	late := v.litLate()
	for i := range v.day.items {
		v.tellDish(v.afoot, v.day.items[i].dish.ID, late)
	}
	for i := range v.base.items {
		v.tellDish(v.called, v.base.items[i].dish.ID, late)
	}
	v.grate = v.day.grateHistory(v.whileItBurns(), v.now, v.plannedLevel)
	v.begun()
	for _, a := range v.afoot {
		if a.on.set && !a.on.logged && a.first != nil && a.first.phases[0][0] >= v.phases && len(a.cores) == 0 {
			*a = afoot{first: a.first, batch: a.batch} // the fire that it waits for is not there yet
		}
	}
	if err := v.believe(ctx); err != nil {
		return err
	}
	v.giveUp()
	return nil
}

// giveUp takes what is outside the published limits out of the day, for nobody waits
// for it: it comes off now, and is off by the last minute for its serving.
func (v *revision) giveUp() {
	for _, a := range v.afoot {
		a.verdict = v.judged(a)
		a.condemned = slices.ContainsFunc(a.verdict, func(f safety.Finding) bool { return f.Severity == safety.Danger })
		if a.where != cooking || !a.condemned {
			continue
		}
		at := v.serve(a).Add(-minutes(a.batch.it.restMinutes())).Add(-2 * leastLeft * time.Minute)
		if !v.now.Before(at) && at.After(a.on.at) {
			a.off, a.gone, a.where, a.believed = known{at: at, set: true}, true, off, nil
			continue
		}
		a.live = a.live.until(v.now.Sub(a.on.at).Minutes()+2*leastLeft, a.wrap.set)
	}
}

// again is a batch of the first plan in the revised day; nil if its dish is gone.
func (v *revision) again(p *placed) *batch {
	for i := range v.day.items {
		if it := &v.day.items[i]; it.dish.ID == p.it.dish.ID {
			b := *p.batch
			b.it = it
			return &b
		}
	}
	return nil
}

// addDishes makes batches of the dishes that the log added, and room in the
// hearth for the fires they want.
func (v *revision) addDishes(ctx context.Context) error {
	if n := v.day.leastBatches(); n > mostBatches {
		return tooManyLoads(n)
	}
	for i := range v.day.items {
		if onMenu(v.base.req, v.day.items[i].dish.ID) {
			continue
		}
		only := *v.day
		only.items = v.day.items[i : i+1]
		for _, s := range only.items[0].spots() {
			for _, f := range only.firesFor(s) {
				v.hearth.addAlways(v.day.grill, f)
			}
		}
		batches, err := only.batches(ctx, v.hearth, roomiest)
		if err != nil {
			return err
		}
		if n := len(v.afoot) + len(batches); n > mostBatches {
			return tooManyLoads(n)
		}
		for _, b := range batches {
			v.afoot = append(v.afoot, &afoot{batch: b})
		}
	}
	return nil
}

// tooManyLoads is the fault of a log that adds more than a day holds.
func tooManyLoads(n int) error {
	return &InputError{Faults: []Fault{{Path: "log", Sentence: fmt.Sprintf(
		"with the dishes that were added the menu makes %d loads of the grate, and a day holds %d at the most", n, mostBatches)}}}
}

// litLate is by how much the fire was lit later than planned. One that is lit
// after something was done with food on it had burned before.
func (v *revision) litLate() time.Duration {
	for _, e := range v.log {
		if v.onFireBy(e) {
			return 0
		}
		if e.Kind != LogLit || v.lights(e.At) != 0 {
			continue
		}
		if late := e.At.Sub(v.first.Phases[0].SetupFrom); late > 0 && late < 12*time.Hour {
			return late
		}
		return 0
	}
	return 0
}

// onFireBy says whether an entry tells of a dish that was on the grate.
func (v *revision) onFireBy(e Entry) bool {
	switch e.Kind {
	case LogOn:
		return true
	case LogCore, LogWrapped, LogToOven, LogPulled, LogBoxed, LogCounter, LogStopped, LogRestarted:
	default:
		return false
	}
	for _, p := range v.placed {
		if p.it.dish.ID == e.Dish && !e.At.Before(v.base.at(p.on)) {
			return true
		}
	}
	return false
}

// serve is the instant at which the batch is to be ready.
func (v *revision) serve(a *afoot) time.Time { return v.day.at(float64(a.batch.it.serve)) }
