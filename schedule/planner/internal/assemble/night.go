package assemble

import (
	"fmt"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/planner/internal/arrange"
)

// Unwatched are the nights through which a fire burns.
func (d *Assembler) Unwatched(phases []schedule.Phase) []schedule.Interval {
	return slices.DeleteFunc(d.Nights(), func(q schedule.Interval) bool {
		return !slices.ContainsFunc(phases, func(ph schedule.Phase) bool { return burnsIn(ph, q) })
	})
}

// Needless says whether a fire burns through a night with nothing on it.
func (d *Assembler) Needless(p *schedule.Plan) bool {
	return slices.ContainsFunc(d.Unwatched(p.Phases), func(q schedule.Interval) bool {
		return !slices.ContainsFunc(p.Dishes, func(dish schedule.DishPlan) bool {
			return slices.ContainsFunc(dish.Batches, func(b schedule.Batch) bool { return cooksIn(b, q) })
		})
	})
}

func cooksIn(b schedule.Batch, q schedule.Interval) bool {
	return slices.ContainsFunc(b.Stages, func(s schedule.Stage) bool {
		return s.Zone != "" && s.From.Before(q.To) && s.To.After(q.From)
	})
}

func burnsIn(ph schedule.Phase, q schedule.Interval) bool {
	return ph.SetupFrom.Before(q.To) && ph.To.After(q.From)
}

// noteNight says how the night is spent, what it looks like first.
func (d *Assembler) noteNight(p *schedule.Plan, all []*arrange.Placed) {
	hours := d.Hours()
	if d.Req.Quiet != nil && len(hours) == 0 {
		return
	}
	p.Night = &schedule.Night{Way: d.nightWay(p, all), Quiet: hours}
	switch p.Night.Way {
	case schedule.NightFire:
		d.find(schedule.CodeNightFire, "quiet", nil, d.fireNight(p)+d.nightShare(p)+d.unsaid())
	case schedule.NightOven:
		d.find(schedule.CodeNightOven, "quiet", nil, fmt.Sprintf("You sleep %s, and %s in the oven.", d.sleep(p), theyWait(d.inOvenOvernight(all)))+d.unsaid())
	case schedule.NightEarly:
		d.find(schedule.CodeNightEarly, "quiet", nil, fmt.Sprintf("You are up at %s: the day begins before %s.", say.LocalClock(d.Req.Units, d.firstInUsual(p)), d.usualEnd())+d.unsaid())
	case schedule.NightAwake:
		d.find(schedule.CodeNightAwake, "quiet", nil, fmt.Sprintf(
			"Somebody is up in the night: the first thing is to be done at %s. No other way was found to have this meal at its hour. Your hours of sleep are assumed.", say.LocalClock(d.Req.Units, d.firstInUsual(p))))
	default:
		if text := d.dayNight(p); text != "" {
			d.find(schedule.CodeNightDay, "quiet", nil, text+d.unsaid())
		}
	}
}

// unsaid says whose hours these are, where the request does not.
func (d *Assembler) unsaid() string {
	if d.Req.Quiet != nil {
		return ""
	}
	return " These hours are assumed. You sleep at others? Add quiet: 10 PM to 6 AM. Somebody is up all night? Add quiet: never."
}

func (d *Assembler) nightWay(p *schedule.Plan, all []*arrange.Placed) schedule.NightWay {
	hours := d.Hours()
	switch {
	case len(hours) == 0:
		return schedule.NightAwake
	case len(d.Unwatched(p.Phases)) > 0:
		return schedule.NightFire
	case d.Req.Quiet == nil && !slices.Equal(hours, schedule.UsualQuiet()):
		return schedule.NightEarly // also beside what waits in the oven
	case len(d.inOvenOvernight(all)) > 0:
		return schedule.NightOven
	}
	return schedule.NightDay
}

// inOvenOvernight are the names of the dishes that wait in the oven through a night.
func (d *Assembler) inOvenOvernight(all []*arrange.Placed) []string {
	var names []string
	for _, b := range all {
		held, holds := d.ChosenHold(b)
		if !holds || held.Method != schedule.HoldOven || slices.Contains(names, b.It.Dish.Name) {
			continue
		}
		off, serve := d.window(b, b.TakeOff).Expected, d.At(float64(b.It.Serve))
		if slices.ContainsFunc(d.Nights(), func(q schedule.Interval) bool { return !off.After(q.From) && !serve.Before(q.To) }) {
			names = append(names, b.It.Dish.Name)
		}
	}
	return names
}

// sleep says from when to when people sleep; empty where the plan touches no night.
func (d *Assembler) sleep(p *schedule.Plan) string {
	q := slices.DeleteFunc(d.QuietWithin(*p), func(q schedule.Interval) bool { return q.To.After(p.ServeAt) })
	if len(q) == 0 {
		return ""
	}
	return fmt.Sprintf("from %s to %s", say.LocalClock(d.Req.Units, q[0].From), say.LocalClock(d.Req.Units, q[0].To))
}

func (d *Assembler) fireNight(p *schedule.Plan) string {
	q := d.Unwatched(p.Phases)[0]
	text := fmt.Sprintf("The fire burns unwatched from %s to %s while you sleep.", say.LocalClock(d.Req.Units, q.From), say.LocalClock(d.Req.Units, q.To))
	switch {
	case d.Req.Overnight:
		return text + " You asked for that."
	case d.Req.Quiet != nil:
		return text + " With these hours of sleep this meal cannot be had otherwise; a later meal may spare it."
	}
	return text + " Nothing else was found: not a day's cook, not the evening before and the oven, not an early start. A later meal may spare it."
}

// dayNight says that nothing burns while people sleep, where somebody may wonder.
func (d *Assembler) dayNight(p *schedule.Plan) string {
	sleep := d.sleep(p)
	switch {
	case d.Req.Quiet != nil || sleep == "" && (p.LightAt == nil || p.LightAt.Hour() >= earlyHour):
		return ""
	case sleep == "":
		return fmt.Sprintf("You sleep until %s, and the fire is lit at %s.", d.usualEnd(), say.LocalClock(d.Req.Units, *p.LightAt))
	}
	return fmt.Sprintf("You sleep %s, and nothing is on the fire then.", sleep)
}

// earlyHour is the hour before which a fire that is lit is worth a word on sleep (assumption).
const earlyHour = 6

func theyWait(names []string) string {
	if len(names) == 1 {
		return names[0] + " waits"
	}
	return say.Listed(names, "and") + " wait"
}

func (d *Assembler) usualEnd() string {
	return say.TimeOfDay(d.Req.Units, schedule.UsualQuiet()[0].To)
}

// firstInUsual is the first thing to do within the usual hours of sleep.
func (d *Assembler) firstInUsual(p *schedule.Plan) time.Time {
	usual := d.Asleep(schedule.UsualQuiet())
	for _, s := range p.Steps {
		if s.Attended && usual.InQuiet(s.At) {
			return s.At
		}
	}
	return p.ServeAt
}
