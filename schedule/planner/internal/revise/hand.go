package revise

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/steer"
	"example.com/cookday/schedule/planner/internal/assemble"
	"example.com/cookday/schedule/unit"
)

// hand is the fire in hand: what is believed of it, what to do about it, and what the grate does if nobody does.
type hand struct {
	advice steer.Advice
	unsure bool      // nobody told how the vents stand
	night  night     // the sleep that it is to burn through
	lit    int       // coals that it wants lit, where it sinks or a feed of it is due
	course []airFrom // nil where too little was read to foretell more than that it stays so
}

// airFrom is the air beside the meat from some minutes ahead on.
type airFrom struct{ minutes, c float64 }

// Levels between which vents are advised on, with the lid on.
var coolestSteered, hottestSteered = unit.FToC(180), unit.FToC(450)

// handMinutes are the ends of the stretches of a course. After the last it is back at its level.
var handMinutes = []float64{15, 35, 60}

// readsForCourse is how many looks at the grate a course wants.
const readsForCourse = 2

// newHand follows the fire that burns; nil where nothing can be said of it: none burns, no charcoal, another heat than
// vents hold, or nothing was read.
func (v *Revision) newHand() *hand {
	k := v.phases - 1
	if k < 0 || k >= len(v.first.Phases) || !v.day.Grill.BurnsCharcoal() || v.grate.noneRead(v.now) {
		return nil
	}
	if _, dead := v.grate.dead(); dead || v.first.Phases[k].LidOff {
		return nil
	}
	want := steer.Want{LevelC: v.grate.levelAt(v.now, v.plannedLevel), NoFood: !v.foodOn(), SteerBottom: v.day.Grill.SteersBottom()}
	if want.LevelC < coolestSteered || want.LevelC > hottestSteered {
		return nil
	}
	begin, log := v.fireBegan(k)
	if at, ok := v.metAgain(log); ok {
		begin, log = met(begin, log, at)
	}
	f := steer.Follow(begin, looks(log.Events, v.now.Sub(log.From).Minutes()), math.Max(v.now.Sub(log.From).Minutes(), begin.PourMinute))
	h := &hand{advice: f.Advise(want), unsure: !log.VentsTold}
	if off := h.advice.Now.Middle - want.LevelC; off < -offLevelK/2 || v.grate.sinks() {
		h.lit = f.LitFor(want)
	}
	if log.VentsTold && f.Looks() >= readsForCourse && h.advice.Trust == steer.Trusted {
		h.course, h.night = courseOf(f, want.LevelC), v.nightOf(f)
	}
	return h
}

// metAgain says since when a fire is looked at again that nobody had looked at, or fed as far as is told, for hours: what
// was done to it in between nobody knows.
func (v *Revision) metAgain(log FireLog) (minute float64, ok bool) {
	last := math.Inf(-1)
	for _, e := range log.Events {
		if e.Kind == steer.Meat {
			continue
		}
		if last > math.Inf(-1) && e.Minute-last > bridgesGap.Minutes() {
			minute, ok = e.Minute, true
		}
		last = e.Minute
	}
	return minute, ok
}

// met is a fire as it is found in mid cook, under vents as they were told last.
func met(b steer.Begin, log FireLog, from float64) (steer.Begin, FireLog) {
	b.MidCook, b.PourMinute, b.Lit, b.Unlit, b.LitUnsure = true, 0, 0, lateUnlit, 0
	log.Events = slices.DeleteFunc(slices.Clone(log.Events), func(e steer.Event) bool {
		if e.Kind == steer.VentsSet && e.Minute < from {
			b.Top, b.Bottom = told(e.Top, b.Top), told(e.Bottom, b.Bottom)
		}
		return e.Minute < from
	})
	return b, log
}

// told is an opening, or the one before where it was not told.
func told(now, before float64) float64 {
	if now < 0 {
		return before
	}
	return now
}

// noneRead says whether no thermometer of the grill was read lately.
func (h *grateHistory) noneRead(now time.Time) bool {
	_, read := h.lastRead(now, holdsReading)
	return !read
}

// courseOf is the grate under the vents as they stand, each stretch by its middle, and then at its level: nobody leaves a
// fire that is off for longer than that, and the plan has looks at it and coals for it.
func courseOf(f *steer.Fire, levelC float64) []airFrom {
	var middles []float64
	from := 0.0
	for _, to := range handMinutes {
		middles = append(middles, (from+to)/2)
		from = to
	}
	var out []airFrom
	from = 0
	for i, r := range f.Ahead(f.Vents(), middles...) {
		out = append(out, airFrom{from, r.Middle})
		from = handMinutes[i]
	}
	return append(out, airFrom{from, levelC})
}

// foodOn says whether something lies on the grate.
func (v *Revision) foodOn() bool {
	return slices.ContainsFunc(v.batches, func(a *liveBatch) bool { return a.where == cooking && !v.isIndoors(a) && !a.isAside(v.now) })
}

// fireBegan is how the fire of phase k began, and what the log says of it since.
func (v *Revision) fireBegan(k int) (steer.Begin, FireLog) {
	ph, f := v.first.Phases[k], v.hearth.Fires[v.fireNow()]
	from := ph.SetupFrom.Add(v.lateOf(k))
	for _, at := range v.told(schedule.LogLit) {
		if (k == 0 || ph.Relit) && v.lights(at) == k {
			from = at
		}
	}
	entries := slices.DeleteFunc(slices.Clone(v.log), func(e schedule.Entry) bool { return e.At.Before(from) })
	log := ReadFire(entries, from)
	w := v.weatherFrom(from)
	b := steer.Begin{Seed: steer.Seed(v.first.ID), Grill: v.day.Grill, Layout: f.Layout, Weather: w, Own: assemble.RecordOf(v.day.Req.Grill.Own), PourMinute: float64(v.day.Grill.PourMinutes(f))}
	b.Lit, b.Unlit = v.laid(ph)
	b.LitUnsure = litAsPlanned
	if log.Poured >= 0 {
		b.PourMinute, b.Lit, b.LitUnsure = log.Poured, log.PouredLit, 0
	}
	if log.LaidUnlit > 0 {
		b.Unlit = log.LaidUnlit
	}
	b.Top, b.Bottom, b.VentsUnsure = log.StartVents.Top, log.StartVents.Bottom, !log.VentsTold
	if b.Top < 0 {
		b.Top = ph.TopOpen
	}
	if b.Bottom < 0 {
		b.Bottom = ph.LowOpen
	}
	if b.MidCook = k > 0 && !ph.Relit || b.Lit == 0; b.MidCook { // made of the fire before it, or nobody knows of what
		b.PourMinute = 0
	}
	log.Events = append(log.Events, v.coldMeat(from)...)
	return b, log
}

// litAsPlanned is how far the coals of a plan are from those that were lit (spread of the logarithm; assumption).
const litAsPlanned = 0.2

// laid are the coals of a phase: lit ones, and unlit ones beside them.
func (v *Revision) laid(ph schedule.Phase) (lit, unlit float64) {
	if ph.Burn == nil {
		return 0, lateUnlit
	}
	lit = v.day.Grill.Pieces(fire.Amount{MassKg: ph.Burn.LightKg})
	return lit, math.Max(v.day.Grill.Pieces(fire.Amount{MassKg: ph.Burn.LayKg})-lit, 0)
}

// lateUnlit are coals of a fire of which nobody knows how it was laid (assumption).
const lateUnlit = 60

// weatherFrom is the weather by the minute since an instant.
func (v *Revision) weatherFrom(from time.Time) func(float64) fire.Weather {
	const beyond = 3 * time.Hour
	hours := v.day.WeatherBetween(from, v.now.Add(beyond))
	rain := v.told(schedule.LogRain)
	return func(minute float64) fire.Weather {
		w := weatherAt(hours, v.day.Air, minute)
		w.Rain = w.Rain || len(rain) > 0 && v.rainedAt(from.Add(instant.Minutes(minute)))
		return w
	}
}

// weatherAt is the weather of a minute from the first hour on.
func weatherAt(hours []fire.Slice, beyond fire.Weather, minute float64) fire.Weather {
	for _, s := range hours {
		if minute -= s.Minutes; minute < 0 {
			return s.Weather
		}
	}
	if n := len(hours); n > 0 {
		return hours[n-1].Weather
	}
	return beyond
}

// rainLasts is for how long rain that was logged is counted with ahead (assumption: a shower).
const rainLasts = time.Hour

// rainedAt says whether it rains at an instant, by what was logged up to then.
func (v *Revision) rainedAt(at time.Time) bool {
	rains := false
	for _, e := range v.log {
		if e.Kind == schedule.LogRain && !e.At.After(at) {
			rains = e.Value != schedule.RainOver
		}
	}
	return rains && !at.After(v.now.Add(rainLasts))
}

// takenAsOn is how long after its hour food that nobody noted is taken to be on, where its cold is a reason (judgment).
const takenAsOn = 30 * time.Minute

// coldMeat is what was put on since the fire began.
func (v *Revision) coldMeat(from time.Time) []steer.Event {
	var out []steer.Event
	for _, a := range v.batches {
		if a.on.set && (a.on.logged || v.now.Sub(a.on.at) > takenAsOn) && !a.on.at.After(v.now) && a.on.at.After(from) {
			out = append(out, steer.Event{Minute: a.on.at.Sub(from).Minutes(), Kind: steer.Meat, Kg: a.batch.MassKg * math.Max(float64(a.batch.Count), 1)})
		}
	}
	return out
}

// comingAir is the air beside the meat from now on if nobody touches the fire; nil where it is taken to stay so.
func (v *Revision) comingAir() []airFrom {
	if _, same := v.grate.lately(v.now); !same || v.grate.sinks() { // what sinks is fed
		return nil
	}
	if v.steered != nil && v.steered.course != nil {
		return v.steered.course
	}
	return v.grate.recovers(v.now, v.plannedLevel)
}

// steerText is the advice in words.
func (v *Revision) steerText() schedule.Steer {
	s := SteerOf(v.steered.advice, v.day.Req.Units)
	if v.offBeforeItTells() {
		s.Do, s.To, s.Remedies, s.Count = steer.Leave.String(), s.From, nil, 0
		s.Text, s.Expect, s.Look, s.Why = "Leave the fire as it is.", "", "", "Why: the food is off before a change would tell."
		s.Also = slices.DeleteFunc(slices.Clone(s.Also), func(text string) bool { return !strings.HasPrefix(text, "To sear") })
		return s
	}
	if v.noFuel() || v.burnsOnlyUntil(v.now.Add(coalsTake)) { // what is off before they burn has no use of more
		s.Remedies = nil
		s.Also = slices.DeleteFunc(slices.Clone(s.Also), func(text string) bool { return strings.Contains(text, "coals would") })
	}
	if own := v.day.Req.Grill.Own; own != nil {
		s.GrillCooks = own.Cooks
	}
	if v.steered.unsure && s.From != nil {
		s.Taken = []string{fmt.Sprintf("vents as the plan set them, top %s and bottom %s", fire.MarkWords(s.From.Top), fire.MarkWords(s.From.Bottom))}
	}
	return s
}

// coalsTake is how long coals take to give what an advice promises of them.
const coalsTake = 45 * time.Minute

// ventsTake is how long a vent takes to tell: 15 min until it settles, and a few for the food to feel it (judgment).
const ventsTake = 20 * time.Minute

// offBeforeItTells says whether the last of what lies on the fire is expected off before the advice shows in its heat.
func (v *Revision) offBeforeItTells() bool {
	switch a := v.steered.advice; a.Do {
	case steer.AddLit, steer.AddUnlit, steer.ClearAsh:
		return v.burnsOnlyUntil(v.now.Add(coalsTake))
	case steer.Move:
		return v.burnsOnlyUntil(v.now.Add(ventsTake))
	}
	return false
}

// burnsOnlyUntil says whether the fire in hand is expected to have nothing on it after an instant.
func (v *Revision) burnsOnlyUntil(at time.Time) bool {
	on := false
	for _, a := range v.batches {
		if a.where == waiting || a.where == cooking && !v.inOven(a) && !a.condemned && (a.live.Total().Expected == 0 || a.on.at.Add(instant.Minutes(a.live.Total().Expected)).After(at)) {
			return false
		}
		on = on || a.where == cooking
	}
	return on
}

// setsVents says whether the plan takes the advice up as a step: in quiet hours, and right before a sleep, no vent is moved.
func (v *Revision) setsVents() bool {
	return v.steered != nil && v.steered.advice.Do == steer.Move && !v.offBeforeItTells() && v.fireWanted() && !v.day.InQuiet(v.now) && !v.settles(v.now) && !v.stormOpens() && v.phases >= 1
}

// steps of the advice that the plan takes up: the vents now, and the look after them. In quiet hours nothing wants a
// person.
func (v *Revision) steerSteps(p *schedule.Plan) []schedule.Step {
	if v.phases < 1 || v.phases > len(p.Phases) {
		return nil
	}
	if s, ok := v.shutStep(p); ok {
		return []schedule.Step{s}
	}
	if !v.setsVents() {
		return append(v.dipStep(p), v.creepStep(p)...)
	}
	s := v.steerText()
	level := v.grate.levelAt(v.now, v.plannedLevel)
	text, why := s.Text, "the grate is off its level, or on its way there"
	if v.steered.advice.Why == steer.VentsShut {
		text, why = text+" Wait two minutes before you lift the lid, and stand aside.", "both vents are shut, and the coals get no air"
	}
	out := []schedule.Step{v.steerStep(p, schedule.StepSetVents, v.now, 2, level, text, why)}
	look := v.now.Add(instant.Minutes(float64(s.LookMinutes)))
	if !v.day.InQuiet(look) && !v.settles(look) && look.Before(p.Phases[v.phases-1].To) && v.cooksAt(p, look) {
		out = append(out, v.steerStep(p, schedule.StepCheckFire, look, 1, level, "Read the grate: it should be "+v.day.Grate(level)+" or on its way. Log what it shows.", "by then the vents have done what they do"))
	}
	return out
}

// nearLook is how near to a look after a move another of the plan is one too many (judgment).
const nearLook = 25 * time.Minute

// oneLook leaves out looks at the grate that the plan has shortly before or after the one that a move wants.
func (v *Revision) oneLook(steps []schedule.Step) []schedule.Step {
	own := slices.IndexFunc(steps, func(s schedule.Step) bool {
		return s.Kind == schedule.StepCheckFire && !s.Done && s.ID == plans.StepID(v.first.ID, "", s.Phase, s.Kind, steeredStep)
	})
	if own < 0 {
		return steps
	}
	look := steps[own]
	return slices.DeleteFunc(steps, func(s schedule.Step) bool {
		return s.Kind == look.Kind && !s.Done && s.ID != look.ID && s.At.Sub(look.At).Abs() <= nearLook
	})
}

// creepIn is when a grate that creeps is looked at again (judgment).
const creepIn = 20 * time.Minute

// creepStep looks again at a grate that was read higher and higher, or lower and lower, and will be out of its band within
// the hour if it goes on so. It is not moved at yet.
func (v *Revision) creepStep(p *schedule.Plan) []schedule.Step {
	look, level := v.now.Add(creepIn), v.grate.levelAt(v.now, v.plannedLevel)
	first, last, ok := v.grate.creeps(v.now, level)
	if !ok || v.steered == nil || v.steered.advice.InDip || v.steered.advice.Do != steer.Leave || !v.fireWanted() || v.stormOpens() || v.day.InQuiet(look) || v.settles(look) || !look.Before(p.Phases[v.phases-1].To) || !v.cooksAt(p, look) {
		return nil
	}
	way := "climbed"
	if last.c < first.c {
		way = "sunk"
	}
	return []schedule.Step{v.steerStep(p, schedule.StepCheckFire, look, 1, level,
		fmt.Sprintf("Read the grate and log it: it has %s from %s to %s since %s. Level is %s.", way, v.day.Grate(first.c), v.day.Grate(last.c), v.clock(first.at), v.day.Grate(level)), "a grate that creeps is looked at before it is far off")}
}

// dipStep looks again at a grate that cold food holds down.
func (v *Revision) dipStep(p *schedule.Plan) []schedule.Step {
	if v.steered == nil || !v.steered.advice.InDip || !v.fireWanted() {
		return nil
	}
	look, level := v.now.Add(instant.Minutes(float64(v.steered.advice.LookMinutes))), v.grate.levelAt(v.now, v.plannedLevel)
	if v.day.InQuiet(look) || v.settles(look) || !look.Before(p.Phases[v.phases-1].To) || !v.cooksAt(p, look) {
		return nil
	}
	return []schedule.Step{v.steerStep(p, schedule.StepCheckFire, look, 1, level,
		"Read the grate and log it: it should be on its way back to "+v.day.Grate(level)+".", "cold food holds the grate down for up to two hours, and gives it back by itself")}
}

// steeredStep numbers the steps of advice apart from those of the plan, which count from 1.
const steeredStep = 0

func (v *Revision) steerStep(p *schedule.Plan, kind schedule.StepKind, at time.Time, minutes, grateC float64, text, why string) schedule.Step {
	return schedule.Step{ID: plans.StepID(p.ID, "", v.phases, kind, steeredStep), Kind: kind, At: at, Window: plans.FixedWindow(at), Phase: v.phases, Attended: true, Minutes: minutes, GrateC: grateC, Text: text, Why: why}
}
