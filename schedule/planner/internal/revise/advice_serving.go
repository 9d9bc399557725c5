package revise

import (
	"context"
	"fmt"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/planner/internal/arrange"
)

// unhurried is the least later serving at which everything has the asked chance.
func (v *Revision) unhurried(ctx context.Context, p *schedule.Plan, why string) []schedule.Remedy {
	for _, later := range []int{20, 40, 60, 90, 120} {
		at := p.ServeAt.Add(time.Duration(later) * time.Minute)
		e := schedule.Entry{At: v.now, Kind: schedule.LogServingMoved, Value: at.Format(time.RFC3339)}
		x := *v
		x.surely = true
		w, ok := x.with(ctx, e)
		if !ok {
			continue
		}
		return []schedule.Remedy{{Code: "later", For: why, Text: fmt.Sprintf("Serve at %s.", v.clock(at)), Price: fmt.Sprintf("Dinner is %s later", v.span(float64(later))),
			Edits: []schedule.Edit{schedule.NewEdit("log", e)}, LightAt: p.LightAt, ServeAt: w.day.End, Chance: w.remainder.chance()}}
	}
	return nil
}

// lunchHour is the hour before which nobody is asked to a meal (assumption).
const lunchHour = 11

// sooner is an earlier serving for what cannot be held until its own: of the whole
// menu where nothing else is left to cook, else of the dish.
func (v *Revision) sooner(ctx context.Context, p *schedule.Plan, a *liveBatch, x *arrange.Placed) []schedule.Remedy {
	const step = 10 * time.Minute
	o, held := v.day.ChosenHold(x)
	if held && o.Minutes >= x.LongestWait() {
		return nil // it keeps
	}
	t, off := a.live.Total(), x.It.RestMinutes()+x.It.TravelMinutes()
	at := a.on.at.Add(instant.Minutes(t.Late + off)).Add(step - time.Nanosecond).Truncate(step)
	if until := v.day.HeldUntil(x.On-t.Expected, o.Minutes); held && until.Before(at) {
		at = until // later it would still have to wait for too long
	}
	if ready := a.on.at.Add(instant.Minutes(t.Expected + off)); at.Before(ready) || !at.Before(v.serve(a)) || at.Hour() < lunchHour || at.YearDay() != p.ServeAt.YearDay() || v.day.InQuiet(at) {
		return nil
	}
	name, e := a.batch.It.Dish.Name, schedule.Entry{At: v.now, Kind: schedule.LogServingMoved, Value: at.Format(time.RFC3339)}
	text := fmt.Sprintf("Serve at %s.", v.clock(at))
	if len(v.day.Items) > 1 {
		e.Dish, text = a.batch.It.Dish.ID, fmt.Sprintf("Serve %s by itself at %s.", name, v.clock(at))
	}
	w, ok := v.with(ctx, e)
	if !ok || w.attempt.later > 0 || w.attempt.aside {
		return nil
	}
	return []schedule.Remedy{{Code: "sooner", For: schedule.Early, Text: text, Price: fmt.Sprintf("That is %s earlier", v.span(v.serve(a).Sub(at).Minutes())),
		Edits: []schedule.Edit{schedule.NewEdit("log", e)}, LightAt: p.LightAt, ServeAt: w.day.End, Chance: w.remainder.chance()}}
}
