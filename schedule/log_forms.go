package schedule

import (
	"cmp"
	"slices"
)

// Carries says what the value of a kind of entry is.
type Carries string

const (
	CarriesNothing          Carries = "nothing" // or a note, which is kept
	CarriesTemperature      Carries = "temperature"
	CarriesMaybeTemperature Carries = "temperature or nothing"
	CarriesWrap             Carries = "foil, paper, none or nothing"
	CarriesInstant          Carries = "clock"
	CarriesDish             Carries = "dish as JSON"
	CarriesVents            Carries = "openings of the vents"
	CarriesCount            Carries = "number"
	CarriesSpeed            Carries = "speed of the wind"
)

// EntryForm is how an entry of a kind is written.
type EntryForm struct {
	Kind    EntryKind
	OfDish  bool // it belongs to a dish, else to the grill
	Carries Carries
}

// EntryForms are those of all kinds, by name.
func EntryForms() []EntryForm {
	out := slices.Clone(entryForms)
	slices.SortFunc(out, func(a, b EntryForm) int { return cmp.Compare(a.Kind, b.Kind) })
	return out
}

var entryForms = []EntryForm{
	{LogCore, true, CarriesTemperature}, {LogOuter, true, CarriesTemperature}, {LogColdest, true, CarriesTemperature},
	{LogGrate, false, CarriesTemperature}, {LogGauge, false, CarriesTemperature}, {LogOven, false, CarriesTemperature},
	{LogLit, false, CarriesNothing}, {LogLevel, false, CarriesTemperature}, {LogFireOut, false, CarriesNothing},
	{LogRefuelled, false, CarriesNothing}, {LogLidOpened, false, CarriesNothing}, {LogLidClosed, false, CarriesNothing},
	{LogVents, false, CarriesVents}, {LogLitCoals, false, CarriesCount}, {LogUnlitCoals, false, CarriesCount},
	{LogAshCleared, false, CarriesNothing}, {LogWind, false, CarriesSpeed},
	{LogOn, true, CarriesNothing}, {LogWrapped, true, CarriesWrap}, {LogToOven, true, CarriesMaybeTemperature},
	{LogPulled, true, CarriesNothing}, {LogBoxed, true, CarriesNothing}, {LogCounter, true, CarriesNothing},
	{LogStopped, true, CarriesNothing}, {LogChilled, true, CarriesNothing}, {LogRestarted, true, CarriesNothing},
	{LogServingMoved, false, CarriesInstant}, {LogDishAdded, false, CarriesDish}, {LogDishCancelled, true, CarriesNothing},
}

// form is how an entry of the kind is written; false for a word that is no kind.
func (k EntryKind) form() (EntryForm, bool) {
	i := slices.IndexFunc(entryForms, func(f EntryForm) bool { return f.Kind == k })
	if i < 0 {
		return EntryForm{}, false
	}
	return entryForms[i], true
}

// kindNames are all kinds, by name.
func kindNames() []string {
	var names []string
	for _, f := range EntryForms() {
		names = append(names, string(f.Kind))
	}
	return names
}
