package logbook

import (
	"slices"
	"strings"

	"example.com/cookday/schedule/cut"
)

// dishID is the dish that a text names: by its id or name, by its cut, or by a beginning
// that no other has. No text is the only dish, where the day before it had none.
func (r *Reader) dishID(text string) (string, bool) {
	if all := r.named(); text == "" && len(all) == 1 {
		return all[0].ID, true
	}
	ids := r.alike(text)
	if len(ids) != 1 {
		return "", false
	}
	return ids[0], true
}

// named are all dishes that a log may speak of.
func (r *Reader) named() []Dish { return slices.Concat(r.day.Dishes, r.added, r.day.DayBefore) }

// leastBeginning is how many letters stand for a name.
const leastBeginning = 2

// alike are the ids of the dishes that a text may mean, by the surest sign that any has.
func (r *Reader) alike(text string) []string {
	text = strings.ToLower(strings.TrimSpace(text))
	var known []cut.Cut
	if one, ok := cut.Find(text); ok {
		known = []cut.Cut{one}
	} else if !strings.Contains(text, " ") { // brats: of either sausage
		known, _ = cut.Named(text)
	}
	begins := func(name string) bool {
		return len(text) >= leastBeginning && slices.ContainsFunc(append(strings.Fields(name), name), func(w string) bool { return strings.HasPrefix(strings.ToLower(w), text) })
	}
	for _, fits := range []func(Dish) bool{
		func(d Dish) bool { return strings.ToLower(d.ID) == text },
		func(d Dish) bool { return strings.ToLower(d.Name) == text },
		func(d Dish) bool {
			return text != "" && (squeezed(d.ID) == squeezed(text) || squeezed(d.Name) == squeezed(text))
		},
		func(d Dish) bool { return isManyOf(d.ID, text) || isManyOf(d.Name, text) },
		func(d Dish) bool {
			return text != "" && (d.Cut == text || isManyOf(d.Cut, text) || slices.ContainsFunc(known, func(c cut.Cut) bool { return c.Name == d.Cut }))
		},
		func(d Dish) bool { return inName(d.ID, text) || inName(d.Name, text) || inName(d.Cut, text) },
		func(d Dish) bool { return begins(d.ID) || begins(d.Name) || begins(d.Cut) },
	} {
		var ids []string
		for _, d := range r.named() {
			if fits(d) && !slices.Contains(ids, d.ID) {
				ids = append(ids, d.ID)
			}
		}
		if len(ids) > 0 {
			return ids
		}
	}
	return nil
}

// inName says of a text of several words that they stand in a name, one or many: chicken
// thighs in Bone-in chicken thigh.
func inName(name, text string) bool {
	words := singular(text)
	return strings.Contains(strings.TrimSpace(text), " ") && strings.Contains(" "+strings.Join(singular(name), " ")+" ", " "+strings.Join(words, " ")+" ")
}

// isManyOf says of a text that it is a name, or several of it: steaks of steak.
func isManyOf(name, text string) bool {
	return text != "" && slices.Equal(singular(name), singular(text))
}

// singular are the words of a name, each without the s of several.
func singular(name string) []string {
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return r == ' ' || r == '-' })
	for i, w := range words {
		words[i] = strings.TrimSuffix(w, "s")
	}
	return words
}

// squeezed is a name without the marks between its words: baby-backs, baby backs.
func squeezed(name string) string {
	return strings.NewReplacer("-", "", " ", "", "'", "").Replace(strings.ToLower(name))
}
