package schedule

import (
	"encoding/json"
	"fmt"

	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
	"github.com/rickb777/date"
)

// MarshalJSON writes the canonical JSON of the request.
func (r Request) MarshalJSON() ([]byte, error) {
	type fields Request // without methods
	r = r.WithDefaults().withoutDefaults()
	return json.Marshal(struct {
		fields
		Weather    Weather     `json:"weather,omitzero"`
		Confidence float64     `json:"confidence,omitempty"`
		Units      unit.System `json:"units,omitempty"`
	}{fields(r), r.Weather, r.Confidence, r.Units})
}

// UnmarshalJSON decodes as [Read] does, but leaves validation to planner.Make.
func (r *Request) UnmarshalJSON(data []byte) error {
	var got Request
	if err := unmarshalJSON(data, func(d decoder) strict.Reader { return d.request(&got) }); err != nil {
		return err
	}
	*r = got.WithDefaults()
	return nil
}

// MarshalJSON writes the wall clock to the minute.
func (s Serve) MarshalJSON() ([]byte, error) {
	return json.Marshal(struct {
		Date date.Date `json:"date"`
		Time string    `json:"time"`
		TZ   string    `json:"tz"`
	}{s.Date, s.Time.HhMm(), s.TZ})
}

// UnmarshalJSON reads {date, time, tz}.
func (s *Serve) UnmarshalJSON(data []byte) error {
	return unmarshalJSON(data, func(d decoder) strict.Reader { return d.serve(s) })
}

// MarshalJSON writes "15:00" or {date, time}.
func (c Clock) MarshalJSON() ([]byte, error) {
	if c.Date == nil {
		return json.Marshal(c.Time.HhMm())
	}
	return json.Marshal(struct {
		Date date.Date `json:"date"`
		Time string    `json:"time"`
	}{*c.Date, c.Time.HhMm()})
}

// UnmarshalJSON reads "15:00" or {date, time}.
func (c *Clock) UnmarshalJSON(data []byte) error {
	return unmarshalJSON(data, func(d decoder) strict.Reader { return d.clock(c) })
}

// MarshalJSON writes both clocks to the minute.
func (q Quiet) MarshalJSON() ([]byte, error) {
	return json.Marshal(struct {
		From string `json:"from"`
		To   string `json:"to"`
	}{q.From.HhMm(), q.To.HhMm()})
}

// UnmarshalJSON reads {from, to}.
func (q *Quiet) UnmarshalJSON(data []byte) error {
	return unmarshalJSON(data, func(d decoder) strict.Reader { return d.quiet(q) })
}

// MarshalJSON writes 24, or {adults, children, frail} if there is more to say.
func (g Guests) MarshalJSON() ([]byte, error) {
	if g.Children == 0 && !g.Frail && !g.NoneFrail {
		return json.Marshal(g.Adults)
	}
	type fields Guests
	if !g.Frail && g.NoneFrail {
		return json.Marshal(struct {
			fields
			Frail bool `json:"frail"`
		}{fields(g), false})
	}
	return json.Marshal(fields(g))
}

// UnmarshalJSON reads 24 or {adults, children, frail}.
func (g *Guests) UnmarshalJSON(data []byte) error {
	return unmarshalJSON(data, func(d decoder) strict.Reader { return d.guests(g) })
}

// MarshalJSON writes "good", or {kind, logged} if there is more to say.
func (b Box) MarshalJSON() ([]byte, error) {
	if b.Logged == nil {
		return json.Marshal(b.Kind)
	}
	type fields Box
	return json.Marshal(fields(b))
}

// UnmarshalJSON reads "good" or {kind, logged}.
func (b *Box) UnmarshalJSON(data []byte) error {
	return unmarshalJSON(data, func(d decoder) strict.Reader { return d.box(b) })
}

// MarshalJSON writes "203 °F" (as SI), "medium-rare" or {final}. It fails unless
// exactly one of the three is set.
func (t Target) MarshalJSON() ([]byte, error) {
	if t.given() != 1 {
		return nil, fmt.Errorf("a target has %d of core, doneness and final; it must have one", t.given())
	}
	switch {
	case t.Core != nil:
		return json.Marshal(t.Core)
	case t.Final != nil:
		return json.Marshal(map[string]*unit.Temperature{"final": t.Final})
	}
	return json.Marshal(t.Doneness)
}

// given counts how many of the three ways to say a target are used.
func (t Target) given() int {
	n := 0
	for _, set := range []bool{t.Core != nil, t.Doneness != "", t.Final != nil} {
		if set {
			n++
		}
	}
	return n
}

// UnmarshalJSON reads "203 °F", "medium-rare" or {final}.
func (t *Target) UnmarshalJSON(data []byte) error {
	return unmarshalJSON(data, func(d decoder) strict.Reader { return d.target(t) })
}

// MarshalJSON writes a temperature or "frozen".
func (s Start) MarshalJSON() ([]byte, error) {
	if s.Frozen {
		return json.Marshal(startFrozen)
	}
	return json.Marshal(s.Core)
}

// UnmarshalJSON reads a temperature or "frozen".
func (s *Start) UnmarshalJSON(data []byte) error {
	return unmarshalJSON(data, func(d decoder) strict.Reader { return d.start(s) })
}

// MarshalJSON writes "foil", or {with, from, after} if there is more to say.
func (w Wrap) MarshalJSON() ([]byte, error) {
	if w.From == nil && w.After == nil {
		return json.Marshal(w.With)
	}
	type fields Wrap
	return json.Marshal(fields(w))
}

// UnmarshalJSON reads "foil" or {with, from, after}.
func (w *Wrap) UnmarshalJSON(data []byte) error {
	return unmarshalJSON(data, func(d decoder) strict.Reader { return d.wrap(w) })
}

// unmarshalJSON reads a part of a request by the reader that Read uses for it.
func unmarshalJSON(data []byte, read func(decoder) strict.Reader) error {
	faults := &strict.FaultList{}
	if tree := strict.ParseJSON(data, faults); tree != nil {
		read(newDecoder(faults))(tree, "")
	}
	return inputError(faults)
}
