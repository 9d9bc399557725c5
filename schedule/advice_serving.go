package schedule

import (
	"context"
	"fmt"
	"time"
)

// unhurried is the least later serving at which everything has the asked chance.
func (v *revision) unhurried(ctx context.Context, p *Plan) []Remedy {
	for _, later := range []int{20, 40, 60, 90, 120} {
		at := p.ServeAt.Add(time.Duration(later) * time.Minute)
		e := Entry{At: v.now, Kind: LogServingMoved, Value: at.Format(time.RFC3339)}
		w, ok := v.with(ctx, e)
		if !ok || w.try != (try{}) {
			continue
		}
		return []Remedy{{Code: "later", For: "less-sure", Text: fmt.Sprintf("Serve at %s.", v.clock(at)), Price: fmt.Sprintf("Dinner is %s later", v.span(float64(later))),
			Edits: []Edit{edit("log", e)}, LightAt: p.LightAt, ServeAt: w.day.end, Chance: w.left.chance()}}
	}
	return nil
}

// lunchHour is the hour before which nobody is asked to a meal (assumption).
const lunchHour = 11

// sooner is an earlier serving for what cannot be held until its own: of the whole
// menu where nothing else is left to cook, else of the dish.
func (v *revision) sooner(ctx context.Context, p *Plan, a *afoot, x *placed) []Remedy {
	const step = 10 * time.Minute
	o, held := v.day.chosenHold(x)
	if held && o.minutes >= x.longestWait() {
		return nil // it keeps
	}
	t, off := a.live.total(), x.it.restMinutes()+x.it.travelMinutes()
	at := a.on.at.Add(minutes(t.late + off)).Add(step - time.Nanosecond).Truncate(step)
	if until := a.on.at.Add(minutes(t.expected + o.minutes)).Truncate(step); held && until.Before(at) {
		at = until // later it would still have to wait for too long
	}
	if ready := a.on.at.Add(minutes(t.expected + off)); at.Before(ready) || !at.Before(v.serve(a)) || at.Hour() < lunchHour || at.YearDay() != p.ServeAt.YearDay() || v.day.inQuiet(at) {
		return nil
	}
	name, e := a.batch.it.dish.Name, Entry{At: v.now, Kind: LogServingMoved, Value: at.Format(time.RFC3339)}
	text := fmt.Sprintf("Serve at %s.", v.clock(at))
	if len(v.day.items) > 1 {
		e.Dish, text = a.batch.it.dish.ID, fmt.Sprintf("Serve %s by itself at %s.", name, v.clock(at))
	}
	w, ok := v.with(ctx, e)
	if !ok || w.try.later > 0 || w.try.aside {
		return nil
	}
	return []Remedy{{Code: "sooner", For: early, Text: text, Price: fmt.Sprintf("%s is eaten %s earlier", name, v.span(v.serve(a).Sub(at).Minutes())),
		Edits: []Edit{edit("log", e)}, LightAt: p.LightAt, ServeAt: w.day.end, Chance: w.left.chance()}}
}
