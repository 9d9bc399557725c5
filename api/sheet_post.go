package api

import (
	"context"
	"encoding/json"
	"fmt"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/unit"
)

const typeForm = "application/x-www-form-urlencoded"

// formFields are those of the forms of a sheet; each may come once.
var formFields = []string{"of", "degrees", "did", "dish", "value", "top", "bottom", "clock", "take", "remedy", "revision"}

// postSheet takes a form of the live sheet and sends the browser back to the page, so
// that loading it again sends nothing twice.
func (s *Service) postSheet(c *call) error {
	id, err := c.planOnly()
	if err != nil {
		return err
	}
	if _, err := c.parameters(); err != nil {
		return err
	}
	// The address is a secret; a page that got to know it must still not use it for the cook.
	if err := http.NewCrossOriginProtection().Check(c.r); err != nil {
		return problem("forbidden", "The form was sent by a page of somebody else.")
	}
	data, _, err := c.body(maxLogSigns, typeForm)
	if err != nil {
		return err
	}
	record, err := s.cfg.Store.Plan(c.r.Context(), id)
	if err != nil {
		return err
	}
	typed, err := typedIn(data)
	if err == nil {
		err = s.takeForm(c, record, typed)
	}
	if err != nil {
		return s.refuseForm(c, record, typed, err)
	}
	c.header().Set(headerLocation, planPath(id)+".html")
	c.w.WriteHeader(http.StatusSeeOther)
	return nil
}

func typedIn(data []byte) (map[string]string, error) {
	values, err := url.ParseQuery(string(data))
	if err != nil {
		return nil, queryFault("", "the form cannot be read")
	}
	typed := map[string]string{}
	for name, list := range values {
		if !slices.Contains(formFields, name) || len(list) != 1 {
			return nil, queryFault(shortened(name), "is no field of the sheet, or is given twice")
		}
		typed[name] = strings.TrimSpace(list[0])
	}
	return typed, nil
}

// refuseForm shows a browser the page with what is wrong, and tells others as always.
func (s *Service) refuseForm(c *call, record Record, typed map[string]string, cause error) error {
	p := problemOf(cause)
	if p.Status >= 500 || negotiate(c.accept(), []string{typeJSON, "text/html"}) != "text/html" {
		return cause
	}
	r := &refusal{typed: typed}
	for _, f := range p.Errors {
		r.why = append(r.why, f.Detail)
	}
	if len(r.why) == 0 {
		r.why = []string{p.Detail}
	}
	fresh, err := s.cfg.Store.Plan(c.r.Context(), record.ID)
	if err != nil {
		return err
	}
	k, err := s.sheet(c.r.Context(), fresh, fresh.ID, false, r)
	if err != nil {
		return err
	}
	return c.sendSheet(p.Status, k)
}

// takeForm does what a form asks for: takes an entry back, takes a remedy, or logs.
func (s *Service) takeForm(c *call, record Record, typed map[string]string) error {
	var work func(context.Context, *state) (*draft, error)
	switch {
	case typed["take"] != "":
		n, err := strconv.ParseUint(typed["take"], 10, 31)
		if err != nil {
			return problem("not-found", "The log has no such entry.")
		}
		work = func(ctx context.Context, st *state) (*draft, error) { return s.withdrawn(ctx, st, int(n)) }
	case typed["remedy"] != "":
		n, err := strconv.ParseUint(typed["remedy"], 10, 15)
		if err != nil || n == 0 {
			return problem("not-found", "There is no such way out.")
		}
		work = func(ctx context.Context, st *state) (*draft, error) {
			if typed["revision"] != strconv.Itoa(st.kept.Number) {
				return nil, problem("stale", "The plan has changed since the page was loaded. Look at the ways out again.")
			}
			return s.remedied(ctx, st, int(n))
		}
	default:
		posted, now, err := s.readForm(c, record, typed)
		if err != nil {
			return err
		}
		work = func(ctx context.Context, st *state) (*draft, error) {
			if pressedTwice(st.log, posted) {
				return nil, nil
			}
			return s.logAdded(ctx, st, posted, now)
		}
	}
	_, _, err := s.change(c.r.Context(), c.match, record.ID, work)
	s.bell.ring(record.ID)
	return err
}

// readForm makes an entry of a form and has it read as every other log is.
func (s *Service) readForm(c *call, record Record, typed map[string]string) (posted []schedule.Entry, now time.Time, err error) {
	kept, err := s.cfg.Store.Newest(c.r.Context(), record.ID)
	if err != nil {
		return nil, now, err
	}
	err = s.within(c.r.Context(), s.gates.reading, func(context.Context) error {
		var p schedule.Plan
		if err := json.Unmarshal(kept.JSON, &p); err != nil {
			return err
		}
		now = seenAt(&p, record.Trial, s.now())
		row, err := rowOf(typed, &p, now)
		if err != nil {
			return err
		}
		data, err := json.Marshal(row)
		if err != nil {
			return err
		}
		posted, err = s.cfg.Planner.ReadLog(data, p)
		return formOne.faults(err)
	})
	if err == nil && !record.Trial {
		err = future(posted, now)
	}
	return posted, lookedAt(now, posted), err
}

// row is an entry as a log has it.
type row struct {
	Time  string `json:"time"`
	Dish  string `json:"dish"`
	Kind  string `json:"kind"`
	Value string `json:"value"`
}

func rowOf(typed map[string]string, p *schedule.Plan, now time.Time) (r row, err error) {
	at, err := clockOf(typed["clock"], p, now)
	if err != nil {
		return r, err
	}
	r.Time = at.Format(time.RFC3339)
	if of := typed["of"]; of != "" {
		r.Kind, r.Dish, _ = strings.Cut(of, " ")
		r.Value, err = degreesOf(typed["degrees"], p.Units)
		return r, err
	}
	kind, value := kindIn(typed["did"])
	if kind == "" {
		return r, queryFault("did", "say what was done")
	}
	r.Kind, r.Value = string(kind), value
	standsFor(&r.Value, typed["value"])
	if kind == schedule.LogVents && r.Value == "" {
		r.Value = "top " + typed["top"] + ", bottom " + typed["bottom"]
	}
	if form, _ := formOfKind(kind); form.OfDish {
		r.Dish = typed["dish"]
	}
	return r, nil
}

// kindIn parts a button's value: the kind of entry, and what it carries.
func kindIn(text string) (schedule.EntryKind, string) {
	kind, value, _ := strings.Cut(text, " ")
	return schedule.EntryKind(kind), value
}

// degreesOf is a temperature as a cook types it: a number alone is in the plan's units.
func degreesOf(text, units string) (string, error) {
	if text == "" {
		return "", queryFault("degrees", "type what the thermometer says")
	}
	text = strings.Replace(text, ",", ".", 1)
	if _, err := strconv.ParseFloat(text, 64); err != nil {
		return text, nil // with a unit, or wrong: the log's reader tells
	}
	if unit.System(units) == unit.Metric {
		return text + " C", nil
	}
	return text + " F", nil
}

// clockOf is the last instant of a clock time that is not to come; without one it is now.
func clockOf(text string, p *schedule.Plan, now time.Time) (time.Time, error) {
	loc, err := time.LoadLocation(p.TZ)
	if err != nil {
		return now, err
	}
	now = now.In(loc).Truncate(time.Second)
	if text == "" {
		return now, nil
	}
	clock, err := time.Parse("15:04", text)
	if err != nil {
		return now, queryFault("clock", fmt.Sprintf("%.40q is no time of day such as 14:30", text))
	}
	at := time.Date(now.Year(), now.Month(), now.Day(), clock.Hour(), clock.Minute(), 0, 0, loc)
	if at.After(now.Add(maxAhead)) {
		at = at.AddDate(0, 0, -1)
	}
	return at, nil
}
