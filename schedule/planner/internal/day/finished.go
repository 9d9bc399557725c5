package day

import (
	"math"
	"slices"
	"strings"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/safety"
)

// holdPlace is the column of the table of holds that a way of waiting belongs to.
func holdPlace(method string) safety.HoldPlace {
	switch method {
	case schedule.HoldBox:
		return safety.InBox
	case schedule.HoldOven:
		return safety.InOven
	case schedule.HoldGrill:
		return safety.OnFire
	}
	return safety.InOpen
}

// Piece is the row of the table of holds that a piece belongs to.
func (it *Item) Piece(massKg float64) safety.Piece {
	switch it.Cut.Style {
	case cut.Tough:
		if it.Cut.Rack {
			return safety.Ribs
		}
		return safety.Shoulder
	case cut.Roast:
		return safety.Joint
	case cut.Bird:
		if strings.HasPrefix(it.Cut.Name, "turkey") && massKg >= safety.TurkeyFromKg-1e-9 {
			return safety.Turkey
		}
		return safety.Bird
	}
	return safety.Portion
}

// Finished is a piece at its take-off as the rules of holding take it: the way of a day
// and of a day that is under way to ask safety.HoldFor.
func (d *Day) Finished(it *Item, w Way, massKg float64, method string) safety.Finished {
	f := safety.Finished{
		Piece: it.Piece(massKg), Category: it.Category, Prep: it.Prep, CoreC: w.DoneC(it), Place: holdPlace(method),
		AirC: d.Air.AirC, BoxAirC: d.indoorsC(), Frail: d.Frail, RestMin: it.RestMinutes(),
	}
	if it.Cut.Style == cut.Timed { // it has no core temperature, and no hold
		f.CoreC = 0
	}
	if f.Place == safety.InOven && d.Req.Oven != nil {
		f.OvenC = safety.OvenSettingC(f.Piece, d.OvenC())
		f.ByRoast = safety.RoastOven(f) && d.roasted(w, massKg, f)
	}
	return f
}

// roasted says whether a roast is cooked by the Food Code's rule for roasts: hot enough
// all the time, and its core at the table's temperatures for the table's time, counted from
// the take-off in the oven at its poor end, within the clock.
func (d *Day) roasted(w Way, massKg float64, f safety.Finished) bool {
	table, ok := safety.LethalityTableFor(f.Category, 0)
	if !ok || w.State == nil || w.LevelC < safety.RoastLevelC(massKg)-sameLevelK {
		return false
	}
	oven := Follow(w.State, d.Course(w, Waiting{Method: schedule.HoldOven, Pieces: 1, OvenC: f.OvenC}, PoorEnd))
	var core []safety.Sample
	for m := 0.0; m <= safety.OutMinutes; m += tableStep {
		s := oven.After(m)
		core = append(core, safety.Sample{Minute: m, C: s.CoreC()})
	}
	l, err := table.Integrate(core)
	return err == nil && l.Reached
}

// tableStep is the minutes between the samples of a roast in the oven.
const tableStep = 5

// nightLimit is how many minutes before serving a piece may come off so that no night lies
// between for which it may not be left alone in the oven; through says whether there is one
// for which it may.
func (d *Day) nightLimit(it *Item, f safety.Finished) (limit float64, through bool) {
	for _, n := range d.Stretches() {
		from := max(n.From, it.Serve)
		unwatched := float64(n.To-from) + BeforeSleep
		if n.To <= it.Serve || float64(n.To-from) <= safety.NightMinutes {
			continue
		}
		if !safety.Overnight(f, unwatched, d.Req.Oven != nil && d.Req.Oven.StaysOn) {
			return math.Max(float64(from-it.Serve), 0), through
		}
		if from-it.Serve < safety.OvernightMostMinutes {
			through = true
		}
	}
	return math.Inf(1), through
}

// BeforeSleep is how many minutes before quiet hours somebody looks after the oven for
// the last time (assumption).
const BeforeSleep = 10

// Stretches are the quiet hours, merged where they touch, the latest first.
func (d *Day) Stretches() []Span {
	if len(d.Quiet) < 2 {
		return d.Quiet
	}
	spans := slices.Clone(d.Quiet)
	slices.SortFunc(spans, func(a, b Span) int { return a.From - b.From })
	var out []Span
	for _, s := range spans {
		if n := len(out); n > 0 && s.From <= out[n-1].To {
			out[n-1].To = max(out[n-1].To, s.To)
			continue
		}
		out = append(out, s)
	}
	return out
}

// Boxes, in W/(m2 K) of one piece, from the records of holding_2.csv: thick walls or many
// layers (H5, H9, H12), ordinary (E1 to E3, H1 to H4, H8), small and old (H4).
const (
	boxGood  = 2.4
	boxUsual = 4.0
	boxSmall = 5.2
	// boxPoorShare: one box in ten loses half as much again as it is called for (the 90th
	// percentile of those records).
	boxPoorShare = 1.45
)

// boxOfOne is the coefficient of the request's box around one piece. One that is called
// good counts as usual until a logged hold of it has shown it.
func (d *Day) boxOfOne() float64 {
	switch b := d.Req.Box; {
	case b == nil:
	case b.Kind == schedule.BoxSmall:
		return boxSmall
	case b.Kind == schedule.BoxGood && b.Proven():
		return boxGood
	}
	return boxUsual
}

// indoorsC is the air about what waits: a kitchen at the warmest, the coolest of the day
// at the worst.
func (d *Day) indoorsC() float64 { return math.Min(RoomC, d.Night.AirC) }
