package api

import (
	"context"
	"errors"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"example.com/cookday/schedule"
)

// getFire says what to do about a fire that burns; the query says what is known of it, field=... asks for the one value
// that a cell shows.
func (s *Service) getFire(c *call) error {
	fields, field, err := c.fireQuery()
	if err != nil {
		return err
	}
	err = s.fire(c, fields, nil, field)
	var input *schedule.InputError
	if errors.As(err, &input) {
		return inputProblem(input, true)
	}
	return err
}

// postFire is getFire with a log of the fire as the body.
func (s *Service) postFire(c *call) error {
	fields, field, err := c.fireQuery()
	if err != nil {
		return err
	}
	log, err := s.fireLog(c)
	if err != nil {
		return err
	}
	err = s.fire(c, fields, log, field)
	var input *schedule.InputError
	if errors.As(err, &input) {
		return inputProblem(input, true)
	}
	return err
}

// fireLog is the body as the log of a fire.
func (s *Service) fireLog(c *call) (log []schedule.Entry, err error) {
	data, kind, err := c.body(maxLogSigns, typeJSON, typeCSV)
	if err != nil {
		return nil, err
	}
	err = s.within(c.r.Context(), s.gates.ofBody(data), func(context.Context) (err error) {
		log, err = schedule.ReadFireLog(data)
		return err
	})
	if err != nil {
		return nil, formOf(kind, data).faults(err)
	}
	return log, nil
}

func (c *call) fireQuery() (fields map[string]string, field string, err error) {
	if fields, err = c.parameters(append(schedule.FireFields(), "field")...); err != nil {
		return nil, "", err
	}
	field = fields["field"]
	delete(fields, "field")
	return fields, field, nil
}

func (s *Service) fire(c *call, fields map[string]string, log []schedule.Entry, field string) error {
	q, err := schedule.ReadFireInquiry(fields, log)
	if err != nil {
		return err
	}
	var advice schedule.Steer
	err = s.within(c.r.Context(), s.gates.forecast, func(ctx context.Context) (err error) {
		advice, err = s.cfg.Planner.Fire(ctx, q)
		return err
	})
	if err != nil {
		return err
	}
	if field == "" {
		return c.sendJSON(http.StatusOK, advice)
	}
	values := steerFields(advice)
	i := slices.IndexFunc(values, func(v steerField) bool { return v.name == field })
	if i < 0 {
		return queryFault("field", "is a value of the advice; there are "+steerFieldNames(values))
	}
	return c.send(http.StatusOK, &content{kind: "text/plain; charset=utf-8", body: []byte(values[i].text + "\n")})
}

// steerField is one value of an advice as a cell shows it.
type steerField struct{ name, text string }

// steerFields are all of them; empty where this advice has none.
func steerFields(a schedule.Steer) []steerField {
	number := func(x float64) string { return strconv.FormatFloat(x, 'f', 1, 64) }
	out := []steerField{
		{"do", a.Do}, {"text", a.Text}, {"expect", a.Expect}, {"look", a.Look}, {"why", a.Why}, {"also", strings.Join(a.Also, " ")},
		{"look_minutes", strconv.Itoa(a.LookMinutes)}, {"count", strconv.Itoa(a.Count)}, {"reason", a.Reason},
	}
	vents := schedule.SteerVents{}
	if a.To != nil {
		vents = *a.To
	}
	out = append(out, steerField{"top", share(a.To != nil, vents.Top)}, steerField{"bottom", share(a.To != nil, vents.Bottom)})
	for _, r := range []struct {
		name string
		of   *schedule.SteerRange
	}{{"now", a.Now}, {"expect_15", a.In15}, {"expect_30", a.In30}} {
		low, middle, high := "", "", ""
		if r.of != nil {
			low, middle, high = number(r.of.LowC), number(r.of.MiddleC), number(r.of.HighC)
		}
		out = append(out, steerField{r.name + "_low_c", low}, steerField{r.name + "_c", middle}, steerField{r.name + "_high_c", high})
	}
	return out
}

// share is an opening with three digits, empty where there is none.
func share(told bool, x float64) string {
	if !told {
		return ""
	}
	return strconv.FormatFloat(x, 'f', 3, 64)
}

func steerFieldNames(values []steerField) string {
	var names []string
	for _, v := range values {
		names = append(names, v.name)
	}
	return strings.Join(names, ", ")
}
