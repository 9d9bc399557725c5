package strict

import (
	"bytes"
	"encoding/json"
	"fmt"
	"reflect"
	"strconv"
	"strings"

	"example.com/cookday/schedule/internal/say"
)

// Set gives a part of a struct a value: to points to it, the path leads there by the
// names of JSON (dishes[0].level), the value is JSON. The entry after the last of a
// list is added; null takes an entry away, or leaves a field out. What pointers lead to
// is copied and not written to. The sentence says what is wrong; empty for nothing.
func Set(to any, path, value string) string {
	return edit{value}.apply(reflect.ValueOf(to).Elem(), path)
}

type edit struct{ value string }

// apply sets what the rest of a path leads to from v on.
func (e edit) apply(v reflect.Value, rest string) string {
	if v.Kind() == reflect.Pointer {
		inner := reflect.New(v.Type().Elem())
		if !v.IsNil() {
			inner.Elem().Set(v.Elem())
		}
		if wrong := e.apply(inner.Elem(), rest); wrong != "" {
			return wrong
		}
		v.Set(inner)
		return ""
	}
	step, rest, _ := strings.Cut(rest, ".")
	name, index, indexed := strings.Cut(step, "[")
	field, ok := fieldOf(v, name)
	switch {
	case !ok:
		return "there is no such field; a path is written as in faults, such as dishes[0].level"
	case indexed:
		return e.applyItem(field, strings.TrimSuffix(index, "]"), rest)
	case rest != "":
		return e.apply(field, rest)
	}
	return e.set(field)
}

func (e edit) applyItem(list reflect.Value, index, rest string) string {
	i, err := strconv.Atoi(index)
	if err != nil || list.Kind() != reflect.Slice || i < 0 || i > list.Len() || i == list.Len() && rest != "" {
		return "there is no such entry; the first is [0]"
	}
	switch {
	case rest != "":
		return e.apply(list.Index(i), rest)
	case i < list.Len() && e.value == "null":
		list.Set(reflect.AppendSlice(list.Slice(0, i), list.Slice(i+1, list.Len())))
		return ""
	case i < list.Len():
		return e.set(list.Index(i))
	}
	item := reflect.New(list.Type().Elem()).Elem()
	if wrong := e.set(item); wrong != "" {
		return wrong
	}
	list.Set(reflect.Append(list, item))
	return ""
}

// set reads the value into a field.
func (e edit) set(field reflect.Value) string {
	to := reflect.New(field.Type())
	d := json.NewDecoder(bytes.NewReader([]byte(e.value)))
	d.DisallowUnknownFields()
	if err := d.Decode(to.Interface()); err != nil {
		return fmt.Sprintf("%s cannot be taken: %s", say.Quoted(e.value), err)
	}
	if d.More() {
		return fmt.Sprintf("%s cannot be taken: there is text after the value", say.Quoted(e.value))
	}
	field.Set(to.Elem())
	return ""
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
