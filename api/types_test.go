package api

import (
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/getkin/kin-openapi/openapi3"

	"example.com/cookday/schedule"
)

// Every field that is answered must be in the document, and nothing else may be.
func TestSchemasHaveTheFieldsOfTheTypes(t *testing.T) {
	seen := map[reflect.Type]bool{}
	for _, root := range []reflect.Type{reflect.TypeFor[schedule.Plan](), reflect.TypeFor[schedule.Request](), reflect.TypeFor[schedule.Outlook](), reflect.TypeFor[schedule.Steer](), reflect.TypeFor[schedule.GrillLesson](),
		reflect.TypeFor[Due](), reflect.TypeFor[RevisionNews](), reflect.TypeFor[Problem](), reflect.TypeFor[schedule.Catalogue](), reflect.TypeFor[schedule.Layout]()} {
		compareFields(t, root, seen)
	}
	if len(seen) < 40 {
		t.Errorf("only %d types were compared", len(seen))
	}
}

// written are types with a JSON of their own, which the suite's answers check.
var written = map[string]bool{"Clock": true, "Guests": true, "Target": true, "Start": true, "Wrap": true, "Box": true, "GrillZone": true, "WeatherFrom": true}

func compareFields(t *testing.T, typ reflect.Type, seen map[reflect.Type]bool) {
	for typ.Kind() == reflect.Pointer || typ.Kind() == reflect.Slice {
		typ = typ.Elem()
	}
	ours := strings.HasSuffix(typ.PkgPath(), "/schedule") || strings.HasSuffix(typ.PkgPath(), "/api")
	if typ.Kind() != reflect.Struct || typ == reflect.TypeFor[time.Time]() || !ours || seen[typ] || written[typ.Name()] {
		return
	}
	seen[typ] = true
	ref := openAPI(t).Components.Schemas[typ.Name()]
	if ref == nil {
		t.Errorf("%s has no schema; add to openapi.yaml\n    %s:\n      type: object\n      required: []\n      properties:", typ, typ.Name())
		ref = &openapi3.SchemaRef{Value: &openapi3.Schema{}}
	}
	var fields, needed []string
	for f := range typ.Fields() {
		name, options, _ := strings.Cut(f.Tag.Get("json"), ",")
		if name == "-" || name == "" {
			continue
		}
		fields = append(fields, name)
		if options == "" {
			needed = append(needed, name)
		}
		compareFields(t, f.Type, seen)
	}
	for f := range typ.Fields() {
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		if name != "-" && name != "" && ref.Value.Properties[name] == nil {
			t.Errorf("%s.%s is not in its schema; add\n        %s: %s", typ, f.Name, name, schemaOf(f.Type))
		}
	}
	for _, name := range propertyNames(ref.Value) {
		if !slices.Contains(fields, name) {
			t.Errorf("the schema of %s has %s, which is never answered", typ, name)
		}
	}
	// What a request needs, and what a canonical one leaves out, is not in the tags.
	if !slices.Contains([]string{"Request", "Dish", "Weather"}, typ.Name()) && !sameSet(needed, ref.Value.Required) {
		t.Errorf("%s always has %v, its schema requires %v", typ, needed, ref.Value.Required)
	}
}

// schemaOf is what a field of a type would be in the document.
func schemaOf(typ reflect.Type) string {
	switch typ.Kind() {
	case reflect.Pointer:
		return schemaOf(typ.Elem())
	case reflect.Slice:
		return "{type: array, items: " + schemaOf(typ.Elem()) + "}"
	case reflect.Struct:
		if typ == reflect.TypeFor[time.Time]() {
			return "{type: string, format: date-time}"
		}
		return `{$ref: "#/components/schemas/` + typ.Name() + `"}`
	case reflect.Bool:
		return "{type: boolean}"
	case reflect.Int:
		return "{type: integer}"
	case reflect.Float64:
		return "{type: number, format: double}"
	}
	return "{type: string}"
}

func propertyNames(s *openapi3.Schema) []string {
	var names []string
	for name := range s.Properties {
		names = append(names, name)
	}
	return names
}

func sameSet(a, b []string) bool {
	a, b = slices.Sorted(slices.Values(a)), slices.Sorted(slices.Values(b))
	return slices.Equal(a, b)
}

func TestInquirySchemaHasTheFieldsOfAnInquiry(t *testing.T) {
	// A record of one's own grill is a group of fields: it goes with a body, and no query has it.
	if have := propertyNames(openAPI(t).Components.Schemas["Inquiry"].Value); !sameSet(append(schedule.InquiryFields(), ownField), have) {
		t.Errorf("fields %v, schema %v", schedule.InquiryFields(), have)
	}
	var query []string
	for _, p := range openAPI(t).Paths.Find("/v1/forecasts").Get.Parameters {
		query = append(query, p.Value.Name)
	}
	if !sameSet(query, append(schedule.InquiryFields(), "format", "field")) {
		t.Errorf("query %v", query)
	}
}

func TestFireQueryHasTheFieldsOfAFire(t *testing.T) {
	path := openAPI(t).Paths.Find("/v1/fire")
	for _, call := range []*openapi3.Operation{path.Get, path.Post} {
		var query []string
		for _, p := range call.Parameters {
			query = append(query, p.Value.Name)
		}
		if !sameSet(query, append(schedule.FireFields(), "field")) {
			t.Errorf("query %v", query)
		}
	}
}
