package schedule_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"go.yaml.in/yaml/v3"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
)

// validator is a judge of somebody else for one of our schemas.
func validator(t *testing.T, of schedule.SchemaOf) *jsonschema.Schema {
	t.Helper()
	text, ok := schedule.Schema(of)
	if !ok {
		t.Fatalf("there is no schema of %q", of)
	}
	parsed, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	c.AssertFormat()
	if err := c.AddResource("urn:test", parsed); err != nil {
		t.Fatal(err)
	}
	schema, err := c.Compile("urn:test")
	if err != nil {
		t.Fatal(err)
	}
	return schema
}

// plain is a document as maps, lists, texts and numbers. In YAML a date is a text.
func plain(t *testing.T, data []byte) any {
	t.Helper()
	var node yaml.Node
	if err := yaml.Unmarshal(data, &node); err != nil {
		t.Fatal(err)
	}
	datesAsTexts(&node)
	var tree any
	if err := node.Decode(&tree); err != nil {
		t.Fatal(err)
	}
	return again(t, tree)
}

func datesAsTexts(n *yaml.Node) {
	if n.Kind == yaml.ScalarNode && n.Tag == "!!timestamp" {
		n.Tag = "!!str"
	}
	for _, inner := range n.Content {
		datesAsTexts(inner)
	}
}

// again is a tree of its own, with the numbers that the validator wants.
func again(t *testing.T, tree any) any {
	t.Helper()
	text, err := json.Marshal(tree)
	if err != nil {
		t.Fatal(err)
	}
	own, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return own
}

// shortRequest says everything that can be said in two ways in the other one.
const shortRequest = `
serve: {date: 2027-07-03, time: 6pm, tz: America/Chicago}
guests: {adults: 4, children: 1, frail: true}
grill: kettle 22 in
box: {kind: good, logged: {after: 6h, core: 160 F}}
lit: "06:00"
dishes:
  - {cut: pork butt, weight: 8 lb, wrap: foil, prep: [tenderized], hold: cooler, start: frozen, earliest: {date: 2027-07-02, time: "20:00"}}
  - {cut: st-louis-ribs, count: 2, lies: standing, prep: [], target: 203 F, zone: indirect}
  - {cut: steak, count: 2, weight: 1 lb, target: medium, went_on: "17:30", measured: [{at: "17:40", core: 80 F}, {at: "17:45", core: 90 F}]}
  - {cut: burger, count: 2, went_on: "17:30", measured: {at: "17:40", core: 80 F}}
`

// requests are those of the examples and of the tests, by name.
func requests(t *testing.T) map[string][]byte {
	t.Helper()
	files, err := filepath.Glob("../examples/*/request.yaml")
	if err != nil {
		t.Fatal(err)
	}
	more, err := filepath.Glob("testdata/requests/*")
	if err != nil || len(files) < 2 || len(more) < 4 {
		t.Fatalf("%v, %v: %v", files, more, err)
	}
	all := map[string][]byte{"short": []byte(shortRequest)}
	for _, name := range append(files, more...) {
		if all[name], err = os.ReadFile(name); err != nil {
			t.Fatal(err)
		}
	}
	return all
}

// What the decoder takes is valid by the schema.
func TestSchemasTakeWhatIsRight(t *testing.T) {
	request := validator(t, schedule.SchemaRequest)
	for name, data := range requests(t) {
		r, err := schedule.Read(data)
		if err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if err := request.Validate(plain(t, data)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if err := request.Validate(again(t, r)); err != nil { // as the program writes it
			t.Errorf("%s, written anew: %v", name, err)
		}
	}
	entry := validator(t, schedule.SchemaEntry)
	for _, f := range schedule.EntryForms() {
		if err := entry.Validate(map[string]any{"time": "04:15", "kind": string(f.Kind), "value": ""}); err != nil {
			t.Errorf("%s: %v", f.Kind, err)
		}
	}
	plan, planned := validator(t, schedule.SchemaPlan), 0
	for name, data := range requests(t) {
		r, err := schedule.Read(data)
		if err != nil {
			t.Fatal(err)
		}
		p, err := planner.Make(t.Context(), r)
		if err != nil { // well formed is not yet cookable
			continue
		}
		planned++
		if err := plan.Validate(again(t, p)); err != nil {
			t.Errorf("plan of %s: %v", name, err)
		}
	}
	if planned < 5 {
		t.Errorf("only %d plans were looked at", planned)
	}
}

// shortened is a document with one item in each list: its shape is all there.
func shortened(tree any) any {
	switch node := tree.(type) {
	case map[string]any:
		for name := range node {
			node[name] = shortened(node[name])
		}
	case []any:
		for k := range node[:min(len(node), 1)] {
			node[k] = shortened(node[k])
		}
		return node[:min(len(node), 1)]
	}
	return tree
}

// other are values of every kind, to be put where they do not belong.
var other = []any{map[string]any{}, []any{}, []any{"x"}, "x", json.Number("7"), json.Number("3.5"), true, nil}

// spoiled are documents that differ from one in one place: a value of another kind, a
// field that is left out, a field that does not exist. The path says where.
func spoiled(tree any, path string, whole func(any) any, visit func(path string, doc any)) {
	for _, v := range other {
		visit(fmt.Sprintf("%s = %v", path, v), whole(v))
	}
	switch node := tree.(type) {
	case map[string]any:
		for _, name := range slices.Sorted(maps.Keys(node)) {
			without := maps.Clone(node)
			delete(without, name)
			visit(path+" without "+name, whole(without))
			spoiled(node[name], path+"."+name, func(v any) any {
				with := maps.Clone(node)
				with[name] = v
				return whole(with)
			}, visit)
		}
		with := maps.Clone(node)
		with["smoke"] = "yes"
		visit(path+" with smoke", whole(with))
	case []any:
		for k := range node[:min(len(node), 2)] {
			spoiled(node[k], fmt.Sprintf("%s[%d]", path, k), func(v any) any {
				with := slices.Clone(node)
				with[k] = v
				return whole(with)
			}, visit)
		}
	}
}

// Schema and decoder disagree nowhere on shape: what one refuses, the other does. Where the
// schema refuses a word that the decoder's shape takes, the request is refused for it later.
func TestSchemasRefuseWhatTheDecoderRefuses(t *testing.T) {
	documents := map[string]struct {
		of   schedule.SchemaOf
		tree any
	}{
		"entry": {schedule.SchemaEntry, plain(t, []byte(`{time: "04:15", dish: brisket, kind: core, value: 152 F}`))},
	}
	for name, data := range requests(t) {
		documents[name] = struct {
			of   schedule.SchemaOf
			tree any
		}{schedule.SchemaRequest, plain(t, data)}
	}
	r, err := schedule.Read(requests(t)["testdata/requests/party.yaml"])
	if err != nil {
		t.Fatal(err)
	}
	p, err := planner.Make(t.Context(), r)
	if err != nil {
		t.Fatal(err)
	}
	documents["plan"] = struct {
		of   schedule.SchemaOf
		tree any
	}{schedule.SchemaPlan, shortened(again(t, p))}
	refused := map[schedule.SchemaOf]int{}
	for name, c := range documents {
		schema := validator(t, c.of)
		spoiled(c.tree, name, func(v any) any { return v }, func(path string, doc any) {
			text, err := json.Marshal(doc)
			if err != nil {
				t.Fatal(err)
			}
			bySchema, byDecoder := schema.Validate(doc) != nil, schedule.ShapeRefused(c.of, text)
			if bySchema {
				refused[c.of]++
			}
			switch {
			case byDecoder && !bySchema:
				t.Errorf("%s: the decoder refuses it, the schema does not", path)
			case bySchema && !byDecoder && c.of == schedule.SchemaRequest:
				if _, err := schedule.Read(text); err == nil {
					t.Errorf("%s: the schema refuses it, and it is read", path)
				}
			}
		})
	}
	t.Logf("refused: %v", refused)
	for of, least := range map[schedule.SchemaOf]int{schedule.SchemaRequest: 200, schedule.SchemaEntry: 20, schedule.SchemaPlan: 200} {
		if refused[of] < least {
			t.Errorf("only %d faulty documents of %s were refused", refused[of], of)
		}
	}
}

// Every field of a request is explained, with a line that is right, and none that is none.
func TestFieldsAreExplained(t *testing.T) {
	var told []string
	for _, f := range schedule.RequestFields() {
		told = append(told, f.Path)
		if f.Text == "" || f.Example == "" {
			t.Errorf("%s: %q, %q", f.Path, f.Example, f.Text)
		}
		var line map[string]any
		if err := yaml.Unmarshal([]byte(f.Example), &line); err != nil || len(line) != 1 {
			t.Errorf("%s: the example %q is not one field: %v", f.Path, f.Example, err)
		}
	}
	known := schedule.FieldsOfSchema()
	slices.Sort(known)
	slices.Sort(told)
	if !slices.Equal(slices.Compact(known), told) {
		t.Errorf("fields\n%q\nexplained\n%q", known, told)
	}
}
