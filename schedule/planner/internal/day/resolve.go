package day

import (
	"fmt"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/planner/internal/spread"
)

// Sound is a request with its defaults, found without a fault, and its time zone:
// reading that takes longer than all the rest.
type Sound struct {
	Request schedule.Request
	Loc     *time.Location
}

// Examine fills a request with its defaults and looks for faults. They come back as
// an *[schedule.InputError].
func Examine(r schedule.Request) (Sound, error) {
	loc, err := r.Location()
	if err != nil {
		loc = nil // validation says it
	}
	return ExamineIn(r, loc)
}

// ExamineIn is Examine where the time zone of the request is at hand.
func ExamineIn(r schedule.Request, loc *time.Location) (Sound, error) {
	r = r.WithDefaults()
	if faults := r.ValidateIn(loc); len(faults) > 0 {
		return Sound{}, &schedule.InputError{Faults: faults}
	}
	return Sound{Request: r, Loc: loc}, nil
}

// Options are what a day may be given beside its request.
type Options struct {
	Memo  *Memo // simulated cooks of days much like it; nil for a new one
	Chill bool  // what is served is cut and chilled, for another day
	Warms bool  // the oven is wanted for what is warmed in it: nothing else is finished there
}

// Resolve turns a sound request into a day. What only the catalogue and the models
// can refuse comes back as an *[schedule.InputError].
func Resolve(s Sound, o Options) (*Day, error) {
	req := s.Request
	d := &Day{Req: req, Loc: s.Loc, Z: spread.NormalQuantile(req.Confidence), Chill: o.Chill, warms: o.Warms, memo: o.Memo}
	if d.memo == nil {
		d.memo = NewMemo()
	}
	d.Frail = req.Guests != nil && req.Guests.Frail
	d.End = d.wall(req.Serve.Date, req.Serve.Time)
	for _, dish := range req.Dishes {
		if at := d.Clock(dish.Serve); dish.Serve != nil && at.After(d.End) {
			d.End = at
		}
	}
	d.Earliest = int(schedule.Horizon.Minutes())
	if req.Earliest != nil {
		d.Earliest = min(d.Earliest, d.Minute(d.Clock(req.Earliest)))
	}
	d.Quiet = d.quietSpans()
	d.resolveWeather()
	d.Grill = resolveGrill(req.Grill)
	if faults := d.resolveItems(); len(faults) > 0 {
		return nil, &schedule.InputError{Faults: faults}
	}
	return d, d.lookAtBodies()
}

// lookAtBodies looks once at every body that will be simulated. One that cannot be is a
// fault of the catalogue or of validation, and no fault of the request.
func (d *Day) lookAtBodies() error {
	for i := range d.Items {
		it := &d.Items[i]
		if it.Cut.Style == cut.Timed { // goes by the clock and is no body
			continue
		}
		for _, l := range it.Lots {
			if err := it.Body(l.MassKg).Check(); err != nil {
				return fmt.Errorf("%s of %g kg as a body: %w", it.Cut.Name, l.MassKg, err)
			}
		}
	}
	return nil
}
