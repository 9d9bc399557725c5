package day

import (
	"time"

	"example.com/cookday/schedule"
	"github.com/rickb777/date"
)

// Asleep is the same day with other quiet hours.
func (d *Day) Asleep(hours []schedule.Quiet) *Day {
	other := *d
	other.hours, other.silence = append([]schedule.Quiet{}, hours...), nil
	other.Quiet = other.quietSpans()
	return &other
}

// Hours are the hours of every day in which nobody tends anything.
func (d *Day) Hours() []schedule.Quiet {
	if d.hours != nil {
		return d.hours
	}
	return d.Req.QuietHours()
}

// QuietIntervals are the quiet hours from the first possible step to the last
// serving, worked out once.
func (d *Day) QuietIntervals() []schedule.Interval {
	hours := d.Hours()
	if len(hours) == 0 || d.silence != nil {
		return d.silence
	}
	first, last := date.NewAt(d.End.Add(-schedule.Horizon-daysAhead*24*time.Hour).In(d.Loc)), date.NewAt(d.End.In(d.Loc))
	all := make([]schedule.Interval, 0, (int(last.Sub(first))+1)*len(hours))
	for on := first; !on.After(last); on = on.Add(1) {
		for _, q := range hours {
			until := on
			if q.To <= q.From {
				until = on.Add(1)
			}
			all = append(all, schedule.Interval{From: d.wall(on, q.From), To: d.wall(until, q.To)})
		}
	}
	d.silence = all
	return all
}

// Nights are the quiet hours for sleep.
func (d *Day) Nights() []schedule.Interval {
	var out []schedule.Interval
	hours := d.Hours()
	for i, q := range d.QuietIntervals() {
		if hours[i%len(hours)].ForSleep() {
			out = append(out, q)
		}
	}
	return out
}

// quietSpans are the same in minutes before the last serving. An instant t is
// quiet if From <= t < To, and minutes run the other way.
func (d *Day) quietSpans() []Span {
	var spans []Span
	hours := d.Hours()
	for i, q := range d.QuietIntervals() { // day after day in the order of the hours
		s := Span{From: d.Minute(q.To) + 1, To: d.Minute(q.From) + 1}
		if s.To > 0 && s.From < s.To && s.From <= int(schedule.Horizon.Minutes()) {
			spans = append(spans, Span{From: max(s.From, 0), To: s.To, Night: hours[i%len(hours)].ForSleep()})
		}
	}
	return spans
}

// QuietWithin are the quiet hours that touch the plan.
func (d *Day) QuietWithin(p schedule.Plan) []schedule.Interval {
	if len(p.Steps) == 0 {
		return nil
	}
	first := p.Steps[0].At
	var out []schedule.Interval
	for _, q := range d.QuietIntervals() {
		if q.To.After(first) && q.From.Before(p.ServeAt) {
			out = append(out, q)
		}
	}
	return out
}
