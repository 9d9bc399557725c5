package export

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
)

// Now writes how a day stands in a few lines: what to do now, what comes next, what to
// worry about and what could be done. Without Options.Now it is the instant of the
// revision.
func Now(w io.Writer, p schedule.Plan, o Options) error {
	if o.Now.IsZero() && p.RevisedAt != nil {
		o.Now = *p.RevisedAt
	}
	v, err := look(p, o.Now)
	if err != nil {
		return err
	}
	v.tellOnce()
	t := &textSheet{view: v, width: max(o.Width, 40), colour: o.Colour}
	if o.Width == 0 {
		t.width = 80
	}
	if !p.Feasible {
		t.infeasible()
	} else {
		t.standing()
	}
	_, err = io.WriteString(w, t.String())
	return err
}

// Limits of what a glance takes in.
const (
	nextSteps   = 3
	mostWorries = 4
	mostAsked   = 3
	mostChoices = 3
)

// dueWithin is how soon something must come up to be done now.
const dueWithin = 2 * time.Minute

func (t *textSheet) standing() {
	eat := "Eat at " + strings.ReplaceAll(t.eatAt(), " on "+t.date(t.now), "")
	at, served := t.servedAt()
	if served {
		eat = "Served at " + t.clockBy(at, t.now)
	}
	t.item("", t.styled(bold, t.clock(t.now)+", "+t.day(t.now))+". "+eat+".")
	due, next := t.dueAndNext()
	if len(due)+len(next) > 0 && !served && !t.allServed() {
		t.item("", "Odds: "+lower(t.sure())+t.asAsked()+"."+t.onceMended())
	}
	t.heading("Do now", '-')
	told := t.doNow(due, next)
	t.comes(next)
	t.worries(told)
	t.choices()
	t.onTheFire()
	t.offTheFire()
}

// asAsked is the chance of the hour that was asked for, where the meal has moved.
func (t *textSheet) asAsked() string {
	if !slices.ContainsFunc(t.Dishes, func(d schedule.DishPlan) bool { return !t.unfit(d.ID) && !t.heldBack(d.ID) }) {
		return "" // nothing has odds
	}
	for _, f := range t.Findings {
		if at, rest, ok := strings.Cut(strings.TrimPrefix(f.Text, "At "), ": "); ok && f.Code == "served-later" && strings.HasPrefix(f.Text, "At ") {
			odds, _, _ := strings.Cut(rest, ";")
			return "; at " + at + ", as asked: " + odds
		}
	}
	return ""
}

// onceMended says what the odds are with the grate back at its level, where that brings dinner nearer
// to its hour: it is among what to do now, and the hour above counts without it.
func (t *textSheet) onceMended() string {
	for _, r := range t.Remedies {
		if r.Code == "back-to-level" && r.ServeAt.Before(t.ServeAt) {
			return " With the grate back at its heat: eat at " + t.clockBy(r.ServeAt, t.now) + ", " + percent(r.Chance) + " sure."
		}
	}
	return ""
}

// servedAt is when the last of the dishes came to the table, where the log says so of all.
func (t *textSheet) servedAt() (last time.Time, all bool) {
	for _, d := range t.Dishes {
		at := time.Time{}
		for _, e := range t.Log {
			if e.Kind == schedule.LogServed && (e.Dish == d.ID || e.Dish == "") {
				at = e.At
			}
		}
		if at.IsZero() || t.cooksOn(d) {
			return last, false
		}
		if at.After(last) {
			last = at
		}
	}
	return last, len(t.Dishes) > 0
}

// cooksOn says whether some of a dish is still cooking.
func (t *textSheet) cooksOn(d schedule.DishPlan) bool {
	return slices.ContainsFunc(d.Batches, func(b schedule.Batch) bool { return t.cooks(d, b) != "" })
}

// allServed says whether every dish came to the table, as the log says.
func (t *textSheet) allServed() bool {
	return !slices.ContainsFunc(t.Dishes, func(d schedule.DishPlan) bool { return !t.found(schedule.Leftovers, d.ID) })
}

// stepText is what to do, with the name of the dish.
func (t *textSheet) stepText(s schedule.Step) string {
	return t.view.entry(s).text
}

func (t *textSheet) comes(next []schedule.Step) {
	if len(next) == 0 {
		return
	}
	t.heading("Next", '-')
	for _, s := range next {
		text := t.stepText(s)
		if w := t.view.entry(s).window; w != "" {
			text += " " + w
		}
		t.item(t.styled(bold, t.clockColumnBy(s.At, t.now))+"  ", text)
	}
}

// worries are the findings below danger that ask for something, the gravest first, but for
// those that are told already.
func (t *textSheet) worries(told []int) {
	var all []schedule.Finding
	for i, f := range t.Findings {
		if f.Severity == schedule.Warning && !slices.Contains(told, i) {
			all = append(all, f)
		}
	}
	if len(all) == 0 {
		return
	}
	t.heading("Worries", '-')
	for _, f := range all[:min(len(all), mostWorries)] {
		t.item("! ", sentence(f.Text))
	}
	if more := len(all) - mostWorries; more > 0 {
		t.item("", fmt.Sprintf("And %d more: the whole plan tells them.", more))
	}
}

func (t *textSheet) choices() {
	if len(t.Remedies) == 0 {
		return
	}
	t.heading("What you could do now", '-')
	for _, r := range t.Remedies[:min(len(t.Remedies), mostChoices)] {
		t.item("* ", t.remedyText(r))
	}
}

func (v *view) found(code, dish string) bool {
	return slices.ContainsFunc(v.Findings, func(f schedule.Finding) bool { return f.Code == code && slices.Contains(f.Dishes, dish) })
}

// remedyText is a choice with its price and what it leads to.
func (v *view) remedyText(r schedule.Remedy) string {
	text := sentence(r.Text) + v.price(r)
	if !r.ServeAt.IsZero() && !strings.Contains(text, v.clock(r.ServeAt)) {
		text += " Eat " + v.clockBy(r.ServeAt, v.now) + ", " + percent(r.Chance) + " sure."
	} else {
		text += " " + capital(percent(r.Chance)) + " sure."
	}
	return text
}
