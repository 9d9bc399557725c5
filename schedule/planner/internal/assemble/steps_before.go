package assemble

import (
	"fmt"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/unit"
)

// Minutes out of the refrigerator before the put-on: enough to trim and season,
// and no more, because raw meat warms at its surface first (common practice, no
// source). The core hardly moves in that time, so the forecast does not count it.
const (
	takeOutLarge = 30
	takeOutSmall = 15
)

// before are the steps of a dish before it goes on: thawing and salting once for
// all of its pieces, taking out for each batch.
func (it *Itinerary) before(dish *day.Item, batches []*arrange.Placed) {
	if len(batches) == 0 || dish.Cut.Style == cut.Timed {
		return
	}
	on := batches[0].On
	for _, p := range batches {
		on = max(on, p.On)
	}
	by := it.D.At(on).Add(-takeOutMinutes(dish))
	if dish.Dish.ToSalt() {
		by = it.salt(dish, by)
	}
	if dish.Thaws {
		it.thaw(dish, by)
	}
	if dish.FromFrozen {
		it.D.findings.Add(day.FrozenFinding(dish))
		return
	}
	for _, p := range batches {
		it.takeOut(p)
	}
}

func takeOutMinutes(dish *day.Item) time.Duration {
	if dish.Cut.Style == cut.Small {
		return takeOutSmall * time.Minute
	}
	return takeOutLarge * time.Minute
}

func (it *Itinerary) takeOut(p *arrange.Placed) {
	d := it.D
	on := d.At(p.On)
	at := on.Add(-takeOutMinutes(p.It))
	if later := d.AfterQuiet(plans.FixedWindow(at)).Expected; !later.After(on) {
		at = later
	}
	if e := d.Req.Earliest; e != nil && at.Before(d.Clock(e)) {
		at = d.Clock(e)
	}
	text := fmt.Sprintf("%s: out of the refrigerator, and season.", it.name(p))
	if p.It.Category == safety.Leftovers {
		text = fmt.Sprintf("%s: out of the refrigerator.", it.name(p))
		if p.It.Cut.Name == day.ParcelCut {
			text = fmt.Sprintf("%s: out of the refrigerator, in foil: %s, each one layer.", it.name(p), say.Plural(p.Count, "parcel"))
		}
	}
	it.add(schedule.Step{Kind: schedule.StepTakeOut, At: at, Dish: p.It.Dish.ID, Batch: p.Number, Attended: true, Minutes: float64(p.HandsOn()), Text: text,
		Why: "no longer out than this: raw meat stays cold until it cooks"})
}

// Dry brining: salted in the evening before, and at least so long before the
// put-on, for the salt to work in (common practice, no source).
const (
	saltHour  = 20
	saltLeast = 8 * time.Hour
)

// salt is the dry brine on the evening before; it returns its instant, by which a
// frozen piece must have thawed.
func (it *Itinerary) salt(dish *day.Item, by time.Time) time.Time {
	d := it.D
	y, m, n := by.In(d.Loc).Date()
	at := time.Date(y, m, n, saltHour, 0, 0, 0, d.Loc)
	for at.After(by.Add(-saltLeast)) {
		at = at.AddDate(0, 0, -1)
	}
	at = d.beforeQuiet(at)
	if e := d.Req.Earliest; e != nil && at.Before(d.Clock(e)) {
		d.find("salt-no-time", dish.Path("prep"), dish, fmt.Sprintf(
			"%s: no salting the evening before, because nothing starts before %s. Salt it just before it goes on.", dish.Dish.Name, d.Req.Units.ClockOn(d.Clock(e))))
		return by
	}
	it.add(schedule.Step{Kind: schedule.StepSalt, At: at, Dish: dish.Dish.ID, Attended: true, Minutes: arrange.HandsOnLarge,
		Text: fmt.Sprintf("%s: salt all over, about %s, and put back uncovered on a rack.", dish.Dish.Name, saltAmount(d.Req.Units)),
		Why:  "the salt needs the night to work in"})
	return at
}

// saltAmount is how much salt dry-brines meat (common practice, no source).
func saltAmount(u unit.System) string {
	if u == unit.Metric {
		return "5 g of salt per kilogram"
	}
	return "half a teaspoon of coarse salt per pound"
}

// thaw is the thawing of a frozen piece, done by an instant: in the refrigerator, or, where
// the request lets nothing begin so early, in cold water, or in the one and then the other.
func (it *Itinerary) thaw(dish *day.Item, by time.Time) {
	d, massKg := it.D, dish.Lots[0].MassKg // the heaviest
	slow, fast := safety.ThawInRefrigerator(dish.Category, massKg), safety.ThawInColdWater(massKg)
	at := d.beforeQuiet(thawFrom(slow, by))
	inWater := thawFrom(fast, by)
	earliest := at
	if e := d.Req.Earliest; e != nil {
		earliest = d.Clock(e)
	}
	switch watched := it.watched(dish, inWater, by); {
	case !at.Before(earliest):
		it.thaws(dish, at, 5, slow.Sentence)
		f := it.thawFinding(dish, at)
		if watched {
			f.Text += fmt.Sprintf(" Forgotten? In cold water it is enough to begin by %s, and it is then cooked at once.", d.Req.Units.ClockOn(inWater))
		}
		d.findings.Add(f)
	case watched && !inWater.Before(earliest):
		it.thaws(dish, inWater, 10, fast.Sentence)
		d.findings.Add(it.thawFinding(dish, inWater))
	case it.thawsInBoth(dish, earliest, by):
		d.findings.Add(it.thawFinding(dish, earliest))
	default:
		d.find(codeNoThaw, dish.Path("start"), dish, fmt.Sprintf(
			"There is no time to thaw %s after %s: the refrigerator takes %s, cold water %s. It is still frozen when it has to go on.",
			dish.Dish.Name, d.Req.Units.ClockOn(earliest), d.About(slow.MostHours*60), d.About(fast.MostHours*60)))
	}
}

// thawFrom is when a thaw begins that is done by an instant.
func thawFrom(t safety.Thaw, by time.Time) time.Time {
	return by.Add(-instant.Minutes(t.MostHours * 60)).Truncate(instant.Quarter)
}

// watched says whether somebody can change the water every 30 min; salt may not wait after it.
func (it *Itinerary) watched(dish *day.Item, from, by time.Time) bool {
	return len(it.D.Untended(from, by)) == 0 && !dish.Dish.ToSalt()
}

func (it *Itinerary) thaws(dish *day.Item, at time.Time, minutes float64, how string) {
	it.add(schedule.Step{Kind: schedule.StepThaw, At: at, Dish: dish.Dish.ID, Attended: true, Minutes: minutes,
		Text: dish.Dish.Name + ": " + how, Why: "on a slow fire a frozen center is refused, so it cooks thawed"})
}

func (it *Itinerary) thawFinding(dish *day.Item, at time.Time) schedule.Finding {
	return day.Finding("thaw-first", dish.Path("start"), dish, fmt.Sprintf("%s: must begin to thaw by %s.", dish.Dish.Name, it.D.Req.Units.ClockOn(at)))
}

// thawsInBoth lays a piece into the refrigerator from an instant on, and finishes it in cold
// water, as late as that will do; false where the water would run into quiet hours.
func (it *Itinerary) thawsInBoth(dish *day.Item, from, by time.Time) bool {
	d, massKg := it.D, dish.Lots[0].MassKg
	from = d.AfterQuiet(plans.FixedWindow(from)).Expected
	for water := by.Truncate(instant.Quarter); water.After(from); water = water.Add(-instant.Quarter) {
		rest := safety.FinishInColdWater(dish.Category, massKg, water.Sub(from).Hours())
		if water.Add(instant.Minutes(rest.MostHours * 60)).After(by) {
			continue
		}
		if !it.watched(dish, water, by) {
			return false
		}
		it.thaws(dish, from, 5, safety.ThawPart+"at "+d.Req.Units.ClockOn(water)+".")
		it.thaws(dish, water, 10, rest.Sentence)
		return true
	}
	return false
}

// beforeQuiet moves an instant in quiet hours to a quarter of an hour before them.
func (d *Assembler) beforeQuiet(t time.Time) time.Time {
	for range 3 { // quiet hours may touch each other
		for _, q := range d.QuietIntervals() {
			if !t.Before(q.From) && t.Before(q.To) {
				t = q.From.Add(-instant.Quarter)
			}
		}
	}
	return t
}

// batchesOf are the batches of a dish.
func batchesOf(dish *day.Item, all []*arrange.Placed) []*arrange.Placed {
	var out []*arrange.Placed
	for _, p := range all {
		if p.It.Index == dish.Index {
			out = append(out, p)
		}
	}
	return out
}
