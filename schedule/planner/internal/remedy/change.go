package remedy

import (
	"fmt"
	"slices"
	"sort"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/assemble"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/unit"
)

// change is a change of the request that may mend the day. Pain orders changes
// by what they ask of the cook (assumption); price says it in words. In both the
// names of the dishes stand where dishSlot does, and how many they are where
// countSlot does, so that like changes of several dishes are said in one breath.
type change struct {
	code, text, price string
	of, name          string // id and name of the dish; empty for the day
	way               string // tells doses apart that go opposite ways
	bakes             bool   // in the oven, which is then too hot to hold anything
	pain              int
	edits             []schedule.Edit // of the request that it was made for
}

// dose names a kind of change, whatever its size.
func (c change) dose() string { return c.code + " " + c.of + c.way }

// adds says whether the change puts dishes on the menu.
func (c change) adds() bool {
	return c.code == codeSittings || c.code == codeStarters || c.code == codePartAhead
}

// against says whether two changes want the oven at different heat.
func (c change) against(o change) bool {
	return c.bakes && o.code == codeOven || o.bakes && c.code == codeOven
}

// key tells changes apart.
func (c change) key() string { return c.dose() + " " + c.text }

// changesFor lists what may mend a clash, least painful first: changes of its
// dishes, and of the day where the rules in its way can be let go of.
func (m *mender) changesFor(r schedule.Request, t assemble.Trouble) []change {
	var out []change
	for i, dish := range r.Dishes {
		if slices.Contains(t.Dishes, dish.ID) {
			out = append(out, dishChanges(r, i, t)...)
		}
	}
	if t.Over(arrange.RuleRoom) {
		out = append(out, roomChanges(r)...)
	}
	if r.Oven == nil {
		out = append(out, ovenChange(r))
	}
	if t.Over(arrange.RuleQuiet, arrange.RuleEarliest) || hasOwnTime(r, t) {
		out = append(out, laterChanges(r)...)
	}
	if t.Over(arrange.RuleQuiet) {
		out = append(out, m.nightChanges(r, t)...)
	}
	if t.Over(arrange.RuleEarliest) && assemble.HasEarliest(r) {
		out = append(out, m.earlierChanges(r, t)...)
	}
	if t.Over(arrange.RuleQuiet, arrange.RuleEarliest, arrange.RuleHold) {
		out = append(out, confidenceChanges(r)...)
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].pain < out[j].pain })
	return out
}

// hasOwnTime says whether some dish of a clash is served at a time of its own, so
// that moving the main serving sets it apart from the others.
func hasOwnTime(r schedule.Request, t assemble.Trouble) bool {
	return slices.ContainsFunc(r.Dishes, func(d schedule.Dish) bool { return d.Serve != nil && slices.Contains(t.Dishes, d.ID) })
}

// moved is the serving instant of a dish, or the main one where dish is nil, moved
// by a duration. It has its date where that is another than the request's.
func moved(r schedule.Request, dish *schedule.Dish, by time.Duration) schedule.Clock {
	loc, err := r.Location()
	if err != nil {
		loc = time.UTC
	}
	var own *schedule.Clock
	if dish != nil {
		own = dish.Serve
	}
	at := day.ClockOf(day.ClockIn(r, own, loc).Add(by))
	if *at.Date == r.Serve.Date {
		at.Date = nil
	}
	return at
}

// laterMinutes are the delays tried.
var laterMinutes = []int{20, 40, 60, 90, 120, 180, 240, 300, 360, 480}

// latestHour is the last hour to which dinner is moved (assumption).
const latestHour = 22

func laterChanges(r schedule.Request) []change {
	var out []change
	for k, m := range laterMinutes {
		at := moved(r, nil, time.Duration(m)*time.Minute)
		s := schedule.Serve{Date: r.Serve.Date, Time: at.Time, TZ: r.Serve.TZ}
		if at.Date != nil || at.Time.Hours() >= latestHour {
			break
		}
		out = append(out, change{
			code: "later", text: fmt.Sprintf("Serve at %s.", say.TimeOfDay(r.Units, at.Time)), price: fmt.Sprintf("%s later", r.Units.About(time.Duration(m)*time.Minute)),
			pain: 18 + 6*k, edits: []schedule.Edit{schedule.NewEdit("serve", s)},
		})
	}
	return out
}

// loose is the first lower chance that is offered.
const loose = 0.8

// confidenceChanges ask for less certainty.
func confidenceChanges(r schedule.Request) []change {
	var out []change
	for _, c := range []struct {
		to   float64
		text string
		pain int
	}{{loose, "one time in five", 45}, {0.6, "two times in five", 58}} {
		if r.Confidence > c.to {
			out = append(out, change{
				code: codeConfidence, text: fmt.Sprintf("Ask for odds of %.0f%% each.", 100*c.to), price: "each dish runs late " + c.text, pain: c.pain,
				edits: []schedule.Edit{schedule.NewEdit("confidence", c.to)},
			})
		}
	}
	return out
}

// Codes of changes that are looked for again.
const (
	codeConfidence = "confidence"
	codeSurer      = "surer"
	codeWrap       = "wrap"
	codeHotter     = "hotter"
	codeOven       = "oven"
)

// surer is the chance of each dish on a day with more time than usual.
const surer = 0.95

func surerChange(r schedule.Request) change {
	return change{
		code: codeSurer, text: fmt.Sprintf("Ask for odds of %.0f%% for each dish by itself, so that each goes on sooner.", 100*surer), price: "an earlier start, and longer holds on most days", pain: 20,
		edits: []schedule.Edit{schedule.NewEdit("confidence", surer)},
	}
}

func ovenChange(r schedule.Request) change {
	oven := schedule.Oven{Hold: unit.FromFahrenheit(170)}
	return change{
		code: codeOven, text: "Use the kitchen oven, to hold food or to finish it.", price: "it ties up the oven, at " + r.Units.Grate(oven.Hold), pain: 10,
		edits: []schedule.Edit{schedule.NewEdit("oven", oven)},
	}
}
