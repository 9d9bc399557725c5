package schedule

import (
	"encoding/json"
	"fmt"
	"slices"
	"sort"
	"time"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/unit"
)

// change is a change of the request that may mend the day. Pain orders changes
// by what they ask of the cook (assumption); price says it in words.
type change struct {
	code, text, price string
	pain              int
	edits             []Edit
	apply             func(r *Request)
}

// changesFor lists what may help.
func changesFor(r Request, p Plan) []change {
	var out []change
	for i, dish := range r.Dishes {
		if concerns(p, dish.ID) {
			out = append(out, dishChanges(r, i)...)
		}
	}
	if r.Oven == nil {
		out = append(out, ovenChange())
	}
	out = append(out, laterChanges(r)...)
	out = append(out, quietChanges(r)...)
	if r.Confidence > 0.8 {
		out = append(out, change{
			code: "confidence", text: "Accept less certainty.", price: "each dish is late one day in five", pain: 45,
			edits: []Edit{edit("confidence", 0.8)}, apply: func(r *Request) { r.Confidence = 0.8 },
		})
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].pain < out[j].pain })
	return out
}

// concerns says whether a dish is named by a finding of the plan, or none is.
func concerns(p Plan, id string) bool {
	named := false
	for _, f := range p.Findings {
		if slices.Contains(f.Dishes, id) {
			return true
		}
		named = named || len(f.Dishes) > 0
	}
	return !named
}

// dishChanges are a hotter grate, a wrap, smaller pieces and two sittings.
func dishChanges(r Request, i int) []change {
	dish := r.Dishes[i]
	c, ok := cut.Find(dish.Cut)
	if !ok {
		return nil
	}
	path := fmt.Sprintf("dishes[%d]", i)
	var out []change
	if dish.Level != nil && c.Style == cut.Tough && float64(*dish.Level) < celsius(274) {
		hot := unit.FromFahrenheit(275)
		out = append(out, change{
			code: "hotter", text: fmt.Sprintf("Cook %s at %s.", dish.Name, r.Units.Grate(hot)), price: "a hotter grate, a firmer bark", pain: 15,
			edits: []Edit{edit(path+".level", hot)}, apply: func(r *Request) { r.Dishes[i].Level = &hot },
		})
	}
	if dish.Level != nil {
		out = append(out, change{
			code: "other-heat", text: fmt.Sprintf("Let %s cook at another heat than %s.", dish.Name, r.Units.Grate(*dish.Level)), price: "not the heat you asked for", pain: 16,
			edits: []Edit{edit(path+".level", nil)}, apply: func(r *Request) { r.Dishes[i].Level = nil },
		})
	}
	if c.Style == cut.Tough && c.WrapAllowed && dish.Wrap != nil && dish.Wrap.With == WrapNone {
		from := unit.FromFahrenheit(150)
		w := Wrap{With: WrapFoil, From: &from}
		out = append(out, change{
			code: "wrap", text: fmt.Sprintf("Wrap %s in foil from %s.", dish.Name, r.Units.Core(from)), price: "a softer bark", pain: 12,
			edits: []Edit{edit(path+".wrap", w)}, apply: func(r *Request) { r.Dishes[i].Wrap = &w },
		})
	}
	if c.Style == cut.Tough && dish.Weight > 0 && dish.Count > 0 {
		half, count := dish.Weight/2, dish.Count*2
		out = append(out, change{
			code: "smaller", text: fmt.Sprintf("Cut %s into pieces of %s.", dish.Name, r.Units.Mass(half)), price: "smaller pieces, more bark", pain: 25,
			edits: []Edit{edit(path+".weight", half), edit(path+".count", count)},
			apply: func(r *Request) { r.Dishes[i].Weight, r.Dishes[i].Count = half, count },
		})
	}
	if c.Style == cut.Tough && dish.Ready == "" && r.Earliest == nil {
		out = append(out, change{
			code: "day-before", text: fmt.Sprintf("Cook %s the day before, chill it, and warm it for the table.", dish.Name), price: "a day earlier; warmed food, a softer bark", pain: 40,
			edits: []Edit{edit(path+".ready", readyDayBefore)}, apply: func(r *Request) { r.Dishes[i].Ready = readyDayBefore },
		})
	}
	if c.Style == cut.Small && dish.Count > 1 && dish.Serve == nil {
		out = append(out, sittings(r, i, 30*time.Minute))
	}
	return out
}

// sittings splits a dish in two, the second half later.
func sittings(r Request, i int, apart time.Duration) change {
	second := r.Dishes[i]
	second.Count = r.Dishes[i].Count / 2
	second.ID = second.ID + "-2"
	second.Name = second.Name + ", second sitting"
	at := laterClock(r, apart)
	second.Serve = &at
	first := r.Dishes[i].Count - second.Count
	return change{
		code: "sittings", text: fmt.Sprintf("Serve %s in two sittings, %d now and %d half an hour later.", r.Dishes[i].Name, first, second.Count),
		price: "half of them half an hour later", pain: 20,
		edits: []Edit{edit(fmt.Sprintf("dishes[%d].count", i), first), edit(fmt.Sprintf("dishes[%d]", len(r.Dishes)), second)},
		apply: func(r *Request) {
			r.Dishes[i].Count = first
			r.Dishes = append(r.Dishes, second)
		},
	}
}

// laterClock is the main serving instant moved by a duration, on its own date.
func laterClock(r Request, by time.Duration) Clock {
	loc, err := r.Location()
	if err != nil {
		loc = time.UTC
	}
	y, m, n := r.Serve.Date.Date()
	t := time.Date(y, m, n, r.Serve.Time.Hours(), r.Serve.Time.Minutes(), 0, 0, loc).Add(by)
	return clockOf(t)
}

// laterMinutes are the delays tried.
var laterMinutes = []int{20, 40, 60, 90, 120, 180, 240}

func laterChanges(r Request) []change {
	var out []change
	for k, m := range laterMinutes {
		at := laterClock(r, time.Duration(m)*time.Minute)
		s := Serve{Date: *at.Date, Time: at.Time, TZ: r.Serve.TZ}
		out = append(out, change{
			code: "later", text: fmt.Sprintf("Serve at %s.", at.Time.HhMm()), price: fmt.Sprintf("%s later", r.Units.About(time.Duration(m)*time.Minute)),
			pain: 18 + 6*k, edits: []Edit{edit("serve", s)}, apply: func(r *Request) { r.Serve = s },
		})
	}
	return out
}

// quietChanges get up earlier, go to bed later, or give the night up.
func quietChanges(r Request) []change {
	if len(r.Quiet) == 0 {
		return nil
	}
	var out []change
	for k, m := range []int{30, 60, 120} {
		q := slices.Clone(r.Quiet)
		q[0].To = (q[0].To.AddDuration(-time.Duration(m) * time.Minute)).Mod24()
		out = append(out, change{
			code: "up-earlier", text: fmt.Sprintf("Get up at %s.", q[0].To.HhMm()), price: fmt.Sprintf("%d min less sleep", m), pain: 14 + 10*k,
			edits: []Edit{edit("quiet", q)}, apply: func(r *Request) { r.Quiet = slices.Clone(q) },
		})
	}
	return append(out, change{
		code: "no-quiet", text: "Let go of the quiet hours.", price: "somebody tends the fire at night", pain: 60,
		edits: []Edit{edit("quiet", []Quiet{})}, apply: func(r *Request) { r.Quiet = nil },
	})
}

// edit writes a value as JSON; the values are our own types, which always marshal.
func edit(path string, v any) Edit {
	text, err := json.Marshal(v)
	if err != nil {
		text = []byte("null")
	}
	return Edit{Path: path, Value: string(text)}
}

func ovenChange() change {
	oven := Oven{Hold: unit.FromFahrenheit(170)}
	return change{
		code: "oven", text: "Hold or finish in the kitchen oven.", price: "the oven is taken, at 170 F (75 °C)", pain: 10,
		edits: []Edit{edit("oven", oven)}, apply: func(r *Request) { r.Oven = &oven },
	}
}
