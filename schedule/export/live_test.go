package export

import (
	"html/template"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
)

func live(t *testing.T, p schedule.Plan, now time.Time, l Live) string {
	t.Helper()
	var b strings.Builder
	if err := LiveSheet(&b, p, now, l); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// A danger is said before anything that is to be done, in every state of the day.
func TestLiveSheetSaysDangerFirst(t *testing.T) {
	p := keptPlan(t, "small")
	now := p.Steps[len(p.Steps)/2].At
	p.Findings = append(slices.Clone(p.Findings), schedule.Finding{Code: "x", Severity: schedule.Danger, Text: "Do not eat this."},
		schedule.Finding{Code: "y", Severity: schedule.Warning, Text: "It will be late."})
	page := live(t, p, now, Live{})
	danger, do, worry := strings.Index(page, "Do not eat this."), strings.Index(page, `<div class="do">`), strings.Index(page, "It will be late.")
	if danger < 0 || do < danger || worry < do {
		t.Errorf("danger at %d, what to do at %d, the worry at %d", danger, do, worry)
	}
	if strings.Count(page, "Do not eat this.") != 1 {
		t.Error("the danger is told twice")
	}
}

// What two batches of a dish have in common is one alarm: the gravest, which comes first.
func TestAlarmsOfBatchesAreToldOnce(t *testing.T) {
	p := keptPlan(t, "small")
	now := p.Steps[len(p.Steps)/2].At
	danger := func(dish, text string) schedule.Finding {
		return schedule.Finding{Code: "x", Severity: schedule.Danger, Dishes: []string{dish}, Text: text}
	}
	p.Findings = []schedule.Finding{
		danger("a", "Eight hours without heat. Throw it away."), danger("a", "Seven hours without heat. Throw it away."), danger("b", "Six hours without heat. Throw it away."),
		danger("a", "Is it on?"), danger("a", "Is it on?"), danger("b", "Is it on?"),
	}
	var b strings.Builder
	if err := Now(&b, p, Options{Now: now}); err != nil {
		t.Fatal(err)
	}
	for _, said := range []string{live(t, p, now, Live{}), b.String()} {
		for text, want := range map[string]int{"Eight hours": 1, "Seven hours": 0, "Six hours": 1, "Is it on?": 2} {
			if got := strings.Count(said, text); got != want {
				t.Errorf("%q is told %d times, not %d", text, got, want)
			}
		}
	}
}

// What kills is told before the fire is lit, above the forms; on a day under way what is to be
// done comes first.
func TestLiveSheetWarnsBeforeTheFire(t *testing.T) {
	p := keptPlan(t, "small")
	for _, revision := range []int{0, 2} {
		p.Revision = revision
		page := live(t, p, p.Steps[0].At, Live{Forms: "<p>FORMS</p>"})
		warned, forms := strings.Index(page, "carbon monoxide"), strings.Index(page, "FORMS")
		if warned < 0 || forms < 0 || (warned < forms) != (revision == 0) {
			t.Errorf("revision %d: warned at %d, forms at %d", revision, warned, forms)
		}
		if strings.Count(page, "<h2>Safety</h2>") != 1 {
			t.Errorf("revision %d: told %d times", revision, strings.Count(page, "<h2>Safety</h2>"))
		}
	}
}

// The page parts the day at now: nothing is lost, and nothing is there twice.
func TestLiveSheetPartsTheDay(t *testing.T) {
	p := keptPlan(t, "overnight")
	first, last := p.Steps[0].At, p.Steps[len(p.Steps)-1].At
	for now := first.Add(-time.Hour); now.Before(last.Add(2 * time.Hour)); now = now.Add(37 * time.Minute) {
		v, err := look(p, now)
		if err != nil {
			t.Fatal(err)
		}
		d, err := v.sheet()
		if err != nil {
			t.Fatal(err)
		}
		past, left := v.pastDays(d.Days)
		rows, want := 0, len(v.merged(v.Steps))
		for _, day := range slices.Concat(past, left) {
			for _, r := range day.Rows {
				if r.Remark == "" {
					rows++
				}
			}
		}
		if rows != want {
			t.Errorf("at %s: %d rows for %d entries", now, rows, want)
		}
	}
}

// What whoever serves the page puts there stands where it belongs, and only where the
// log can say that a step was done.
func TestLiveSheetTakesButtons(t *testing.T) {
	p := keptPlan(t, "small")
	for i, s := range p.Steps {
		if s.Kind == schedule.StepPutOn {
			p.Steps[i].Done = false
			page := live(t, p, s.At, Live{Forms: "<p>FORMS</p>", Script: "<script></script>", Notice: "<p>NOTICE</p>",
				Step: func(s schedule.Step) template.HTML {
					if s.Kind == schedule.StepPutOn {
						return "<button>ON</button>"
					}
					return ""
				}})
			order := []string{"NOTICE", "<h2>Do now</h2>", "<button>ON</button>", "FORMS", "<h2>The day</h2>", "<script>"}
			for k := 1; k < len(order); k++ {
				if !strings.Contains(page, order[k-1]) || strings.Index(page, order[k]) < strings.Index(page, order[k-1]) {
					t.Errorf("%s does not come after %s", order[k], order[k-1])
				}
			}
			return
		}
	}
	t.Fatal("nothing is put on")
}
