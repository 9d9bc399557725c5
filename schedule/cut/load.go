package cut

import (
	"bytes"
	"cmp"
	_ "embed"
	"errors"
	"fmt"
	"slices"
	"sync"

	"example.com/cookday/schedule/unit"
	"go.yaml.in/yaml/v3"
)

//go:embed bodies.csv
var bodiesCSV []byte

//go:embed kitchen.yaml
var kitchenYAML []byte

// catalogue reads the tables once. They are part of the program: a fault in them is
// found by the first test and cannot depend on input, hence the panic.
var catalogue = sync.OnceValue(func() []Cut {
	cuts, err := load(bodiesCSV, kitchenYAML)
	if err != nil {
		panic("cut: " + err.Error())
	}
	return cuts
})

type kitchen struct {
	Doneness map[string][]target
	Habits   map[string]habit
	Cuts     map[string]entry
}

type target struct {
	Name string
	Core unit.Temperature
	Text string
}

// habit holds what kinds of cuts have in common. Pointers and nil slices stand for
// "not said", so that a cut can replace any of it, also by zero.
type habit struct {
	Style       *Style
	Spread      *string
	Rest        []float64
	HoldCost    *int `yaml:"hold_cost"`
	Wrap        *string
	WrapFrom    *unit.Temperature `yaml:"wrap_from"`
	WrapAllowed *bool             `yaml:"wrap_allowed"`
	Places      []place
	Flips       *int
	Disc, Rack  *bool
}

type place struct {
	Direct bool
	Band   string
	Levels []unit.Temperature
}

type entry struct {
	Own                 habit `yaml:",inline"`
	Habit               string
	Title, Plural, Food string
	Also                []string
	DonenessSet         string `yaml:"doneness"`
	Default             string
	Serving, Typical    unit.Mass
	Loss                float64
	Tender, Timed       []float64
	Prep                []string
	Look, Note          string
	Sources             []string
}

func load(bodies, cooking []byte) ([]Cut, error) {
	cuts, err := readBodies(bodies)
	if err != nil {
		return nil, err
	}
	var k kitchen
	dec := yaml.NewDecoder(bytes.NewReader(cooking))
	dec.KnownFields(true)
	if err := dec.Decode(&k); err != nil {
		return nil, err
	}
	if len(k.Cuts) != len(cuts) {
		return nil, fmt.Errorf("%d bodies but %d cuts in the kitchen", len(cuts), len(k.Cuts))
	}
	for i := range cuts {
		if err := k.complete(&cuts[i]); err != nil {
			return nil, fmt.Errorf("%s: %w", cuts[i].Name, err)
		}
	}
	slices.SortFunc(cuts, func(a, b Cut) int { return cmp.Compare(a.Name, b.Name) })
	return cuts, nil
}

// complete adds to a body what the kitchen knows of it.
func (k *kitchen) complete(c *Cut) error {
	e, ok := k.Cuts[c.Name]
	h, known := k.Habits[e.Habit]
	if !ok || !known {
		return fmt.Errorf("no entry with a known habit (%q)", e.Habit)
	}
	c.Prep = e.Prep
	c.Title, c.Plural, c.Food, c.Look, c.Note = e.Title, e.Plural, e.Food, e.Look, e.Note
	c.Also = e.Also
	c.Poultry = e.Food == "poultry"
	c.Ground = e.Food == "ground" || e.Food == "sausage"
	c.ServingKg, c.LossFraction = float64(e.Serving), e.Loss
	c.Typical = cmp.Or(float64(e.Typical), c.Shape.ReferenceKg)
	c.Sources = append(c.Sources, e.Sources...)
	for _, t := range k.Doneness[e.DonenessSet] {
		c.Doneness = append(c.Doneness, Doneness{t.Name, float64(t.Core), t.Name == e.Default, t.Text})
	}
	copy(c.Timed[:], e.Timed)
	if copy(c.TenderMinutes[:], e.Tender) > 0 {
		c.TenderAboveC = tenderAboveC
	}
	h.apply(c)
	e.Own.apply(c)
	if len(c.Places) == 0 || c.Style == "" {
		return errors.New("no place on the grate or no style")
	}
	return nil
}

// 190 F: collagen melts fast from about here (common practice, no source).
const tenderAboveC = (190.0 - 32) * 5 / 9

// apply copies what h says and leaves the rest of c alone.
func (h habit) apply(c *Cut) {
	put(&c.Style, h.Style)
	put(&c.Spread, h.Spread)
	put(&c.HoldCostTenths, h.HoldCost)
	put(&c.WrapAllowed, h.WrapAllowed)
	put(&c.Flips, h.Flips)
	put(&c.Disc, h.Disc)
	put(&c.Rack, h.Rack)
	put(&c.Wrap.With, h.Wrap)
	if h.WrapFrom != nil {
		c.Wrap.FromC = float64(*h.WrapFrom)
	}
	if c.Wrap.With == "none" {
		c.Wrap.FromC = 0
	}
	if len(h.Rest) == 3 {
		c.Rest = Rest{h.Rest[0], h.Rest[1], h.Rest[2]}
	}
	if h.Places != nil {
		c.Places = nil
	}
	for _, p := range h.Places {
		levels := make([]float64, len(p.Levels))
		for i, t := range p.Levels {
			levels[i] = float64(t)
		}
		c.Places = append(c.Places, Place{p.Direct, p.Band, levels})
	}
}

func put[T any](to, from *T) {
	if from != nil {
		*to = *from
	}
}
