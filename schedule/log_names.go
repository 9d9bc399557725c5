package schedule

import (
	"slices"
	"strings"

	"example.com/cookday/schedule/cut"
)

// dishID is the dish that a text names: by its id or name, by its cut, or by a beginning
// that no other has. No text is the only dish.
func (r *logReader) dishID(text string) (string, bool) {
	if text == "" && len(r.plan.Dishes) == 1 {
		return r.plan.Dishes[0].ID, true
	}
	ids := r.alike(text)
	if len(ids) != 1 {
		return "", false
	}
	return ids[0], true
}

// named is a dish as a log may call it.
type named struct{ id, name, cut string }

func (r *logReader) named() []named {
	var all []named
	for _, d := range r.plan.Dishes {
		all = append(all, named{d.ID, d.Name, d.Cut})
	}
	for _, d := range r.added {
		all = append(all, named{d.ID, d.Name, d.Cut})
	}
	if a := r.plan.Ahead; a != nil && a.Plan != nil {
		for _, d := range a.Plan.Dishes {
			all = append(all, named{d.ID, d.Name, d.Cut})
		}
	}
	return all
}

// leastBeginning is how many letters stand for a name.
const leastBeginning = 2

// alike are the ids of the dishes that a text may mean, by the surest sign that any has.
func (r *logReader) alike(text string) []string {
	text = strings.ToLower(strings.TrimSpace(text))
	known, isCut := cut.Find(text)
	begins := func(name string) bool {
		return len(text) >= leastBeginning && slices.ContainsFunc(append(strings.Fields(name), name), func(w string) bool { return strings.HasPrefix(strings.ToLower(w), text) })
	}
	for _, fits := range []func(named) bool{
		func(d named) bool { return strings.ToLower(d.id) == text },
		func(d named) bool { return strings.ToLower(d.name) == text },
		func(d named) bool { return text != "" && (d.cut == text || isCut && d.cut == known.Name) },
		func(d named) bool { return begins(d.id) || begins(d.name) || begins(d.cut) },
	} {
		var ids []string
		for _, d := range r.named() {
			if fits(d) && !slices.Contains(ids, d.id) {
				ids = append(ids, d.id)
			}
		}
		if len(ids) > 0 {
			return ids
		}
	}
	return nil
}
