package ahead

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/unit"
	"github.com/rickb777/date/clock"
)

// menuFindings are what there is to say of a menu before anything is arranged.
func menuFindings(r schedule.Request) []schedule.Finding {
	return slices.Concat(heardFindings(r), remarkFindings(r), burningFindings(r), earlyFindings(r), winterFindings(r), assumedFindings(r), guestFindings(r))
}

// heardFindings say how words were read that the form of a request does not have.
func heardFindings(r schedule.Request) []schedule.Finding {
	if len(r.Heard) == 0 {
		return nil
	}
	text := "Check how your words were read: " + strings.Join(r.Heard, ". ") + "."
	return []schedule.Finding{day.Finding(schedule.CodeHeard, "heard", nil, text)}
}

// remarkFindings say of dishes by whose name cooks mean more than is planned.
func remarkFindings(r schedule.Request) []schedule.Finding {
	var out []schedule.Finding
	for i, dish := range r.Dishes {
		if text := cut.Remark(dish.Name); text != "" {
			f := day.Finding("planned-plain", fmt.Sprintf("dishes[%d].name", i), nil, dish.Name+": "+text)
			f.Dishes = []string{dish.ID}
			out = append(out, f)
		}
	}
	return out
}

// askedSurely is more than the odds that a request has by itself; below it nobody asked for any.
const askedSurely = 0.9

// belowAsked says which dishes are less sure than was asked for, where that was more than usual.
func belowAsked(p schedule.Plan) []schedule.Finding {
	asked := p.Request.Confidence
	if !p.Feasible || asked <= askedSurely {
		return nil
	}
	var less, ids []string
	for _, dish := range p.Dishes {
		if math.Round(100*dish.Chance) < math.Round(100*asked) {
			less, ids = append(less, fmt.Sprintf("%s %.0f%%", dish.Name, 100*dish.Chance)), append(ids, dish.ID)
		}
	}
	if len(less) == 0 {
		return nil
	}
	f := day.Finding("below-asked", "confidence", nil, fmt.Sprintf("You asked for odds of %.0f%% for each dish. Not had: %s. A later meal, or what stands under Other ways to do it, may help.", 100*asked, say.Listed(less, "and")))
	f.Dishes = ids
	return []schedule.Finding{f}
}

// Meals between these hours are likely of the evening, and their PM is missing (an
// assumption): nobody grills at five in the morning, and whoever does is only told.
var firstDoubted, lastDoubted = clock.New(1, 0, 0, 0), clock.New(6, 30, 0, 0)

// earlyFindings doubt a meal in the small hours.
func earlyFindings(r schedule.Request) []schedule.Finding {
	doubted := func(path string, c clock.Clock) []schedule.Finding {
		if c < firstDoubted || c > lastDoubted {
			return nil
		}
		at, evening := fmt.Sprintf("%d:%02d", c.Hours(), c.Minutes()), c+12*clock.Hour
		return []schedule.Finding{day.Finding(schedule.CodeEarlyMeal, path, nil, fmt.Sprintf(
			"%s is read as %s in the morning, and the meal is planned for then. For the evening write time: %q and plan again.", at, at, evening.HhMm()))}
	}
	found := doubted("serve.time", r.Serve.Time)
	for i, dish := range r.Dishes {
		if dish.Serve != nil {
			found = append(found, doubted(fmt.Sprintf("dishes[%d].serve", i), dish.Serve.Time)...)
		}
	}
	return found
}

// assumedWeather says what is taken for the weather that nobody said; empty for nothing.
func assumedWeather(r schedule.Request) string {
	if r.Weather.Air != nil || len(winterFindings(r)) > 0 {
		return ""
	}
	text := "the air, " + r.Units.Grate(day.MildDay())
	if r.Weather.Wind == 0 && !r.Weather.Rain {
		text = "the weather, " + r.Units.Grate(day.MildDay()) + ", dry and calm"
	}
	return text
}

// winterFindings doubt the mild day that is assumed of a meal in winter.
func winterFindings(r schedule.Request) []schedule.Finding {
	loc, err := r.Location()
	if err != nil || r.Weather.Air != nil || !winter(r.Serve.Date.In(loc)) {
		return nil
	}
	return []schedule.Finding{day.Finding("assumed-mild", "weather", nil, fmt.Sprintf(
		"Planned for %s, for the weather is not given. In %s it may be far colder, and that takes more coals and time: add the forecast, such as weather: %s, and plan again.",
		r.Units.Grate(day.MildDay()), r.Serve.Date.Month(), weatherLine(r.Units)))}
}

// winter says whether a place that keeps summer time has its clocks on winter time. Of a
// place that does not, nothing is known.
func winter(t time.Time) bool {
	offset := func(t time.Time) int { _, o := t.Zone(); return o }
	january, july := time.Date(t.Year(), 1, 1, 12, 0, 0, 0, t.Location()), time.Date(t.Year(), 7, 1, 12, 0, 0, 0, t.Location())
	return offset(t) < max(offset(january), offset(july))
}

// assumedFindings say in one breath what nobody said and the catalogue knows.
func assumedFindings(r schedule.Request) []schedule.Finding {
	var parts, ids []string
	fed := false
	for _, dish := range r.Dishes {
		if len(dish.Assumed) == 0 {
			continue
		}
		piece := say.Mass(r.Units, float64(dish.Weight))
		part := fmt.Sprintf("%s, %s", dish.Name, piece)
		if dish.Count > 1 || dish.Assumes(schedule.AssumedCount) {
			part = fmt.Sprintf("%s, %d of %s", dish.Name, dish.Count, piece)
		}
		if dish.Assumes(schedule.AssumedLarger) {
			part += ", the larger of what was written"
		}
		fed = fed || dish.Assumes(schedule.AssumedCount)
		parts, ids = append(parts, part), append(ids, dish.ID)
	}
	weather := assumedWeather(r)
	var said []string
	if len(parts) > 0 {
		text := strings.Join(parts, "; ")
		if fed {
			text += fmt.Sprintf("; so many for the guests, %s", headCount(*r.Guests))
		}
		said = append(said, text)
	}
	if weather != "" {
		said = append(said, weather)
	}
	if len(said) == 0 {
		return nil
	}
	text := "Assumed: " + strings.Join(said, "; ") + "."
	if len(parts) > 0 {
		text += " Weigh what you buy and plan again: the hours follow the weight."
	}
	if weather != "" {
		text += " Write the forecast as weather: " + weatherLine(r.Units) + " and plan again: cold and wind take more coals and time."
	}
	f := day.Finding(schedule.CodeAssumed, "dishes", nil, text)
	if f.Dishes = ids; len(parts) == 0 {
		f.Path = "weather"
	}
	return []schedule.Finding{f}
}

// weatherLine is an example of what may be said of the weather.
func weatherLine(u unit.System) string {
	if u == unit.Metric {
		return "{air: 5 C, wind: 12 km/h}"
	}
	return "{air: 40 F, wind: 8 mph}"
}
