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
		LastsMinutes: b.LastsMinutes, Chunks: b.WoodChunks, Count: b.Expected.Count, BuyKg: b.Buy.MassKg, BuyCount: b.Buy.Count, LeftKg: b.LeftKg,
	}
	if b.Holder == fire.InRing {
		ph.Burn.Rows, ph.Burn.ArcM = b.Ring.Section.String(), b.Ring.ArcM
	}
	for _, t := range b.TopUps {
		if left := ph.To.Sub(ph.From).Minutes() - t.AtMinute; left < lateTopUp && t.Add.MassKg < b.Lay.MassKg/4 {
			ph.Burn.LeftKg = math.Max(ph.Burn.LeftKg-t.Add.MassKg, 0)
			continue
		}
		at := ph.From.Add(minutes(t.AtMinute)).Round(time.Minute)
		ph.Burn.Refuels = append(ph.Burn.Refuels, Refuel{
			Window: fixedWindow(at), Count: t.Add.Count, MassKg: t.Add.MassKg, Lit: t.Lit,
		})
	}
	for _, s := range b.Shortfalls {
		d.find(finding("fire-cannot-last", "", nil, d.shortText(ph, f, s)))
	}
	for _, n := range b.Notes {
		if text := noteTexts[n]; text != "" {
			d.find(finding(string(n), "", nil, text))
		}
	}
}

// shortText says when a fire that nobody feeds is down, and what would last.
func (d *day) shortText(ph *Phase, f fire.Fire, s fire.Shortfall) string {
	at := func(minute float64) time.Time { return ph.From.Add(minutes(minute)) }
	up := at(s.OutMinute + s.ShortMinutes)
	text := fmt.Sprintf("The %s fire, fed last at %s, is expected to run down at about %s, and nobody is up before %s.",
		f.Layout, localClock(quarterDown(at(s.FedMinute))), localClock(quarterDown(at(s.OutMinute))), localClock(up))
	last := s.CanLastMinutes()
	if last > 0 {
		text += fmt.Sprintf(" It lasts about %s untended: feed it at %s or later before lights out, or get up by then.",
			d.about(shortened(last)), localClock(quarterDown(up.Add(-minutes(last))).Add(quarter)))
	}
	if other, longest := d.longerFire(f, last); longest > 0 {
		text += fmt.Sprintf(" The %s layout lasts up to %s at this level.", other, d.about(shortened(longest)))
	}
	return text
}

// longerFire is the layout that burns longest untended at a level through a night,
// if it is longer than so many minutes.
func (d *day) longerFire(f fire.Fire, than float64) (string, float64) {
	name, longest := "", than
	for _, l := range fire.Layouts() {
		if f.LevelC < l.MinC || f.LevelC > l.MaxC || l.Layout == f.Layout {
			continue
		}
		if m := d.grill.LongestMinutes(fire.Fire{Layout: l.Layout, LevelC: f.LevelC}, d.night); m > longest {
			name, longest = string(l.Layout), m
		}
	}
	if name == "" {
		return "", 0
	}
	return name, longest
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
				d.find(finding("refuel-in-quiet", "", nil, fmt.Sprintf(
					"The %s fire wants fuel at %s, in quiet hours.", ph.Layout, localClock(r.Window.Expected))))
			}
		}
	}
}
