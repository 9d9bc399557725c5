package cut

import (
	"cmp"
	"fmt"
	"slices"
	"sync"

	"example.com/cookday/schedule/unit"
)

// Outside is a food that cooks put on a grill and that the catalogue does not have.
type Outside struct {
	Title   string
	Also    []string // other names that cooks use
	Nearest []string // identifiers of the cuts that come nearest
	Why     string   // why it is not there
	Far     bool     // nothing in the catalogue stands for it
}

// Pieces are what one whole fruit or vegetable is cut into for the grate.
type Pieces struct {
	Count  int
	Called string // slices, halves
}

// toldOf is what a table tells of a name; the zero value where it tells nothing.
func toldOf[V comparable](told map[string]V, name string) (none V) {
	for _, key := range keysOf(name) {
		if v := told[key]; v != none {
			return v
		}
	}
	return none
}

// Whole is what one piece by a name is cut into, where that is more than one: a pineapple. The
// count is 0 for every other name.
func Whole(name string) Pieces {
	return toldOf(tables().wholes, name)
}

// bearers are the foods that go by a name, as places in the catalogue and in the list of
// the foods outside.
type bearers struct{ cuts, outside []int }

// index finds foods by the keys of their names.
var index = sync.OnceValue(func() map[string]bearers {
	filed := map[string]bearers{}
	for i, c := range catalogue() {
		for _, key := range allKeys(c.names()) {
			b := filed[key]
			b.cuts = append(b.cuts, i)
			filed[key] = b
		}
	}
	for i, o := range tables().outside {
		for _, key := range allKeys(o.names()) {
			b := filed[key]
			b.outside = append(b.outside, i)
			filed[key] = b
		}
	}
	return filed
})

// allKeys are those of several names, each once.
func allKeys(names []string) []string {
	var keys []string
	for _, name := range names {
		keys = append(append(keys, keysOf(name)...), looseKeysOf(name)...)
	}
	slices.Sort(keys)
	return slices.Compact(keys)
}

// names are all that a cut goes by, its identifier first.
func (c Cut) names() []string { return append([]string{c.Name, c.Title, c.Plural}, c.Also...) }

func (o Outside) names() []string { return append([]string{o.Title}, o.Also...) }

// Named returns every food that goes by a name: the cuts sorted by identifier, and the
// foods outside the catalogue. Singular and plural, hyphens, spaces, accents and the size
// of letters make no difference, nor does the order of words if nothing goes by theirs.
// An identifier is its cut's alone.
func Named(name string) ([]Cut, []Outside) {
	if c, ok := Find(name); ok {
		return []Cut{c}, nil
	}
	found := filedUnder(keysOf(name))
	if len(found.cuts)+len(found.outside) == 0 {
		found = filedUnder(looseKeysOf(name))
	}
	var cuts []Cut
	for _, i := range found.cuts {
		cuts = append(cuts, catalogue()[i].clone())
	}
	var outside []Outside
	for _, i := range found.outside {
		outside = append(outside, tables().outside[i].clone())
	}
	return cuts, outside
}

// Remark is what is told of a dish that goes by a name the plan does not do what it says for;
// empty for every other name.
func Remark(name string) string {
	return toldOf(tables().remarks, name)
}

// Bunch is how many are in a bunch of what goes by a name; 0 where that is not known.
func Bunch(name string) int {
	return toldOf(tables().bunches, name)
}

// Portion is the cut that several pieces by a name are, where each is too light for the cut that
// goes by it: salmon fillets are no sides. Empty for every other name.
func Portion(name string) string {
	return toldOf(tables().portions, name)
}

func filedUnder(keys []string) bearers {
	var b bearers
	for _, key := range keys {
		b.cuts = append(b.cuts, index()[key].cuts...)
		b.outside = append(b.outside, index()[key].outside...)
	}
	return bearers{distinct(b.cuts), distinct(b.outside)}
}

func distinct(places []int) []int {
	slices.SortFunc(places, cmp.Compare[int])
	return slices.Compact(places)
}

func (o Outside) clone() Outside {
	o.Also, o.Nearest = slices.Clone(o.Also), slices.Clone(o.Nearest)
	return o
}

// giveUsual tells each cut what a piece of it weighs that goes by another name. Each name
// must be one of a cut's other names, and the weight one that such a cut can have.
func giveUsual(cuts []Cut, usual map[string]unit.Mass) error {
	for name, kg := range usual {
		i := slices.IndexFunc(cuts, func(c Cut) bool { return slices.Contains(c.Also, name) })
		if i < 0 || float64(kg) < cuts[i].MinPieceKg || float64(kg) > cuts[i].MaxPieceKg {
			return fmt.Errorf("usual weight of %q: no cut has that name or that weight", name)
		}
		if cuts[i].usual == nil {
			cuts[i].usual = map[string]float64{}
		}
		for _, key := range keysOf(name) {
			cuts[i].usual[key] = float64(kg)
		}
	}
	return nil
}

// UsualKg is what one piece of a cut weighs that is called so, raw, in kg: the usual weight
// of the cut unless things of that name are of another size.
func (c Cut) UsualKg(called string) float64 {
	if c.usual == nil {
		return c.Typical
	}
	for _, key := range keysOf(called) {
		if kg, ok := c.usual[key]; ok {
			return kg
		}
	}
	return c.Typical
}

// OwnName says whether a name is the cut's identifier, title or plural, in any spelling.
func (c Cut) OwnName(name string) bool {
	if name == c.Name {
		return true
	}
	own := allKeys([]string{c.Name, c.Title, c.Plural})
	return slices.ContainsFunc(append(keysOf(name), looseKeysOf(name)...), func(key string) bool { return slices.Contains(own, key) })
}
