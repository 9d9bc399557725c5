package schedule

import (
	"slices"
	"time"

	"github.com/rickb777/date"

	"example.com/cookday/schedule/internal/logbook"
	"example.com/cookday/schedule/internal/strict"
)

// Happened is what a sound request says has happened already, as the first entries of
// the day's log, by time.
func (r Request) Happened() []Entry {
	r = r.WithDefaults()
	loc, err := time.LoadLocation(r.Serve.TZ)
	if err != nil {
		return nil
	}
	serving, _ := wallInstant(r.Serve.Date, r.Serve.Time, loc)
	at := func(c Clock) time.Time { return pastClock(c, serving) }
	var log []Entry
	if r.Lit != nil {
		log = append(log, Entry{At: at(*r.Lit), Kind: LogLit})
	}
	for _, dish := range r.Dishes {
		if dish.WentOn != nil {
			log = append(log, Entry{At: at(*dish.WentOn), Dish: dish.ID, Kind: LogOn})
		}
		for _, m := range dish.Measured {
			log = append(log, Entry{At: at(m.At), Dish: dish.ID, Kind: LogCore, C: float64(m.Core)})
		}
	}
	return JoinLogs(nil, log)
}

// pastClock is the instant of something that happened before a serving: without a date
// the last such time of day before it.
func pastClock(c Clock, serving time.Time) time.Time {
	if c.Date != nil {
		t, _ := wallInstant(*c.Date, c.Time, serving.Location())
		return t
	}
	y, m, d := serving.Date()
	t := time.Date(y, m, d, c.Time.Hours(), c.Time.Minutes(), 0, 0, serving.Location())
	if t.After(serving) {
		t = time.Date(y, m, d-1, c.Time.Hours(), c.Time.Minutes(), 0, 0, serving.Location())
	}
	return t
}

// happened looks at what a request says has happened already.
func (v *validator) happened() {
	if v.r.Lit != nil {
		v.past("lit", *v.r.Lit)
	}
	for i, dish := range v.r.Dishes {
		path := strict.ItemPath("dishes", i)
		if dish.WentOn == nil {
			if len(dish.Measured) > 0 {
				v.faults.Add(path+".measured", "is of a dish on the fire; write since when it is on: went_on: \"05:10\"")
			}
			continue
		}
		if dish.Ready != "" {
			v.faults.Add(path+".went_on", "is of a dish that is ready the day before; follow that day with a log")
		}
		on, ok := v.past(path+".went_on", *dish.WentOn)
		for j, m := range dish.Measured {
			at := strict.ItemPath(path+".measured", j)
			if t, sound := v.past(at+".at", m.At); ok && sound && t.Before(on) {
				v.faults.Add(at+".at", "%s is before it went on, at %s", told(t), told(on))
			}
			if m.Core < logbook.ColdestReadingC || m.Core > logbook.HottestReadingC {
				v.faults.Add(at+".core", "%s is no temperature of a cook day", v.units.Core(m.Core))
			}
		}
	}
}

// past is the instant of something that happened, not after the serving and not longer
// before it than a plan reaches.
func (v *validator) past(path string, c Clock) (time.Time, bool) {
	if _, ok := v.instant(path, c); !ok || v.serveAt.IsZero() {
		return time.Time{}, false
	}
	t := pastClock(c, v.serveAt)
	if last := v.lastServing(); t.After(last) || last.Sub(t) > Horizon {
		v.faults.Add(path, "%s is not in the %.0f hr before the last serving, %s", told(t), Horizon.Hours(), told(last))
		return t, false
	}
	return t, true
}

// Dated is the request with the day of serving written to every clock that goes by it, so
// that another serving moves none of them.
func (r Request) Dated() Request {
	loc, err := time.LoadLocation(r.Serve.TZ)
	if err != nil {
		return r
	}
	serving, _ := wallInstant(r.Serve.Date, r.Serve.Time, loc)
	day := func(c *Clock) *Clock {
		if c == nil || c.Date != nil {
			return c
		}
		on := r.Serve.Date
		return &Clock{Date: &on, Time: c.Time}
	}
	past := func(c Clock) Clock {
		if c.Date != nil {
			return c
		}
		on := date.NewAt(pastClock(c, serving))
		return Clock{Date: &on, Time: c.Time}
	}
	r.Earliest = day(r.Earliest)
	if r.Lit != nil {
		lit := past(*r.Lit)
		r.Lit = &lit
	}
	r.Dishes, r.Weather.Hours = slices.Clone(r.Dishes), slices.Clone(r.Weather.Hours)
	for i := range r.Weather.Hours {
		r.Weather.Hours[i].From = *day(&r.Weather.Hours[i].From)
	}
	for i := range r.Dishes {
		dish := &r.Dishes[i]
		dish.Earliest, dish.Serve, dish.Measured = day(dish.Earliest), day(dish.Serve), slices.Clone(dish.Measured)
		if dish.WentOn != nil {
			on := past(*dish.WentOn)
			dish.WentOn = &on
		}
		for j := range dish.Measured {
			dish.Measured[j].At = past(dish.Measured[j].At)
		}
	}
	return r
}
