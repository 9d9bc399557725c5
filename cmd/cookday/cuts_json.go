package main

import "example.com/cookday/schedule/cut"

// cutFacts is a cut as JSON: SI numbers with the unit in the name.
type cutFacts struct {
	Name        string         `json:"name"`
	Title       string         `json:"title"`
	Also        []string       `json:"also"`
	Estimate    bool           `json:"estimate"` // dimensions and factors were never compared with a cook
	Style       string         `json:"style"`
	Food        string         `json:"food"`
	MinPieceKg  float64        `json:"min_piece_kg"`
	MaxPieceKg  float64        `json:"max_piece_kg"`
	TypicalKg   float64        `json:"typical_kg"`
	ServingKg   float64        `json:"serving_kg"`
	Doneness    []donenessFact `json:"doneness"`
	Minutes     []float64      `json:"minutes,omitempty"` // early, expected, late of what goes by the clock
	RestMinutes restFacts      `json:"rest_minutes"`
	Wrap        string         `json:"wrap"`
	WrapFromC   float64        `json:"wrap_from_c,omitempty"`
	Places      []placeFacts   `json:"places"`
	Look        string         `json:"look"`
	Note        string         `json:"note,omitempty"`
	Sources     []string       `json:"sources"`
}

type donenessFact struct {
	Name    string  `json:"name"`
	CoreC   float64 `json:"core_c"`
	Default bool    `json:"default,omitempty"`
	Text    string  `json:"text"`
}

type restFacts struct {
	Least   float64 `json:"least"`
	Ideal   float64 `json:"ideal"`
	Longest float64 `json:"longest"`
}

type placeFacts struct {
	Direct  bool      `json:"direct"`
	Band    string    `json:"band"`
	LevelsC []float64 `json:"levels_c"`
}

func describeCut(c cut.Cut) cutFacts {
	f := cutFacts{
		Name: c.Name, Title: c.Title, Also: append([]string{}, c.Also...), Estimate: c.Estimate, Style: string(c.Style), Food: c.Food,
		MinPieceKg: c.MinPieceKg, MaxPieceKg: c.MaxPieceKg, TypicalKg: c.Typical, ServingKg: c.ServingKg,
		Doneness: []donenessFact{}, Wrap: c.Wrap.With, WrapFromC: c.Wrap.FromC, Places: []placeFacts{},
		RestMinutes: restFacts{c.Rest.MinMinutes, c.Rest.IdealMinutes, c.Rest.LongestMinutes},
		Look:        c.Look, Note: c.Note, Sources: append([]string{}, c.Sources...),
	}
	for _, d := range c.Doneness {
		f.Doneness = append(f.Doneness, donenessFact(d))
	}
	for _, p := range c.Places {
		f.Places = append(f.Places, placeFacts(p))
	}
	if c.Style == cut.Timed {
		f.Minutes = c.Timed[:]
	}
	return f
}

func describeCuts(cuts []cut.Cut) []cutFacts {
	facts := make([]cutFacts, len(cuts))
	for i, c := range cuts {
		facts[i] = describeCut(c)
	}
	return facts
}
