package remedy

import (
	"encoding/json"
	"fmt"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner/internal/day"
)

// memory keeps what is known of parts of the menu while remedies are tried: what cannot be
// had together cannot be had with more beside it, and the same is not asked twice.
type memory struct{ all []known }

// known is a verdict on dishes, each in its own words, on a day in its own.
type known struct {
	day    string
	dishes []string // sorted
	verdict
	nodes int // that it was asked with
}

// question is a request as the memory takes it, under lifted rules.
func question(r schedule.Request, lifted []string, nodes int) known {
	k := known{nodes: nodes}
	for _, d := range r.Dishes {
		k.dishes = append(k.dishes, words(d))
	}
	slices.Sort(k.dishes)
	k.day = fmt.Sprint(lifted, oneMeal(r))
	r.Dishes, r.Name = nil, ""
	k.day += words(r)
	return k
}

func words(v any) string {
	text, err := json.Marshal(v)
	if err != nil { // what was read can be written
		return fmt.Sprintf("%#v", v)
	}
	return string(text)
}

// oneMeal says whether all is eaten within half a day: a day of more meals may have more
// fires, so that what cannot be had of one meal may be had beside another.
func oneMeal(r schedule.Request) bool {
	loc, err := r.Location()
	if err != nil {
		return false
	}
	main := day.ClockIn(r, nil, loc)
	for _, d := range r.Dishes {
		if off := day.ClockIn(r, d.Serve, loc).Sub(main); off.Abs() >= mealApart {
			return false
		}
	}
	return true
}

// mealApart keeps any two dishes of one meal within half a day of each other.
const mealApart = 6 * time.Hour

// recall is what is known of a question.
func (m *memory) recall(q known) (verdict, bool) {
	for i := range m.all {
		k := &m.all[i]
		if k.day != q.day {
			continue
		}
		same := slices.Equal(k.dishes, q.dishes)
		if same && (k.verdict != unsure || k.nodes >= q.nodes) || k.verdict == cannot && within(k.dishes, q.dishes) {
			return k.verdict, true
		}
	}
	return unsure, false
}

// within says whether all of some sorted words are among others.
func within(few, more []string) bool {
	i := 0
	for _, w := range more {
		if i < len(few) && few[i] == w {
			i++
		}
	}
	return i == len(few)
}

func (m *memory) keep(q known, v verdict) {
	q.verdict = v
	m.all = append(m.all, q)
}
