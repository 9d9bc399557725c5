package schedule

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"example.com/cookday/schedule/internal/say"
)

// NewEdit sets a field of a request to a value of the request's own types; nil leaves
// the field out or takes the entry away.
func NewEdit(path string, v any) Edit {
	text, err := json.Marshal(v)
	if err != nil {
		text = []byte("null") // our own types always marshal
	}
	return Edit{Path: path, Value: string(text)}
}

// With is the request with some of its fields set, one edit after another, and its
// defaults filled in: what a [Remedy] asks for. The request itself stays. An edit that
// names no field, or whose value is none for it, is an *[InputError]; whether the
// values can be planned is for [Request.Validate] to say.
func (r Request) With(edits ...Edit) (Request, error) {
	r.Dishes, r.Quiet = slices.Clone(r.Dishes), slices.Clone(r.Quiet)
	for _, e := range edits {
		if err := e.apply(reflect.ValueOf(&r).Elem(), e.Path); err != nil {
			return Request{}, err
		}
	}
	return r.WithDefaults(), nil
}

// apply sets what the rest of a path leads to from v on.
func (e Edit) apply(v reflect.Value, rest string) error {
	if v.Kind() == reflect.Pointer {
		inner := reflect.New(v.Type().Elem()) // the request that it came from keeps its own
		if !v.IsNil() {
			inner.Elem().Set(v.Elem())
		}
		if err := e.apply(inner.Elem(), rest); err != nil {
			return err
		}
		v.Set(inner)
		return nil
	}
	step, rest, _ := strings.Cut(rest, ".")
	name, index, indexed := strings.Cut(step, "[")
	field, ok := fieldOf(v, name)
	switch {
	case !ok:
		return e.fault("there is no such field; a path is written as in faults, such as dishes[0].level")
	case indexed:
		return e.applyItem(field, strings.TrimSuffix(index, "]"), rest)
	case rest != "":
		return e.apply(field, rest)
	}
	return e.set(field)
}

// applyItem sets an entry of a list or a part of it: the one after the last is added,
// and null takes one away.
func (e Edit) applyItem(list reflect.Value, index, rest string) error {
	i, err := strconv.Atoi(index)
	if err != nil || list.Kind() != reflect.Slice || i < 0 || i > list.Len() || i == list.Len() && rest != "" {
		return e.fault("there is no such entry; the first is [0]")
	}
	switch {
	case rest != "":
		return e.apply(list.Index(i), rest)
	case i < list.Len() && e.Value == "null":
		list.Set(reflect.AppendSlice(list.Slice(0, i), list.Slice(i+1, list.Len())))
		return nil
	case i < list.Len():
		return e.set(list.Index(i))
	}
	item := reflect.New(list.Type().Elem()).Elem()
	if err := e.set(item); err != nil {
		return err
	}
	list.Set(reflect.Append(list, item))
	return nil
}

// set reads the value into a field.
func (e Edit) set(field reflect.Value) error {
	to := reflect.New(field.Type())
	d := json.NewDecoder(bytes.NewReader([]byte(e.Value)))
	d.DisallowUnknownFields()
	err := d.Decode(to.Interface())
	if err == nil && d.More() {
		err = errors.New("there is text after the value")
	}
	if err != nil {
		return e.fault("%s cannot be taken: %s", say.Quoted(e.Value), err)
	}
	field.Set(to.Elem())
	return nil
}

// fieldOf is the field that goes by a name in JSON.
func fieldOf(v reflect.Value, name string) (reflect.Value, bool) {
	if v.Kind() != reflect.Struct {
		return reflect.Value{}, false
	}
	for f := range v.Type().Fields() {
		if tag, _, _ := strings.Cut(f.Tag.Get("json"), ","); tag == name && name != "" {
			return v.FieldByIndex(f.Index), true
		}
	}
	return reflect.Value{}, false
}

func (e Edit) fault(format string, args ...any) error {
	return &InputError{Faults: []Fault{{Path: e.Path, Sentence: fmt.Sprintf(format, args...)}}}
}
