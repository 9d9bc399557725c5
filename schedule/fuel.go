package schedule

import (
	"fmt"
	"math"
	"time"

	"example.com/cookday/schedule/internal/fire"
)

// burn fills in the fuel, the building and the vents of a phase.
func (d *day) burn(ph *Phase, f fire.Fire, first bool) {
	v := fire.Vents(f)
	ph.Vents, ph.TopOpen, ph.LowOpen, ph.LidOff = d.ventsText(v), v.OpenTop, v.OpenBottom, v.LidOff
	if desc, ok := fire.Describe(f.Layout); ok {
		ph.Build = desc.Build
	}
	b := d.grill.Plan(f, fire.Need{First: first, Slices: d.weatherBetween(ph.From, ph.To), Untended: d.untended(ph.From, ph.To)})
	if b.Expected.MassKg == 0 {
		return
	}
	ph.Burn = &Burn{
		MassKg: b.Expected.MassKg, LowKg: b.Low.MassKg, HighKg: b.High.MassKg,
		Lay: b.Lay.Count, Light: b.Light.Count, LayKg: b.Lay.MassKg, LightKg: b.Light.MassKg, Chimneys: b.Light.ChimneyFills,
		LastsMinutes: b.LastsMinutes, Chunks: b.WoodChunks, Count: b.Expected.Count, BuyKg: b.Buy.MassKg, BuyCount: b.Buy.Count,
	}
	if b.Holder == fire.InRing {
		ph.Burn.Rows, ph.Burn.ArcM = b.Ring.Section.String(), b.Ring.ArcM
	}
	for _, t := range b.TopUps {
		if left := ph.To.Sub(ph.From).Minutes() - t.AtMinute; left < lateTopUp && t.Add.MassKg < b.Lay.MassKg/4 {
			continue
		}
		at := ph.From.Add(minutes(t.AtMinute)).Round(time.Minute)
		ph.Burn.Refuels = append(ph.Burn.Refuels, Refuel{
			Window: fixedWindow(at), Count: t.Add.Count, MassKg: t.Add.MassKg, Lit: t.Lit,
		})
	}
	for _, s := range b.Shortfalls {
		d.find(Finding{
			Code: "fire-cannot-last", Severity: Warning,
			Text: fmt.Sprintf("The %s fire is expected to run down about %s before anybody is up. Lay more if there is room, or light later.",
				f.Layout, d.about(s.ShortMinutes)),
		})
	}
	for _, n := range b.Notes {
		if text := noteTexts[n]; text != "" {
			d.find(Finding{Code: string(n), Severity: Info, Text: text})
		}
	}
}

// lateTopUp is how close to the end of a phase, in minutes, a small top-up is
// not worth a chimney: the bed sinks a little instead (assumption).
const lateTopUp = 25

// noteTexts says what the codes of the fire mean.
var noteTexts = map[fire.Note]string{
	fire.SizeOutsideLaw: "The grill is smaller than 14 in or larger than 27 in: the fuel figures are stretched beyond what they were compared with.",
	fire.LevelOutside:   "The layout is not made for this grate temperature: watch it closely.",
	fire.RingRunsCool:   "Even the thickest ring gives too little heat for this level on this day: bank the coals instead.",
	fire.LumpUneven:     "Lump burns a ring unevenly: close gaps as they show.",
	fire.NeedsBasket:    "This is more fuel than a loose pile holds: use a basket or bricks to keep it together.",
	fire.ThinAir:        "The air is thin at this height: the vents want to be a little wider.",
	fire.FillsNotLaw:    "At searing heat fuel is counted in chimney fills of 45 to 60 minutes each.",
}

// weatherBetween cuts a stretch into pieces of one weather, day and night.
func (d *day) weatherBetween(from, to time.Time) []fire.Slice {
	var out []fire.Slice
	for at := from; at.Before(to); {
		w, until := d.weatherAt(at)
		if until.After(to) {
			until = to
		}
		out = append(out, fire.Slice{Minutes: until.Sub(at).Minutes(), Weather: w})
		at = until
	}
	return out
}

// nightFrom and nightTo are the hours at which the night's air temperature
// holds (assumption).
const (
	nightFrom = 21
	nightTo   = 8
)

// weatherAt is the weather of an instant and until when it holds: by day and
// night, and what the request's hours say from their instants on.
func (d *day) weatherAt(t time.Time) (fire.Weather, time.Time) {
	local := t.In(d.loc)
	y, m, n := local.Date()
	w, until := d.air, time.Date(y, m, n, nightFrom, 0, 0, 0, d.loc)
	switch h := local.Hour(); {
	case h < nightTo:
		w, until = d.night, time.Date(y, m, n, nightTo, 0, 0, 0, d.loc)
	case h >= nightFrom:
		w, until = d.night, time.Date(y, m, n+1, nightTo, 0, 0, 0, d.loc)
	}
	for _, h := range d.req.Weather.Hours { // in the order of their instants
		at := d.clock(&h.From)
		if at.After(t) {
			return w, earlier(until, at)
		}
		w = refined(w, h)
	}
	return w, until
}

// refined is the weather w with what an hour says of it.
func refined(w fire.Weather, h WeatherFrom) fire.Weather {
	if h.Air != nil {
		w.AirC = float64(*h.Air)
	}
	if h.Wind != nil {
		w.WindMS = float64(*h.Wind)
	}
	if h.Rain != nil {
		w.Rain = *h.Rain
	}
	return w
}

func earlier(a, b time.Time) time.Time {
	if b.Before(a) {
		return b
	}
	return a
}

// refuelMinutes is the work of a refuel, which must be over when quiet hours begin
// (assumption).
const refuelMinutes = 5

// untended are the quiet hours within a phase, in minutes from its beginning.
func (d *day) untended(from, to time.Time) []fire.Span {
	var out []fire.Span
	for _, q := range d.quietIntervals() {
		a, b := q.From.Sub(from).Minutes()-refuelMinutes, q.To.Sub(from).Minutes()
		if b > 0 && a < to.Sub(from).Minutes() {
			out = append(out, fire.Span{FromMinute: math.Max(a, 0), ToMinute: b})
		}
	}
	return out
}

func minutes(m float64) time.Duration { return time.Duration(m * float64(time.Minute)) }

// fuel adds up the phases.
func (d *day) fuel(phases []Phase) *Fuel {
	f := &Fuel{Kind: d.req.Grill.Fuel}
	for _, ph := range phases {
		if b := ph.Burn; b != nil {
			f.MassKg, f.LowKg, f.HighKg = f.MassKg+b.MassKg, f.LowKg+b.LowKg, f.HighKg+b.HighKg
			f.BuyKg += b.BuyKg
			f.Count, f.BuyCount = f.Count+b.Count, f.BuyCount+b.BuyCount
			f.Chunks += b.Chunks
		}
	}
	if f.MassKg == 0 {
		return nil
	}
	d.fuelText(f)
	return f
}

func (d *day) fuelText(f *Fuel) {
	u := d.req.Units
	f.Text = fmt.Sprintf("Buy about %s of %s; the day is expected to burn %s, and real fires take between half and twice that.",
		mass(u, f.BuyKg), f.Kind, mass(u, f.MassKg))
	if f.Kind != FuelLump {
		f.Text = fmt.Sprintf("Buy about %d briquettes (%s); the day is expected to burn %d, and real fires take between half and twice that.",
			roundTo(f.BuyCount, 10), mass(u, f.BuyKg), roundTo(f.Count, 5))
	}
}

// noteFuel says it where a refuel is likely to fall into quiet hours.
func (d *day) noteFuel(p *Plan) {
	for _, ph := range p.Phases {
		if ph.Burn == nil {
			continue
		}
		for _, r := range ph.Burn.Refuels {
			if d.inQuiet(r.Window.Expected) {
				d.find(Finding{Code: "refuel-in-quiet", Severity: Warning, Text: fmt.Sprintf(
					"The %s fire wants fuel at %s, in quiet hours.", ph.Layout, localClock(r.Window.Expected))})
			}
		}
	}
}
