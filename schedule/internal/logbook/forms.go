package logbook

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"example.com/cookday/schedule/internal/say"
)

// Carries says what the value of a kind of entry is: schedule.Carries.
type Carries string

const (
	CarriesNothing          Carries = "nothing"
	CarriesTemperature      Carries = "temperature"
	CarriesMaybeTemperature Carries = "temperature or nothing"
	CarriesWrap             Carries = "foil, paper, none or nothing"
	CarriesPlace            Carries = "cooler, oven or nothing"
	CarriesInstant          Carries = "clock"
	CarriesDish             Carries = "dish as JSON"
	CarriesVents            Carries = "openings of the vents"
	CarriesCount            Carries = "number"
	CarriesAmount           Carries = "number, or a share such as 1/2"
	CarriesSpeed            Carries = "speed of the wind"
)

// Form is how an entry of a kind is written.
type Form struct {
	Kind    Kind
	OfDish  bool // it belongs to a dish, else to the grill
	Carries Carries
}

// Forms are those of all kinds, by name.
func Forms() []Form {
	out := slices.Clone(forms)
	slices.SortFunc(out, func(a, b Form) int { return cmp.Compare(a.Kind, b.Kind) })
	return out
}

var forms = []Form{
	{Core, true, CarriesTemperature}, {Outer, true, CarriesTemperature}, {Coldest, true, CarriesTemperature},
	{Grate, false, CarriesTemperature}, {Gauge, false, CarriesTemperature}, {Oven, false, CarriesTemperature},
	{Lit, false, CarriesNothing}, {Level, false, CarriesTemperature}, {FireOut, false, CarriesNothing},
	{Refuelled, false, CarriesNothing}, {LidOpened, false, CarriesNothing}, {LidClosed, false, CarriesNothing},
	{Vents, false, CarriesVents}, {LitCoals, false, CarriesCount}, {UnlitCoals, false, CarriesCount},
	{CoalsOut, false, CarriesAmount}, {AshCleared, false, CarriesNothing}, {Wind, false, CarriesSpeed}, {Rain, false, CarriesNothing}, {NoFuel, false, CarriesNothing}, {OvenOff, false, CarriesNothing},
	{On, true, CarriesNothing}, {Wrapped, true, CarriesWrap}, {ToOven, true, CarriesMaybeTemperature},
	{Pulled, true, CarriesNothing}, {Boxed, true, CarriesPlace}, {Counter, true, CarriesNothing},
	{Stopped, true, CarriesNothing}, {Chilled, true, CarriesNothing}, {Restarted, true, CarriesNothing},
	{Served, false, CarriesNothing}, {ServingMoved, false, CarriesInstant}, {DishAdded, false, CarriesDish}, {DishCancelled, true, CarriesNothing},
}

// Form is how an entry of the kind is written; false for a word that is no kind.
func (k Kind) Form() (Form, bool) {
	i := slices.IndexFunc(forms, func(f Form) bool { return f.Kind == k })
	if i < 0 {
		return Form{}, false
	}
	return forms[i], true
}

// Meals says of a kind of the grill that it may be of a dish alone.
func (k Kind) Meals() bool { return k == Served || k == ServingMoved }

// RainOver is the value of an entry about rain that has stopped.
const RainOver = "over"

// Where a log may have a piece held.
const (
	HeldInCooler = "cooler"
	HeldInOven   = "oven"
)

// heldText is where a text has a piece held: other words for a cooler or an oven are one.
// No text is where the plan has it; false for what tells neither.
func heldText(text string) (place string, ok bool) {
	low := strings.ToLower(text)
	cooler := slices.ContainsFunc([]string{"cooler", "box", "esky", "chilly bin"}, func(w string) bool { return strings.Contains(low, w) })
	switch oven := strings.Contains(low, "oven"); {
	case cooler && !oven:
		return HeldInCooler, true
	case oven && !cooler:
		return HeldInOven, true
	}
	return "", text == ""
}

// AllBatches is the value of an entry on of a dish all of whose batches went on together.
const AllBatches = "all"

// OnePiece is the value of an entry pulled of one piece of several that nobody names.
const OnePiece = "one"

// pieceSaid is a word for one piece of a dish of several, as an entry has it; "" for none.
func pieceSaid(text string) string {
	text = strings.TrimPrefix(strings.TrimPrefix(text, "the "), "piece ")
	switch i := slices.Index([]string{"1", "2", "3"}, text); {
	case text == OnePiece:
		return OnePiece
	case i >= 0:
		return []string{"first", "second", "third"}[i]
	case slices.Contains(otherPieces, placeOf(text)):
		return placeOf(text)
	}
	return ""
}

// NamesPiece says whether a value is a word for one piece of several.
func NamesPiece(value string) bool { return value != "" && pieceSaid(value) == value }

var coalsRemark = regexp.MustCompile(`^[0-9]{1,4}( (coals|briquettes|briquets|pieces))?$`)

// remark is what an entry of a kind that carries nothing may say beside itself. Anything
// else would be lost, and be it when a fire went out: it is refused.
func (k Kind) remark(text string) (value, sentence string) {
	low := strings.ToLower(text)
	if piece := pieceSaid(low); k == Pulled && piece != "" {
		return piece, ""
	}
	switch {
	case low == "", k == Rain && low == RainOver, k == On && low == AllBatches, k == Refuelled && coalsRemark.MatchString(low):
		return low, ""
	}
	return "", fmt.Sprintf("%s says nothing beside %s: leave it empty. When it was goes into the column time, and a remark on a line of its own that begins with #", say.Quoted(text), k)
}

// KindNames are all kinds, by name.
func KindNames() []string {
	var names []string
	for _, f := range Forms() {
		names = append(names, string(f.Kind))
	}
	return names
}
