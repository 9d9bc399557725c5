package plantest

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.com/cookday/schedule"
)

// Orders fails the test where a revision gives two orders about one thing.
func Orders(t testing.TB, p schedule.Plan) {
	t.Helper()
	for _, c := range Contradictions(p) {
		t.Error("two orders: " + c)
	}
}

// toTheTable are the kinds of step that bring food nearer to being eaten, or wait for it.
var toTheTable = []schedule.StepKind{
	schedule.StepPutOn, schedule.StepStallBegins, schedule.StepWrap, schedule.StepStallEnds, schedule.StepLook, schedule.StepFlip, schedule.StepIndoors,
	schedule.StepRest, schedule.StepBox, schedule.StepToOven, schedule.StepCheckOven, schedule.StepHold, schedule.StepSear, schedule.StepSlice,
}

// saves are the words by which a text has food kept, mended or eaten.
var saves = regexp.MustCompile(`(?i)\b(reheat|put it back|back on the (heat|grate)|eat it|eaten|serve it|served? (by|at|when)|keeps? until|good until|into (an|the) oven|to the oven|fire going|wrap it|on the table|chill it|or chilled|may be served)\b`)

// forbids are the words by which a text forbids that, or tells the rule that was broken.
var forbids = regexp.MustCompile(`(?i)\b(do not|never) [^.:;]*|\bfrom taking it off it is on the table [^.]*`)

func saved(text string) bool { return saves.MatchString(forbids.ReplaceAllString(text, "")) }

// Contradictions are the orders of a revision that do not go together: what is thrown away is
// not eaten, kept, wrapped or heated; what is measured first is measured before all else.
func Contradictions(p schedule.Plan) (out []string) {
	if p.Revision == 0 || !p.Feasible {
		return nil
	}
	for _, d := range p.Dishes {
		thrown := slices.IndexFunc(p.Findings, func(f schedule.Finding) bool { return throws(f, d.ID) })
		if thrown >= 0 {
			out = append(out, savedAfterAll(p, d, p.Findings[thrown])...)
		}
	}
	return append(out, notMeasuredFirst(p)...)
}

// throws says whether a finding has a dish thrown away, come what may.
func throws(f schedule.Finding, dish string) bool {
	return f.Severity == schedule.Danger && slices.Contains(f.Dishes, dish) && strings.Contains(strings.ToLower(f.Text), "throw it away") && !strings.Contains(f.Text, "or throw it away")
}

func savedAfterAll(p schedule.Plan, d schedule.DishPlan, why schedule.Finding) (out []string) {
	say := func(what, text string) {
		out = append(out, fmt.Sprintf("%s: %q, and %s: %q", d.Name, why.Text, what, text))
	}
	for _, f := range p.Findings {
		if slices.Contains(f.Dishes, d.ID) && saved(f.Text) {
			say(f.Code, f.Text)
		}
	}
	for _, s := range p.Steps {
		served := s.Kind == schedule.StepServe && regexp.MustCompile(`Serve: [^.]*`+regexp.QuoteMeta(d.Name)).MatchString(s.Text)
		if !s.Done && (served || s.Dish == d.ID && (slices.Contains(toTheTable, s.Kind) && !strings.Contains(s.Text, "throw it away") || saved(s.Text))) {
			say(string(s.Kind), s.Text)
		}
	}
	for _, r := range p.Remedies {
		if strings.Contains(r.Text, d.Name) || strings.Contains(r.Price, d.Name) {
			say("remedy "+r.Code, r.Text)
		}
	}
	return out
}

// notMeasuredFirst are steps that stand before the measurement that decides about a dish.
func notMeasuredFirst(p schedule.Plan) (out []string) {
	decides := func(s schedule.Step) bool {
		return s.Kind == schedule.StepLook && !s.Done && s.At.Equal(*p.RevisedAt) && strings.HasPrefix(s.Text, "Measure ")
	}
	last := -1
	for i, s := range p.Steps {
		if decides(s) {
			last = i
		}
	}
	for i, s := range p.Steps {
		switch {
		case s.Done || last < 0 || decides(s):
		case i < last:
			out = append(out, fmt.Sprintf("%q before %q", s.Text, p.Steps[last].Text))
		case s.Kind == schedule.StepWrap && slices.ContainsFunc(p.Steps, func(m schedule.Step) bool { return decides(m) && m.Dish == s.Dish }) && !strings.HasPrefix(s.Text, "Only "):
			out = append(out, fmt.Sprintf("%q though it is measured first", s.Text))
		}
	}
	return out
}
