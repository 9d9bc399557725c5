package main

import (
	"os"
	"strings"
	"testing"

	"example.com/cookday/schedule/draft"
)

// inFolder runs the rest of a test in a folder of its own, on a machine in Chicago.
func inFolder(t *testing.T) {
	t.Helper()
	t.Chdir(t.TempDir())
	t.Setenv("TZ", "America/Chicago")
}

// A day is asked for on a pipe, and the transcript is what a terminal shows.
func TestNewByPipe(t *testing.T) {
	inFolder(t)
	said := mustRun(t, "tomorrow\nSunday 6pm\n\n\n\n\n8\nno\nbrisket, 10 lb\nnone\n2 chickens 4.5 lb\n\n\n", "new")
	for _, part := range []string{
		"When do people eat? A day and a time\n[Saturday, January 9, 2027, 6:00 PM] > tomorrow\n", `"tomorrow" has no time of day`,
		"> Sunday 6pm\n", "\n[America/Chicago] > \n", "[kettle 22 in] > \n", "[not known] > no\n", "Brisket: what does the label say?", "[not read] > none\n",
		"Written: sunday.yaml\n", "Whole brisket (10 lb) and Chickens (2 × 4.5 lb)", "cookday plan sunday.yaml", "cookday now sunday.yaml",
	} {
		if !strings.Contains(said, part) {
			t.Errorf("%q is not in\n%s", part, said)
		}
	}
	request := read(t, "sunday.yaml")
	if first, _, _ := strings.Cut(request, "\n"); !strings.HasSuffix(first, "$schema="+draft.SchemaFile) {
		t.Errorf("the first line is %q", first)
	}
	mustRun(t, "", "plan", "sunday.yaml")
	mustRun(t, "", "check", "sunday.yaml")

	// By flags the same day is the same file; a name that is taken is not taken again.
	args := []string{"new", "--yes", "--when", "Sunday 6pm", "--guests", "8", "--frail", "no", "--dish", "brisket, 10 lb, label none", "--dish", "2 chickens, 4.5 lb"}
	if said := mustRun(t, "", args...); !strings.Contains(said, "Written: sunday-2.yaml\n") || strings.Contains(said, "> ") {
		t.Errorf("by flags:\n%s", said)
	}
	if got := read(t, "sunday-2.yaml"); got != request {
		t.Errorf("by flags\n%s\nby answers\n%s", got, request)
	}
	if got := mustRunQuiet(t, append(args, "-")...); got != request {
		t.Errorf("to standard output\n%s", got)
	}
}

func read(t *testing.T, name string) string {
	t.Helper()
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// A file that is there stays unless the cook says otherwise.
func TestNewNeverWritesOverAFile(t *testing.T) {
	inFolder(t)
	if err := os.WriteFile("day.yaml", []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	for stdin, args := range map[string][]string{
		"":     {"new", "day.yaml", "--like", "bird"},
		"\n":   {"new", "day.yaml", "--like", "bird"},
		"no\n": {"new", "day.yaml", "--like", "bird"},
		"y\n":  {"new", "day.yaml", "--like", "bird", "--yes"},
	} {
		if r := invoke(stdin, args...); r.code != exitInput || !strings.Contains(r.errors, "day.yaml: is there already") || read(t, "day.yaml") != "mine" {
			t.Errorf("%q %v: exit code %d, errors %q", stdin, args, r.code, r.errors)
		}
	}
	mustRun(t, "yes\n", "new", "day.yaml", "--like", "bird")
	if !strings.Contains(read(t, "day.yaml"), "turkey") {
		t.Error("it was not written after a yes")
	}
	mustRun(t, "", "new", "day.yaml", "--like", "steaks", "--yes", "--force")
	if !strings.Contains(read(t, "day.yaml"), "Ribeyes") {
		t.Error("it was not written by force")
	}
}

// The days to begin with can be had as they are; answers that are none are refused, and
// leave no file.
func TestNewByLikeAndWrongly(t *testing.T) {
	inFolder(t)
	for _, like := range draft.Likes() {
		if said := mustRun(t, "", "new", like+".yaml", "--yes", "--like", like); !strings.Contains(said, "How sure") && !strings.Contains(said, "Odds") {
			t.Errorf("%s:\n%s", like, said)
		}
	}
	for want, args := range map[string][]string{
		"--like: \"wedding\" is no day":  {"--like", "wedding"},
		"--when: ":                       {"--when", "soon", "--like", "bird"},
		"--zone: ":                       {"--zone", "Nowhere", "--like", "bird", "--yes"},
		"--dish: ":                       {"--dish", "elephant", "--yes"},
		"--units: ":                      {"--units", "imperial"},
		"dish: this one needs an answer": {"--yes"},
	} {
		if r := invoke("", append([]string{"new", "x.yaml"}, args...)...); r.code != exitInput || !strings.HasPrefix(r.errors, want) {
			t.Errorf("%v: exit code %d, errors %q", args, r.code, r.errors)
		}
		if _, err := os.Stat("x.yaml"); err == nil {
			t.Errorf("%v: a file was written", args)
		}
	}
	if r := invoke("", "new", "crowd.yaml", "--yes", "--dish", "12 briskets, 14 lb"); r.code != exitInfeasible || !strings.Contains(r.out, "Written: crowd.yaml") {
		t.Errorf("exit code %d\n%s%s", r.code, r.out, r.errors)
	}
}
