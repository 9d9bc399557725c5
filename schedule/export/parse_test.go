package export

import (
	"encoding/xml"
	"io"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"example.com/cookday/schedule"
)

// elements reads an SVG picture with a strict parser and gives its elements and texts.
func elements(t *testing.T, picture string) (names map[string]int, text string) {
	t.Helper()
	names = map[string]int{}
	d := xml.NewDecoder(strings.NewReader(picture))
	var b strings.Builder
	for {
		token, err := d.Token()
		if err == io.EOF {
			return names, b.String()
		}
		if err != nil {
			t.Fatalf("%v in\n%s", err, picture)
		}
		switch token := token.(type) {
		case xml.StartElement:
			names[token.Name.Local]++
			for _, a := range token.Attr {
				if strings.HasPrefix(a.Name.Local, "on") || a.Name.Local == "href" {
					t.Errorf("attribute %s", a.Name.Local)
				}
			}
		case xml.CharData:
			b.WriteString(string(token) + "\n")
		}
	}
}

var pictureElements = []string{"svg", "title", "desc", "style", "defs", "pattern", "rect", "circle", "ellipse", "path", "text"}

func checkPicture(t *testing.T, picture string) string {
	t.Helper()
	names, text := elements(t, picture)
	for name := range names {
		if !slices.Contains(pictureElements, name) {
			t.Errorf("element %s", name)
		}
	}
	if names["svg"] != 1 || names["title"] != 1 || names["desc"] != 1 {
		t.Errorf("svg, title, desc: %v", names)
	}
	return text
}

// page reads an HTML page with a parser of the living standard.
func page(t *testing.T, source string) (elements map[string]int, text string) {
	t.Helper()
	root, err := html.Parse(strings.NewReader(source))
	if err != nil {
		t.Fatal(err)
	}
	elements = map[string]int{}
	var b strings.Builder
	ids := map[string]bool{}
	for n := range root.Descendants() {
		switch {
		case n.Type == html.TextNode && n.Parent.Data != "style":
			b.WriteString(n.Data)
		case n.Type == html.ElementNode:
			elements[n.Data]++
			for _, a := range n.Attr {
				if strings.HasPrefix(a.Key, "on") || a.Key == "src" || a.Key == "href" && a.Val != "#steps" {
					t.Errorf("attribute %s=%q", a.Key, a.Val)
				}
				if a.Key == "id" {
					if ids[a.Val] {
						t.Errorf("id %q comes twice", a.Val)
					}
					ids[a.Val] = true
				}
			}
		}
	}
	return elements, b.String()
}

func TestGoldenDaysAreWellFormed(t *testing.T) {
	for _, day := range days {
		p := keptPlan(t, day)
		for _, format := range []string{"timeline.svg", "curves.svg", "grate.svg"} {
			checkPicture(t, exported(t, p, format))
		}
		names, text := page(t, exported(t, p, "html"))
		if names["script"]+names["link"]+names["img"]+names["iframe"] != 0 {
			t.Errorf("%s: the sheet asks for more: %v", day, names)
		}
		text = strings.ToLower(strings.ReplaceAll(text, "\u00a0", " "))
		for _, s := range p.Steps {
			words := strings.ToLower(sentence(s.Text))
			if _, rest, labeled := strings.Cut(words, ": "); labeled { // which is said once of what is done in one go
				words = rest
			}
			if s.Kind == schedule.StepRefuel { // how it is added is told once
				words, _, _ = strings.Cut(words, ". ")
				words = strings.TrimSuffix(words, ".")
			}
			if s.Kind != schedule.StepFlip && !strings.Contains(text, words) { // of turns: TestTurnsAreToldWithThePuttingOn
				t.Errorf("%s: the sheet lacks %q", day, s.Text)
			}
		}
		calendarOf(t, p)
		tableOf(t, p, TableSteps)
		tableOf(t, p, TableDishes)
	}
}

// No output calls anything safe or ticks it off in green; all carry the cautions.
func TestNothingIsCalledSafe(t *testing.T) {
	safe := regexp.MustCompile(`(?i)\bsafe(ly)?\b|[✓✔✅☑]`)
	for _, day := range days {
		p := keptPlan(t, day)
		for _, format := range slices.Sorted(maps.Keys(exports)) {
			if found := safe.FindString(exported(t, p, format)); found != "" {
				t.Errorf("%s %s says %q", day, format, found)
			}
		}
	}
}

func TestCautionsGoWithEverySheet(t *testing.T) {
	p := keptPlan(t, "party")
	_, sheet := page(t, exported(t, p, "html"))
	squeezed := func(s string) string { return strings.Join(strings.Fields(s), " ") }
	texts := map[string]string{"txt": squeezed(exported(t, p, "txt")), "html": squeezed(sheet), "steps.csv": "", "ics": ""}
	for _, row := range tableOf(t, p, TableSteps) {
		texts["steps.csv"] += row["text"] + "\n"
	}
	for _, e := range calendarOf(t, p).Events() {
		if e.Props.Get("DESCRIPTION") != nil {
			texts["ics"] += text(t, e.Component, "DESCRIPTION") + "\n"
		}
	}
	for _, c := range p.Cautions {
		for format, all := range texts {
			if !strings.Contains(all, sentence(c.Text)) {
				t.Errorf("%s lacks the caution %s", format, c.Code)
			}
		}
	}
}

func TestErrorsNameWhatIsWrong(t *testing.T) {
	p := invented()
	for want, err := range map[string]error{
		`picture: "sketch" is not one of timeline, curves or grate`: Picture(io.Discard, p, Options{Picture: "sketch"}),
		`phase: 3 is not one of the plan's 2 phases (0 draws all)`:  GrateMap(io.Discard, p, 3),
	} {
		if err == nil || err.Error() != want {
			t.Errorf("got %v, want %s", err, want)
		}
	}
	for _, tz := range []string{"Mars/Olympus", "Local"} {
		p.TZ = tz
		for format, export := range exports {
			if err := export(io.Discard, p); err == nil || !strings.HasPrefix(err.Error(), "tz: ") {
				t.Errorf("%s in %s: %v", format, tz, err)
			}
		}
	}
	for _, picture := range []string{"", PictureTimeline, PictureCurves, PictureGrate} {
		if err := Picture(io.Discard, invented(), Options{Picture: picture}); err != nil {
			t.Error(err)
		}
	}
}

func TestADayWithoutPlan(t *testing.T) {
	p := schedule.Plan{TZ: "UTC", ServeAt: invented().ServeAt, Findings: []schedule.Finding{{Severity: schedule.Danger, Text: "the brisket and the chickens want the grate at once"}}}
	for format := range exports {
		got := exported(t, p, format)
		if format == "curves.svg" || format == "grate.svg" || format == "brief.txt" {
			continue
		}
		if !strings.Contains(got, "o plan") && !strings.Contains(got, "he brisket and the chickens") {
			t.Errorf("%s does not say that there is no plan:\n%s", format, got)
		}
	}
	for _, words := range []string{"This plan has no curves.", "This plan has no fire to draw."} {
		format := map[bool]string{true: "curves.svg", false: "grate.svg"}[strings.Contains(words, "curves")]
		if !strings.Contains(exported(t, p, format), words) {
			t.Errorf("%s does not say %q", format, words)
		}
	}
}
