package schedule

import (
	"encoding/json"
	"reflect"
	"strings"
	"time"

	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/strict"
)

// planNeeds are the fields without which a text is no plan. Others may be
// missing: a plan printed before a field was added is still one.
var planNeeds = map[string]bool{
	"format": true, "id": true, "feasible": true, "serve_at": true, "tz": true,
	"dishes": true, "steps": true, "provenance": true, "request": true,
}

// ReadPlan decodes a plan from the JSON that this program prints. The error is an
// *InputError with every field that is unknown, of another kind or, in the
// request it carries, out of range. Whether the plan is sound is for check.Plan to say.
func ReadPlan(data []byte) (Plan, error) {
	tree, faults := strict.ParseDocument(data, strict.MaxPlanBytes)
	if tree == nil {
		return Plan{}, inputError(faults)
	}
	d := newDecoder(faults)
	d.like(reflect.TypeFor[Plan]())(tree, "")
	if err := inputError(faults); err != nil {
		return Plan{}, err
	}
	var p Plan
	if err := json.Unmarshal(data, &p); err != nil {
		faults.Add("", "is not a plan: %s; a plan is the JSON that this program prints", err)
	} else if p.Format != 1 {
		faults.Add("format", "%d is not known; this program reads format 1", p.Format)
	}
	return p, inputError(faults)
}

var (
	requestType = reflect.TypeFor[Request]()
	timeType    = reflect.TypeFor[time.Time]()
	quietType   = reflect.TypeFor[Quiet]()
)

// like reads nothing; it looks whether a node has the form of a Go type's JSON.
func (d decoder) like(t reflect.Type) strict.Reader {
	switch {
	case t == requestType:
		return d.requestOfPlan
	case t == timeType:
		return d.timeOfPlan
	case t == quietType:
		return d.quiet(new(Quiet))
	}
	switch t.Kind() {
	case reflect.Pointer:
		return d.like(t.Elem())
	case reflect.Struct:
		return d.likeStruct(t)
	case reflect.Slice:
		return d.likeSlice(t)
	case reflect.String:
		return d.Text(new(string))
	case reflect.Bool:
		return d.Boolean(new(bool))
	case reflect.Int:
		return d.Whole(new(int), "1")
	default:
		return d.Number(new(float64), "1.5")
	}
}

func (d decoder) likeStruct(t reflect.Type) strict.Reader {
	return strict.Named(nameInSchema(t), func(n *strict.Node, path string) {
		var members []strict.Member
		for f := range t.Fields() {
			name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
			if name == "-" {
				continue
			}
			members = append(members, strict.Member{
				Name:     name,
				Required: t == reflect.TypeFor[Plan]() && planNeeds[name],
				Nullable: f.Type.Kind() == reflect.Slice,
				Read:     d.like(f.Type),
			})
		}
		d.Object(n, path, members...)
	})
}

// nameInSchema is the name of a type where a schema keeps its shape.
func nameInSchema(t reflect.Type) string { return strings.ToLower(t.Name()[:1]) + t.Name()[1:] }

func (d decoder) likeSlice(t reflect.Type) strict.Reader {
	return func(n *strict.Node, path string) {
		if !d.Is(n, path, strict.NodeList, "a list") {
			return
		}
		read := d.like(t.Elem())
		if n.Probed() {
			n.ProbedItems(read)
			return
		}
		for i, item := range n.Items {
			read(item, strict.ItemPath(path, i))
		}
	}
}

func (d decoder) timeOfPlan(n *strict.Node, path string) {
	if !d.Is(n, path, strict.NodeText, "an instant") {
		return
	}
	if n.AnInstant(); n.Probed() {
		return
	}
	t, err := time.Parse(time.RFC3339, n.Text)
	if err != nil || !t.IsZero() && (t.Year() < 1970 || t.Year() > 2200) {
		d.Faults.AddLine(path, n.Line, "%s must be an instant such as 2027-07-03T18:00:00-05:00", say.Quoted(n.Text))
	}
}

// requestOfPlan holds the request of a plan to what Read asks of one.
func (d decoder) requestOfPlan(n *strict.Node, path string) {
	var r Request
	if d.request(&r)(n, path); n.Probed() {
		return
	}
	found := r.WithDefaults().faults(nil)
	for i := range found {
		found[i].Path = path + "." + found[i].Path
	}
	d.Faults.Adopt(found, d.Decoder)
}
