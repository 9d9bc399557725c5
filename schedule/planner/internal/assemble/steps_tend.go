package assemble

import (
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/internal/say"
)

// tend are the refuels and the looks at the fire within a phase.
func (it *Itinerary) tend(ph *schedule.Phase) {
	if ph.Burn == nil {
		return
	}
	for number, r := range ph.Burn.Refuels {
		it.refuel(ph, number, r)
	}
	every := time.Duration(checkLow)
	if ph.Band != schedule.BandLow {
		every = checkHot
	}
	over := it.over(ph.Number)
	it.coldStart(ph, over)
	text := "Check the grate: " + it.D.Grate(ph.LevelC) + ". Within " + it.D.Slack() + " leave the vents alone."
	for at := ph.From.Add(every); at.Before(ph.To.Add(-every / 3)); at = at.Add(every) {
		if it.D.InQuiet(at) || it.goesToSleep(at) || over.none(at) {
			continue
		}
		it.add(schedule.Step{Kind: schedule.StepCheckFire, At: at, Phase: ph.Number, Attended: true, Minutes: 1, GrateC: ph.LevelC,
			Text: over.ifStillOn(text, at), Why: "fires drift; leave the lid shut, air makes them hotter"})
		text = "Check the grate again: " + it.D.Grate(ph.LevelC) + ". More than " + it.D.Slack() + " off? One small move of the " + it.D.FineVent() + ", and wait 15 min."
	}
}

// refuel is what is added to a fire, and before it, where it must be lit, the chimney.
func (it *Itinerary) refuel(ph *schedule.Phase, number int, r schedule.Refuel) {
	at, over := r.Window.Expected, it.over(ph.Number)
	if ph.Number < len(it.Plan.Phases) && !it.Plan.Phases[ph.Number].Relit {
		over = nil // the next fire is made of it
	}
	amount := countText(it.D.Req.Units, r.Count, r.MassKg)
	text, how := "Add "+lump(amount, "unlit")+" next to the lit ones", ""
	if ph.Layout == string(fire.Ring) {
		text = "Add " + lump(amount, "unlit") + " to the tail of the ring, away from the lit end"
	}
	if r.Lit {
		text, how = "Add "+lump(amount, "lit")+" to the coals", " "+AddLit
		if !it.lightFor(ph, number, r, over) {
			text += ": start the chimney 20 min before"
		}
	}
	it.add(schedule.Step{Kind: schedule.StepRefuel, At: at, Window: r.Window, Phase: ph.Number, Attended: true, Minutes: 5,
		Text: over.ifStillOn(text+". "+safety.OpenStarved+how+ventsBack, at), Why: "what lies there runs down about then"})
}

// ventsBack undoes what opening a starved fire asks for.
const ventsBack = " Then lid on, and the top vent back to where it was."

// lump puts a word before what an amount is of: "45 unlit briquettes", "1.2 kg of unlit lump".
func lump(amount, state string) string {
	i := strings.LastIndex(amount, " ")
	return amount[:i+1] + state + amount[i:]
}

// lasting is until when food of a batch is expected over a fire, and until when as planned.
type lasting struct {
	name              string
	expected, planned time.Time
}

// overFire is all food over a fire; nil says that it is wanted whatever is on it.
type overFire []lasting

// over is what lies over the fire of phase n.
func (it *Itinerary) over(n int) overFire {
	out := overFire{}
	for _, p := range it.All {
		for k := range p.Stages() {
			ph := p.Phases[k]
			if ph.First < 0 || n-1 < ph.First || n-1 > ph.Last {
				continue
			}
			l := lasting{name: p.It.Dish.Name, expected: it.D.window(p, p.TakeOff).Expected, planned: it.D.At(p.Off)}
			switch {
			case p.Carried: // indoors
				l.expected, l.planned = it.D.At(p.Left), it.D.At(p.Left)
			case k > 0 || p.Stages() == 1:
			case p.Way.Sear:
				l.expected = it.D.At(p.On - p.Way.First.Planned)
				l.planned = l.expected
			default:
				l.expected = instant.Earlier(l.expected, it.D.AfterQuiet(it.D.window(p, p.Way.First.At)).Expected)
				l.planned = it.D.At(p.Wrap)
			}
			out = append(out, l)
		}
	}
	return out
}

// none says whether nothing can be over the fire any more.
func (o overFire) none(at time.Time) bool {
	for _, l := range o {
		if !at.After(instant.Later(l.expected, l.planned)) {
			return false
		}
	}
	return true
}

// expectedOff says whether all is expected off the fire by then.
func (o overFire) expectedOff(at time.Time) bool {
	return !slices.ContainsFunc(o, func(l lasting) bool { return !at.After(l.expected) })
}

// ifStillOn is the text of a step for a fire; by then food may be off.
func (o overFire) ifStillOn(text string, at time.Time) string {
	if o == nil || !o.expectedOff(at) {
		return text
	}
	var names []string
	for _, l := range o {
		if !at.After(l.planned) && !slices.Contains(names, l.name) {
			names = append(names, l.name)
		}
	}
	who := "food"
	if len(names) == 1 || len(names) == 2 {
		who = say.Listed(names, "or")
	}
	return say.Upper(who) + " still on? Then " + say.Lower(text)
}

// Fires are looked at every 50 minutes in the hot band (common practice 45-60,
// no source), every two hours in the low one (assumption).
const (
	checkHot = 50 * time.Minute
	checkLow = 2 * time.Hour
)
