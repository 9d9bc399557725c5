package revise

import (
	"fmt"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plans"
)

// why says what moved a step: what the log says of it, the readings of its
// dish, or what another dish or the serving did to it.
func (v *Revision) why(s schedule.Step) string {
	if s.Done && s.Dish == "" {
		return v.whyFire()
	}
	for _, a := range v.batches {
		if a.batch.It.Dish.ID != s.Dish || a.batch.Number != s.Batch {
			continue
		}
		switch {
		case !s.Done && a.suspect:
			return "it is measured before anything else"
		case !s.Done && a.condemned:
			return "it is outside the published limits"
		case s.Kind == schedule.StepServe || s.Kind == schedule.StepSlice:
		case a.first == nil:
			return "it was added to the menu"
		case a.where == off && a.off.logged:
			return "that is when it came off"
		case s.Kind == schedule.StepPutOn && a.on.logged:
			return "that is when it went on"
		case s.Kind == schedule.StepWrap && a.wrap.logged && s.Done:
			return "that is when it was wrapped"
		case a.where == cooking && a.believed != nil:
			return v.pace(a)
		}
	}
	if s.Dish != "" && !plans.OnMenu(v.day.Req, s.Dish) {
		return "it was cancelled"
	}
	switch {
	case v.attempt.later > 0:
		return fmt.Sprintf("serving at %s can no longer be met", v.clock(v.day.End.Add(-time.Duration(v.attempt.later)*time.Minute)))
	case v.moved:
		return fmt.Sprintf("serving was moved to %s", v.clock(v.day.End))
	case v.litLate() > 0:
		return "the fire was lit later than planned"
	case v.litEarly() > 0:
		return "the fire was lit earlier than planned"
	}
	for _, a := range v.batches {
		if a.where == cooking && a.believed != nil && len(a.readings) > 0 {
			return v.pace(a)
		}
	}
	return "the rest of the day was arranged again from now"
}

// whyFire says why the fire was there at another time than planned.
func (v *Revision) whyFire() string {
	for _, e := range v.log {
		if e.Kind == schedule.LogLit {
			return "the fire was lit then"
		}
	}
	return "something was on the grate by then"
}

// pace says how a piece is coming along against the first plan.
func (v *Revision) pace(a *liveBatch) string {
	name := a.batch.It.Dish.Name
	if _, dead := v.grate.dead(); dead {
		return "the fire is out and has to be rebuilt"
	}
	n := 0
	for _, r := range a.readings {
		if r.Counts() {
			n++
		}
	}
	if n == 0 && a.wrap.logged && a.first != nil {
		return fmt.Sprintf("%s was wrapped at %s", name, v.clock(a.wrap.at))
	}
	if late := v.wentOnLate(a); n == 0 && late != 0 {
		return fmt.Sprintf("%s went on at %s, %s than planned", name, v.clock(a.on.at), v.moves(late.Minutes()))
	}
	if n == 0 {
		return fmt.Sprintf("no reading of %s yet", name)
	}
	switch moved := a.live.Total().Expected/a.way().Total().Expected - 1; {
	case moved > slightMove:
		return fmt.Sprintf("by its readings %s takes longer than planned, by about %.0f%% of the whole", name, 100*moved)
	case moved < -slightMove:
		return fmt.Sprintf("by its readings %s is done sooner than planned, by about %.0f%% of the whole", name, -100*moved)
	}
	if late := v.wentOnLate(a); late != 0 {
		return fmt.Sprintf("%s went on at %s, %s than planned", name, v.clock(a.on.at), v.moves(late.Minutes()))
	}
	return fmt.Sprintf("by its readings %s is about on time", name)
}

// wentOnLate is by how much later than planned a piece was put on, as the log says; 0 for
// no time that is worth a word.
func (v *Revision) wentOnLate(a *liveBatch) time.Duration {
	if !a.on.logged || a.first == nil || v.loose {
		return 0
	}
	if late := a.on.at.Sub(v.base.At(a.first.On)); late.Abs() >= shortestChange*time.Minute {
		return late
	}
	return 0
}

// slightMove is a share of a whole cook that is not worth a word.
const slightMove = 0.03
