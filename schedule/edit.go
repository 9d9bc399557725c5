package schedule

import (
	"encoding/json"
	"slices"

	"example.com/cookday/schedule/internal/strict"
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
// defaults filled in: what a [Remedy] of a first plan asks for. The request itself stays.
// An edit that names no field, as one of the log, or whose value is none for it, is an
// *[InputError]; whether the values can be planned is for [Request.Validate] to say.
func (r Request) With(edits ...Edit) (Request, error) {
	r.Dishes, r.Quiet = slices.Clone(r.Dishes), slices.Clone(r.Quiet)
	for _, e := range edits {
		if wrong := strict.Set(&r, e.Path, e.Value); wrong != "" {
			return Request{}, &InputError{Faults: []Fault{{Path: e.Path, Sentence: wrong}}}
		}
		r.said(e.Path)
	}
	return r.WithDefaults(), nil
}

// Entry is the entry of the log that an edit of a revision's remedy stands for; false for
// an edit of a request.
func (e Edit) Entry() (Entry, bool) {
	var entry Entry
	if e.Path != "log" || json.Unmarshal([]byte(e.Value), &entry) != nil {
		return Entry{}, false
	}
	return entry, true
}
