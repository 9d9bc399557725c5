package main

import (
	"bufio"
	"encoding/csv"
	"encoding/json"
	"encoding/xml"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/cookday/schedule"
)

func TestFormats(t *testing.T) {
	looks := map[string]func(text string) error{
		"text": func(string) error { return nil },
		"json": func(text string) error { return json.Unmarshal([]byte(text), new(map[string]any)) },
		"csv": func(text string) error {
			_, err := csv.NewReader(strings.NewReader(text)).ReadAll()
			return err
		},
		"ics":  func(string) error { return nil },
		"svg":  wellFormed,
		"html": func(string) error { return nil },
	}
	begins := map[string]string{"text": "Lunch\n", "json": "{", "csv": "row,", "ics": "BEGIN:VCALENDAR\r\n", "svg": "<svg", "html": "<!doctype html>"}
	for _, format := range planFormats {
		t.Run(format, func(t *testing.T) {
			printed := mustRun(t, lunch, "plan", "-", "--format", format)
			if err := looks[format](printed); err != nil {
				t.Error(err)
			}
			if !strings.HasPrefix(strings.ToLower(printed), strings.ToLower(begins[format])) {
				t.Errorf("begins %.60q", printed)
			}
			suffix := "." + strings.Replace(format, "text", "txt", 1)
			name := filepath.Join(t.TempDir(), "plan"+suffix)
			mustRun(t, lunch, "plan", "-", "--out", name) // the name asks for the format
			if written, err := os.ReadFile(name); err != nil || string(written) != printed {
				t.Errorf("%s is not what --format %s prints: %v", name, format, err)
			}
		})
	}
}

func wellFormed(text string) error {
	d := xml.NewDecoder(strings.NewReader(text))
	for {
		if _, err := d.Token(); err == io.EOF {
			return nil
		} else if err != nil {
			return err
		}
	}
}

// A file is there in whole or not at all, and the old one stays where a run fails.
func TestOutIsAllOrNothing(t *testing.T) {
	folder := t.TempDir()
	name := filepath.Join(folder, "sheet.txt")
	if err := os.WriteFile(name, []byte("old"), 0o640); err != nil {
		t.Fatal(err)
	}
	if r := invoke("format: 1\n", "plan", "-", "--out", name); r.code != exitInput {
		t.Errorf("exit code %d", r.code)
	}
	if kept, _ := os.ReadFile(name); string(kept) != "old" {
		t.Errorf("a failed run wrote %.60q", kept)
	}
	if out := mustRun(t, lunch, "plan", "-", "--out", name); out != "" {
		t.Errorf("printed %.60q besides the file", out)
	}
	if written, _ := os.ReadFile(name); !strings.HasPrefix(string(written), "Lunch\n") {
		t.Errorf("wrote %.60q", written)
	}
	entries, _ := os.ReadDir(folder)
	if len(entries) != 1 {
		t.Errorf("left behind %v", entries)
	}
	if r := invoke(crowd, "plan", "-", "--out", name); r.code != exitInfeasible {
		t.Errorf("exit code %d for a day that cannot be done", r.code)
	}
}

// A file reached by a link is replaced, not the link.
func TestOutFollowsLinks(t *testing.T) {
	folder := t.TempDir()
	name, link := filepath.Join(folder, "sheet.txt"), filepath.Join(folder, "link.txt")
	if err := os.WriteFile(name, nil, 0o640); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(name, link); err != nil {
		t.Skip(err)
	}
	mustRun(t, lunch, "plan", "-", "--out", link)
	if written, _ := os.ReadFile(name); !strings.HasPrefix(string(written), "Lunch\n") {
		t.Errorf("wrote %.60q", written)
	}
}

func TestTextKeepsWithin80Columns(t *testing.T) {
	for _, args := range [][]string{
		{"plan", "-"}, {"plan", "-", "--brief"}, {"cuts"}, {"cuts", "brisket"}, {"cuts", "corn"}, {"cuts", "picanha"},
		{"forecast", "--cut", "brisket", "--weight", "12 lb"}, {"--help"}, {"plan", "--help"}, {"check", "--help"}, {"cuts", "--help"},
		{"forecast", "--help"}, {"new", "--help"}, {"now", "--help"}, {"note", "--help"}, {"revise", "--help"}, {"fire", "--help"}, {"listen", "--help"}, {"store", "--help"},
		{"help", "request"}, {"help", "log"}, {"help", "grill"}, {"help", "safety"}, {"help", "csv"}, {"help", "push"},
	} {
		lines := bufio.NewScanner(strings.NewReader(mustRun(t, lunch, args...)))
		for lines.Scan() {
			if n := utf8.RuneCountInString(lines.Text()); n > usualColumns {
				t.Errorf("cookday %q: a line of %d columns: %q", args, n, lines.Text())
			}
		}
	}
}

func TestNoColourWhereNobodySeesIt(t *testing.T) {
	if strings.Contains(mustRun(t, lunch, "plan", "-"), "\x1b") {
		t.Error("escape sequences in what is no terminal")
	}
}

func TestBriefIsTheNextSteps(t *testing.T) {
	all := mustRun(t, lunch, "plan", "-")
	brief := mustRun(t, lunch, "plan", "-", "--brief=3", "--now", "12:00")
	if steps := strings.Count(brief, "\n[ ]") + strings.Count(brief, "\n ~ "); steps != 3 {
		t.Errorf("%d steps in\n%s", steps, brief)
	}
	if strings.Contains(brief, "[ ] 11:") || !strings.Contains(all, "[ ] 11:") {
		t.Errorf("steps before now in\n%s", brief)
	}
}

func TestCompletion(t *testing.T) {
	for shell, word := range map[string]string{"bash": "__start_cookday", "zsh": "#compdef cookday", "fish": "complete -c cookday"} {
		if !strings.Contains(mustRun(t, "", "completion", shell), word) {
			t.Errorf("%s: %q is missing", shell, word)
		}
	}
	// __complete is what the scripts call.
	if out := mustRunQuiet(t, "__complete", "cuts", "bris"); !strings.Contains(out, "brisket-flat\tBrisket flat\n") {
		t.Errorf("cuts: %q", out)
	}
	if out := mustRunQuiet(t, "__complete", "forecast", "--cut", "chicken-s"); !strings.Contains(out, "chicken-spatchcock\t") {
		t.Errorf("--cut: %q", out)
	}
	if out := mustRunQuiet(t, "__complete", "plan", "--format", ""); !strings.Contains(out, "ics\n") {
		t.Errorf("--format: %q", out)
	}
}

// mustRunQuiet is mustRun for what may say something on standard error.
func mustRunQuiet(t *testing.T, args ...string) string {
	t.Helper()
	r := invoke("", args...)
	if r.code != exitFine {
		t.Fatalf("cookday %q: exit code %d, errors %q", args, r.code, r.errors)
	}
	return r.out
}

// A schema is JSON, whatever it is of.
func TestSchemas(t *testing.T) {
	for _, args := range [][]string{{"schema"}, {"schema", "request"}, {"schema", "entry"}, {"schema", "plan"}} {
		var schema struct {
			Dialect string `json:"$schema"`
		}
		if err := json.Unmarshal([]byte(mustRun(t, "", args...)), &schema); err != nil || !strings.Contains(schema.Dialect, "2020-12") {
			t.Errorf("%v: %q, %v", args, schema.Dialect, err)
		}
	}
	if r := invoke("", "schema", "menu"); r.code != exitInput || !strings.Contains(r.errors, "request, entry or plan") {
		t.Errorf("exit code %d, errors %q", r.code, r.errors)
	}
}

// Every kind of a log is explained.
func TestHelpExplainsEveryKindOfALog(t *testing.T) {
	told := mustRun(t, "", "help", "log")
	for _, f := range schedule.EntryForms() {
		if f.Kind.Means() == "" || !strings.Contains(told, "\n  "+string(f.Kind)+" ") {
			t.Errorf("%s is not explained", f.Kind)
		}
	}
}

// The shell is offered files of the right kind, the dishes of a day and the kinds of a log.
func TestCompletionOfDays(t *testing.T) {
	t.Chdir(t.TempDir())
	if err := os.WriteFile("lunch.yaml", []byte(lunch), 0o600); err != nil {
		t.Fatal(err)
	}
	for want, args := range map[string][]string{
		"yaml\n": {"plan", ""}, "csv\n": {"now", "lunch.yaml", ""}, "chicken\tChicken\n": {"note", "lunch.csv", "ch"},
		"wrapped\tIt was wrapped": {"note", "lunch.csv", "chicken", "wr"}, "party\n": {"new", "--like", ""}, "entry\n": {"schema", ""},
	} {
		if out := mustRunQuiet(t, append([]string{"__complete"}, args...)...); !strings.Contains(out, want) {
			t.Errorf("%v: %q", args, out)
		}
	}
}
