package schedule

import (
	"cmp"
	"slices"
	"strings"
)

// Carries says what the value of a kind of entry is.
type Carries string

const (
	CarriesNothing          Carries = "nothing" // or a note, which is kept
	CarriesTemperature      Carries = "temperature"
	CarriesMaybeTemperature Carries = "temperature or nothing"
	CarriesWrap             Carries = "foil, paper, none or nothing"
	CarriesPlace            Carries = "cooler, oven or nothing" // or a note, which is kept
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
	{LogAshCleared, false, CarriesNothing}, {LogWind, false, CarriesSpeed}, {LogRain, false, CarriesNothing}, {LogNoFuel, false, CarriesNothing},
	{LogOn, true, CarriesNothing}, {LogWrapped, true, CarriesWrap}, {LogToOven, true, CarriesMaybeTemperature},
	{LogPulled, true, CarriesNothing}, {LogBoxed, true, CarriesPlace}, {LogCounter, true, CarriesNothing},
	{LogStopped, true, CarriesNothing}, {LogChilled, true, CarriesNothing}, {LogRestarted, true, CarriesNothing},
	{LogServed, false, CarriesNothing}, {LogServingMoved, false, CarriesInstant}, {LogDishAdded, false, CarriesDish}, {LogDishCancelled, true, CarriesNothing},
}

// form is how an entry of the kind is written; false for a word that is no kind.
func (k EntryKind) form() (EntryForm, bool) {
	i := slices.IndexFunc(entryForms, func(f EntryForm) bool { return f.Kind == k })
	if i < 0 {
		return EntryForm{}, false
	}
	return entryForms[i], true
}

// meals says of a kind of the grill that it may be of a dish alone.
func (k EntryKind) meals() bool { return k == LogServed || k == LogServingMoved }

// RainOver is the value of an entry about rain that has stopped.
const RainOver = "over"

// Where a log may have a piece held.
const (
	HeldInCooler = "cooler"
	HeldInOven   = "oven"
)

// heldText is where a text has a piece held: other words for a cooler or an oven are one, and
// what tells neither is a note.
func heldText(text string) string {
	low := strings.ToLower(text)
	switch cooler := strings.Contains(low, "cooler") || strings.Contains(low, "box"); {
	case cooler && !strings.Contains(low, "oven"):
		return HeldInCooler
	case !cooler && strings.Contains(low, "oven"):
		return HeldInOven
	}
	return text
}

// kindNames are all kinds, by name.
func kindNames() []string {
	var names []string
	for _, f := range EntryForms() {
		names = append(names, string(f.Kind))
	}
	return names
}
