package api

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"time"

	"example.com/cookday/schedule"
)

// putPlan changes the request of a plan: what is reminded of stays the same steps.
func (s *Service) putPlan(c *call) error {
	id, err := c.planOnly()
	if err != nil {
		return err
	}
	if _, err := c.parameters(); err != nil {
		return err
	}
	if !conditional(c.r) {
		return problem("condition-needed", "Send If-Match with the ETag of the revision that the new request is made up for.")
	}
	r, _, err := s.request(c, id)
	if err != nil {
		return err
	}
	f, err := c.formatFor("", false, nil)
	if err != nil {
		return err
	}
	return s.answerChange(c, id, f, func(ctx context.Context, st *state) (*draft, error) { return s.replanned(ctx, st, r) })
}

// replanned plans another request under the id of a plan. With a log it is planned as it
// would have been before the first entry, and then followed through the log.
func (s *Service) replanned(ctx context.Context, st *state, r schedule.Request) (*draft, error) {
	r.ID = st.record.ID
	d := &draft{facts: st.record.Facts}
	log := standing(st.log)
	d.facts.NotBefore = time.Time{}
	if len(log) == 0 && !d.facts.Trial {
		d.facts.NotBefore = s.now()
	}
	if gone := missing(r, log); gone != "" {
		return nil, problem("conflict", fmt.Sprintf("The log has entries of %.60q, which the new request leaves out: withdraw them, or log it as cancelled.", gone))
	}
	var err error
	if d.plan, err = s.makePlan(ctx, r, d.facts.NotBefore); err != nil {
		return nil, err
	}
	if len(log) == 0 || !d.plan.Feasible {
		return d, nil
	}
	d.plan, err = s.revised(ctx, d.plan, log, s.now(), d.facts)
	return d, err
}

// missing is a dish of a log that is not on the menu.
func missing(r schedule.Request, log []schedule.Entry) string {
	known := map[string]bool{"": true}
	for _, dish := range r.Dishes {
		known[dish.ID] = true
	}
	for _, e := range log {
		if e.Kind == schedule.LogDishAdded {
			known[e.Dish] = true
		}
		if !known[e.Dish] {
			return e.Dish
		}
	}
	return ""
}

// postRemedy does what a remedy of the newest revision asks for.
func (s *Service) postRemedy(c *call) error {
	id, err := c.planOnly()
	if err != nil {
		return err
	}
	if _, err := c.parameters(); err != nil {
		return err
	}
	number, err := strconv.ParseUint(c.param("number"), 10, 15)
	if err != nil || number == 0 {
		return problem("not-found", "Remedies are numbered from 1, in the order of the plan.")
	}
	if !conditional(c.r) {
		return problem("condition-needed", "Send If-Match with the ETag of the revision that has the remedy.")
	}
	f, err := c.formatFor("", false, nil)
	if err != nil {
		return err
	}
	return s.answerChange(c, id, f, func(ctx context.Context, st *state) (*draft, error) { return s.remedied(ctx, st, int(number)) })
}

func (s *Service) remedied(ctx context.Context, st *state, number int) (*draft, error) {
	if number > len(st.plan.Remedies) {
		return nil, problem("not-found", fmt.Sprintf("The newest revision has %d remedies.", len(st.plan.Remedies)))
	}
	edits := st.plan.Remedies[number-1].Edits
	if len(edits) == 0 {
		return nil, problem("conflict", "This remedy is something to do at the grill; nothing of the plan changes by it.")
	}
	if slices.ContainsFunc(edits, func(e schedule.Edit) bool { return e.Path == "log" }) {
		return s.logRemedy(ctx, st, edits)
	}
	r, err := askedOf(&st.plan).With(edits...)
	if err != nil {
		return nil, err
	}
	if faults := r.Validate(); len(faults) > 0 {
		return nil, &schedule.InputError{Faults: faults}
	}
	return s.replanned(ctx, st, r)
}

// logRemedy writes what is done now into the log.
func (s *Service) logRemedy(ctx context.Context, st *state, edits []schedule.Edit) (*draft, error) {
	var posted []schedule.Entry
	for _, e := range edits {
		entry, ok := e.Entry()
		if !ok {
			return nil, errors.New("a remedy edits the log and the request at once")
		}
		entry.At = lookedAt(s.now(), standing(st.log))
		posted = append(posted, entry)
	}
	return s.logAdded(ctx, st, posted, s.now())
}
