package schedule

import (
	"example.com/cookday/schedule/internal/strict"
)

// Read decodes and validates a request of YAML or JSON; a document that begins
// with { is JSON. What is left out of it is filled with the values that stand
// for it, such as an id for each dish. The error is an *InputError with every
// fault, its path and its line.
func Read(data []byte) (Request, error) {
	tree, faults := strict.ParseDocument(data, strict.MaxRequestBytes)
	if tree == nil {
		return Request{}, inputError(faults)
	}
	var r Request
	d := newDecoder(faults)
	d.request(&r)(tree, "")
	r = r.WithDefaults()
	faults.Adopt(r.faults(nil), d.Decoder)
	if err := inputError(faults); err != nil {
		return Request{}, err
	}
	return r, nil
}
