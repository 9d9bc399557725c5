package schedule

import (
	"fmt"
	"time"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/safety"
)

// Minutes out of the refrigerator before the put-on: enough to trim and season,
// and no more, because raw meat warms at its surface first (common practice, no
// source). The core hardly moves in that time, so the forecast does not count it.
const (
	takeOutLarge = 30
	takeOutSmall = 15
)

// quarter is to what a cook's clock is rounded ahead of the day.
const quarter = 15 * time.Minute

// before are the steps of a dish before it goes on: thawing and salting once for
// all of its pieces, taking out for each batch.
func (it *itinerary) before(dish *item, batches []*placed) {
	if len(batches) == 0 || dish.cut.Style == cut.Timed {
		return
	}
	on := batches[0].on
	for _, p := range batches {
		on = max(on, p.on)
	}
	by := it.d.at(on).Add(-takeOutMinutes(dish))
	if dish.prep.Brined {
		by = it.salt(dish, by)
	}
	if dish.thaws {
		it.thaw(dish, by)
	}
	if dish.fromFrozen {
		it.d.find(frozenFinding(dish))
		return
	}
	for _, p := range batches {
		it.takeOut(p)
	}
}

func takeOutMinutes(dish *item) time.Duration {
	if dish.cut.Style == cut.Small {
		return takeOutSmall * time.Minute
	}
	return takeOutLarge * time.Minute
}

func (it *itinerary) takeOut(p *placed) {
	d := it.d
	on := d.at(p.on)
	at := on.Add(-takeOutMinutes(p.it))
	if later := d.afterQuiet(fixedWindow(at)).Expected; !later.After(on) {
		at = later
	}
	if e := d.req.Earliest; e != nil && at.Before(d.clock(e)) {
		at = d.clock(e)
	}
	text := fmt.Sprintf("Take %s out of the refrigerator and season.", it.name(p))
	if p.it.category == safety.Leftovers {
		text = fmt.Sprintf("Take %s out of the refrigerator.", it.name(p))
		if p.it.cut.Name == parcelCut {
			text = fmt.Sprintf("Take %s out of the refrigerator, in foil: %s, each one layer.", it.name(p), plural(p.count, "parcel"))
		}
	}
	it.add(Step{Kind: StepTakeOut, At: at, Dish: p.it.dish.ID, Batch: p.number, Attended: true, Minutes: float64(p.handsOn()), Text: text,
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
func (it *itinerary) salt(dish *item, by time.Time) time.Time {
	d := it.d
	y, m, n := by.In(d.loc).Date()
	at := time.Date(y, m, n, saltHour, 0, 0, 0, d.loc)
	for at.After(by.Add(-saltLeast)) {
		at = at.AddDate(0, 0, -1)
	}
	at = d.beforeQuiet(at)
	if e := d.req.Earliest; e != nil && at.Before(d.clock(e)) {
		d.find(finding("salt-no-time", dish.path("prep"), dish, fmt.Sprintf(
			"%s cannot be salted the evening before, because nothing starts before %s: salt it just before it goes on.", dish.dish.Name, dayClock(d.clock(e)))))
		return by
	}
	it.add(Step{Kind: StepTakeOut, At: at, Dish: dish.dish.ID, Attended: true, Minutes: handsOnLarge,
		Text: fmt.Sprintf("Salt %s all over, about half a teaspoon of coarse salt a pound (5 g a kilogram), and put back uncovered on a rack.", dish.dish.Name),
		Why:  "a dry brine wants the night"})
	return at
}

// thaw is the thawing of a frozen piece, done by an instant: in the refrigerator,
// or, where the request lets nothing begin so early, in cold water.
func (it *itinerary) thaw(dish *item, by time.Time) {
	d := it.d
	massKg := dish.lots[0].massKg // the heaviest
	slow, fast := safety.ThawInRefrigerator(dish.category, massKg), safety.ThawInColdWater(massKg)
	start := func(t safety.Thaw) time.Time {
		return d.beforeQuiet(by.Add(-minutes(t.MostHours * 60)).Truncate(quarter))
	}
	inWater := by.Add(-minutes(fast.MostHours * 60)).Truncate(quarter)
	// The water is changed every 30 min, and salt may not wait after it.
	watched := len(d.untended(inWater, by)) == 0 && !dish.prep.Brined
	at, how, needs := start(slow), slow, 5.0
	if e := d.req.Earliest; e != nil && at.Before(d.clock(e)) {
		if !watched || inWater.Before(d.clock(e)) {
			d.find(finding("thaw-no-time", dish.path("start"), dish, fmt.Sprintf(
				"There is no time to thaw %s after %s: the refrigerator takes %s, cold water %s. Let the day begin earlier, or buy it thawed.",
				dish.dish.Name, dayClock(d.clock(e)), d.about(slow.MostHours*60), d.about(fast.MostHours*60))))
			return
		}
		at, how, needs = inWater, fast, 10
	}
	it.add(Step{Kind: StepThaw, At: at, Dish: dish.dish.ID, Attended: true, Minutes: needs,
		Text: dish.dish.Name + ": " + how.Sentence, Why: "on a slow fire a frozen centre is refused, so it cooks thawed"})
	f := finding("thaw-first", dish.path("start"), dish, fmt.Sprintf("%s must begin to thaw by %s.", dish.dish.Name, dayClock(at)))
	if watched && how == slow {
		f.Text += fmt.Sprintf(" Forgotten? In cold water it is enough to begin by %s, and it is then cooked at once.", dayClock(inWater))
	}
	d.find(f)
}

// beforeQuiet moves an instant in quiet hours to a quarter of an hour before them.
func (d *day) beforeQuiet(t time.Time) time.Time {
	for range 3 { // quiet hours may touch each other
		for _, q := range d.quietIntervals() {
			if !t.Before(q.From) && t.Before(q.To) {
				t = q.From.Add(-quarter)
			}
		}
	}
	return t
}

// dayClock is a clock with its day, "Fri 20:00".
func dayClock(t time.Time) string { return t.Format("Mon 15:04") }

// batchesOf are the batches of a dish.
func batchesOf(dish *item, all []*placed) []*placed {
	var out []*placed
	for _, p := range all {
		if p.it.index == dish.index {
			out = append(out, p)
		}
	}
	return out
}
