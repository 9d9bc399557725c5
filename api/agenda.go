package api

import (
	"encoding/json"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
)

// agenda is what reminders need of a plan.
type agenda struct {
	ID       string             `json:"id"`
	Revision int                `json:"revision"`
	Name     string             `json:"name"`
	Feasible bool               `json:"feasible"`
	ServeAt  time.Time          `json:"serve_at"`
	TZ       string             `json:"tz"`
	Steps    []schedule.Step    `json:"steps"`
	Changes  []schedule.Change  `json:"changes"`
	Cautions []schedule.Caution `json:"cautions"`
	Dishes   []named            `json:"dishes"`

	kept time.Time      // when the revision was
	loc  *time.Location // of the plan
}

// named is a dish as its steps are told.
type named struct {
	ID   string `json:"id"`
	Name string `json:"name"`
}

func readAgenda(r Revision) (*agenda, error) {
	a := &agenda{}
	err := json.Unmarshal(r.JSON, a)
	return a.sorted(r.At), err
}

// newAgenda is what readAgenda reads of a plan that is at hand.
func newAgenda(p *schedule.Plan, kept time.Time) *agenda {
	a := &agenda{ID: p.ID, Revision: p.Revision, Name: p.Name, Feasible: p.Feasible, ServeAt: p.ServeAt, TZ: p.TZ,
		Steps: slices.Clone(p.Steps), Changes: p.Changes, Cautions: p.Cautions}
	for _, d := range p.Dishes {
		a.Dishes = append(a.Dishes, named{d.ID, d.Name})
	}
	return a.sorted(kept)
}

func (a *agenda) sorted(kept time.Time) *agenda {
	a.kept, a.loc = kept, time.UTC
	if loc, err := time.LoadLocation(a.TZ); err == nil {
		a.loc = loc
	}
	slices.SortStableFunc(a.Steps, func(x, y schedule.Step) int { return x.At.Compare(y.At) })
	return a
}

// told is an instant as the plan tells its own: on its clock, to the second.
func (a *agenda) told(t time.Time) time.Time {
	return t.In(a.loc).Truncate(time.Second)
}

func (a *agenda) dishName(id string) string {
	for _, d := range a.Dishes {
		if d.ID == id {
			return d.Name
		}
	}
	return ""
}

// cautions are the texts that go with every answer.
func (a *agenda) cautions() []string {
	texts := make([]string, len(a.Cautions))
	for i, c := range a.Cautions {
		texts[i] = c.Text
	}
	return texts
}

// Reminder is one step, flat, for a flow that knows nothing of plans.
type Reminder struct {
	Plan         string            `json:"plan"`
	Revision     int               `json:"revision"`
	Step         string            `json:"step"` // stays the same through revisions
	Kind         schedule.StepKind `json:"kind"`
	Dish         string            `json:"dish"` // its name; "" for the fire
	Text         string            `json:"text"`
	Why          string            `json:"why"`
	At           time.Time         `json:"at"`
	MinutesUntil float64           `json:"minutes_until"` // negative once it is past
	Attended     bool              `json:"attended"`      // it needs a person
	HandsMinutes float64           `json:"hands_minutes"`
}

func (a *agenda) reminder(s schedule.Step, now time.Time) Reminder {
	return Reminder{
		Plan: a.ID, Revision: a.Revision, Step: s.ID, Kind: s.Kind, Dish: a.dishName(s.Dish), Text: s.Text, Why: s.Why, At: s.At,
		MinutesUntil: minutesBetween(now, s.At), Attended: s.Attended, HandsMinutes: s.Minutes,
	}
}

// minutesBetween is rounded to a tenth: a reminder is not more exact than that.
func minutesBetween(from, to time.Time) float64 {
	return float64(to.Sub(from).Round(6*time.Second)/(6*time.Second)) / 10
}

// Due is the answer to what is to be done.
type Due struct {
	Plan          string            `json:"plan"`
	Revision      int               `json:"revision"`
	At            time.Time         `json:"at"`
	WithinMinutes float64           `json:"within_minutes"`
	Feasible      bool              `json:"feasible"`
	NowText       string            `json:"now_text"` // the last step begun, "" before the first one
	NowKind       schedule.StepKind `json:"now_kind"`
	NowDish       string            `json:"now_dish"`
	NowSince      float64           `json:"now_minutes_since"`
	NextText      string            `json:"next_text"` // the first step to come, "" after the last one
	NextKind      schedule.StepKind `json:"next_kind"`
	NextDish      string            `json:"next_dish"`
	NextAt        *time.Time        `json:"next_at"`
	NextUntil     *float64          `json:"next_minutes_until"`
	ServeUntil    float64           `json:"serve_minutes_until"`
	Due           []Reminder        `json:"due"` // steps in [at, at + within)
	Cautions      []string          `json:"cautions"`
}

// due looks at the agenda from an instant. Steps that a revision found done are
// left out.
func (a *agenda) due(at time.Time, within time.Duration) Due {
	d := Due{
		Plan: a.ID, Revision: a.Revision, At: a.told(at), WithinMinutes: within.Minutes(), Feasible: a.Feasible,
		ServeUntil: minutesBetween(at, a.ServeAt), Due: []Reminder{}, Cautions: a.cautions(),
	}
	for _, s := range a.Steps {
		switch {
		case s.At.After(at) && d.NextAt == nil && !s.Done:
			until := minutesBetween(at, s.At)
			d.NextText, d.NextKind, d.NextDish, d.NextAt, d.NextUntil = s.Text, s.Kind, a.dishName(s.Dish), &s.At, &until
		case !s.At.After(at):
			d.NowText, d.NowKind, d.NowDish, d.NowSince = s.Text, s.Kind, a.dishName(s.Dish), minutesBetween(s.At, at)
		}
		if !s.Done && !s.At.Before(at) && s.At.Before(at.Add(within)) {
			d.Due = append(d.Due, a.reminder(s, at))
		}
	}
	return d
}

// changeTexts says what a revision changed.
func (a *agenda) changeTexts() []string {
	texts := make([]string, len(a.Changes))
	for i, c := range a.Changes {
		texts[i] = strings.TrimSpace(c.Text + " " + c.Why)
	}
	return texts
}
