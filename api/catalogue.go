package api

import (
	"net/http"

	"github.com/labstack/echo/v4"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
)

// Cut is an entry of the catalogue: SI numbers with the unit in the name, as the
// command that lists cuts prints it.
type Cut struct {
	Name        string     `json:"name"` // what a request calls it
	Title       string     `json:"title"`
	Also        []string   `json:"also"`     // other names cooks use
	Estimate    bool       `json:"estimate"` // its dimensions were never compared with a cook
	Style       string     `json:"style"`
	Food        string     `json:"food"` // row of the published safety charts
	MinPieceKg  float64    `json:"min_piece_kg"`
	MaxPieceKg  float64    `json:"max_piece_kg"`
	TypicalKg   float64    `json:"typical_kg"`
	ServingKg   float64    `json:"serving_kg"`
	Doneness    []Doneness `json:"doneness"`          // from least to most done
	Minutes     []float64  `json:"minutes,omitempty"` // early, expected, late of what goes by the clock
	RestMinutes Rest       `json:"rest_minutes"`
	Wrap        string     `json:"wrap"` // the habit: foil, paper or none
	WrapFromC   float64    `json:"wrap_from_c,omitempty"`
	Places      []Place    `json:"places"`
	Look        string     `json:"look"` // where the probe goes, or how to tell that it is done
	Note        string     `json:"note,omitempty"`
	Sources     []string   `json:"sources"`
}

// Doneness is a named take-off temperature.
type Doneness struct {
	Name    string  `json:"name"`
	CoreC   float64 `json:"core_c"`
	Default bool    `json:"default,omitempty"`
	Text    string  `json:"text"`
}

// Rest is minutes off the grate.
type Rest struct {
	Least   float64 `json:"least"`
	Ideal   float64 `json:"ideal"`
	Longest float64 `json:"longest"`
}

// Place is a way to put a cut on the grate.
type Place struct {
	Direct  bool      `json:"direct"`
	Band    string    `json:"band"`
	LevelsC []float64 `json:"levels_c"`
}

// getCuts lists the catalogue.
func (s *Service) getCuts(c echo.Context) error {
	if _, err := parameters(c); err != nil {
		return err
	}
	all := cut.All()
	list := make([]Cut, len(all))
	for i, x := range all {
		list[i] = shownCut(x)
	}
	return sendJSON(c, http.StatusOK, struct {
		Version string `json:"version"`
		Cuts    []Cut  `json:"cuts"`
	}{cut.Version, list})
}

// getLayouts lists how coals may lie.
func (s *Service) getLayouts(c echo.Context) error {
	if _, err := parameters(c); err != nil {
		return err
	}
	return sendJSON(c, http.StatusOK, struct {
		Layouts []schedule.Layout `json:"layouts"`
	}{schedule.Layouts()})
}

func shownCut(x cut.Cut) Cut {
	c := Cut{
		Name: x.Name, Title: x.Title, Also: append([]string{}, x.Also...), Estimate: x.Estimate, Style: string(x.Style), Food: x.Food,
		MinPieceKg: x.MinPieceKg, MaxPieceKg: x.MaxPieceKg, TypicalKg: x.Typical, ServingKg: x.ServingKg, Doneness: []Doneness{},
		RestMinutes: Rest{x.Rest.MinMinutes, x.Rest.IdealMinutes, x.Rest.LongestMinutes}, Wrap: x.Wrap.With, WrapFromC: x.Wrap.FromC,
		Places: []Place{}, Look: x.Look, Note: x.Note, Sources: append([]string{}, x.Sources...),
	}
	for _, d := range x.Doneness {
		c.Doneness = append(c.Doneness, Doneness(d))
	}
	for _, p := range x.Places {
		c.Places = append(c.Places, Place(p))
	}
	if x.Style == cut.Timed {
		c.Minutes = x.Timed[:]
	}
	return c
}
