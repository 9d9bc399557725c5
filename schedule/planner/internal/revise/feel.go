package revise

import (
	"fmt"
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/unit"
)

// From here on a piece that tenderness decides of may be done, whatever the clock says: a rack
// in the range in which it usually bends, a joint within five degrees of its target, which is
// what a probe and its place are off by (common practice, no source).
const (
	feltWithinK = 5 / 1.8
	feltHalf    = 0.5 // how likely a joint is done as it comes to its target, a rack at the end of its range (assumption)
	feltAgain   = 20 * time.Minute
	slicedSoon  = 90 * time.Minute // before its meal it is told that it may be sliced
	feelOrdinal = 90               // of the step among the looks at a piece, which are counted from one
)

var (
	bendsFromC = unit.FToC(195) // as schedule.BendText has it
	bendsByC   = unit.FToC(203)
	tenderC    = unit.FToC(190) // no target of tenderness lies below
)

// feltFromC is the core from which a piece is felt, degC; infinite where the thermometer decides.
func (a *liveBatch) feltFromC() float64 {
	switch it := a.batch.It; {
	case it.ByTheBend():
		return bendsFromC
	case it.Cut.Style == cut.Tough && a.way().PullC >= tenderC:
		return a.way().PullC - feltWithinK
	}
	return math.Inf(1)
}

// mayBeDone says whether a piece on the fire was read lately where tenderness decides, or should
// be there by now, and was not read at its target yet.
func (v *Revision) mayBeDone(a *liveBatch) bool {
	return a != nil && a.where == cooking && !a.colder && !a.suspect && !a.condemned && v.nearlyRead(a) &&
		(a.readAt() >= a.feltFromC() || a.batch.It.ByTheBend() && v.now.Sub(a.readWhen()) >= feltAgain && a.believed.CoreC(a.journey.Now, 0.5) >= bendsFromC)
}

// nearlyRead says whether a piece was read lately, and not at its target.
func (v *Revision) nearlyRead(a *liveBatch) bool {
	return a.believed != nil && len(a.believed.Nodes) > 0 && !a.atTarget() && !a.way().Sear && v.now.Sub(a.readWhen()) <= stillThere
}

// tenderChance is how likely a piece on the fire is done as it was read lately, where tenderness
// decides of it: half at the end of the range, and of all of its pieces.
func (v *Revision) tenderChance(a *liveBatch) float64 {
	if !v.nearlyRead(a) || a.dire != nil || a.colder || a.readAt() < a.feltFromC() {
		return 0
	}
	from, half, sure, core := a.feltFromC(), a.way().PullC, a.way().PullC, a.readAt()
	if a.batch.It.ByTheBend() {
		half = math.Min(bendsByC, sure)
	}
	chance := feltHalf * (core - from) / math.Max(half-from, sameC)
	if core > half {
		chance = feltHalf + (1-feltHalf)*(core-half)/math.Max(sure-half, sameC)
	}
	return math.Pow(math.Min(chance, 1), math.Max(float64(a.batch.Count), 1))
}

// apartK is from where on two readings of about the same time are of two pieces (as of two places).
const apartK = 6 / 1.8

// oneIsDone says of several pieces on the fire, read about the same time, that one may come off
// and another goes on: what they were read at.
func (v *Revision) oneIsDone(a *liveBatch) (hot, cold schedule.Entry, ok bool) {
	if a.where != cooking || a.batch.Count < 2 || a.batch.Count > eachMeasured || a.colder && !a.inner() || a.suspect || a.condemned || a.way().Sear || len(a.cores) < 2 {
		return hot, cold, false
	}
	last := a.cores[len(a.cores)-1].At
	if v.now.Sub(last) > stillThere {
		return hot, cold, false
	}
	named := slices.ContainsFunc(a.cores, func(e schedule.Entry) bool { return last.Sub(e.At) <= offReading && e.OfPiece() })
	for _, e := range a.cores {
		if last.Sub(e.At) > offReading || (a.inner() || e.Value != "" && !e.OfPiece()) && !named { // it may be two places of one
			continue
		}
		if hot.At.IsZero() || e.C > hot.C {
			hot = e
		}
		if cold.At.IsZero() || e.C < cold.C {
			cold = e
		}
	}
	done := math.Min(a.way().PullC, a.feltFromC()) - sameC
	return hot, cold, !hot.At.IsZero() && hot.C >= done && cold.C < hot.C-apartK && cold.C < done
}

// feelSteps ask for the bend, or for the feel of the probe, of what may be done now, and take off
// the one of several pieces that is ahead of the others.
func (v *Revision) feelSteps(p *schedule.Plan, l remainder) (out []schedule.Step) {
	for _, a := range l.bound {
		text := ""
		if hot, cold, ok := v.oneIsDone(a); ok {
			text = v.oneDoneText(a, hot, cold)
		} else if v.mayBeDone(a) {
			text = v.feelText(a)
		} else if v.wantsReading(a) {
			text = v.unreadText(a)
		}
		if text == "" {
			continue
		}
		it := a.batch.It
		out = append(out, schedule.Step{
			ID: plans.StepID(p.ID, it.Dish.ID, a.batch.Number, schedule.StepLook, feelOrdinal), At: v.now, Window: plans.FixedWindow(v.now), Kind: schedule.StepLook,
			Dish: it.Dish.ID, Batch: a.batch.Number, Attended: true, Minutes: measureMinutes, Text: text, Why: "tenderness decides, not the number",
		})
	}
	return out
}

func (v *Revision) oneDoneText(a *liveBatch, hot, cold schedule.Entry) string {
	others := "The other goes"
	if a.batch.Count > 2 {
		others = fmt.Sprintf("The other %d go", a.batch.Count-1)
	}
	take := "take off the one that reads"
	if hot.C < a.way().PullC-sameC {
		does, done := a.feels()
		take = fmt.Sprintf("%s, the one that reads %s. If %s, take it off", does, v.day.Core(hot.C), done)
		return fmt.Sprintf("%s: %s, keep it hot, and log it (one off). %s on, from %s.", a.batch.It.Dish.Name, take, others, v.day.Core(cold.C))
	}
	return fmt.Sprintf("%s: %s %s, keep it hot, and log it (one off). %s on, from %s.", a.batch.It.Dish.Name, take, v.day.Core(hot.C), others, v.day.Core(cold.C))
}

// feels is what is done to feel whether a piece is done, and how one is that is.
func (a *liveBatch) feels() (does, done string) {
	if a.batch.It.ByTheBend() {
		return "bend it now", "the rack bends and its surface cracks"
	}
	return "feel it now with the probe", "it slides in and out with no pull"
}

func (v *Revision) feelText(a *liveBatch) string {
	does, done := a.feels()
	read := fmt.Sprintf("it is at %s", v.day.Core(a.readAt()))
	if a.readAt() < a.feltFromC() {
		read = fmt.Sprintf("it was at %s at %s, and may be there", v.day.Core(a.readAt()), v.clock(a.readWhen()))
	}
	text := fmt.Sprintf("%s: %s, %s. If %s, it is done: take it off. If not", a.batch.It.Dish.Name, read, does, done)
	if at := a.readWhen().Add(feltAgain); at.After(v.now) {
		text += fmt.Sprintf(", look again at %s.", v.clock(at))
	} else {
		text += fmt.Sprintf(", look again in %s.", v.span(feltAgain.Minutes()))
	}
	if a.batch.Count > 1 {
		text += " Each piece by itself."
	}
	return text
}

// wantsReading says of a piece that is on and that nobody has read that it may be done by its own
// earliest time.
func (v *Revision) wantsReading(a *liveBatch) bool {
	unread := a.on.logged && a.first != nil && len(a.cores) == 0 && a.followed() && a.batch.It.TargetC > 0
	return a.where == cooking && (unread || v.onlyByReading(a)) && !a.suspect && !a.condemned && !a.way().Sear && !v.day.InQuiet(v.now) && !v.now.Before(a.on.at.Add(instant.Minutes(a.first.Took().Early)))
}

// onlyByReading says of a tough piece that was told to be on, and was never read, that it is not
// taken to be off because its time is over, up to its meal.
func (v *Revision) onlyByReading(a *liveBatch) bool {
	return a.batch.It.Cut.Style == cut.Tough && a.on.logged && a.first != nil && len(a.cores) == 0 && v.now.Before(v.askedServe(a).Add(overFor))
}

// slicedFromC is the core from which what was to be pulled is sliced instead, where it has to be
// eaten (common practice, no source).
var slicedFromC = unit.FToC(180)

func (v *Revision) unreadText(a *liveBatch) string {
	text := fmt.Sprintf("%s: measure it now, nobody has read it since it went on at %s.", a.batch.It.Dish.Name, v.clock(a.on.at))
	if a.batch.It.ByTheBend() {
		return text + " " + schedule.BendText(v.day.Req.Units) + ": off."
	}
	text += fmt.Sprintf(" Off at %s.", v.day.Core(a.way().PullC))
	if v.askedServe(a).Sub(v.now) < slicedSoon && a.way().PullC > slicedFromC {
		text += fmt.Sprintf(" Or slice it from %s on, and eat.", v.day.Core(slicedFromC))
	}
	return text
}
