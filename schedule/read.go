package schedule

import (
	"time"

	"example.com/cookday/schedule/internal/strict"
)

// Read decodes and validates a request of YAML or JSON; a document that begins
// with { is JSON. What is left out of it is filled with the values that stand
// for it, such as an id for each dish. The error is an *InputError with every
// fault, its path and its line.
//
// A dish, the guests, the quiet hours and the like may be in a cook's words, where these
// mean one thing without doubt; all else is a fault with the line that would be right.
func Read(data []byte) (Request, error) { return ReadOn(data, time.Time{}) }

// ReadOn is [Read] on a day: now is the time on the cook's clock, in the cook's zone. With
// it a fault names the day that "Saturday" is, and a date without a zone has that of now.
func ReadOn(data []byte, now time.Time) (Request, error) {
	tree, faults := strict.ParseDocument(data, strict.MaxRequestBytes)
	if tree == nil {
		return Request{}, inputError(faults)
	}
	var r Request
	d := newDecoderOn(faults, now)
	d.metric = allMetric(data)
	d.request(&r)(tree, "")
	r.Heard = append(r.Heard, *d.heard...)
	r = raisedForPoultry(r.WithDefaults())
	faults.Adopt(r.faults(nil), d.Decoder)
	if err := inputError(faults); err != nil {
		return Request{}, err
	}
	return r, nil
}
