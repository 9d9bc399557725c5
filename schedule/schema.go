package schedule

import (
	"encoding/json"
	"reflect"
	"strings"

	"example.com/cookday/schedule/internal/logbook"
	"example.com/cookday/schedule/internal/strict"
)

// SchemaOf is what a JSON Schema describes.
type SchemaOf string

// What there is a schema of.
const (
	SchemaRequest SchemaOf = "request" // what a cook asks for
	SchemaEntry   SchemaOf = "entry"   // one line of a log, as JSON
	SchemaPlan    SchemaOf = "plan"    // what comes of a request
)

// Schemas are all that there is a schema of.
func Schemas() []SchemaOf { return []SchemaOf{SchemaRequest, SchemaEntry, SchemaPlan} }

// dialect is the edition of JSON Schema that is written.
const dialect = "https://json-schema.org/draft/2020-12/schema"

// Schema is the JSON Schema (2020-12) of a document: which fields there are, of which
// kinds, and which words they take. It is what the decoder itself asks of a document; what
// the values mean only the decoder judges. False for what there is no schema of.
func Schema(of SchemaOf) ([]byte, bool) {
	d := newDecoder(&strict.FaultList{})
	var read strict.Reader
	title, root := "", ""
	switch of {
	case SchemaRequest:
		read, title, root = d.request(new(Request)), "A request: what is cooked, on what, and when people eat", ""
	case SchemaEntry:
		read, title, root = logbook.ReadRow(d.Decoder, new(logbook.Row)), "An entry of a log: what was read or done, and when", "entry"
	case SchemaPlan:
		read, title, root = d.like(reflect.TypeFor[Plan]()), "A plan: what to do when", "plan"
	default:
		return nil, false
	}
	shapes := &strict.Shapes{Named: map[string]*strict.Shape{}}
	shape := shapes.Of(read)
	w := schemaWriter{}
	defs := map[string]any{}
	for name, s := range shapes.Named {
		defs[name] = w.of(*s, map[string]string{"request": "", "dish": "dishes[]", "own": "grill.own"}[name], name == "request" || name == "dish" || name == "own")
	}
	out := w.of(shape, root, of == SchemaEntry)
	out["$schema"], out["$id"], out["title"] = dialect, "urn:cookday:schema:"+string(of)+":1", title
	if len(defs) > 0 {
		out["$defs"] = defs
	}
	text, err := json.MarshalIndent(out, "", " ")
	return append(text, '\n'), err == nil // maps of texts and numbers always marshal
}

// schemaWriter writes shapes as JSON Schema.
type schemaWriter struct{}

// of is the schema of a shape; told says that the fields of a request, or of an entry, explain it.
func (w schemaWriter) of(s strict.Shape, path string, told bool) map[string]any {
	if s.Name != "" {
		return map[string]any{"$ref": "#/$defs/" + s.Name}
	}
	var any1 []map[string]any
	if s.Object {
		any1 = append(any1, w.object(s, path, told))
	}
	if s.List {
		any1 = append(any1, w.list(s, path, told))
	}
	if s.Text {
		any1 = append(any1, w.text(s))
	}
	switch {
	case s.Whole:
		any1 = append(any1, map[string]any{"type": "integer"})
	case s.Number:
		any1 = append(any1, map[string]any{"type": "number"})
	}
	if s.Boolean {
		any1 = append(any1, map[string]any{"type": "boolean"})
	}
	if len(any1) == 1 {
		return any1[0]
	}
	return map[string]any{"anyOf": any1}
}

func (w schemaWriter) object(s strict.Shape, path string, told bool) map[string]any {
	if s.AnyFields {
		return map[string]any{"type": "object"}
	}
	properties, required := map[string]any{}, []string{}
	for _, m := range s.Members {
		inner := strings.TrimPrefix(path+"."+m.Name, ".")
		one := w.of(m.Shape, inner, told)
		if m.Nullable {
			one = map[string]any{"anyOf": []any{one, map[string]any{"type": "null"}}}
		}
		if told {
			w.explain(one, inner)
		}
		properties[m.Name] = one
		if m.Required {
			required = append(required, m.Name)
		}
	}
	out := map[string]any{"type": "object", "properties": properties, "additionalProperties": false}
	if len(required) > 0 {
		out["required"] = required
	}
	return out
}

// explain adds what a field means.
func (w schemaWriter) explain(one map[string]any, path string) {
	if f, ok := fieldOf(path); ok {
		one["description"] = f.Text + " " + f.Example
	} else if text, ok := entryFields[path]; ok {
		one["description"] = text
	}
}

func (w schemaWriter) list(s strict.Shape, path string, told bool) map[string]any {
	out := map[string]any{"type": "array", "items": w.of(*s.Items, path+"[]", told)}
	if s.Least > 0 {
		out["minItems"] = s.Least
	}
	if s.Most > 0 {
		out["maxItems"] = s.Most
	}
	return out
}

func (w schemaWriter) text(s strict.Shape) map[string]any {
	switch {
	case s.Instant:
		return map[string]any{"type": "string", "format": "date-time"}
	case len(s.Words) > 0 && s.OtherWords: // for editors, which offer the words
		return map[string]any{"anyOf": []any{map[string]any{"enum": s.Words}, map[string]any{"type": "string"}}}
	case len(s.Words) > 0:
		return map[string]any{"enum": s.Words}
	}
	return map[string]any{"type": "string"}
}

// entryFields says what the fields of an entry mean.
var entryFields = map[string]string{
	"entry.time":  "When: 04:15 or 4:15 AM on the cook's clock, with a date before it where it is needed, or RFC 3339.",
	"entry.dish":  "The id or name of the dish; left out for what belongs to the grill.",
	"entry.kind":  "What was read, done or happened: cookday help log lists the kinds.",
	"entry.value": "What the kind carries: a temperature such as 152 F, foil, a time.",
}
