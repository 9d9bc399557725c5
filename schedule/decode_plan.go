package schedule

import (
	"encoding/json"
	"reflect"
	"strings"
	"time"
)

// planNeeds are the fields without which a text is no plan. Others may be
// missing: a plan printed before a field was added is still one.
var planNeeds = map[string]bool{
	"format": true, "id": true, "feasible": true, "serve_at": true, "tz": true,
	"dishes": true, "steps": true, "provenance": true, "request": true,
}

// ReadPlan decodes a plan from the JSON that this program prints. The error is an
// *InputError with every field that is unknown, of another kind or, in the
// request it carries, out of range. Whether the plan is sound is for [Check] to say.
func ReadPlan(data []byte) (Plan, error) {
	tree, faults := parseDocument(data, maxPlanBytes)
	if tree == nil {
		return Plan{}, faults.err()
	}
	d := newDecoder(faults)
	d.like(reflect.TypeFor[Plan]())(tree, "")
	if err := faults.err(); err != nil {
		return Plan{}, err
	}
	var p Plan
	if err := json.Unmarshal(data, &p); err != nil {
		faults.add("", "is not a plan: %s; a plan is the JSON that this program prints", err)
	} else if p.Format != 1 {
		faults.add("format", "%d is not known; this program reads format 1", p.Format)
	}
	return p, faults.err()
}

var (
	requestType = reflect.TypeFor[Request]()
	timeType    = reflect.TypeFor[time.Time]()
)

// like reads nothing; it looks whether a node has the form of a Go type's JSON.
func (d *decoder) like(t reflect.Type) reader {
	switch {
	case t == requestType:
		return d.requestOfPlan
	case t == timeType:
		return d.timeOfPlan
	}
	switch t.Kind() {
	case reflect.Pointer:
		return d.like(t.Elem())
	case reflect.Struct:
		return d.likeStruct(t)
	case reflect.Slice:
		return d.likeSlice(t)
	case reflect.String:
		return d.text(new(string))
	case reflect.Bool:
		return d.boolean(new(bool))
	case reflect.Int:
		return d.whole(new(int), "1")
	default:
		return d.number(new(float64), "1.5")
	}
}

func (d *decoder) likeStruct(t reflect.Type) reader {
	return func(n *node, path string) {
		var members []member
		for f := range t.Fields() {
			name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
			if name == "-" {
				continue
			}
			members = append(members, member{
				name:     name,
				required: t == reflect.TypeFor[Plan]() && planNeeds[name],
				nullable: f.Type.Kind() == reflect.Slice,
				read:     d.like(f.Type),
			})
		}
		d.object(n, path, members...)
	}
}

func (d *decoder) likeSlice(t reflect.Type) reader {
	return func(n *node, path string) {
		if !d.is(n, path, nodeList, "a list") {
			return
		}
		read := d.like(t.Elem())
		for i, item := range n.items {
			read(item, itemPath(path, i))
		}
	}
}

func (d *decoder) timeOfPlan(n *node, path string) {
	if !d.is(n, path, nodeText, "an instant") {
		return
	}
	t, err := time.Parse(time.RFC3339, n.text)
	if err != nil || !t.IsZero() && (t.Year() < 1970 || t.Year() > 2200) {
		d.faults.addLine(path, n.line, "%s must be an instant such as 2027-07-03T18:00:00-05:00", quoted(n.text))
	}
}

// requestOfPlan holds the request of a plan to what Read asks of one.
func (d *decoder) requestOfPlan(n *node, path string) {
	var r Request
	d.request(&r)(n, path)
	found := r.withDefaults().validate()
	for i := range found {
		found[i].Path = path + "." + found[i].Path
	}
	d.faults.adopt(found, d)
}
