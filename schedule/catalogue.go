package schedule

import (
	"cmp"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/internal/strict"
)

// Catalogue is every cut that a request may name, as commands and services show it.
type Catalogue struct {
	Version string `json:"version"` // changes with any figure
	Cuts    []Cut  `json:"cuts"`    // by name
}

// Cut is an entry of the catalogue. What does not apply to a cut is left out.
type Cut struct {
	Name               string        `json:"name"` // what a request calls it
	Title              string        `json:"title"`
	Also               []string      `json:"also"`     // other names cooks use
	Estimate           bool          `json:"estimate"` // its dimensions were never compared with a cook
	Style              string        `json:"style"`    // tough, roast, bird, small, timed
	Food               string        `json:"food"`     // row of the published safety charts
	MinPieceKg         float64       `json:"min_piece_kg"`
	MaxPieceKg         float64       `json:"max_piece_kg"`
	TypicalKg          float64       `json:"typical_kg"`
	ThicknessM         float64       `json:"thickness_m"` // of a piece of TypicalKg
	WidthM             float64       `json:"width_m"`     // of a piece of TypicalKg
	LengthM            float64       `json:"length_m"`    // of a piece of TypicalKg
	ServingKg          float64       `json:"serving_kg"`
	MinimumC           float64       `json:"minimum_c,omitempty"`            // published minimum of the core
	MinimumRestMinutes float64       `json:"minimum_rest_minutes,omitempty"` // the rest that belongs to it
	Doneness           []CutDoneness `json:"doneness"`                       // from least to most done
	Minutes            []float64     `json:"minutes,omitempty"`              // early, expected, late of what goes by the clock
	TenderMinutes      []float64     `json:"tender_minutes,omitempty"`       // early, late until tender at 225-250 F, where time decides
	RestMinutes        CutRest       `json:"rest_minutes"`
	Wrap               string        `json:"wrap"` // the habit: foil, paper or none
	WrapFromC          float64       `json:"wrap_from_c,omitempty"`
	WrapAllowed        bool          `json:"wrap_allowed"`
	Places             []CutPlace    `json:"places"` // where it cooks, best first
	Look               string        `json:"look"`   // where the probe goes, or how to tell that it is done
	Note               string        `json:"note,omitempty"`
	Sources            []string      `json:"sources"`
}

// CutDoneness is a named take-off temperature.
type CutDoneness struct {
	Name    string  `json:"name"`
	CoreC   float64 `json:"core_c"`
	Default bool    `json:"default,omitempty"` // what a request without a target gets
	Text    string  `json:"text"`
}

// CutRest is minutes off the grate; Longest is where quality suffers, no rule of
// food safety.
type CutRest struct {
	Least   float64 `json:"least"`
	Ideal   float64 `json:"ideal"`
	Longest float64 `json:"longest"`
}

// CutPlace is a way to put a cut on the grate.
type CutPlace struct {
	Direct  bool      `json:"direct"`          // over the coals
	Asked   bool      `json:"asked,omitempty"` // only for a dish that is asked to lie there
	Band    string    `json:"band"`
	LevelsC []float64 `json:"levels_c"` // grate temperatures, the usual one first
}

// Cuts returns the catalogue.
func Cuts() Catalogue {
	all := cut.All()
	c := Catalogue{Version: cut.Version, Cuts: make([]Cut, len(all))}
	for i, x := range all {
		c.Cuts[i] = shownCut(x)
	}
	return c
}

// FindCut returns the one cut that goes by a name: its own, a plural, another name that
// cooks use, with or without hyphens, spaces and accents. A name of none, or of several,
// is an [*InputError] that says which are near or meant.
func FindCut(name string) (Cut, error) {
	c, unknown := cut.One(name)
	if unknown != "" {
		return Cut{}, &InputError{Faults: []Fault{{Path: "cut", Sentence: unknown}}}
	}
	return shownCut(c), nil
}

// FindCuts returns every cut that goes by a name, sorted; none is an [*InputError] as
// with [FindCut].
func FindCuts(name string) ([]Cut, error) {
	found, _ := cut.Named(name)
	if len(found) < 2 {
		c, err := FindCut(name)
		return []Cut{c}, err
	}
	cuts := make([]Cut, len(found))
	for i, c := range found {
		cuts[i] = shownCut(c)
	}
	return cuts, nil
}

func shownCut(x cut.Cut) Cut {
	c := Cut{
		Name: x.Name, Title: x.Title, Also: strict.NonNil(x.Also), Estimate: x.Estimate, Style: string(x.Style), Food: x.Food,
		MinPieceKg: x.MinPieceKg, MaxPieceKg: x.MaxPieceKg, TypicalKg: x.Typical, ServingKg: x.ServingKg, Doneness: []CutDoneness{},
		RestMinutes: CutRest{x.Rest.MinMinutes, x.Rest.IdealMinutes, x.Rest.LongestMinutes}, Wrap: x.Wrap.With, WrapFromC: x.Wrap.FromC,
		WrapAllowed: x.WrapAllowed, Places: []CutPlace{}, Look: x.Look, Note: x.Note, Sources: strict.NonNil(x.Sources),
	}
	c.ThicknessM, c.WidthM, c.LengthM = x.Dimensions(x.Typical, 0)
	for _, d := range x.Doneness {
		c.Doneness = append(c.Doneness, CutDoneness(d))
	}
	for _, p := range x.Places {
		c.Places = append(c.Places, CutPlace(p))
	}
	if x.Style == cut.Timed {
		c.Minutes = x.Timed[:]
	} else if m := safety.MinimumFor(safety.Category(x.Food), safety.Prep{}); m.CoreC > 0 {
		c.MinimumC, c.MinimumRestMinutes = m.CoreC, m.RestMinutes
	}
	if x.TenderMinutes[1] > 0 {
		c.TenderMinutes = x.TenderMinutes[:]
	}
	return c
}

// cutOf is the cut that a dish of such a name is: by its pieces, it may be portions of it.
func (d Dish) cutOf(said string) string {
	name := catalogueName(said)
	if d.Count < 2 {
		return name
	}
	if c, ok := cut.Find(name); ok && float64(d.Weight) < c.MinPieceKg {
		return cmp.Or(cut.Portion(said), name)
	}
	return name
}

// catalogueName is the identifier of the one cut that goes by a name; any other name
// stays as it is, for its fault is told later.
func catalogueName(name string) string {
	if _, ok := cut.Find(name); ok {
		return name
	}
	if c, fault := cut.One(name); fault == "" {
		return c.Name
	}
	return name
}
