package schedule

import (
	"fmt"
	"sort"
	"time"

	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/unit"
)

// itinerary collects the steps of a plan.
type itinerary struct {
	d     *day
	plan  *Plan
	a     arrangement
	steps []Step
	count map[string]int // steps so far of a dish, batch and kind
}

// steps lists what to do and to expect, by instant.
func (d *day) steps(p *Plan, a arrangement, all []*placed) []Step {
	it := &itinerary{d: d, plan: p, a: a, count: map[string]int{}}
	it.fires()
	for i := range d.items {
		it.before(&d.items[i], batchesOf(&d.items[i], all))
	}
	for _, b := range all {
		it.cook(b)
		it.wait(b)
	}
	it.servings()
	sort.SliceStable(it.steps, func(i, j int) bool {
		a, b := it.steps[i], it.steps[j]
		if !a.At.Equal(b.At) {
			return a.At.Before(b.At)
		}
		return stepRank[a.Kind] < stepRank[b.Kind]
	})
	return it.steps
}

// stepRank orders steps of one instant: what ends comes before what begins.
var stepRank = map[string]int{
	StepFireReady: 1, StepSetVents: 2, StepTakeOff: 3, StepChangeFire: 4, StepPutOn: 5, StepWrap: 6, StepSear: 6, StepRest: 7,
	StepBox: 8, StepToOven: 8, StepHold: 8, StepSlice: 9, StepServe: 10, StepCloseDown: 11,
}

// add files a step with its id. Steps of a kind are numbered within dish and
// batch in the order they are added.
func (it *itinerary) add(s Step) {
	key := s.sort()
	it.count[key]++
	group := s.Batch
	if s.Dish == "" {
		group = s.Phase
	}
	s.ID = stepID(it.plan.ID, s.Dish, group, s.Kind, it.count[key])
	if s.Window == (Window{}) {
		s.Window = fixedWindow(s.At)
	}
	it.steps = append(it.steps, s)
}

// addSecond adds a step that has the id of the second of its sort even where there
// is no first one: a sheet without a first look may have one later.
func (it *itinerary) addSecond(s Step) {
	it.count[s.sort()] = max(it.count[s.sort()], 1)
	it.add(s)
}

// sort is what the ids of steps count within.
func (s Step) sort() string { return fmt.Sprintf("%s/%d/%d/%s", s.Dish, s.Batch, s.Phase, s.Kind) }

// fires are the steps that tend the fire.
func (it *itinerary) fires() {
	for i := range it.plan.Phases {
		ph := &it.plan.Phases[i]
		f := it.a.hearth.fires[it.a.solution.Phases[i].Fire]
		if i == 0 {
			it.light(ph, f)
		} else {
			it.change(ph, &it.plan.Phases[i-1], f)
		}
		it.add(Step{Kind: StepFireReady, At: ph.From, Phase: ph.Number, GrateC: ph.LevelC, Why: "the fire needs this long to come up",
			Text: fmt.Sprintf("The grate should be there now: %s. Not yet? Wait. %s", it.d.level(ph.LevelC), it.gauge(ph))})
		it.tend(ph)
	}
	if n := len(it.plan.Phases); n > 0 {
		it.closeDown(&it.plan.Phases[n-1])
	}
}

// gauge says what the lid gauge shows, where that helps.
func (it *itinerary) gauge(ph *Phase) string {
	if ph.Band != bandLow || it.d.req.Grill.GaugeOffset == 0 {
		return it.d.slack() + " either way is good enough."
	}
	return fmt.Sprintf("The lid gauge will show about %s. %s either way is good enough.", it.d.grate(ph.GaugeC), it.d.slack())
}

func (it *itinerary) light(ph *Phase, f fire.Fire) {
	d := it.d
	desc, charcoal := fire.Describe(f.Layout)
	why := reasonText(it.a, it.a.solution.WhyLight)
	if !charcoal || d.grill.Kind == fire.OtherKind {
		it.add(Step{Kind: StepLight, At: ph.SetupFrom, Phase: ph.Number, Attended: true, Minutes: handsLight, Why: why,
			Text: "Light the grill and bring it to " + d.level(ph.LevelC) + "."})
		return
	}
	lay := d.beforeQuiet(ph.SetupFrom.Add(-minutes(float64(desc.LayMinutes))))
	if e := d.req.Earliest; e != nil && lay.Before(d.clock(e)) {
		lay = earlier(d.clock(e), ph.SetupFrom)
	}
	it.add(Step{Kind: StepLayFire, At: lay, Phase: ph.Number, Attended: true, Minutes: float64(desc.LayMinutes),
		Text: "Lay the fire, " + ph.Layout + ": " + d.layText(ph.Burn) + ". " + ph.Build, Why: "laid before it is lit"})
	it.add(Step{Kind: StepLight, At: ph.SetupFrom, Phase: ph.Number, Attended: true, Minutes: handsLight, Why: why,
		Text: "Light " + d.litText(ph.Burn) + ", outdoors, away from walls and roofs."})
	it.add(Step{Kind: StepSetVents, At: ph.SetupFrom.Add(minutes(float64(d.grill.PourMinutes(f)))), Phase: ph.Number, Attended: true, Minutes: 2,
		Text: "Pour the lit coals in place. Lid and vents: " + ph.Vents + ".", Why: "the first coals are grey at the edge by now"})
}

func (it *itinerary) change(ph, before *Phase, f fire.Fire) {
	d := it.d
	from := it.a.hearth.fires[it.a.solution.Phases[ph.Number-2].Fire]
	left := 0.0
	if b := before.Burn; b != nil {
		left = b.LeftKg
	}
	next := d.grill.Plan(f, fire.Need{Slices: d.weatherBetween(ph.From, ph.To)})
	c := d.grill.ChangeAdvice(from, f, left, next)
	if c.LeadMinutes > 0 {
		it.add(Step{Kind: StepLight, At: ph.SetupFrom.Add(-minutes(float64(c.LeadMinutes))), Phase: ph.Number, Attended: true, Minutes: 3,
			Text: "Light a chimney for the change: " + d.amountText(c.Add) + "." + d.fewerText(c), Why: "the coals must be lit before they are added"})
	}
	if c.ProbesOut {
		it.add(Step{Kind: StepProbesOut, At: ph.SetupFrom, Phase: ph.Number, Attended: true, Minutes: 1,
			Text: "Probes and cables out of the grill.", Why: "searing heat is above what they stand"})
	}
	text := "Change the fire to " + ph.Layout + " (" + d.level(ph.LevelC) + "). "
	if c.LiftGrate && it.rides(ph.Number) {
		text += "Food off the grate first. "
	}
	it.add(Step{Kind: StepChangeFire, At: ph.SetupFrom, Phase: ph.Number, Attended: true, Minutes: handsChange, GrateC: ph.LevelC,
		Text: text + c.Coals, Why: "the next dishes want another heat"})
	if at := ph.SetupFrom.Add(handsChange * time.Minute); ph.Vents != "" && !d.inQuiet(at) && at.Before(ph.From) {
		it.add(Step{Kind: StepSetVents, At: at, Phase: ph.Number, Attended: true, Minutes: 2, GrateC: ph.LevelC,
			Text: "Lid and vents: " + ph.Vents + ".", Why: "the coals lie as they should"})
	}
}

// rides says whether food lies on the grate while the fire becomes phase n.
func (it *itinerary) rides(n int) bool {
	for _, dish := range it.plan.Dishes {
		for _, b := range dish.Batches {
			for _, s := range b.Stages {
				if s.Phase > 0 && s.Phase < n && s.PhaseTo >= n {
					return true
				}
			}
		}
	}
	return false
}

// tend are the refuels and the looks at the fire within a phase.
func (it *itinerary) tend(ph *Phase) {
	d := it.d
	if ph.Burn == nil {
		return
	}
	for _, r := range ph.Burn.Refuels {
		text := "Add " + countText(d.req.Units, r.Count, r.MassKg) + ", unlit, where the fire goes next"
		if r.Lit {
			text = "Add " + countText(d.req.Units, r.Count, r.MassKg) + ", lit, to the coals: start the chimney 20 min before"
		}
		it.add(Step{Kind: StepRefuel, At: r.Window.Expected, Window: r.Window, Phase: ph.Number, Attended: true, Minutes: 5,
			Text: text + ". Open the bottom vent, wait a minute, then lift the lid away from you.", Why: "what lies there runs down about then"})
	}
	every := time.Duration(checkLow)
	if ph.Band != bandLow {
		every = checkHot
	}
	text := "Look at the grate thermometer: " + d.level(ph.LevelC) + ". Touch the top vent only if it is " + d.slack() + " off."
	for at := ph.From.Add(every); at.Before(ph.To.Add(-every / 3)); at = at.Add(every) {
		if d.inQuiet(at) {
			continue
		}
		it.add(Step{Kind: StepCheckFire, At: at, Phase: ph.Number, Attended: true, Minutes: 1, GrateC: ph.LevelC,
			Text: text, Why: "fires drift; leave the lid shut, air makes them hotter"})
		text = "The fire again: " + d.level(ph.LevelC) + "?"
	}
}

// Fires are looked at every 50 minutes in the hot band (common practice 45-60,
// no source), every two hours in the low one (assumption).
const (
	checkHot = 50 * time.Minute
	checkLow = 2 * time.Hour
)

func (it *itinerary) closeDown(last *Phase) {
	c := fire.CloseDown(last.LevelC, it.d.air.AirC)
	text := "Shut the grill down."
	if last.Burn != nil {
		text = fmt.Sprintf("Close all vents. The shell stays too hot to touch for about %s; ash stays hot for up to %d h.",
			it.d.about(float64(c.TouchMinutes)), c.ColdHours)
	}
	it.add(Step{Kind: StepCloseDown, At: last.To, Phase: last.Number, Attended: true, Minutes: 2, Text: text, Why: "nothing is on the grate any more"})
}

// servings are one step for each instant at which food is served, or leaves.
func (it *itinerary) servings() {
	d := it.d
	type leaving struct {
		at     int
		travel float64
	}
	names := map[leaving][]string{}
	var order []leaving
	for i := range d.items {
		l := leaving{d.items[i].serve, d.items[i].travelMinutes()}
		if len(names[l]) == 0 {
			order = append(order, l)
		}
		names[l] = append(names[l], d.items[i].dish.Name)
	}
	sort.SliceStable(order, func(i, j int) bool { return order[i].at > order[j].at })
	for _, l := range order {
		s := Step{Kind: StepServe, At: d.at(float64(l.at)), Attended: true, Minutes: 5, Why: "the asked time"}
		switch list := listed(names[l], "and"); {
		case d.chill:
			s.Text, s.Why = "Into the refrigerator, one layer in shallow pans, sooner if done sooner: "+list+".", "chilled within 2 h and 6 h, and cold overnight"
		case l.travel > 0:
			s.Text, s.Why = fmt.Sprintf("Leave with %s, boxed: %s on the way.", list, d.about(l.travel)), fmt.Sprintf("on the table at %s", localClock(d.at(float64(l.at)-l.travel)))
		default:
			s.Text = "Serve: " + list + "."
		}
		it.add(s)
	}
}

// layText, litText and amountText say amounts of fuel in the cook's measure.
func (d *day) layText(b *Burn) string {
	if b == nil {
		return "as the grill's maker says"
	}
	text := countText(d.req.Units, b.Lay, b.LayKg)
	if b.Rows != "" {
		text += fmt.Sprintf(" in rows %s along %s of the edge", b.Rows, d.req.Units.Length(unit.Length(b.ArcM)))
	}
	if b.Chunks > 0 {
		text += fmt.Sprintf(", %d chunks of wood on top, one of them where the fire begins", b.Chunks)
	}
	return text
}

func (d *day) litText(b *Burn) string {
	if b == nil {
		return "the coals"
	}
	if b.Light > 0 && b.Light < b.Lay {
		return fmt.Sprintf("%d of them (%s)", b.Light, chimneyText(b.Chimneys))
	}
	return countText(d.req.Units, b.Light, b.LightKg) + fmt.Sprintf(" (%s)", chimneyText(b.Chimneys))
}

func (d *day) amountText(a fire.Amount) string {
	return countText(d.req.Units, a.Count, a.MassKg) + fmt.Sprintf(" (%s)", chimneyText(a.ChimneyFills))
}

// fewerText says how few are enough if the bed still glows.
func (d *day) fewerText(c fire.Change) string {
	if c.AddAtLeast.MassKg > c.Add.MassKg*0.8 || c.AddAtLeast.MassKg <= 0 {
		return ""
	}
	return " Where the bed still glows well, " + countText(d.req.Units, c.AddAtLeast.Count, c.AddAtLeast.MassKg) + " are enough."
}

// countText is whole briquettes, to five above twenty, or a mass of lump.
func countText(u unit.System, count int, kg float64) string {
	switch {
	case count == 0:
		return mass(u, kg) + " of lump"
	case count > 20:
		return fmt.Sprintf("%d briquettes", (count+4)/5*5)
	}
	return fmt.Sprintf("%d briquettes", count)
}

// chimneyText is a fill to the quarter, of a six-quart chimney.
func chimneyText(fills float64) string {
	switch q := int(fills*4 + 0.5); {
	case q <= 0:
		return "a few in the chimney"
	case q == 1:
		return "a quarter chimney"
	case q == 2:
		return "half a chimney"
	case q == 3:
		return "three quarters of a chimney"
	case q <= 5:
		return "a full chimney"
	default:
		return fmt.Sprintf("%d chimney fills", (q+3)/4)
	}
}
