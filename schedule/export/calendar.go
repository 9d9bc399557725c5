package export

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"github.com/google/uuid"

	"example.com/cookday/schedule"
)

// alarmBefore is how long before an attended step its alarm goes: time to get up,
// wash hands and walk to the grill (assumption).
const alarmBefore = 5 * time.Minute

// refreshEvery is how often a calendar that is subscribed to should look again: readings
// come every few minutes (assumption).
const refreshEvery = "PT15M"

// Calendar writes the plan as one iCalendar object (RFC 5545): an event for each time at
// which somebody has to do something, with one alarm; what comes within five minutes of it
// is in it, and what happens by itself is left out. The UID is the id of its first step, so
// a revised plan moves events instead of doubling them; SEQUENCE is the revision. A calendar
// that was imported once keeps an event whose step has gone to another's: subscribe to it.
//
// DTSTAMP is the plan's first instant, or the now of a revision once that is later: a
// first plan has no time of its own making, a clock would make the bytes differ from run
// to run, and a revision must not look older than what it revises.
// The error names an unknown time zone or is that of the writer.
func Calendar(w io.Writer, p schedule.Plan) error {
	v, err := look(p, time.Time{})
	if err != nil {
		return err
	}
	c := &icalendar{view: v}
	c.begin("VCALENDAR")
	c.line("VERSION", "2.0")
	c.line("PRODID", "-//cookday//EN")
	c.line("CALSCALE", "GREGORIAN")
	c.line("REFRESH-INTERVAL;VALUE=DURATION", refreshEvery) // RFC 7986, 5.7
	c.line("X-PUBLISHED-TTL", refreshEvery)                 // the same, for readers that are older
	c.line("NAME", escape(v.title()))
	c.line("X-WR-CALNAME", escape(v.title()))
	c.line("DESCRIPTION", escape(v.warnings()...))
	from, to := v.extent()
	c.stamp = from.UTC().Format(icalUTC)
	if p.RevisedAt != nil && p.RevisedAt.After(from) {
		c.stamp = p.RevisedAt.UTC().Format(icalUTC)
	}
	c.timezone(from, to)
	if !v.Feasible {
		c.noPlan()
	}
	for _, group := range v.occasions() {
		c.occasion(group)
	}
	c.end("VCALENDAR")
	_, err = io.WriteString(w, c.String())
	return err
}

// warnings are the cautions of the day and the closing words, for a description.
func (v *view) warnings() []string {
	first, rest := v.bySeverity()
	var lines []string
	for _, c := range append(first, rest...) {
		lines = append(lines, sentence(c.Text))
	}
	return append(lines, closing)
}

// dangers are the gravest cautions, and the ones about eating and keeping; where the rest stands.
func (v *view) dangers() []string {
	first, rest := v.bySeverity()
	for _, c := range rest {
		if slices.Contains(atTable, c.Code) {
			first = append(first, c)
		}
	}
	var lines []string
	for _, c := range first {
		lines = append(lines, sentence(c.Text))
	}
	return append(lines, "More on safety is with the first fire that is lit, and in the description of this calendar.")
}

// atTable are cautions that matter as people eat.
var atTable = []string{"target-below-minimum", "frail-guests", "who-eats", "measure", "measure-poultry", "measure-ground", "measure-stuffing", "hold-line", "two-hours", "chill-fast", "leftovers-days"}

// noPlan stands at the serving instant and says that the day does not fit.
func (c *icalendar) noPlan() {
	lines := []string{}
	for _, f := range c.Findings {
		lines = append(lines, c.finding(f))
	}
	for _, r := range c.Remedies {
		lines = append(lines, c.remedy(r))
	}
	c.event(c.uid("no-plan"), c.ServeAt, c.ServeAt, "No plan fits this day: "+c.title(), append(lines, c.warnings()...))
	c.end("VEVENT")
}

func (c *icalendar) uid(parts ...string) string {
	plan, err := uuid.Parse(c.ID)
	if err != nil { // a plan's own id may be any text
		plan = uuid.NewSHA1(uuid.NameSpaceOID, []byte(c.ID))
	}
	return uuid.NewSHA1(plan, []byte("stage/"+strings.Join(parts, "/"))).String()
}

// occasions are the entries at which somebody has to do something, those close together in one.
func (v *view) occasions() [][]entry {
	var out [][]entry
	for _, e := range v.merged(v.Steps) {
		if !e.step.Attended || leftOut(e.step) {
			continue
		}
		n := len(out)
		if n > 0 && e.step.Done == out[n-1][0].step.Done && !e.step.At.After(out[n-1][0].step.At.Add(inOneGo)) {
			out[n-1] = append(out[n-1], e)
			continue
		}
		out = append(out, []entry{e})
	}
	return out
}

// occasion writes an event. A turn alone rings no alarm: whoever turns stands there.
func (c *icalendar) occasion(group []entry) {
	var lines []string
	first, end, rings, warns := group[0].step, group[0].step.At, false, false
	for _, e := range group {
		text := e.text
		for _, part := range []string{e.window, e.more, e.change} {
			text = strings.TrimSpace(text + " " + part)
		}
		if !c.at(e.step.At).Equal(c.at(first.At)) {
			text = c.clock(e.step.At) + ": " + text
		}
		lines = append(lines, text)
		if to := e.step.At.Add(time.Duration(e.step.Minutes * float64(time.Minute))); to.After(end) {
			end = to
		}
		rings = rings || !isFlip(e.step) && !e.step.Done
		warns = warns || e.step.Kind == schedule.StepLight && !c.warned || e.step.Kind == schedule.StepServe || e.step.Kind == schedule.StepChill
	}
	title := c.occasionTitle(group)
	switch {
	case warns && c.warned: // the whole of it once: under an alarm it would hide what to do
		lines = append(lines, c.dangers()...)
	case warns:
		c.warned = true
		lines = append(lines, c.warnings()...)
	}
	c.event(clean(first.ID), first.At, end, title, lines)
	if rings {
		c.begin("VALARM")
		c.line("ACTION", "DISPLAY")
		c.line("TRIGGER", c.trigger(first.At))
		c.line("DESCRIPTION", escape(title))
		c.end("VALARM")
	}
	c.end("VEVENT")
}

// trigger is when the alarm of a step goes: before it, but not where that would wake somebody
// for what is done after they are up.
func (c *icalendar) trigger(at time.Time) string {
	if !c.quietAt(at) && c.quietAt(at.Add(-alarmBefore)) {
		return "PT0S"
	}
	return fmt.Sprintf("-PT%.0fM", alarmBefore.Minutes())
}
