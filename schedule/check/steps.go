package check

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/plans"
	"github.com/google/uuid"
)

// attendedKinds says of every kind of step whether it needs a person.
var attendedKinds = map[schedule.StepKind]bool{
	schedule.StepThaw: true, schedule.StepSalt: true, schedule.StepTakeOut: true, schedule.StepLayFire: true, schedule.StepLight: true, schedule.StepFireReady: false, schedule.StepSetVents: true, schedule.StepPutOn: true,
	schedule.StepStallBegins: false, schedule.StepWrap: true, schedule.StepStallEnds: false, schedule.StepLook: true, schedule.StepCheckFire: true, schedule.StepRefuel: true, schedule.StepChangeFire: true,
	schedule.StepProbesOut: true, schedule.StepFlip: true, schedule.StepTakeOff: true, schedule.StepRest: false, schedule.StepBox: true, schedule.StepToOven: true, schedule.StepIndoors: true, schedule.StepCheckOven: true, schedule.StepHold: true, schedule.StepSear: true,
	schedule.StepBeforeSleep: true, schedule.StepWaking: true, schedule.StepSlice: true, schedule.StepChill: true, schedule.StepServe: true, schedule.StepCloseDown: true,
}

// steps: sorted by instant, each of a known kind, with an id of its own, words to
// follow, and a dish, batch or phase that exists.
func (c *checker) steps() {
	ids := map[string]int{}
	for i, s := range c.plan.Steps {
		path := fmt.Sprintf("steps[%d]", i)
		if i > 0 && s.At.Before(c.plan.Steps[i-1].At) {
			c.fault(path+".at", "%s is before the step before it, %s", told(s.At), told(c.plan.Steps[i-1].At))
		}
		if !s.At.Equal(s.Window.Expected) {
			c.fault(path+".at", "%s is not the expected instant of its window, %s", told(s.At), told(s.Window.Expected))
		}
		if j, twice := ids[s.ID]; twice {
			c.fault(path+".id", "%q is also the id of steps[%d]", s.ID, j)
		}
		ids[s.ID] = i
		if _, err := uuid.Parse(s.ID); err != nil {
			c.fault(path+".id", "%q is no UUID", s.ID)
		} else if c.plan.Revision > 0 && !c.stable(s) {
			c.fault(path+".id", "%q does not follow from the plan, the dish and the kind, %s", s.ID, s.Kind)
		}
		if needs, known := attendedKinds[s.Kind]; !known {
			c.fault(path+".kind", "%q is not known", s.Kind)
		} else if needs && !s.Attended {
			c.fault(path+".attended", "is false; %s needs a person", s.Kind)
		}
		c.readable(path+".text", s.Text)
		c.readable(path+".why", s.Why)
		if s.Done && c.plan.Revision == 0 {
			c.fault(path+".done", "is true in a first plan, which has no past")
		}
		c.stepRefers(path, s)
	}
}

func (c *checker) stepRefers(path string, s schedule.Step) {
	if s.Phase < 0 || s.Phase > len(c.plan.Phases) && !s.Done {
		c.fault(path+".phase", "%d; the plan has %d phases", s.Phase, len(c.plan.Phases))
	}
	if s.Dish == "" {
		if s.Batch != 0 {
			c.fault(path+".batch", "%d of no dish", s.Batch)
		}
		return
	}
	for _, d := range c.facts.dishes {
		if d.plan.ID == s.Dish {
			if s.Batch < 0 || s.Batch > len(d.plan.Batches) {
				c.fault(path+".batch", "%d; %s has %d batches", s.Batch, d.plan.Name, len(d.plan.Batches))
			}
			return
		}
	}
	if s.Done && c.plan.Asked != nil && plans.OnMenu(*c.plan.Asked, s.Dish) {
		return // done for a dish that was cancelled since
	}
	c.fault(path+".dish", "%q is no dish of the plan", s.Dish)
}

// acts: what the stages, phases and servings need somebody to do is a step, at
// the same instant.
func (c *checker) acts() {
	for i, ph := range c.plan.Phases {
		path := fmt.Sprintf("phases[%d]", i)
		kind := phaseMadeBy(ph)
		if i > 0 && ph.Relit {
			c.shut(i)
		}
		c.needStep(path+".setup_from", kind, "", 0, ph.Number, ph.SetupFrom)
		c.needStep(path+".from", schedule.StepFireReady, "", 0, ph.Number, ph.From)
		if ph.Burn != nil {
			for j, r := range ph.Burn.Refuels {
				at := fmt.Sprintf("%s.burn.refuels[%d]", path, j)
				c.needStep(at, schedule.StepRefuel, "", 0, ph.Number, r.Window.Expected)
				if r.Lit && c.plan.RevisedAt == nil {
					c.litBefore(at, ph.Number, r.Window.Expected)
				}
			}
		}
	}
	if n := len(c.plan.Phases); n > 0 {
		c.shut(n)
	}
	for i := range c.facts.dishes {
		d := &c.facts.dishes[i]
		if !c.chilled() {
			c.needStep(d.path+".serve_at", schedule.StepServe, "", 0, 0, d.serve)
		}
	}
	for _, b := range c.batches() {
		c.batchActs(&b)
	}
}

// litBefore wants coals that are added lit to be lit a quarter of an hour before or more, by
// a step of its own unless nobody is up then, and the refuel says it.
func (c *checker) litBefore(path string, phase int, added time.Time) {
	for _, s := range c.plan.Steps {
		before := added.Sub(s.At)
		switch {
		case s.Phase != phase:
		case s.Kind == schedule.StepLight && before >= 15*time.Minute && before <= time.Hour:
			return
		case s.Kind == schedule.StepRefuel && before == 0 && strings.Contains(s.Text, "start the chimney"):
			return
		}
	}
	c.fault(path+".lit", "nobody lights these coals before they are added at %s", told(added))
}

// shut wants the fire of a phase to be shut down at its end.
func (c *checker) shut(number int) {
	end := c.plan.Phases[number-1].To
	if now := c.plan.RevisedAt; now != nil && !c.done(schedule.StepCloseDown, "", 0, number) {
		end = instant.Later(end, *now) // what the log ended is shut down now
	}
	c.needStep(fmt.Sprintf("phases[%d].to", number-1), schedule.StepCloseDown, "", 0, number, end)
}

// phaseMadeBy is the step that makes the fire of a phase.
func phaseMadeBy(ph schedule.Phase) schedule.StepKind {
	if ph.Number == 1 || ph.Relit {
		return schedule.StepLight
	}
	return schedule.StepChangeFire
}

func (c *checker) batchActs(b *batchFacts) {
	id, path := b.dish.plan.ID, b.path+".stages"
	c.needStep(path, schedule.StepPutOn, id, b.Number, 0, b.on())
	if m, ok := b.Milestone(schedule.MilestoneWrap); ok && !c.condemned(id) { // nobody wraps what is thrown away
		c.needStep(path, schedule.StepWrap, id, b.Number, 0, m.Window.Expected)
	}
	if m, ok := b.Milestone(schedule.MilestoneTakeOff); ok && !c.neverDone(b) {
		c.needStep(path, schedule.StepTakeOff, id, b.Number, 0, m.Window.Expected)
	}
	for _, s := range b.cooking {
		if s.Kind == schedule.StageSear {
			c.needStep(path, schedule.StepSear, id, b.Number, 0, s.From)
		}
	}
	holds := slices.ContainsFunc(b.Stages, func(s schedule.Stage) bool { return s.Kind == schedule.StageHold && s.To.After(s.From) })
	kept := slices.ContainsFunc(c.plan.Steps, func(s schedule.Step) bool {
		return s.Dish == id && s.Batch == b.Number && (s.Kind == schedule.StepBox || s.Kind == schedule.StepToOven || s.Kind == schedule.StepHold)
	})
	if holds && !kept && !c.condemned(id) && !c.unshown(id) && !c.neverDone(b) && !c.restsUntilCut(b) {
		c.fault(path, "it is held, and no step says how")
	}
}

// needStep wants a step of a kind at an instant; a step that is done stands for it
// whenever it was.
func (c *checker) needStep(path string, kind schedule.StepKind, dish string, batch, phase int, at time.Time) {
	for _, s := range c.plan.Steps {
		if s.Kind == kind && s.Dish == dish && s.Batch == batch && s.Phase == phase && (s.At.Equal(at) || s.Done) {
			return
		}
	}
	c.fault(path, "there is no step %s at %s", kind, told(at))
}
