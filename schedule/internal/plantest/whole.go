package plantest

import (
	"bytes"
	"encoding/json"
	"io"
	"reflect"
	"regexp"
	"slices"
	"sync"
	"time"

	"pgregory.net/rapid"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/check"
	"example.com/cookday/schedule/export"
)

// LookOver is what holds for every plan, first or revised: it is sound, it is the
// same after its JSON was read, no instant lies before its beginning, nothing that
// is printed of it has a number that is none, and each finding is as grave as its notice.
func LookOver(t rapid.TB, p schedule.Plan) {
	t.Helper()
	for _, f := range check.Plan(p) {
		t.Errorf("unsound: %s", f)
	}
	inTime(t, p)
	SameRead(t, p)
	Prints(t, p)
	Noticed(t, p.Findings)
	if p.Ahead != nil && p.Ahead.Plan != nil {
		Noticed(t, p.Ahead.Plan.Findings)
	}
}

// SameRead wants a plan to be the same after its JSON was read.
func SameRead(t rapid.TB, p schedule.Plan) {
	t.Helper()
	text, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	again, err := schedule.ReadPlan(text)
	if err != nil {
		t.Fatalf("its own JSON is no plan: %v", err)
	}
	if second, err := json.Marshal(again); err != nil || !bytes.Equal(second, text) {
		t.Errorf("read back it is another plan: %v\n%s\n%s", err, text, second)
	}
	Clean(t, "json", string(text))
}

// Prints wants every format to be written, without broken numbers.
func Prints(t rapid.TB, p schedule.Plan) {
	t.Helper()
	for name, write := range writers {
		var out bytes.Buffer
		if err := write(&out, p); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		Clean(t, name, out.String())
	}
}

// writers are all formats; the plain ones of each.
var writers = map[string]func(io.Writer, schedule.Plan) error{
	"text": func(w io.Writer, p schedule.Plan) error { return export.Text(w, p, export.Options{}) },
	"brief": func(w io.Writer, p schedule.Plan) error {
		return export.Text(w, p, export.Options{Brief: 3, Width: 40, Now: p.ServeAt})
	},
	"html":     func(w io.Writer, p schedule.Plan) error { return export.Sheet(w, p, export.Options{Now: p.ServeAt}) },
	"json":     func(w io.Writer, p schedule.Plan) error { return export.JSON(w, p) },
	"steps":    func(w io.Writer, p schedule.Plan) error { return export.CSV(w, p, export.TableSteps) },
	"dishes":   func(w io.Writer, p schedule.Plan) error { return export.CSV(w, p, export.TableDishes) },
	"ics":      export.Calendar,
	"timeline": func(w io.Writer, p schedule.Plan) error { return export.Timeline(w, p, export.Options{}) },
	"curves": func(w io.Writer, p schedule.Plan) error {
		if !export.HasCurves(p) {
			return nil
		}
		return export.Curves(w, p, export.Options{})
	},
	"grate": func(w io.Writer, p schedule.Plan) error {
		for _, f := range p.Phases {
			if err := export.GrateMap(w, p, f.Number); err != nil {
				return err
			}
		}
		return nil
	},
}

// noNumbers are what a slip in arithmetic or in a format looks like in print: no
// number, an infinite one, less than no time, nothing with a sign, a wrong verb.
var noNumbers = regexp.MustCompile(`\bNaN\b|[-+]?\bInf(inity)?\b|%!\w?\(|(^|[\s(,:"'>])-0(\.0*)?([\s),;:"'<]|$)|(^|[\s(,"'>])-\d+(\.\d+)? ?(min|h|minutes?|hours?|seconds?)\b`)

// Clean wants a text without broken numbers.
func Clean(t rapid.TB, where, text string) {
	t.Helper()
	for _, at := range noNumbers.FindAllStringIndex(text, 3) {
		t.Errorf("%s: %q in %q", where, text[at[0]:at[1]], text[max(0, at[0]-60):min(len(text), at[1]+60)])
	}
}

// inTime looks that no instant of a feasible plan lies before its first step, and none
// later than a hold may last after the serving.
func inTime(t rapid.TB, p schedule.Plan) {
	t.Helper()
	if !p.Feasible || len(p.Steps) == 0 {
		return
	}
	first, last := p.Steps[0].At, p.ServeAt.Add(3*24*time.Hour)
	if w := p.Steps[0].Window.Early; w.Before(first) && !w.IsZero() {
		first = w
	}
	q := p
	q.Request, q.Asked, q.Quiet, q.Log = schedule.Request{}, nil, nil, nil // what was asked is another thing
	instants(reflect.ValueOf(q), "", func(path string, at time.Time) {
		if at.Before(first) || at.After(last) {
			t.Errorf("%s is %s; the plan begins %s and serves %s", path, at, first, p.ServeAt)
		}
	})
}

// instants calls found with every instant in a value.
func instants(v reflect.Value, path string, found func(string, time.Time)) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			instants(v.Elem(), path, found)
		}
	case reflect.Slice:
		for i := range v.Len() {
			instants(v.Index(i), path+"[]", found)
		}
	case reflect.Struct:
		if at, ok := v.Interface().(time.Time); ok {
			if !at.IsZero() {
				found(path, at)
			}
			return
		}
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				instants(v.Field(i), path+"."+v.Type().Field(i).Name, found)
			}
		}
	}
}

// Noticed wants each finding to have the severity and the source of its notice: a code
// that is grave in one place and light in another would say nothing.
func Noticed(t rapid.TB, findings []schedule.Finding) {
	t.Helper()
	for _, f := range findings {
		i := slices.IndexFunc(notices(), func(n schedule.Caution) bool { return n.Code == f.Code })
		if i < 0 {
			t.Errorf("%q is found and is no notice: %s", f.Code, f.Text)
			continue
		}
		if n := notices()[i]; f.Severity != n.Severity || f.Source != n.Source {
			t.Errorf("%q is found as %s of %q; the notice is %s of %q", f.Code, f.Severity, f.Source, n.Severity, n.Source)
		}
	}
}

var notices = sync.OnceValue(schedule.Notices)
