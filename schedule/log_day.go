package schedule

import (
	"slices"
	"time"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/logbook"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/internal/strict"
)

// A log may begin before the plan does, for a cook may, and end after the serving.
const (
	logBefore = 24 * time.Hour
	logAfter  = 30 * time.Hour
)

// logDay is what a log needs to know of its plan.
func logDay(p Plan) (logbook.Day, error) {
	loc, err := time.LoadLocation(p.TZ)
	if err != nil {
		return logbook.Day{}, &InputError{Faults: []Fault{{Path: "tz", Sentence: err.Error()}}}
	}
	day := logbook.Day{
		Loc: loc, First: p.ServeAt.Add(-Horizon), Last: p.ServeAt.Add(logAfter), From: cookingFrom(p), To: p.ServeAt,
		Units: p.Request.Units, Dishes: dishesOfLog(p), NewDish: newDishes(p),
		Chimney: fire.Grill{Fuel: fire.Fuel(p.Request.Grill.Fuel)}.ChimneyCoals(),
	}
	if len(p.Steps) > 0 {
		day.First = p.Steps[0].At.Add(-logBefore)
	}
	if day.From.IsZero() {
		day.From = p.ServeAt
	}
	if a := p.Ahead; a != nil && a.Plan != nil {
		day.DayBefore = dishesOfLog(*a.Plan)
	}
	for _, ph := range p.Phases {
		day.Fires = append(day.Fires, logbook.Fire{From: ph.SetupFrom, LevelC: ph.LevelC})
	}
	return day, nil
}

// cookingFrom is when the fire is laid, or the first dish put on.
func cookingFrom(p Plan) time.Time {
	for _, s := range p.Steps { // by time
		if s.Kind == StepLayFire || s.Kind == StepLight || s.Kind == StepPutOn {
			return s.At
		}
	}
	return time.Time{}
}

// dishesOfLog are the dishes of a plan as its log may call them.
func dishesOfLog(p Plan) []logbook.Dish {
	var all []logbook.Dish
	for _, d := range p.Dishes {
		x := logbook.Dish{ID: d.ID, Name: d.Name, Cut: d.Cut, Count: d.Count, Batches: len(d.Batches)}
		if c, ok := cut.Find(d.Cut); ok {
			x.Poultry = c.Poultry
			if x.LeastC = d.MinimumC; x.LeastC != 0 {
				x.RawOvenC = safety.RawOvenC(safety.Category(c.Food), safety.PrepOf(slices.Concat(prepOf(p, d.ID), c.Prep)))
			}
		}
		for _, h := range d.Holds {
			if h.Chosen && h.Method == HoldOven {
				x.OvenC = h.OvenC
			}
		}
		if searsAfterwards := slices.ContainsFunc(d.Batches, func(b Batch) bool {
			return slices.ContainsFunc(b.Stages, func(s Stage) bool { return s.Kind == StageSear })
		}); !searsAfterwards && d.TargetC != 0 {
			x.DoneC = min(d.MinimumC, d.TargetC)
		}
		x.OvenCooks = slices.ContainsFunc(p.Steps, func(s Step) bool { return s.Kind == StepToOven && s.Dish == d.ID })
		all = append(all, x)
	}
	return all
}

// prepOf is what was asked of the making of a dish of a plan.
func prepOf(p Plan, id string) []string {
	for _, d := range p.Request.Dishes {
		if d.ID == id {
			return d.Prep
		}
	}
	return nil
}

// newDishes reads the dishes that a log adds to a menu, one after another. One without an
// id gets one that no dish before it has.
func newDishes(p Plan) func(text string) (logbook.Dish, error) {
	var added []Dish
	return func(text string) (logbook.Dish, error) {
		dish, err := ParseDish(text)
		if err != nil {
			return logbook.Dish{}, err
		}
		if dish.ID == "" {
			dishes := slices.Concat(p.Request.Dishes, added, []Dish{dish})
			fillIDs(dishes)
			dish.ID = dishes[len(dishes)-1].ID
		}
		added = append(added, dish)
		return logbook.Dish{ID: dish.ID, Name: dish.Name, Cut: dish.Cut}, nil
	}
}

// ParseDish reads a dish as JSON, by the rules of a request.
func ParseDish(text string) (Dish, error) {
	faults := &strict.FaultList{}
	tree := strict.ParseJSON([]byte(text), faults)
	var dish Dish
	if tree != nil {
		d := newDecoder(faults)
		d.Teach = func(path string) string { return exampleLine("dishes[]." + path) }
		d.Meant = func(_, name string, value *strict.Node) strict.Meaning { return d.day.Field("dishes[]", name, value) }
		d.dish(&dish)(tree, "")
	}
	return dish, inputError(faults)
}

func entryOf(l logbook.Entry) Entry {
	return Entry{At: l.At, Dish: l.Dish, Kind: EntryKind(l.Kind), C: l.C, Value: l.Value, Line: l.Line}
}

// noted are the entries of a log as its reader has them.
func noted(log []Entry) []logbook.Entry {
	var all []logbook.Entry
	for _, e := range log {
		all = append(all, logbook.Entry{At: e.At, Dish: e.Dish, Kind: logbook.Kind(e.Kind), C: e.C, Value: e.Value, Line: e.Line})
	}
	return all
}
