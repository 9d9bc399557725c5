package schedule

import (
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule/internal/logbook"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/strict"
)

// CheckLog holds the entries of a log against the dishes of a day, as of now. What it
// gives back names dishes by their ids and is on the clock of now; the log itself
// stays. All faults come as one *[InputError].
func CheckLog(log []Entry, dishes []Dish, now time.Time) ([]Entry, error) {
	c := logChecker{known: map[string]string{}, now: now}
	for _, x := range dishes {
		c.known[x.ID], c.known[strings.ToLower(x.Name)] = x.ID, x.ID
	}
	out := slices.Clone(log)
	for i := range out {
		c.entry(&out[i], strict.ItemPath("log", i))
	}
	return out, inputError(&c.faults)
}

// logChecker looks at the entries of a log one after another: a dish is known once it
// was added.
type logChecker struct {
	known  map[string]string // names and ids, to ids
	now    time.Time
	faults strict.FaultList
}

func (c *logChecker) entry(e *Entry, path string) {
	form, ok := logbook.Kind(e.Kind).Form()
	if !ok {
		c.faults.AddLine(path+".kind", e.Line, "%s is not known; there are %s", say.Quoted(string(e.Kind)), say.Listed(logbook.KindNames(), "and"))
		return
	}
	c.dish(e, path, form.OfDish)
	if e.At.After(c.now) {
		c.faults.AddLine(path+".time", e.Line, "%s is after now, %s", c.instant(e.At), c.instant(c.now))
	}
	if e.C < logbook.ColdestReadingC || e.C > logbook.HottestReadingC || e.C != e.C {
		c.faults.AddLine(path+".temp_c", e.Line, "%v is no temperature of a cook day", e.C)
	}
	e.At = e.At.In(c.now.Location())
}

func (c *logChecker) dish(e *Entry, path string, needed bool) {
	if e.Kind == LogDishAdded && e.Dish != "" {
		c.known[e.Dish] = e.Dish
	}
	if strings.EqualFold(e.Dish, "grill") {
		e.Dish = ""
	}
	if e.Dish == "" && !needed {
		return
	}
	id, ok := c.known[e.Dish]
	if !ok {
		id, ok = c.known[strings.ToLower(e.Dish)]
	}
	if !ok {
		c.faults.AddLine(path+".dish", e.Line, "%s is no dish of this plan", say.Quoted(e.Dish))
	}
	e.Dish = id
}

func (c *logChecker) instant(t time.Time) string {
	return t.In(c.now.Location()).Format("2006-01-02 15:04")
}
