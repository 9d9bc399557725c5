package revise

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/unit"
)

// offReading is how long before it came off a reading still tells how a piece came off
// (assumption).
const offReading = 10 * time.Minute

// undoneFor is how long a piece that is not done may lie off the heat before it is past
// saving (usda_danger_zone: 2 hours).
const undoneFor = 2 * time.Hour

// undoneOvenC is the oven that takes what is below its minimum: 325 F, which poultry, ground
// and stuffed meat need and others may have (common practice, no source).
var undoneOvenC = unit.FToC(325)

// leastC is the core that a piece must have shown before it is eaten, degC: its published
// minimum, or what was asked of it where that is lower; 0 for none.
func (a *liveBatch) leastC() float64 {
	it := a.batch.It
	if it.TargetC == 0 || it.Verdict.Minimum.CoreC == 0 {
		return 0
	}
	return math.Min(a.way().PullC, it.Verdict.Minimum.CoreC)
}

// noteUndone says of a piece that came off and was never read at what it must have shown
// that it is not done, or not known to be; true where nothing else is to be said of it. What
// was never read at all is the cook's to know, but for what is dangerous inside.
func (v *Revision) noteUndone(a *liveBatch, add func(schedule.Finding)) bool {
	shows := v.shows(a)
	if shows == shownNever {
		v.noteNeverRead(a, add)
	}
	if shows == shownDone && a.off.logged && a.someUnread() && !a.served.set && !v.mealPast(a) {
		add(about(a, schedule.OffUnread, v.othersUnreadText(a)))
	}
	if !a.off.logged || shows != shownLow {
		return false
	}
	if v.toldOfTwin(a) {
		return true
	}
	last := v.lowestOf(a)
	if last.At.Before(a.off.at.Add(-offReading)) || a.way().Sear && last.At.Before(a.off.at) {
		v.noteUnread(a, last, add)
		return false
	}
	name, min, oven := a.batch.It.Dish.Name, v.day.Core(a.leastC()), v.day.Grate(undoneOvenC)
	showed := fmt.Sprintf("Off at %s inside", v.day.Core(last.C))
	if cold, ok := a.coldestBefore(last); ok && last.C >= a.leastC()-sameC {
		showed = fmt.Sprintf("%s at %s, but the coldest place was at %s at %s", v.day.Core(last.C), v.clock(last.At), v.day.Core(cold.C), v.clock(cold.At))
	} else if last.At.After(a.off.at) {
		showed = fmt.Sprintf("Off at %s, and %s inside at %s", v.clock(a.off.at), v.day.Core(last.C), v.clock(last.At))
	}
	by := instant.Later(a.off.at, a.on.at).Add(instant.Minutes(safety.OutLimit(v.day.Air.AirC)))
	if v.noteJustShort(a, last, add) || v.noteWarmerSince(a, last, add) {
		return true
	}
	late := v.now.After(by) && !(a.hotly.set && !a.hotly.at.After(by)) // in an oven that cooks it is in heat
	switch {
	case a.served.set && !late:
		add(about(a, schedule.OffUndone, fmt.Sprintf("%s: stop eating. %s, and never read at %s in the coldest place. %s Wash hands, board, knife and tongs. Whoever ate of it and falls ill: call a doctor.", name, showed, min, v.orAway(a, oven, min))))
	case a.served.set:
		add(about(a, schedule.OffUndone, fmt.Sprintf("%s: stop eating, and throw away what is left. %s, and never read at %s in the coldest place. Whoever ate of it and falls ill: call a doctor.", name, showed, min)))
	case late:
		add(about(a, schedule.OffUndone, fmt.Sprintf("Do not serve %s, and throw it away. %s, and never read at %s in the coldest place.", name, showed, min)))
	case a.hotly.set:
		add(about(a, schedule.OffUndone, fmt.Sprintf("%s: not done. %s; %s is needed. Leave it in the oven, and do not cut or serve. Push the probe right through in 15 min, and log the coldest place (coldest). Serve only at %s there.", name, showed, min, min)))
	default:
		add(about(a, schedule.OffUndone, fmt.Sprintf("%s: not done. %s; %s is needed. Do not cut or serve. Back on the hot grate now, or into an oven at %s, and log each reading. Serve only at %s everywhere. Off since %s: in heat by %s at the very latest; past that it is thrown away.",
			name, showed, min, oven, min, v.clock(a.off.at), v.clock(by))))
	}
	return true
}

// toldOfTwin says whether another piece of the same dish, by the same reading, is as little done and came off sooner: what is
// told of that one, with its nearer end, is of both.
func (v *Revision) toldOfTwin(a *liveBatch) bool {
	last, before := v.lowestOf(a), true
	return slices.ContainsFunc(v.batches, func(b *liveBatch) bool {
		if b == a {
			before = false
			return false
		}
		if b.batch.It != a.batch.It && b.batch.It.Dish.ID != a.batch.It.Dish.ID || b.where != off || b.condemned || !b.off.logged || b.served.set != a.served.set || b.hotly.set != a.hotly.set || v.shows(b) != shownLow {
			return false
		}
		other := v.lowestOf(b)
		return other.At.Equal(last.At) && other.C == last.C && (b.off.at.Before(a.off.at) || before && b.off.at.Equal(a.off.at))
	})
}

// noteJustShort says of a whole piece that came off a few degrees below its published minimum
// that it rises while it rests, and is read again before anybody eats; true where that is so.
func (v *Revision) noteJustShort(a *liveBatch, last schedule.Entry, add func(schedule.Finding)) bool {
	if a.inner() || last.C < a.leastC()-carryK || last.At.After(a.off.at) || a.hotly.set || v.mealPast(a) {
		return false
	}
	name, min := a.batch.It.Dish.Name, v.day.Core(a.leastC())
	if a.served.set {
		add(about(a, schedule.OffUndone, fmt.Sprintf("%s: stop eating, and measure what is left, in its thickest place. It came off at %s, and nobody read that resting brought it to %s. At %s or more: log it, and go on. Under that: %s",
			name, v.day.Core(last.C), min, min, say.Lower(v.orAway(a, v.day.Grate(undoneOvenC), min)))))
		return true
	}
	add(about(a, schedule.OffUndone, fmt.Sprintf("%s: a little short. Off at %s inside; %s is needed. Resting adds a few degrees: measure it again in the thickest place, 3 min after the take-off, and log that. Still under: back on the hot grate for a few minutes. Do not cut before the thermometer reads %s.",
		name, v.day.Core(last.C), min, min)))
	return true
}

// noteWarmerSince asks of small pieces that came off at their minimum whether the coldest of them
// did, which was under it minutes before; true where that is so.
func (v *Revision) noteWarmerSince(a *liveBatch, last schedule.Entry, add func(schedule.Finding)) bool {
	newest := a.cores[len(a.cores)-1]
	if a.batch.It.Cut.Style != cut.Small || a.batch.Count < 2 || newest.C < a.leastC()-sameC || !newest.At.After(last.At.Add(lookFor)) || newest.At.Before(a.off.at.Add(-offReading)) || v.mealPast(a) {
		return false
	}
	min := v.day.Core(a.leastC())
	add(about(a, schedule.OffUnread, fmt.Sprintf("%s: was %s at %s the lowest of them? At %s the coldest was at %s. Then log it (coldest). Not sure: measure the coldest one before anybody eats, %s or more. Under that, back on the heat.",
		a.batch.It.Dish.Name, v.day.Core(newest.C), v.clock(newest.At), v.clock(last.At), v.day.Core(last.C), min)))
	return true
}

// coldestBefore is what a probe pushed through a piece found last before another reading.
func (a *liveBatch) coldestBefore(last schedule.Entry) (schedule.Entry, bool) {
	for _, e := range slices.Backward(a.cores) {
		if e.Kind == schedule.LogColdest && e.At.Before(last.At) {
			return e, e.C < a.leastC()
		}
	}
	return last, false
}

// noteUnread asks for a reading of a piece that was last read some time before it came off.
func (v *Revision) noteUnread(a *liveBatch, last schedule.Entry, add func(schedule.Finding)) {
	name, min := a.batch.It.Dish.Name, v.day.Core(a.leastC())
	switch {
	case a.served.set && v.now.Sub(a.served.at) <= undoneFor:
		add(about(a, schedule.OffUnread, fmt.Sprintf("%s: stop eating, and measure what is left, in its thickest place. It was last read at %s at %s and then served, and it needs %s everywhere. Under that: %s", name, v.day.Core(last.C), v.clock(last.At), min, say.Lower(v.orAway(a, v.day.Grate(undoneOvenC), min)))))
	case !a.served.set && !v.mealPast(a):
		add(about(a, schedule.OffUnread, fmt.Sprintf("%s: last read at %s at %s, before the take-off. Measure before you cut: not under %s anywhere. Under that, back on the heat.",
			name, v.day.Core(last.C), v.clock(last.At), min)))
	}
}

// noteNeverRead asks for a reading of a piece that is off and that nobody read, where only a
// reading tells that it is done.
func (v *Revision) noteNeverRead(a *liveBatch, add func(schedule.Finding)) {
	name, min, oven := a.batch.It.Dish.Name, v.day.Core(a.leastC()), v.day.Grate(undoneOvenC)
	under := fmt.Sprintf("Under that, back on the hot grate, or into an oven at %s.", oven)
	if v.now.Sub(a.off.at) > undoneFor {
		under = "Under that, throw it away."
	}
	switch {
	case a.served.set && v.now.Sub(a.served.at) > undoneFor:
	case !a.served.set && v.mealPast(a):
		if !a.off.logged { // what is off is asked after where it waits
			add(about(a, schedule.Leftovers, fmt.Sprintf("%s: was it eaten? Then log it (off and served, with their times). Nobody read it. What is left is thrown away.", name)))
		}
	case a.served.set && a.batch.It.Cut.Style == cut.Small:
		add(about(a, schedule.OffUnread, fmt.Sprintf("%s: were they measured, %s or more everywhere? Then log it (coldest, with its time). If not: stop eating, and measure what is left, in its thickest place. Under that: %s", name, min, say.Lower(v.orAway(a, oven, min)))))
	case a.served.set:
		add(about(a, schedule.OffUnread, fmt.Sprintf("%s: stop eating, and measure what is left, in its thickest place. Nobody read it, and it needs %s everywhere. Under that: %s", name, min, say.Lower(v.orAway(a, oven, min)))))
	case a.off.logged || !v.now.Before(v.serve(a)):
		add(about(a, schedule.OffUnread, fmt.Sprintf("%s: nobody read it. Measure the coldest place before anybody eats: %s or more everywhere. %s", name, min, under)))
	default:
		add(about(a, schedule.OffUnread, fmt.Sprintf("Is %s off? Nothing was logged, and it was due by %s: it is not known to be done. Measure its coldest place before anybody eats, %s or more everywhere, and log that before %s. %s",
			name, v.clock(a.off.at), min, v.clock(v.serve(a)), under)))
	}
}

// orAway is what becomes of a piece that was served below its minimum: it is made hot at
// once, or thrown away, and never chilled.
func (v *Revision) orAway(a *liveBatch, oven, min string) string {
	if a.hotly.set {
		return fmt.Sprintf("What is left stays in the oven, at %s, until the coldest place of each piece reads %s (coldest), by %s, or throw it away. None of it goes into the refrigerator before that.", oven, min, v.clock(a.off.at.Add(undoneFor)))
	}
	return fmt.Sprintf("All of it into an oven at %s in a rimmed pan now, until it reads %s everywhere, by %s, or throw it away. None of it goes into the refrigerator before that.", oven, min, v.clock(a.off.at.Add(undoneFor)))
}

// mealPast says whether the meal of a piece is past.
func (v *Revision) mealPast(a *liveBatch) bool { return v.now.After(v.serve(a).Add(undoneFor)) }

// keepForUndone leaves the fire to what has to go back on it.
func (v *Revision) keepForUndone(p *schedule.Plan, found []schedule.Finding) {
	lies := slices.ContainsFunc(v.batches, func(a *liveBatch) bool { _, ok := a.lies(v.now); return ok })
	if !lies && !slices.ContainsFunc(found, func(f schedule.Finding) bool { return f.Code == schedule.OffUndone || f.Code == schedule.OffUnread }) {
		return
	}
	for i, s := range p.Steps {
		if s.Kind == schedule.StepCloseDown && !s.Done && !strings.HasPrefix(s.Text, onlyOnceBare) && !strings.HasPrefix(s.Text, onlyOnceDone) {
			p.Steps[i].Text = onlyOnceDone + say.Lower(s.Text)
		}
	}
}
