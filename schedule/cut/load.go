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

//go:embed names.yaml
var namesYAML []byte

// read is what the tables hold.
type read struct {
	cuts              []Cut
	outside           []Outside
	remarks, portions map[string]string // by the keys of the names
	wholes            map[string]Pieces // likewise
	bunches           map[string]int
}

// tables reads the tables once. They are part of the program: a fault in them is
// found by the first test and cannot depend on input, hence the panic.
var tables = sync.OnceValue(func() read {
	r, err := load(bodiesCSV, kitchenYAML, namesYAML)
	if err != nil {
		panic("cut: " + err.Error())
	}
	return r
})

func catalogue() []Cut { return tables().cuts }

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
	Finish      *string
}

type place struct {
	Direct, Asked bool
	Band          string
	Levels        []unit.Temperature
}

type entry struct {
	Own                 habit `yaml:",inline"`
	Habit               string
	Title, Plural, Food string
	DonenessSet         string `yaml:"doneness"`
	Default             string
	Serving, Typical    unit.Mass
	Smallest            unit.Mass
	Loss                float64
	Tender, Timed       []float64
	Prep                []string
	Look, Note          string
	Sources             []string
}

func load(bodies, cooking, naming []byte) (read, error) {
	cuts, err := readBodies(bodies)
	if err != nil {
		return read{}, err
	}
	var k kitchen
	if err := decode(cooking, &k); err != nil {
		return read{}, err
	}
	if len(k.Cuts) != len(cuts) {
		return read{}, fmt.Errorf("%d bodies but %d cuts in the kitchen", len(cuts), len(k.Cuts))
	}
	for i := range cuts {
		if err := k.complete(&cuts[i]); err != nil {
			return read{}, fmt.Errorf("%s: %w", cuts[i].Name, err)
		}
	}
	slices.SortFunc(cuts, func(a, b Cut) int { return cmp.Compare(a.Name, b.Name) })
	return readNames(naming, cuts)
}

func decode(table []byte, to any) error {
	dec := yaml.NewDecoder(bytes.NewReader(table))
	dec.KnownFields(true)
	return dec.Decode(to)
}

// naming is the table of other names.
type naming struct {
	Also              map[string][]string
	Usual             map[string]unit.Mass
	Remarks, Portions map[string]string
	Wholes            map[string]string
	Bunches           map[string]int
	Outside           []Outside
}

// readNames gives the cuts their other names, and returns them with the foods that are not cuts
// and what is told of names.
func readNames(table []byte, cuts []Cut) (read, error) {
	var n naming
	if err := decode(table, &n); err != nil {
		return read{}, err
	}
	at := map[string]int{}
	for i, c := range cuts {
		at[c.Name] = i
	}
	for name, also := range n.Also {
		i, ok := at[name]
		if !ok {
			return read{}, fmt.Errorf("%s has other names and is no cut", name)
		}
		cuts[i].Also = also
	}
	if err := giveUsual(cuts, n.Usual); err != nil {
		return read{}, err
	}
	for _, o := range n.Outside {
		for _, near := range o.Nearest {
			if _, ok := at[near]; !ok || o.Why == "" {
				return read{}, fmt.Errorf("%s: nearest is %q, which is no cut, or no reason is given", o.Title, near)
			}
		}
	}
	wholes, err := piecesOf(n.Wholes)
	if err != nil {
		return read{}, err
	}
	return read{cuts, n.Outside, keyed(n.Remarks), keyed(n.Portions), wholes, keyed(n.Bunches)}, nil
}

// piecesOf reads "8 slices" of each name.
func piecesOf(texts map[string]string) (map[string]Pieces, error) {
	out := map[string]Pieces{}
	for name, text := range texts {
		var p Pieces
		if _, err := fmt.Sscanf(text, "%d %s", &p.Count, &p.Called); err != nil || p.Count < 2 {
			return nil, fmt.Errorf("%s is cut into %q", name, text)
		}
		out[name] = p
	}
	return keyed(out), nil
}

// keyed is what is told of names by the keys of their names.
func keyed[V any](told map[string]V) map[string]V {
	out := map[string]V{}
	for name, v := range told {
		for _, key := range keysOf(name) {
			out[key] = v
		}
	}
	return out
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
	c.Poultry = e.Food == "poultry"
	c.Ground = e.Food == "ground" || e.Food == "sausage"
	c.ServingKg, c.LossFraction = float64(e.Serving), e.Loss
	c.Typical = cmp.Or(float64(e.Typical), c.Shape.ReferenceKg)
	c.SmallestKg = float64(e.Smallest)
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
	put(&c.Finish, h.Finish)
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
		c.Places = append(c.Places, Place{p.Direct, p.Asked, p.Band, levels})
	}
}

func put[T any](to, from *T) {
	if from != nil {
		*to = *from
	}
}
