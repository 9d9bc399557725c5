package schedule

import (
	"reflect"
	"slices"

	"example.com/cookday/schedule/internal/logbook"
	"example.com/cookday/schedule/internal/strict"
)

// ShapeRefused says whether the decoder of a JSON document refuses its fields or the kinds
// of its values, whatever the values say.
func ShapeRefused(of SchemaOf, data []byte) bool {
	faults := &strict.FaultList{}
	tree := strict.ParseJSON(data, faults)
	if tree == nil {
		return true
	}
	d := newDecoder(faults)
	read := map[SchemaOf]strict.Reader{SchemaRequest: d.request(new(Request)), SchemaEntry: logbook.ReadRow(d.Decoder, new(logbook.Row)), SchemaPlan: d.like(reflect.TypeFor[Plan]())}[of]
	read(tree, "")
	return slices.ContainsFunc(faults.Faults, func(f strict.Fault) bool { return f.Shape })
}

// FieldsOfSchema are the paths of all fields that the decoder of a request knows.
func FieldsOfSchema() []string {
	shapes := &strict.Shapes{Named: map[string]*strict.Shape{}}
	shape := shapes.Of(newDecoder(&strict.FaultList{}).request(new(Request)))
	return pathsOf(shapes, shape, "")
}

func pathsOf(shapes *strict.Shapes, s strict.Shape, path string) (paths []string) {
	if s.Name == "clock" { // explained where it is used
		return nil
	}
	if s.Name != "" {
		s = *shapes.Named[s.Name]
	}
	for _, m := range s.Members {
		inner := m.Name
		if path != "" {
			inner = path + "." + inner
		}
		paths = append(append(paths, inner), pathsOf(shapes, m.Shape, inner)...)
	}
	if s.Items != nil && (!s.Object || s.AnyFields) {
		paths = append(paths, pathsOf(shapes, *s.Items, path+"[]")...)
	}
	return paths
}
