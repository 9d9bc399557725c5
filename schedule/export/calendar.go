package export

import (
	"fmt"
	"io"
	"strings"
	"time"

	"github.com/google/uuid"

	"example.com/cookday/schedule"
)

// alarmBefore is how long before an attended step its alarm goes: time to get up,
// wash hands and walk to the grill (assumption).
const alarmBefore = "-PT5M"

// refreshEvery is how often a calendar that is subscribed to should look again: readings
// come every few minutes (assumption).
const refreshEvery = "PT15M"

// Calendar writes the plan as one iCalendar object (RFC 5545): an event for each
// stage of each batch, which leaves the time free, and one for each step, with an
// alarm where it needs a person. A step's UID comes from its id, so a revised plan
// moves events instead of doubling them; SEQUENCE is the revision.
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
	for _, d := range v.Dishes {
		for _, b := range d.Batches {
			c.stages(d, b)
		}
	}
	for _, s := range v.Steps {
		c.step(s)
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

// stages writes the stages of a batch. They have no id in the plan; theirs is made
// as a step's is, of plan, dish, batch, kind and ordinal.
func (c *icalendar) stages(d schedule.DishPlan, b schedule.Batch) {
	seen := map[schedule.StageKind]int{}
	for _, s := range likely(b) {
		seen[s.Kind]++
		what := c.stage(s)
		title := c.dish(d.ID) + ": " + what
		if len(d.Batches) > 1 {
			title = fmt.Sprintf("%s, batch %d: %s", c.dish(d.ID), b.Number, what)
		}
		c.event(c.uid(d.ID, fmt.Sprint(b.Number), string(s.Kind), fmt.Sprint(seen[s.Kind])), s.From, s.To, title, nil)
		c.line("TRANSP", "TRANSPARENT")
		c.end("VEVENT")
	}
}

// stage says a stage in a few words: "wrapped in foil, 250 °F".
func (v *view) stage(s schedule.Stage) string {
	text := phrase(s.Kind)
	switch s.Kind {
	case schedule.StageBare:
		text = "on the grate"
		if s.Place == schedule.HoldOven {
			text = "in the oven"
		}
	case schedule.StageWrapped:
		if s.With != "" {
			text += " in " + clean(s.With)
		}
	case schedule.StageHold:
		if s.Place != "" {
			text += ", " + phrase(s.Place)
		}
	}
	if s.LevelC > 0 && (s.Phase > 0 || s.Place == schedule.HoldOven) {
		text += ", " + v.grate(s.LevelC)
	}
	return text
}

func (c *icalendar) uid(parts ...string) string {
	plan, err := uuid.Parse(c.ID)
	if err != nil { // a plan's own id may be any text
		plan = uuid.NewSHA1(uuid.NameSpaceOID, []byte(c.ID))
	}
	return uuid.NewSHA1(plan, []byte("stage/"+strings.Join(parts, "/"))).String()
}

func (c *icalendar) step(s schedule.Step) {
	e := c.entry(s)
	title := capital(e.kind)
	if s.Dish != "" {
		title += ": " + c.dish(s.Dish)
	}
	lines := []string{e.text}
	if e.window != "" {
		lines = append(lines, e.window)
	}
	if e.change != "" {
		lines = append(lines, e.change)
	}
	if s.Kind == schedule.StepLight || s.Kind == schedule.StepServe {
		lines = append(lines, c.warnings()...)
	}
	end := s.At.Add(time.Duration(s.Minutes * float64(time.Minute)))
	c.event(clean(s.ID), s.At, end, title, lines)
	if !s.Attended {
		c.line("TRANSP", "TRANSPARENT")
	}
	if s.Attended && !s.Done {
		c.begin("VALARM")
		c.line("ACTION", "DISPLAY")
		c.line("TRIGGER", alarmBefore)
		c.line("DESCRIPTION", escape(title+". "+e.text))
		c.end("VALARM")
	}
	c.end("VEVENT")
}
