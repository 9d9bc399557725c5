package assemble

import (
	"fmt"
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/unit"
)

// burn fills in the fuel, the building and the vents of a phase.
func (d *Assembler) burn(ph *schedule.Phase, f fire.Fire, first bool) {
	v := d.startVents(ph, f)
	ph.Vents, ph.TopOpen, ph.LowOpen, ph.LidOff = d.VentsText(v), v.OpenTop, v.OpenBottom, v.LidOff
	if desc, ok := d.Grill.Describe(f.Layout); ok {
		ph.Build = desc.Build
	}
	b := d.Grill.Plan(f, fire.Need{First: first, Slices: d.WeatherBetween(ph.From, ph.To), Untended: d.Unfed(ph.From, ph.To)})
	if b.Expected.MassKg == 0 {
		return
	}
	ph.Burn = &schedule.Burn{
		MassKg: b.Expected.MassKg, LowKg: b.Low.MassKg, HighKg: b.High.MassKg,
		Lay: b.Lay.Count, Light: b.Light.Count, LayKg: b.Lay.MassKg, LightKg: b.Light.MassKg, Chimneys: b.Light.ChimneyFills,
		LastsMinutes: b.LastsMinutes, Chunks: b.WoodChunks, Count: b.Expected.Count, BuyKg: b.Buy.MassKg, BuyCount: b.Buy.Count, LeftKg: b.LeftKg,
	}
	d.noteWeak(ph, f)
	if b.Holder == fire.InRing {
		ph.Burn.Rows, ph.Burn.ArcM = b.Ring.Section.String(), b.Ring.ArcM
	}
	for _, t := range b.TopUps {
		if left := ph.To.Sub(ph.From).Minutes() - t.AtMinute; left < lateTopUp && t.Add.MassKg < b.Lay.MassKg/4 {
			ph.Burn.LeftKg = math.Max(ph.Burn.LeftKg-t.Add.MassKg, 0)
			continue
		}
		at := ph.From.Add(instant.Minutes(t.AtMinute)).Round(time.Minute)
		at = d.besideServing(at, ph.From)
		ph.Burn.Refuels = append(ph.Burn.Refuels, schedule.Refuel{
			Window: plans.FixedWindow(at), Count: t.Add.Count, MassKg: t.Add.MassKg, Lit: t.Lit,
		})
	}
	for _, s := range b.Shortfalls {
		path := ""
		if ph.From.Add(instant.Minutes(s.OutMinute)).Before(d.Now) {
			path = PastShort
		}
		d.find("fire-cannot-last", path, nil, d.shortText(ph, f, s))
	}
	for _, n := range b.Notes {
		if notice, ok := schedule.Notice(string(n)); ok {
			d.find(string(n), "", nil, notice.Text)
		}
	}
}

// PastShort is the path of a finding that a fire does not last, where its hour is past as a revision is
// made: it did, or did not.
const PastShort = "past"

// servingMinutes is how long before people eat nobody has a hand for the coals (assumption).
const servingMinutes = 10

// besideServing is an instant to feed a fire, moved before a serving that it falls into.
func (d *Assembler) besideServing(at, from time.Time) time.Time {
	for i := range d.Items {
		serve := d.At(float64(d.Items[i].Serve))
		early := serve.Add(-servingMinutes * time.Minute)
		if at.After(early) && !at.After(serve.Add(5*time.Minute)) && early.After(from) {
			return early
		}
	}
	return at
}

// unsettled says whether a fire that is fed at an instant has not settled when people sleep.
func (d *Assembler) unsettled(at time.Time) bool {
	return slices.ContainsFunc(d.Nights(), func(q schedule.Interval) bool {
		return at.After(q.From.Add(-safety.SettleMinutes*time.Minute)) && at.Before(q.To)
	})
}

// shortText says when a fire that nobody feeds is down, and what would last.
func (d *Assembler) shortText(ph *schedule.Phase, f fire.Fire, s fire.Shortfall) string {
	at := func(minute float64) time.Time { return ph.From.Add(instant.Minutes(minute)) }
	up := at(s.OutMinute + s.ShortMinutes)
	text := fmt.Sprintf("The %s fire, fed last at %s, will likely run down at about %s, and nobody is up before %s.",
		f.Layout, say.LocalClock(d.Req.Units, instant.QuarterDown(at(s.FedMinute))), say.LocalClock(d.Req.Units, instant.QuarterDown(at(s.OutMinute))), say.LocalClock(d.Req.Units, up))
	last := s.CanLastMinutes()
	feed := instant.QuarterDown(up.Add(-instant.Minutes(last))).Add(instant.Quarter)
	switch {
	case last > 0 && d.unsettled(feed):
		text += fmt.Sprintf(" It lasts about %s untended, and is fed no later than %s before you sleep: get up by %s and feed it.",
			d.About(shortened(last)), d.About(safety.SettleMinutes), say.LocalClock(d.Req.Units, instant.QuarterDown(at(s.OutMinute))))
	case last > 0:
		text += fmt.Sprintf(" It lasts about %s untended: feed it at %s or later before lights out, or get up by %s.",
			d.About(shortened(last)), say.LocalClock(d.Req.Units, feed), say.LocalClock(d.Req.Units, instant.QuarterDown(at(s.OutMinute))))
	}
	if other, longest := d.longerFire(f, last); longest > 0 {
		text += fmt.Sprintf(" The %s layout lasts up to %s at this level.", other, d.About(shortened(longest)))
	}
	return text
}

// longerFire is the layout that burns longest untended at a level through a night,
// if it is longer than so many minutes.
func (d *Assembler) longerFire(f fire.Fire, than float64) (string, float64) {
	name, longest := "", than
	for _, l := range fire.Layouts() {
		if f.LevelC < l.MinC || f.LevelC > l.MaxC || l.Layout == f.Layout {
			continue
		}
		if m := d.Grill.LongestMinutes(fire.Fire{Layout: l.Layout, LevelC: f.LevelC}, d.Night); m > longest {
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

// fuel adds up the phases.
func (d *Assembler) fuel(phases []schedule.Phase) *schedule.Fuel {
	f := &schedule.Fuel{Kind: d.Req.Grill.Fuel}
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

func (d *Assembler) fuelText(f *schedule.Fuel) {
	u := d.Req.Units
	f.Text = fmt.Sprintf("Buy %s of %s. About %s burn on a usual day; some fires take twice that, so have a spare bag.",
		u.MassToBuy(unit.Mass(f.BuyKg)), f.Kind, say.Mass(u, f.MassKg))
	if f.Kind != schedule.FuelLump {
		f.Text = fmt.Sprintf("Buy %s of briquettes, about %d. About %d burn on a usual day; some fires take twice that, so have a spare bag.",
			u.MassToBuy(unit.Mass(f.BuyKg)), say.RoundTo(f.BuyCount, 10), say.RoundTo(f.Count, 5))
	}
}

// noteFuel says it where a refuel is likely to fall into quiet hours.
func (d *Assembler) noteFuel(p *schedule.Plan) {
	for _, ph := range p.Phases {
		if ph.Burn == nil {
			continue
		}
		for _, r := range ph.Burn.Refuels {
			if d.InQuiet(r.Window.Expected) {
				d.find("refuel-in-quiet", "", nil, fmt.Sprintf(
					"The %s fire needs fuel at %s, in quiet hours.", ph.Layout, say.LocalClock(d.Req.Units, r.Window.Expected)))
			}
		}
	}
}
