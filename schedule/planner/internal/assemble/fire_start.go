package assemble

import (
	"fmt"
	"math"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/steer"
	"example.com/cookday/schedule/unit"
)

// startVents are the vents of a fire: of one that grows from few lit coals those under which this grill comes to the level
// from below, in the phase's first weather; of an all-lit one those of practice.
func (d *Assembler) startVents(ph *schedule.Phase, f fire.Fire) fire.VentAdvice {
	v := fire.Vents(f)
	hours := d.WeatherBetween(ph.From, ph.To)
	if !d.grows(f) || len(hours) == 0 {
		return v
	}
	s := d.startOf(f, hours[0].Weather)
	s.Night = len(d.Unwatched([]schedule.Phase{*ph})) > 0
	v.TrimBottom = !d.Grill.Lays()
	set, _ := s.Vents()
	v.OpenTop, v.OpenBottom = set.Top, set.Bottom
	return v
}

// startOf is a fire that grows on this grill, in one weather.
func (d *Assembler) startOf(f fire.Fire, w fire.Weather) steer.Start {
	s := steer.Start{Grill: d.Grill, Own: RecordOf(d.Req.Grill.Own), Layout: f.Layout, Weather: w, LevelC: f.LevelC, SteerBottom: d.Grill.SteersBottom()}
	if !d.Grill.Lays() {
		s.Layout = fire.Banked
	}
	return s
}

// grows says whether a fire is lit from a few coals, with the lid on.
func (d *Assembler) grows(f fire.Fire) bool {
	return d.Grill.Charcoal() && (f.Layout == fire.Banked || f.Layout == fire.Ring || !d.Grill.Lays())
}

// belowStartK is how far under the level the vents go to their marks: a grate comes up five times faster than down
// (assumption).
const belowStartK = 25 / 1.8

// setVentsLead is how long before the fire is to be ready.
const setVentsLead = 3 * time.Minute

// growing are the steps of a fire that grows: poured with all vents open, and closed to its marks from below.
func (it *Itinerary) growing(ph *schedule.Phase, poured time.Time, pour string) {
	d, marks := it.D, ph.From.Add(-setVentsLead)
	s := schedule.Step{Kind: schedule.StepSetVents, At: poured, Phase: ph.Number, Attended: true, Minutes: 2, Why: "the first coals are gray at the edge by now"}
	open := ph.TopOpen > 0.99 && ph.LowOpen > 0.99 // and stay so
	if open || !marks.After(poured.Add(setVentsLead)) || d.InQuiet(marks) || it.goesToSleep(marks) {
		s.Text = pour + " Lid and vents: " + ph.Vents + "."
		it.add(s)
		return
	}
	s.Text = pour + " Lid on, " + d.AllVents() + " fully open."
	it.add(s)
	s.At, s.GrateC, s.Why = marks, ph.LevelC, "from below: a grate comes up easily and goes down slowly"
	s.Text = fmt.Sprintf("Once the grate reads %s, set lid and vents: %s.", d.Grate(ph.LevelC-belowStartK), ph.Vents)
	it.add(s)
}

// A load of cold food that cools the grate is this heavy, kg; it is looked at half an hour after it went on, and takes its
// heat for up to two hours (common practice, no source).
const (
	ColdLoadKg = 1.5
	coldLook   = 30 * time.Minute
	ColdTakes  = 2 * time.Hour
)

// coldStart is the look after the first food of a low fire went on. It tells what cold food does.
func (it *Itinerary) coldStart(ph *schedule.Phase, over overFire) {
	d, kg := it.D, 0.0
	var on time.Time
	for _, p := range it.All {
		if len(p.Phases) == 0 || p.Phases[0].First != ph.Number-1 || p.Oven && !p.Carried {
			continue
		}
		if t := d.At(p.On); on.IsZero() || t.Before(on) {
			on = t
		}
		kg += p.MassKg * math.Max(float64(p.Count), 1)
	}
	at := on.Add(coldLook)
	if on.IsZero() || kg < ColdLoadKg || ph.Band != schedule.BandLow || d.InQuiet(at) || it.goesToSleep(at) || !at.Before(ph.To) || over.expectedOff(at) {
		return
	}
	it.addAs(schedule.Step{Kind: schedule.StepCheckFire, At: at, Phase: ph.Number, Attended: true, Minutes: 1, GrateC: ph.LevelC,
		Text: fmt.Sprintf("Check the grate, and don't chase it: cold food takes %s for up to two hours. From %s to %s leave the vents alone.",
			coldTakes(d.Req.Units), d.Grate(ph.LevelC-ColdMostK), d.Grate(ph.LevelC+belowStartK)),
		Why: "what is chased with the vents now is too hot later"}, Apart)
}

func coldTakes(u unit.System) string {
	if u == unit.Metric {
		return "8 to 22 °C"
	}
	return "15 to 40 °F"
}

// Apart is from where steps are numbered that are no part of a row of their sort.
const Apart = 100

// ColdMostK is the most that cold food takes of the grate.
const ColdMostK = 40 / 1.8

// lightFor is the lighting of coals that are added lit, a step of its own while somebody is up.
func (it *Itinerary) lightFor(ph *schedule.Phase, number int, r schedule.Refuel, over overFire) bool {
	at := r.Window.Expected.Add(-instant.Minutes(chimneyLead))
	if it.D.InQuiet(at) || it.goesToSleep(at) || !at.After(ph.From) {
		return false
	}
	it.addAs(schedule.Step{Kind: schedule.StepLight, At: at, Phase: ph.Number, Attended: true, Minutes: 3, Why: "lit coals are added to lit ones",
		Text: over.ifStillOn("Light "+countText(it.D.Req.Units, r.Count, r.MassKg)+" in the chimney, to add in 20 min.", r.Window.Expected)}, Apart+number)
	return true
}

// chimneyLead is how long a chimney takes, minutes (common practice, no source).
const chimneyLead = 20

// AddLit is how lit coals are added, in the words of safety.
const AddLit = "Pour them in through a hinged side of the grate. Where it has none, take food and grate off first: the food on a tray under foil, raw food on a tray of its own, 10 min at most. Wear long gloves, and pour away from you."

// RecordOf is a grill's own record as the steer room takes it; nil for none.
func RecordOf(own *schedule.OwnGrill) *steer.Record {
	if own == nil {
		return nil
	}
	r := &steer.Record{Cooks: own.Cooks, Figures: map[string]steer.Figure{}}
	for _, f := range own.Figures {
		r.Figures[f.Name] = steer.Figure{Middle: f.Times, Spread: f.Spread}
	}
	return r
}

// noteFires says what the weather takes of the fires, what no fire is lit in, and what the vents rest on.
func (d *Assembler) noteFires(p *schedule.Plan) {
	most, wind := 1.0, 0.0
	for i, ph := range p.Phases {
		if ph.Burn == nil {
			continue
		}
		calm := d.Grill.RateKgPerHour(ph.LevelC, fire.Weather{AirC: mildC})
		for _, s := range d.WeatherBetween(p.Phases[i].SetupFrom, ph.To) {
			most, wind = math.Max(most, d.Grill.RateKgPerHour(ph.LevelC, s.Weather)/calm), math.Max(wind, s.Weather.WindMS)
		}
	}
	if wind > stormMS {
		d.find("too-windy", "weather.wind", nil, fmt.Sprintf("Wind of %s is forecast: don't light a fire in it, it carries sparks. Take another day, or cook in the oven.",
			d.Req.Units.Speed(unit.Speed(wind))))
	}
	if most >= weatherWorth {
		d.find("fire-weather", "weather", nil, fmt.Sprintf("Wind, cold or rain burn up to %.0f%% more coals than a calm day of %s; the amounts here allow for it. If the grate sinks, give it air before coals. Before you light, turn the bottom vents away from the wind; a screen of metal or stone goes on one side, %s off, nothing overhead.",
			100*(most-1), d.Core(mildC), map[bool]string{true: "1 m", false: "3 ft"}[d.Req.Units == unit.Metric]))
	}
	if own := d.Req.Grill.Own; own != nil && p.Fuel != nil {
		d.find("own-grill", "grill.own", nil, ownText(own))
	}
}

// ownText is what of a plan rests on cooks on its grill.
func ownText(own *schedule.OwnGrill) string {
	text := fmt.Sprintf("The vent settings rest on what %s on this grill taught.", say.Plural(own.Cooks, "cook"))
	f, paced := own.Figure(schedule.OwnPace)
	if !paced {
		return text
	}
	text = fmt.Sprintf("The vent settings and the times rest on what %s on this grill taught.", say.Plural(own.Cooks, "cook"))
	return text + paceText(f.Times)
}

// paceText is by how much the pace of a grill is not the usual one, behind a sentence; empty where it is.
func paceText(times float64) string {
	by := math.Round(100 * (times - 1))
	switch {
	case by >= 1:
		return fmt.Sprintf(" What cooks low takes %.0f percent longer here than usual, and the times take it so.", by)
	case by <= -1:
		return fmt.Sprintf(" What cooks low takes %.0f percent less time here than usual, and the times take it so.", -by)
	}
	return ""
}

// OwnTimes is what of the times of one piece rests on cooks on its grill.
func OwnTimes(own *schedule.OwnGrill, direct bool) string {
	cooks := say.Plural(own.Cooks, "cook")
	f, paced := own.Figure(schedule.OwnPace)
	switch {
	case direct:
		return fmt.Sprintf("The record of this grill, from %s, does not count here: it is of what cooks low, beside the coals.", cooks)
	case !paced:
		return fmt.Sprintf("The record of this grill, from %s, has no pace in it yet: the times are those of any grill.", cooks)
	}
	return fmt.Sprintf("The times rest on what %s on this grill taught.", cooks) + paceText(f.Times)
}

// Weather that is worth a word takes so many times the coals of a calm mild day (assumption).
const (
	weatherWorth = 1.15
	stormMS      = 20 * 0.44704 // 20 mph (judgment)
)

var mildC = unit.FToC(70)
