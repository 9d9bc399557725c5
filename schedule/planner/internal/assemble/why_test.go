package assemble

import (
	"context"
	"errors"
	"slices"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/planner/internal/sequence"
)

// evening is a request for six o'clock, as plantest has it, which the rooms of the
// planner cannot see.
func evening(rest string, dishes ...string) string {
	return "format: 1\nserve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\n" + rest +
		"\ndishes:\n  - " + strings.Join(dishes, "\n  - ") + "\n"
}

const kettle22 = "grill: {kind: kettle, diameter: 22 in}\n"

// brokenBy are the rules that a start breaks which is moved past what holds it.
var brokenBy = map[sequence.Kind][]string{
	sequence.ServeRest:    {sequence.BrokenGap},
	sequence.ZoneFull:     {sequence.BrokenRoom},
	sequence.FireNotReady: {sequence.BrokenPlace, sequence.BrokenPhases},
	sequence.HandsBusy:    {sequence.BrokenHands},
	sequence.QuietHours:   {sequence.BrokenQuiet},
	sequence.ClosedHours:  {sequence.BrokenClosed},
}

// Each start of fifteen days is moved one minute later, with the stages that are tied to
// it, all else as it is: that breaks the rule which the plan names as its reason.
func TestStartsAreHeldByWhatTheyName(t *testing.T) {
	night := "quiet: [{from: \"23:00\", to: \"06:00\"}]"
	brisket, ribs := "{name: Brisket, cut: brisket, weight: 12 lb}", "{name: Ribs, cut: spare-ribs, weight: 3 lb}"
	birds, burgers := "{name: Birds, cut: chicken-spatchcock, weight: 4.5 lb}", "{name: Burgers, cut: burger, weight: 6 oz, count: 5}"
	seen := map[sequence.Kind]int{}
	for _, text := range []string{
		evening(kettle22, brisket),
		evening(kettle22+night, "{name: Brisket, cut: brisket, weight: 12 lb, wrap: {with: foil, from: 150 F}}", burgers),
		evening(kettle22+"oven: {hold: 170 F}\n"+night, brisket, birds, burgers),
		evening(kettle22+night, "{name: Brisket, cut: brisket, weight: 12 lb, wrap: none}", burgers),
		evening(kettle22, ribs),
		evening(kettle22, "{name: Steaks, cut: steak, weight: 12 oz, count: 2}", "{name: Buns, cut: flatbread, weight: 4 oz, count: 2}", burgers),
		evening(kettle22+"quiet: [{from: \"16:20\", to: \"16:55\"}]", birds),
		evening(kettle22+"quiet: [{from: \"06:00\", to: \"12:00\"}]", brisket),
		evening(kettle22, birds, burgers, "{name: Corn, cut: corn, count: 4}"),
		evening(kettle22, "{name: Tri-tip, cut: tri-tip, weight: 2 lb, finish: sear}", burgers),
		evening(kettle22+"quiet: [{from: \"12:00\", to: \"14:00\"}]", ribs, burgers),
		evening(kettle22, "{name: First, cut: burger, weight: 6 oz, count: 5, serve: \"17:40\"}", burgers),
		evening("grill: {kind: kettle, diameter: 18 in}\noven: {hold: 170 F}\n"+night, "{name: Butt, cut: pork-butt, weight: 6 lb}", birds),
		evening("grill: {kind: kettle, diameter: 26 in}", "{name: Turkey, cut: turkey, weight: 12 lb}", "{name: Wings, cut: chicken-wing, weight: 3 oz, count: 10}", burgers),
		evening("grill: {kind: kettle, diameter: 26 in}", burgers, "{name: More, cut: burger, weight: 6 oz, count: 4}", "{name: Corn, cut: corn, count: 3}"),
	} {
		a := arranged(t, text)
		for c, reasons := range a.Solution.Why {
			for j := range reasons {
				r, at := heldBy(reasons, j)
				seen[r.Kind]++
				var rule *sequence.BrokenError
				first, last := tied(a, c, min(j, at)), max(j, at)
				moved := aMinuteLater(a.Solution, c, first, last)
				if r.Kind == sequence.ServeRest && a.Solution.Chains[c][last].End == 0 {
					continue // dinner itself: the fire is planned no longer than that
				}
				err := sequence.Verify(&a.Problem, &moved)
				if errors.As(err, &rule) && rule.Rule == sequence.BrokenLag { // what follows at once moves along
					for last+1 < len(reasons) && a.Problem.Chains[c].Tasks[last].LagMax == 0 {
						last++
					}
					moved = aMinuteLater(a.Solution, c, first, last)
					err = sequence.Verify(&a.Problem, &moved)
				}
				if errors.As(err, &rule) && rule.Rule == sequence.BrokenLag && first > 0 && a.Problem.Chains[c].Tasks[first-1].LagMax > 0 {
					continue // two hold it: it may not wait longer for its sear either
				}
				if errors.As(err, &rule) && rule.Rule == sequence.BrokenHands && r.Kind != sequence.HandsBusy {
					free := arranged(t, text, arrange.RuleHands) // two are tight: look at the other alone
					err = sequence.Verify(&free.Problem, &moved)
				}
				if !errors.As(err, &rule) || !slices.Contains(brokenBy[r.Kind], rule.Rule) {
					t.Errorf("%s stage %d, %s a minute later breaks %v\n%s", a.Batches[c].It.Dish.Name, j, r.Kind, err, text)
				}
			}
		}
	}
	for _, kind := range []sequence.Kind{sequence.ServeRest, sequence.ZoneFull, sequence.FireNotReady, sequence.HandsBusy, sequence.QuietHours} {
		if seen[kind] == 0 {
			t.Errorf("%s holds nothing on these days", kind)
		}
	}
}

// arranged is the solved day of a request that has a plan, with some rules lifted.
func arranged(t *testing.T, text string, lifted ...string) arrange.Arrangement {
	t.Helper()
	r, err := schedule.Read([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	sound, err := day.Examine(r)
	if err != nil {
		t.Fatal(err)
	}
	d, err := day.Resolve(sound, day.Options{})
	if err != nil {
		t.Fatal(err)
	}
	a, err := (&arrange.Arranger{Day: d, Effort: arrange.Effort{Lifted: lifted}}).Arrange(context.Background())
	if err != nil || len(a.Solution.Chains) == 0 {
		t.Fatalf("no plan, %v\n%s", err, text)
	}
	return a
}

// tied is the first stage of a batch that goes on into the given one without a break.
func tied(a arrange.Arrangement, c, j int) int {
	for j > 0 && a.Problem.Chains[c].Tasks[j-1].LagMax == 0 {
		j--
	}
	return j
}

// aMinuteLater is a plan with some stages of a batch one minute later; instants count back
// from serving.
func aMinuteLater(s sequence.Solution, c, first, last int) sequence.Solution {
	s.Chains = slices.Clone(s.Chains)
	s.Chains[c] = slices.Clone(s.Chains[c])
	for j := first; j <= last; j++ {
		s.Chains[c][j].Start--
		s.Chains[c][j].End--
	}
	return s
}
