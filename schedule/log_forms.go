package schedule

import "example.com/cookday/schedule/internal/logbook"

// Carries says what the value of a kind of entry is.
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

// EntryForm is how an entry of a kind is written.
type EntryForm struct {
	Kind    EntryKind
	OfDish  bool // it belongs to a dish, else to the grill
	Carries Carries
}

// EntryForms are those of all kinds, by name.
func EntryForms() []EntryForm {
	var out []EntryForm
	for _, f := range logbook.Forms() {
		out = append(out, EntryForm{EntryKind(f.Kind), f.OfDish, Carries(f.Carries)})
	}
	return out
}

// Means says what an entry of the kind tells, in a few words; empty for no kind.
func (k EntryKind) Means() string { return logbook.Kind(k).Means() }

// RainOver is the value of an entry about rain that has stopped.
const RainOver = "over"

// AllBatches is the value of an entry on of a dish all of whose batches went on together.
const AllBatches = "all"

// OnePiece is the value of an entry pulled of one piece of several that nobody names; others
// name it: first, second, small, big.
const OnePiece = logbook.OnePiece

// OfPiece says whether the value of an entry names one piece of several.
func (e Entry) OfPiece() bool { return logbook.NamesPiece(e.Value) }

// Where a log may have a piece held.
const (
	HeldInCooler = "cooler"
	HeldInOven   = "oven"
)
