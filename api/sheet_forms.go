package api

import (
	"fmt"
	"html/template"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/export"
	"example.com/cookday/schedule/unit"
)

// sheetForms are the forms of a plan's page.
type sheetForms struct {
	plan   schedule.Plan
	log    []logged
	action string
	typed  map[string]string
}

// choice is an option of a list or a button.
type choice struct{ Value, Name string }

// What a cook does to food, and to the fire, as one press of a button. The value is a
// kind of entry and what it carries. Kinds that the library does not know are left out.
var (
	doneToFood = []choice{
		{"on", "On the grill"}, {"pulled", "Off, done"}, {"wrapped foil", "Wrapped in foil"}, {"wrapped paper", "Wrapped in paper"},
		{"boxed cooler", "Into the cooler"}, {"to-oven", "Into the oven"}, {"counter", "On the counter"}, {"chilled", "Into the fridge"}, {"stopped", "Off, not done"}, {"restarted", "Back on"}, {"served", "Served"},
	}
	doneToFire = []choice{{"lit", "Lit"}, {"refuelled", "Fuel added"}, {"fire-out", "Fire went out"}, {"ash-cleared", "Ash cleared"}, {"lid-opened", "Lid opened"}, {"lid-closed", "Lid closed"}, {"no-fuel", "No coals left"}, {"oven-off", "The oven went off"}, {"rain", "It rains"}, {"rain over", "Rain is over"}}
)

// askedOfFire are entries of the fire with a value to type.
var askedOfFire = []struct{ Kind, Name, Label string }{
	{"lit-coals", "Lit coals on", "How many, such as 20"},
	{"unlit-coals", "Unlit coals on", "How many, such as 20"},
	{"coals-out", "Coals taken out", "How many, or a share: 20 or 1/2"},
}

// openings of a vent, as a cook sees them.
var openings = []string{"open", "3/4", "1/2", "1/4", "shut"}

// live is what the forms add to the page; a feed has none.
func (f *sheetForms) live(address string, feed bool, refused *refusal) (l export.Live, err error) {
	l.Script = template.HTML(`<script data-plan="` + address + `">` + sheetScript + "</script>\n") // ours, and a path with a UUID
	if feed {
		return l, nil
	}
	if refused != nil {
		f.typed = refused.typed
		if l.Notice, err = filled("wrong", refused.why); err != nil {
			return l, err
		}
	}
	if l.Forms, err = filled("forms", f.data()); err != nil {
		return l, err
	}
	l.Step = func(s schedule.Step) template.HTML {
		did, label := doneBy(s)
		if did == "" {
			return ""
		}
		return f.button("step", map[string]any{"Action": f.action, "Dish": s.Dish, "Did": did, "Label": label})
	}
	l.Remedy = func(number int) template.HTML {
		if len(f.plan.Remedies[number-1].Edits) == 0 {
			return "" // something to do at the grill
		}
		return f.button("remedy", map[string]any{"Action": f.action, "Revision": f.plan.Revision, "Number": number})
	}
	return l, nil
}

// button is a small form; texts and numbers fill it without an error.
func (f *sheetForms) button(name string, data map[string]any) template.HTML {
	b, _ := filled(name, data)
	return b
}

// doneBy is the entry that says a step was done, and what its button says.
func doneBy(s schedule.Step) (did, label string) {
	switch s.Kind {
	case schedule.StepLight:
		return "lit", "Done: it is lit"
	case schedule.StepRefuel:
		return "refuelled", "Done: fuel is on"
	case schedule.StepPutOn:
		return "on", "Done: it is on"
	case schedule.StepWrap:
		return "wrapped", "Done: it is wrapped"
	case schedule.StepTakeOff:
		return "pulled", "Done: it is off"
	case schedule.StepBox:
		return "boxed cooler", "Done: it is in the cooler"
	case schedule.StepToOven:
		return "boxed oven", "Done: it is in the oven"
	}
	return "", ""
}

func (f *sheetForms) data() map[string]any {
	d := map[string]any{"Action": f.action, "Typed": f.typed, "Dishes": f.plan.Dishes, "Unit": "F", "Readings": f.readings(),
		"OfDish": known(doneToFood), "OfFire": known(doneToFire), "Logged": f.logged(), "Openings": openings}
	if unit.System(f.plan.Units) == unit.Metric {
		d["Unit"] = "C"
	}
	asked := askedOfFire[:0:0]
	for _, a := range askedOfFire {
		if _, ok := formOfKind(schedule.EntryKind(a.Kind)); ok {
			asked = append(asked, a)
		}
	}
	d["Asked"] = asked
	return d
}

func formOfKind(k schedule.EntryKind) (schedule.EntryForm, bool) {
	forms := schedule.EntryForms()
	i := slices.IndexFunc(forms, func(f schedule.EntryForm) bool { return f.Kind == k })
	if i < 0 {
		return schedule.EntryForm{}, false
	}
	return forms[i], true
}

// known are the choices whose kind the library knows.
func known(all []choice) []choice {
	return slices.DeleteFunc(slices.Clone(all), func(c choice) bool {
		kind, _ := kindIn(c.Value)
		_, ok := formOfKind(kind)
		return !ok
	})
}

// measured are the ways to measure a dish that are rarer than inside it.
var measured = []choice{{"coldest", "coldest place of a probe pushed all through"}, {"outer", "just under the surface"}}

// readings are what may be measured: each dish inside, then the grate, then what is
// rarer.
func (f *sheetForms) readings() (list []choice) {
	for _, d := range f.plan.Dishes {
		list = append(list, choice{"core " + d.ID, d.Name + ", inside"})
	}
	list = append(list, choice{"grate", "The air at the grate"}, choice{"gauge", "The gauge in the lid"})
	for _, way := range known(measured) {
		for _, d := range f.plan.Dishes {
			list = append(list, choice{way.Value + " " + d.ID, d.Name + ", " + way.Name})
		}
	}
	return append(list, known([]choice{{"oven", "The kitchen oven, by a thermometer in it"}})...)
}

type loggedLine struct {
	ID   int
	Text string
}

// mostLogged entries are listed to take back, the newest first; older ones are taken back
// by their ids.
const mostLogged = 12

func (f *sheetForms) logged() (list []loggedLine) {
	loc, err := time.LoadLocation(f.plan.TZ)
	if err != nil {
		loc = time.UTC
	}
	for _, l := range slices.Backward(f.log) {
		if l.withdrawn || len(list) == mostLogged {
			continue
		}
		list = append(list, loggedLine{l.id, unit.System(f.plan.Units).Clock(l.At.In(loc)) + " " + f.words(l.Entry)})
	}
	return list
}

// words says an entry in a few words.
func (f *sheetForms) words(e schedule.Entry) string {
	text := string(e.Kind)
	for _, a := range askedOfFire {
		if schedule.EntryKind(a.Kind) == e.Kind {
			text = a.Name
		}
	}
	if e.Kind == schedule.LogVents {
		text = "The vents"
	}
	for _, c := range slices.Concat(doneToFood, doneToFire, measured) {
		if kind, value := kindIn(c.Value); kind == e.Kind && (value == "" || value == e.Value) {
			text = c.Name
		}
	}
	if e.Dish != "" {
		name := e.Dish
		for _, d := range f.plan.Dishes {
			if d.ID == e.Dish {
				name = d.Name
			}
		}
		text = name + ": " + text
	}
	switch form, _ := formOfKind(e.Kind); form.Carries {
	case schedule.CarriesTemperature, schedule.CarriesMaybeTemperature:
		if e.C != 0 || form.Carries == schedule.CarriesTemperature {
			text += " " + unit.System(f.plan.Units).Core(unit.Temperature(e.C))
		}
	case schedule.CarriesInstant:
		if at, err := time.Parse(time.RFC3339, e.Value); err == nil {
			text += " to " + unit.System(f.plan.Units).Clock(at)
		}
	case schedule.CarriesNothing, schedule.CarriesVents, schedule.CarriesCount:
		if e.Value != "" {
			text += fmt.Sprintf(" (%.60s)", e.Value)
		}
	}
	return text
}
