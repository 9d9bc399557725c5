package api

import (
	"context"
	"errors"
	"net/http"

	"example.com/cookday/schedule"
)

// getGrill says what the log of a kept plan teaches of its grill.
func (s *Service) getGrill(c *call) error {
	id, err := c.planOnly()
	if err != nil {
		return err
	}
	if _, err := c.parameters(); err != nil {
		return err
	}
	st, err := s.stateOf(c.r.Context(), id)
	if err != nil {
		return err
	}
	var lesson schedule.GrillLesson
	err = s.within(c.r.Context(), s.gates.of(st.plan.Request), func(ctx context.Context) (err error) {
		lesson, err = s.cfg.Planner.Learn(ctx, st.plan, standing(st.log))
		return err
	})
	if err != nil {
		return err
	}
	return c.sendJSON(http.StatusOK, lesson)
}

// postGrill says what a log of a fire alone teaches; the query says what burned, as for a fire.
func (s *Service) postGrill(c *call) error {
	fields, err := c.parameters(schedule.FireFields()...)
	if err != nil {
		return err
	}
	log, err := s.fireLog(c)
	if err != nil {
		return err
	}
	q, err := schedule.ReadFireInquiry(fields, log)
	if err != nil {
		var input *schedule.InputError
		if errors.As(err, &input) {
			return inputProblem(input, true)
		}
		return err
	}
	var lesson schedule.GrillLesson
	err = s.within(c.r.Context(), s.gates.forecast, func(ctx context.Context) (err error) {
		lesson, err = s.cfg.Planner.LearnFire(ctx, q)
		return err
	})
	if err != nil {
		return err
	}
	return c.sendJSON(http.StatusOK, lesson)
}
