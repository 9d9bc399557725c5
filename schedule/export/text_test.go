package export

import (
	"bytes"
	"io"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
)

func textOf(t *testing.T, p schedule.Plan, o Options) string {
	t.Helper()
	var b bytes.Buffer
	if err := Text(&b, p, o); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestTextKeepsToItsWidth(t *testing.T) {
	for _, n := range []int{0, 40, 60, 100} {
		want := n
		if n == 0 {
			want = 80
		}
		for _, line := range strings.Split(textOf(t, invented(), Options{Width: n}), "\n") {
			if columns(line) > want {
				t.Errorf("width %d: %d columns: %q", n, columns(line), line)
			}
		}
	}
}

func TestTextSaysWhatACookNeeds(t *testing.T) {
	got := textOf(t, invented(), Options{Now: invented().ServeAt.Add(-5 * time.Hour)})
	last := -1
	for _, want := range []string{"6:00 PM on Saturday, July 3, 2027", "9:30 PM on Friday, July 2", "84% that everything is ready on time",
		"carbon monoxide", "Friday, July 2\n---", "Quiet hours until 5:30 AM Sat", "Saturday, July 3\n---", "[ ]  5:30 AM  wrap",
		"Now: 1:00 PM", "Light an hour earlier. Cost: an hour more of fuel. Light 8:30 PM Fri", "Colour is no sign"} {
		at := strings.Index(got, want)
		if at <= last {
			t.Errorf("%q is missing or out of order", want)
		}
		last = at
	}
	if t.Failed() {
		t.Log(got)
	}
}

func TestTextBriefSaysTheNextSteps(t *testing.T) {
	p := invented()
	got := textOf(t, p, Options{Brief: 3, Now: p.Steps[5].At.Add(time.Minute)})
	if strings.Count(got, "[ ]") != 3 || !strings.Contains(got, "2:00 PM") || strings.Contains(got, "12:30 PM  take off") || strings.Contains(got, "serve") {
		t.Error(got)
	}
	if !strings.Contains(got, "carbon monoxide") {
		t.Error("the danger is missing")
	}
	if got := textOf(t, p, Options{Brief: 3, Now: p.ServeAt.Add(time.Hour)}); !strings.Contains(got, "No steps are left.") {
		t.Error(got)
	}
}

func TestTextHasColourOnlyWhenAsked(t *testing.T) {
	plainly, coloured := textOf(t, invented(), Options{}), textOf(t, invented(), Options{Colour: true})
	if strings.Contains(plainly, "\x1b") || !strings.Contains(coloured, bold) {
		t.Error("escape sequences")
	}
	if unstyled(coloured) != plainly {
		t.Error("colour changes the words or their places")
	}
}

func TestRevisionMarksWhatChanged(t *testing.T) {
	p := invented()
	p.Revision = 2
	p.Steps[0].Done = true
	p.Changes = []schedule.Change{{Step: p.Steps[5].ID, Kind: "moved", Dish: "brisket", Minutes: 40, Text: "40 min later than before", Why: "the core is behind"}}
	got := textOf(t, p, Options{})
	for _, want := range []string{"Revision  2", "What this revision changed", "* 40 min later than before. The core is behind.", "[x]  9:10 PM", "(11:00 AM to 2:30 PM; was 11:50 AM)"} {
		if !strings.Contains(strings.Join(strings.Fields(got), " "), strings.Join(strings.Fields(want), " ")) {
			t.Errorf("no %q in\n%s", want, got)
		}
	}
	page := func() string { return strings.ReplaceAll(exported(t, p, "html"), "\u00a0", " ") }
	if sheet := page(); !strings.Contains(sheet, `<span class="window">(11:00 AM to 2:30 PM; was 11:50 AM)</span>`) {
		t.Error("the sheet does not say beside a step when it was")
	}
	p.Changes[0].Minutes = 0
	if sheet := page(); !strings.Contains(sheet, "2:30 PM; new)") {
		t.Error("the sheet does not mark a step that is new")
	}
	p.Changes[0].Step = p.Steps[0].ID
	if sheet := page(); strings.Contains(sheet, "new)") {
		t.Error("the sheet marks a change of what is past")
	}
}

func TestTextOfADayWithoutPlanSaysSoFirst(t *testing.T) {
	p := invented()
	p.Feasible, p.Steps = false, nil
	p.Findings = []schedule.Finding{{Code: "clash", Severity: schedule.Danger, Dishes: []string{"brisket", "chickens"}, Text: "both want the whole grate at 15:00"}}
	got := textOf(t, p, Options{})
	last := -1
	for _, want := range []string{"This day won't work", "Brisket and Chickens: Both want the whole grate", "Light an hour earlier", "carbon monoxide"} {
		at := strings.Index(got, want)
		if at <= last {
			t.Errorf("%q is missing or out of order in\n%s", want, got)
		}
		last = at
	}
	if strings.Contains(got, "Shopping") {
		t.Error("nobody should shop for a day that does not fit")
	}
}

// Of what must not be served no sheet says when it will be ready or how it waits.
func TestTextSaysNothingMoreOfWhatMustNotBeServed(t *testing.T) {
	p := invented()
	p.Revision = 2
	if got := textOf(t, p, Options{}); !strings.Contains(got, "everything is ready on time (Brisket") || !strings.Contains(got, "Brisket: cooler") {
		t.Fatalf("the plan no longer tests what it is for:\n%s", got)
	}
	p.Findings = []schedule.Finding{{Code: "stopped-over", Severity: schedule.Danger, Dishes: []string{"brisket"}, Text: "Brisket: throw it away."}}
	got := textOf(t, p, Options{})
	if strings.Contains(got, "(Brisket") || strings.Contains(got, "Brisket: cooler") || !strings.Contains(got, "Do not serve Brisket. ") || !strings.Contains(got, "the rest is ready on time (Chickens") {
		t.Error(got)
	}
}

// What is measured before anybody eats has no odds until then, and the headline says so first. It was
// "90% that everything is ready on time" beside "do not serve it yet".
func TestNoOddsOfWhatIsMeasuredFirst(t *testing.T) {
	p := invented()
	at := p.Steps[0].At
	p.Revision, p.RevisedAt = 2, &at
	p.Steps = append([]schedule.Step{{ID: "m", At: at, Window: schedule.Window{Early: at, Expected: at, Late: at}, Kind: schedule.StepLook, Dish: "brisket", Batch: 1, Why: schedule.WhyNotShown, Text: "Measure Brisket before anybody eats."}}, p.Steps...)
	for _, got := range []string{textOf(t, p, Options{}), textOf(t, p, Options{Brief: 3}), written(t, Now, p), written(t, Sheet, p)} {
		got = strings.Join(strings.Fields(got), " ")
		if strings.Contains(got, "(Brisket 9") || !strings.Contains(strings.ToLower(got), "measure brisket before you serve it. ") || !strings.Contains(got, "the rest is ready on time (Chickens") {
			t.Error(got)
		}
	}
}

// written is a plan in a format.
func written(t *testing.T, write func(io.Writer, schedule.Plan, Options) error, p schedule.Plan) string {
	t.Helper()
	var b strings.Builder
	if err := write(&b, p, Options{}); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// What moves alike is told in one breath, and each move by itself where there are few.
func TestChangesThatAreAlikeAreToldAtOnce(t *testing.T) {
	p := keptPlan(t, "party")
	p.Revision, p.Changes = 1, nil
	for _, s := range p.Steps {
		if s.Dish == "chickens" {
			p.Changes = append(p.Changes, schedule.Change{Step: s.ID, Kind: s.Kind, Dish: s.Dish, Minutes: 120, Text: "Chickens, " + string(s.Kind) + ": moved; 2 hr later.", Why: "serving was moved"})
		}
	}
	if len(p.Changes) < 5 {
		t.Fatalf("only %d steps of the chickens", len(p.Changes))
	}
	changed := func() string {
		_, text, _ := strings.Cut(strings.Join(strings.Fields(textOf(t, p, Options{})), " "), "What this revision changed")
		text, _, _ = strings.Cut(text[len("---"):], " ---")
		return text
	}
	text := changed()
	if n := strings.Count(text, "moved; 2 hr later"); n != 0 {
		t.Errorf("%d moves are told one by one", n)
	}
	if !strings.Contains(text, "2 hr later, with what goes with it: Chickens, put-on ") || strings.Count(text, "Serving was moved") != 1 {
		t.Errorf("no such move in\n%s", text)
	}
	p.Changes = p.Changes[:3]
	if n := strings.Count(changed(), "moved; 2 hr later"); n != 3 {
		t.Errorf("%d of 3 moves are told one by one", n)
	}
}
