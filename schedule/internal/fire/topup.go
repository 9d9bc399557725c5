package fire

import (
	"cmp"
	"slices"
)

// TopUp is fuel added during a phase. Low fires take it unlit on the lit coals (which smokes and gives off carbon
// monoxide for some 20 min), hot ones take it lit, so a chimney is started LeadMinutes before.
type TopUp struct {
	AtMinute    float64
	Add         Amount
	Lit         bool
	LeadMinutes float64
	Relight     bool // the fire has gone out by then (there is a shortfall): light these anew
}

// Code names a shortfall.
type Code string

// CannotLast: the fire runs down while nobody tends it.
const CannotLast Code = "cannot-last-untended"

// Shortfall is a time that the fire cannot last through untended, with the margin laid: fed last at FedMinute, it is
// down at OutMinute, ShortMinutes too early.
type Shortfall struct {
	Code         Code
	FedMinute    float64
	OutMinute    float64
	ShortMinutes float64
}

// CanLastMinutes is the longest untended time that this layout does manage there.
func (s Shortfall) CanLastMinutes() float64 { return s.OutMinute - s.FedMinute }

// merge sorts spans and joins those that touch.
func merge(spans []Span) []Span {
	list := slices.Clone(spans)
	slices.SortFunc(list, func(a, b Span) int { return cmp.Compare(a.FromMinute, b.FromMinute) })
	var out []Span
	for _, s := range list {
		if s.ToMinute <= s.FromMinute {
			continue
		}
		if k := len(out) - 1; k >= 0 && s.FromMinute <= out[k].ToMinute {
			out[k].ToMinute = max(out[k].ToMinute, s.ToMinute)
			continue
		}
		out = append(out, s)
	}
	return out
}

// within finds the span that an instant falls strictly inside of: a span's own ends are tended.
func within(spans []Span, minute float64) (Span, bool) {
	for _, s := range spans {
		if s.FromMinute < minute && minute < s.ToMinute {
			return s, true
		}
	}
	return Span{}, false
}

const (
	leastFeed    = 0.95
	catchMinutes = 30 // how long before the end unlit coals must lie on lit ones (assumption)
)

// feed keeps a slow fire going with unlit coals: each time half an hour before the margin would be gone, earlier where
// nobody tends the fire then, never more than fits. A last twentieth of the need is not worth opening the lid for:
// the margin is that much thinner.
func (g Grill) feed(m meter, layKg, holdKg float64, spans []Span) (tops []TopUp, short []Shortfall) {
	total, have, last := m.used(m.minutes), layKg/layFactor, 0.0
	for have < total*leastFeed {
		empty := m.when(have)
		top := TopUp{AtMinute: max(empty-catchMinutes, last)}
		if s, ok := within(spans, top.AtMinute); ok {
			top.AtMinute = s.FromMinute
			if s.FromMinute <= last || m.room(s.FromMinute, have, holdKg) < m.mostHour*catchMinutes/60 {
				end := min(s.ToMinute, m.minutes)
				if end > empty {
					short = append(short, Shortfall{CannotLast, last, empty, end - empty})
				}
				top.Relight = end > empty
				top.AtMinute = end
				have = max(have, m.used(end))
			}
		}
		if top.AtMinute >= m.minutes {
			break
		}
		// A holder that takes less than half an hour's burning is heaped up all the same.
		add := min(max(m.room(top.AtMinute, have, holdKg), m.mostHour*catchMinutes/60), total-have)
		if add <= 0 {
			break
		}
		top.Add = g.amount(add * layFactor)
		tops = append(tops, top)
		have, last = have+add, top.AtMinute
	}
	return tops, short
}

// room is what the holder still takes at a minute, in expected kilograms: the margin lies in it too.
func (m meter) room(minute, haveKg, holdKg float64) float64 {
	return holdKg/layFactor - max(haveKg-m.used(minute), 0)
}
