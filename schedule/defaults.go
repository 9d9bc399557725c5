package schedule

import (
	"slices"
	"strconv"
	"strings"
	"unicode"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/unit"
)

// What stands for a field that is left out. The weather keeps its gaps: a plan
// says when it had to assume it.
const (
	knownFormat       = 1
	defaultConfidence = 0.9
	defaultUnits      = unit.US
	defaultFuel       = FuelBriquettes
	defaultCount      = 1
	defaultLevels     = 2 // of an upright cooker
)

// defaultOvenHold is a common lowest setting of kitchen ovens (common practice, no source).
var defaultOvenHold = unit.FromFahrenheit(170)

// WithDefaults fills what was left out, gives every dish an id and every cut the name
// that the catalogue has for it. It shares no memory that it writes to with r, and a
// second call changes nothing.
func (r Request) WithDefaults() Request {
	fill(&r.Format, knownFormat)
	fill(&r.Confidence, defaultConfidence)
	fill(&r.Units, defaultUnits)
	switch r.Grill.Kind {
	case GrillOther:
	case GrillUpright:
		fill(&r.Grill.Levels, defaultLevels)
	default:
		fill(&r.Grill.Fuel, defaultFuel)
	}
	if r.Oven != nil {
		oven := *r.Oven
		fill(&oven.Hold, defaultOvenHold)
		r.Oven = &oven
	}
	r.Dishes = slices.Clone(r.Dishes)
	said := make([]string, len(r.Dishes))
	for i := range r.Dishes {
		said[i] = r.Dishes[i].Cut
		r.Dishes[i].Cut = r.Dishes[i].cutOf(said[i])
	}
	r.fillAmounts(said)
	fillIDs(r.Dishes)
	nameAsSaid(r.Dishes, said)
	fillNames(r.Dishes)
	return r
}

// withoutDefaults is the inverse of withDefaults but for ids, names and usual weights.
func (r Request) withoutDefaults() Request {
	leaveOut(&r.Confidence, defaultConfidence)
	leaveOut(&r.Units, defaultUnits)
	switch r.Grill.Kind {
	case GrillOther:
	case GrillUpright:
		leaveOut(&r.Grill.Levels, defaultLevels)
	default:
		leaveOut(&r.Grill.Fuel, defaultFuel)
	}
	if r.Oven != nil {
		oven := *r.Oven
		leaveOut(&oven.Hold, defaultOvenHold)
		r.Oven = &oven
	}
	r.Dishes = slices.Clone(r.Dishes)
	for i := range r.Dishes {
		leaveOut(&r.Dishes[i].Count, defaultCount)
	}
	return r
}

func fill[T comparable](v *T, standard T) {
	var zero T
	if *v == zero {
		*v = standard
	}
}

func leaveOut[T comparable](v *T, standard T) {
	if *v == standard {
		var zero T
		*v = zero
	}
}

// fillIDs makes an id of a dish's name or cut. It depends on nothing else, so it
// stays when dishes change places; like names are numbered in their order.
func fillIDs(dishes []Dish) {
	taken := map[string]bool{}
	for _, dish := range dishes {
		taken[dish.ID] = true
	}
	for i := range dishes {
		dish := &dishes[i]
		if dish.ID != "" {
			continue
		}
		stem := slug(dish.Name)
		if stem == "" {
			stem = slug(dish.Cut)
		}
		if stem == "" {
			stem = "dish"
		}
		dish.ID = stem
		for n := 2; taken[dish.ID]; n++ {
			dish.ID = stem + "-" + strconv.Itoa(n)
		}
		taken[dish.ID] = true
	}
}

// slug is a name in lower-case letters and digits of any script, with hyphens between words.
func slug(name string) string {
	const most = 48 // characters; leaves room for a number within maxID
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r)
	})
	runes := []rune(strings.Join(words, "-"))
	return strings.Trim(string(runes[:min(len(runes), most)]), "-")
}

// nameAsSaid names a dish by the cook's own word where that is another than the
// catalogue's: asparagus stays asparagus, though it is cooked as any vegetable is.
func nameAsSaid(dishes []Dish, said []string) {
	var taken map[string]bool
	for i := range dishes {
		dish := &dishes[i]
		if dish.Name != "" || dish.Cut == said[i] {
			continue
		}
		c, ok := cut.Find(dish.Cut)
		if !ok || c.OwnName(said[i]) {
			continue
		}
		if taken == nil {
			taken = namesOf(dishes)
		}
		if own := label(said[i]); len([]rune(own)) <= maxName {
			dish.Name = numbered(taken, own)
		}
	}
}

func namesOf(dishes []Dish) map[string]bool {
	taken := map[string]bool{}
	for _, dish := range dishes {
		taken[dish.Name] = true
	}
	return taken
}

// label is a word as it stands on a sheet: no hyphens between its parts, the first letter a capital.
func label(word string) string {
	words := strings.Fields(strings.NewReplacer("-", " ", "_", " ").Replace(word))
	runes := []rune(strings.Join(words, " "))
	if len(runes) == 0 {
		return ""
	}
	runes[0] = unicode.ToUpper(runes[0])
	return string(runes)
}

// numbered is a name that nothing has yet, and is taken then.
func numbered(taken map[string]bool, stem string) string {
	name := stem
	for n := 2; taken[name]; n++ {
		name = stem + " " + strconv.Itoa(n)
	}
	taken[name] = true
	return name
}

// fillNames names a dish after its cut; like names are numbered in their order.
func fillNames(dishes []Dish) {
	taken := namesOf(dishes)
	for i := range dishes {
		dish := &dishes[i]
		c, ok := cut.Find(dish.Cut)
		if dish.Name != "" || !ok {
			continue
		}
		stem := c.Title
		if dish.Count > 1 || len(dish.Weights) > 1 {
			stem = c.Plural
		}
		dish.Name = numbered(taken, stem)
	}
}
