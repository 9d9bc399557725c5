package revise

import (
	"context"
	"fmt"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/assemble"
	"example.com/cookday/schedule/planner/internal/belief"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/planner/internal/surprise"
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
	kind     schedule.EntryKind // LogStopped, LogCounter or LogChilled
	untold   bool               // nothing says where it was
	sears    bool               // it came off to be seared
}

// liveBatch is one batch while the day runs.
type liveBatch struct {
	first   *arrange.Placed // as first planned, in the first plan's day; nil for what the log added
	batch   *arrange.Batch  // in the revised day
	open    *arrange.Batch  // the same as it is being arranged, if it waits
	piece   *pieceLine      // by which it alone came off, of several that went on together; nil for none
	where   whereabouts
	on      known
	wrap    known
	with    string // what it was wrapped in
	bare    bool   // the cook leaves it bare
	off     known
	boxed   known
	held    []stay // where it was held, as told, in order
	served  known
	hotly   known // since when what is off is in an oven that cooks: done through there, or reheated
	oven    known
	ovenC   float64
	heats   []ovenHeat   // what the oven has been since then
	cool    float64      // what it was told to be, degC, where that is too cool for a raw piece; 0 for no such
	indoors []indoorStay // where it cooked in between, before it went back on the grate
	sent    string       // why it is ordered into the oven, where it is not yet
	stands  []stand
	cores   []schedule.Entry // core readings
	outers  []schedule.Entry

	verdict    []safety.Finding // what its history has earned
	condemned  bool             // it is outside the published limits: as it is, nothing brings it to the table
	mends      bool             // and being made hot in time does
	gone       bool             // given up, off at an instant of ours
	colder     bool             // it was read below its minimum in its coldest place
	placeAsked bool             // nobody said where it waits, and that is asked
	adrift     bool             // it is past its time without heat unless it was where nobody logged it
	undone     float64          // how likely it is that it is off and not done, as nothing shows

	readings  []belief.Reading   // the same cores, from the put-on, judged
	signs     []surprise.Verdict // of the readings that surprise
	dire      *world             // as it is if the most dangerous of what is open holds; nil where it is taken so
	sound     *world             // as it is if nothing of what is open holds; nil where nothing is
	searTaken bool               // it came off for its sear, and is taken to be seared by the hour alone
	late      schedule.Entry     // the reading by which a bird was below 140 °F for longer than 4 h
	slowFor   float64            // and for how long, minutes; 0 where it was not
	unwatched bool               // nobody knows whether it had heat in hours that nobody read, and that is asked
	unread    bool               // so, by how long its fire may have been out, and its core was not read since
	hotBy     time.Time          // by then the fire had to be hot again, and nothing shows that it was; zero where that is no matter
	suspect   bool               // outside the published limits unless something harmless explains a reading
	believed  *belief.Belief     // nil where the model follows nothing
	plain     *belief.Belief     // the same by what was read alone, where its dead fire is counted with besides
	journey   *belief.Journey
	live      day.Way // what is left, as the solver and the texts take it
}

// look works out from the log where every batch is, and what is believed of it.
func (v *Revision) look(ctx context.Context) error {
	if err := v.place(ctx); err != nil {
		return err
	}
	for v.tooSoonForMeals() {
		if err := v.amend(); err != nil {
			return err
		}
		v.batches, v.called, v.phases = nil, nil, 0
		if err := v.place(ctx); err != nil {
			return err
		}
	}
	v.readOvens()
	v.oneHeat()
	v.steered = v.newHand()
	if err := v.believe(ctx); err != nil {
		return err
	}
	if err := v.warmOvens(ctx); err != nil {
		return err
	}
	v.giveUp()
	return v.sendIndoors(ctx)
}

// place works out from the log where every batch is.
func (v *Revision) place(ctx context.Context) error {
	for _, p := range v.placed {
		if b := v.again(p); b != nil {
			v.batches = append(v.batches, &liveBatch{first: p, batch: b})
		} else {
			v.called = append(v.called, &liveBatch{first: p, batch: p.Batch})
		}
	}
	if err := v.addDishes(ctx); err != nil {
		return err
	}
	v.part()
	v.grate = newGrateHistory(v.day.Day, v.whileItBurns(), v.now, v.plannedLevel, nil)
	late := v.litLate()
	for i := range v.day.Items {
		v.tellDish(v.batches, v.day.Items[i].Dish.ID, late)
	}
	for i := range v.base.Items {
		v.tellDish(v.called, v.base.Items[i].Dish.ID, late)
	}
	for _, c := range v.called {
		c.asOf(v.calledOff(c.batch.It.Dish.ID))
	}
	v.begun()
	v.grate.begins, v.grate.cold = v.firesBegun(), v.coldLoads()
	for _, a := range v.batches {
		if a.on.set && !a.on.logged && a.first != nil && a.first.Phases[0].First >= v.phases && len(a.cores) == 0 {
			*a = liveBatch{first: a.first, batch: a.batch} // the fire that it waits for is not there yet
		}
	}
	return nil
}

// giveUp takes what is outside the published limits out of the day, for nobody waits
// for it: it comes off now, and is off by the last minute for its serving.
func (v *Revision) giveUp() {
	for _, a := range v.batches {
		v.pronounce(a)
		if a.where != cooking || !a.condemned {
			continue
		}
		at := v.serve(a).Add(-instant.Minutes(a.batch.It.RestMinutes())).Add(-2 * assemble.LeastLeft * time.Minute)
		if !v.now.Before(at) && at.After(a.on.at) {
			a.off, a.gone, a.where, a.believed = known{at: at, set: true}, true, off, nil
			continue
		}
		a.live = wayUntil(a.live, v.now.Sub(a.on.at).Minutes()+2*assemble.LeastLeft, a.wrap.set)
	}
}

// again is a batch of the first plan in the revised day; nil if its dish is gone.
func (v *Revision) again(p *arrange.Placed) *arrange.Batch {
	for i := range v.day.Items {
		if it := &v.day.Items[i]; it.Dish.ID == p.It.Dish.ID {
			b := *p.Batch
			b.It = it
			return &b
		}
	}
	return nil
}

// addDishes makes batches of the dishes that the log added, and room in the
// hearth for the fires they want.
func (v *Revision) addDishes(ctx context.Context) error {
	if n := v.day.LeastBatches(); n > arrange.MostBatches {
		return tooManyLoads(n)
	}
	for i := range v.day.Items {
		if plans.OnMenu(v.base.Req, v.day.Items[i].Dish.ID) {
			continue
		}
		only := v.day.Only(i)
		for _, s := range only.Items[0].Spots() {
			for _, f := range only.FiresFor(&only.Items[0], s) {
				addAlways(&v.hearth, v.day.Grill, f)
			}
		}
		batches, err := only.Batches(ctx, v.hearth, arrange.Roomiest)
		if err != nil {
			return err
		}
		if n := len(v.batches) + len(batches); n > arrange.MostBatches {
			return tooManyLoads(n)
		}
		for _, b := range batches {
			v.batches = append(v.batches, &liveBatch{batch: b})
		}
	}
	return nil
}

// tooManyLoads is the fault of a log that adds more than a day holds.
func tooManyLoads(n int) error {
	return &schedule.InputError{Faults: []schedule.Fault{{Path: "log", Sentence: fmt.Sprintf(
		"with the dishes that were added the menu makes %d loads of the grate, and a day holds %d at the most", n, arrange.MostBatches)}}}
}

// litLate is by how much the fire was lit later than planned. One that is lit
// after something was done with food on it had burned before.
func (v *Revision) litLate() time.Duration {
	for _, e := range v.log {
		if v.onFireBy(e) {
			return 0
		}
		if e.Kind != schedule.LogLit || v.lights(e.At) != 0 {
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
func (v *Revision) onFireBy(e schedule.Entry) bool {
	switch e.Kind {
	case schedule.LogOn:
		return true
	case schedule.LogCore, schedule.LogColdest, schedule.LogWrapped, schedule.LogToOven, schedule.LogPulled, schedule.LogBoxed, schedule.LogCounter, schedule.LogStopped, schedule.LogRestarted:
	default:
		return false
	}
	for _, p := range v.placed {
		if p.It.Dish.ID == e.Dish && !e.At.Before(v.base.At(p.On)) {
			return true
		}
	}
	return false
}

// serve is the instant at which the batch is to be ready.
func (v *Revision) serve(a *liveBatch) time.Time { return v.day.At(float64(a.batch.It.Serve)) }

// chilledAt is when the log says that a piece went into the refrigerator, where it still is.
func (a *liveBatch) chilledAt() (time.Time, bool) {
	for _, s := range a.stands {
		if s.kind == schedule.LogChilled && s.open {
			return s.from, true
		}
	}
	return time.Time{}, false
}
