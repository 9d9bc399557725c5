package day

import (
	"slices"

	"example.com/cookday/schedule"
)

// Finding is one about a dish, or about the day where dish is nil.
func Finding(code, path string, dish *Item, text string) schedule.Finding {
	f := schedule.NewFinding(code, path, text)
	if dish != nil {
		f.Dishes = []string{dish.Dish.ID}
	}
	return f
}

// Findings gathers what the cook must know, each once.
type Findings []schedule.Finding

// Add notes findings. Of one that is there already it notes the further dishes.
func (all *Findings) Add(found ...schedule.Finding) {
	for _, f := range found {
		all.add(f)
	}
}

func (all *Findings) add(f schedule.Finding) {
	i := slices.IndexFunc(*all, func(o schedule.Finding) bool { return o.Code == f.Code && o.Text == f.Text })
	if i < 0 {
		*all = append(*all, f)
		return
	}
	for _, id := range f.Dishes { // two dishes may have one name
		if o := &(*all)[i]; !slices.Contains(o.Dishes, id) {
			o.Dishes = append(slices.Clone(o.Dishes), id)
		}
	}
}
