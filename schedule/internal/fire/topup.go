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
