package api

import (
	"net/http"

	"example.com/cookday/schedule"
)

// Lists that are the same for every caller and never change while the program runs.
type lists struct{ cuts, layouts, entries *content }

func newLists() (l lists, err error) {
	for _, of := range []struct {
		to    **content
		value any
	}{
		{&l.cuts, schedule.Cuts()},
		{&l.layouts, map[string][]schedule.Layout{"layouts": schedule.Layouts()}},
		{&l.entries, map[string][]entryKind{"entries": entryKinds()}},
	} {
		text, err := encoded(of.value)
		if err != nil {
			return l, err
		}
		*of.to = newContent(typeJSON, 0, text)
	}
	return l, nil
}

// entryKind says how an entry of a log is written.
type entryKind struct {
	Kind    schedule.EntryKind `json:"kind"`
	OfDish  bool               `json:"of_dish"` // it belongs to a dish, else to the grill
	Carries schedule.Carries   `json:"carries"`
}

func entryKinds() []entryKind {
	var list []entryKind
	for _, f := range schedule.EntryForms() {
		list = append(list, entryKind(f))
	}
	return list
}

// sendList answers with one of them.
func (s *Service) sendList(of func(lists) *content) handler {
	return func(c *call) error {
		if _, err := c.parameters(); err != nil {
			return err
		}
		l, err := s.lists()
		if err != nil {
			return err
		}
		return c.send(http.StatusOK, of(l))
	}
}
