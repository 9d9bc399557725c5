package api

import (
	"slices"
	"strings"

	"go.yaml.in/yaml/v3"
)

// groups are the schemas that are objects, by name.
func (d *description) groups() (list []group, err error) {
	for name, s := range d.Parts.Schemas {
		g := group{Name: name, Description: s.Description}
		for i := 0; i+1 < len(s.Properties.Content); i += 2 {
			n := s.Properties.Content[i+1]
			f := field{Name: s.Properties.Content[i].Value, Type: typeOf(n), Needed: slices.Contains(s.Required, s.Properties.Content[i].Value)}
			if said := find(n, "description"); said != nil {
				f.Description = said.Value
			}
			g.Fields = append(g.Fields, f)
		}
		list = append(list, g)
	}
	slices.SortFunc(list, func(a, b group) int { return strings.Compare(a.Name, b.Name) })
	return list, nil
}

// find is the value of a name in an object, nil if it has none.
func find(n *yaml.Node, name string) *yaml.Node {
	if n == nil {
		return nil
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		if n.Content[i].Value == name {
			return n.Content[i+1]
		}
	}
	return nil
}

// typeOf says a schema in a few words.
func typeOf(n *yaml.Node) string {
	if ref := find(n, "$ref"); ref != nil {
		return ref.Value[strings.LastIndex(ref.Value, "/")+1:]
	}
	if items := find(n, "items"); items != nil {
		return "list of " + typeOf(items)
	}
	if words := find(n, "enum"); words != nil {
		return strings.Join(texts(words), ", ")
	}
	for _, either := range []string{"oneOf", "anyOf"} {
		if of := find(n, either); of != nil {
			var all []string
			for _, inner := range of.Content {
				all = append(all, typeOf(inner))
			}
			return strings.Join(all, " or ")
		}
	}
	kind := find(n, "type")
	if kind == nil {
		return "anything"
	}
	if format := find(n, "format"); format != nil {
		return kind.Value + " (" + format.Value + ")"
	}
	if len(kind.Content) > 0 {
		return strings.Join(texts(kind), " or ")
	}
	return kind.Value
}

func texts(n *yaml.Node) []string {
	var all []string
	for _, item := range n.Content {
		all = append(all, item.Value)
	}
	return all
}
