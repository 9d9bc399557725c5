package export

import (
	"bytes"
	"context"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
)

func planOf(t *testing.T, request string) schedule.Plan {
	t.Helper()
	r, err := schedule.Read([]byte("serve: {date: 2027-07-10, time: \"18:30\", tz: America/Chicago}\n" + request))
	if err != nil {
		t.Fatal(err)
	}
	p, err := planner.Make(context.Background(), r)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// Every dish that is eaten at another time than the last meal is in the headline.
func TestHeadlineHasEveryMeal(t *testing.T) {
	p := planOf(t, "grill: {kind: kettle, diameter: 22 in}\noven: {hold: 170 F}\ndishes:\n  - {name: Thighs, cut: chicken-thigh, weight: 6 oz, count: 4, serve: \"13:00\"}\n"+
		"  - {name: Sausages, cut: sausage, weight: 4 oz, count: 4, serve: \"13:00\"}\n  - {name: Burgers, cut: burger, weight: 6 oz, count: 4}\n")
	if !p.Feasible {
		t.Fatal(p.Findings)
	}
	head, _, _ := strings.Cut(textOf(t, p, Options{}), "\n\n")
	head = strings.Join(strings.Fields(head), " ")
	for _, want := range []string{"Eat at 1:00 PM (Thighs and Sausages) and 6:30 PM (Burgers) on Saturday, July 10, 2027", "First Lay the fire, 11:"} {
		if !strings.Contains(head, want) {
			t.Errorf("no %q in %s", want, head)
		}
	}
}

// Before the first step a page says when the work begins and with what; what is only good to
// know, and what is written into a request, comes after the steps.
func TestPageLeadsWithTheWork(t *testing.T) {
	p := planOf(t, "grill: {kind: kettle, diameter: 22 in}\nguests: 4\ndishes:\n  - {name: Thighs, cut: chicken-thigh, weight: 6 oz, count: 8}\n")
	if !p.Feasible {
		t.Fatal(p.Findings)
	}
	if i := slices.IndexFunc(p.Remedies, func(r schedule.Remedy) bool { return r.Write != "" }); i < 0 {
		p.Remedies = append(p.Remedies, schedule.Remedy{Code: "oven", Text: "Use the oven.", Write: "oven: {}"})
	}
	var b bytes.Buffer
	if err := Sheet(&b, p, Options{}); err != nil {
		t.Fatal(err)
	}
	_, page, _ := strings.Cut(b.String(), "<body>")
	page = regexp.MustCompile(`(?s)<section class="paper">.*?</section>`).ReplaceAllString(page, "") // where there is room for it
	before, after, ok := strings.Cut(page, `<h2 id="steps">Steps</h2>`)
	if !ok || strings.Contains(before, "{") || !strings.Contains(before, `<dt>First</dt><dd class="big"><a href="#steps">Lay the fire, `) || !strings.Contains(before, "<dt>Odds</dt>") {
		t.Errorf("before the steps stands\n%s", before)
	}
	if open := regexp.MustCompile(`(?s)<details.*?</details>`).ReplaceAllString(before, ""); !strings.Contains(before, "<h2>Shopping</h2>") || strings.Contains(open, "Shopping") {
		t.Error("a phone shows the shopping before the steps, unfolded")
	}
	if !strings.Contains(after, "Good to know") || strings.Index(after, "<summary>These ways") < strings.Index(after, "<h2>Safety</h2>") {
		t.Error("what the request has stands before the cautions, or nothing is good to know")
	}
}

// What is done days before is in the headline, salting is not called taking out, and a
// water pan that was asked for is among what to have ready.
func TestHeadlineHasTheThaw(t *testing.T) {
	p := planOf(t, "grill: {kind: kettle, diameter: 22 in, water_pan: true}\ndishes:\n  - {name: Turkey, cut: turkey, weight: 12 lb, start: frozen, prep: [salt]}\n")
	if !p.Feasible {
		t.Fatal(p.Findings)
	}
	sheet := textOf(t, p, Options{})
	head, _, _ := strings.Cut(sheet, "\n\n")
	if !strings.Contains(strings.Join(strings.Fields(head), " "), "; thaw Turkey from ") {
		t.Errorf("no thaw in %s", head)
	}
	if !strings.Contains(strings.Join(strings.Fields(sheet), " "), "a water pan") {
		t.Error("the water pan is forgotten")
	}
	for line := range strings.Lines(sheet) {
		if strings.Contains(line, "take out") && strings.Contains(line, "salt") {
			t.Error(line)
		}
	}
}

// A cook is told measures of one system: none of the other, in no caution either.
func TestMeasuresAreTheCooksOwn(t *testing.T) {
	metric := textOf(t, keptPlan(t, "overnight"), Options{})
	us := textOf(t, keptPlan(t, "party"), Options{})
	for _, foreign := range []string{"°F", " lb", " mph", " ft "} {
		if strings.Contains(metric, foreign) {
			t.Errorf("a metric sheet says %q", foreign)
		}
	}
	for _, foreign := range []string{"°C", " kg", "km/h"} {
		if strings.Contains(us, foreign) {
			t.Errorf("a US sheet says %q", foreign)
		}
	}
}

// How a dish waits begins with the way that is planned, is not told in the words of the
// steps again, and a cooler is no box.
func TestHoldsAreToldOnce(t *testing.T) {
	for _, day := range days {
		p := keptPlan(t, day)
		v, err := look(p, p.ServeAt)
		if err != nil {
			t.Fatal(err)
		}
		for _, line := range v.holdLines() {
			if strings.HasPrefix(line, "Or") {
				t.Errorf("%s: a second choice comes first: %s", day, line)
			}
			for _, s := range p.Steps {
				_, words, _ := strings.Cut(sentence(s.Text), ": ")
				if len(words) > 20 && strings.Contains(line, words) {
					t.Errorf("%s: the hold repeats the step %q", day, s.Text)
				}
			}
		}
		if sheet := textOf(t, p, Options{}); strings.Contains(sheet, " box") {
			t.Errorf("%s: a sheet says box", day)
		}
	}
}
