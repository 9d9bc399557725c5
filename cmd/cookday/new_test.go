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
		"1 of 7: When do people eat? A day and a time\n[Saturday, January 9, 2027, 6:00 PM] > tomorrow\n", `"tomorrow" has no time of day`,
		"> Sunday 6pm\nThat is Sunday, January 3, 2027, 6:00 PM.\n", "\n[America/Chicago] > \n", "[kettle 22 in] > \n", "[not known] > no\n", "Brisket: what does the label say?", "[not read] > none\n",
		"Written: sunday.yaml\n", "Brisket (10 lb) and Chickens (2 × 4.5 lb)", "cookday plan sunday.yaml", "cookday now sunday.yaml",
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

// Answers that end early are not lost: what is usual is taken and told; where something is
// missing that nobody can guess, no file is written, and a command asks on from there.
func TestNewWhoseAnswersEndEarly(t *testing.T) {
	inFolder(t)
	const upToDishes = "Sunday 1pm\n\nkettle 18 in\nno\n\n14\nyes\n"
	kept := []string{`date: 2027-01-03, time: "13:00"`, "adults: 14, frail: true", "grill: kettle 18 in", "# oven: {}"}
	for _, c := range []struct {
		stdin     string
		flags     []string
		code      int
		said      string
		inRequest []string
	}{
		{"", nil, exitInput, "What is the first dish?", nil},
		{"Sunday 1pm\n", nil, exitInput, "cookday new day.yaml --when '2027-01-03 13:00'\nStill missing:", nil},
		{upToDishes, nil, exitInput, "--grill 'kettle 18 in' --oven 'no' --quiet 'usually 11:00 PM to 5:00 AM' --guests '14' --frail 'yes'\nStill missing:\nWhat is the first dish?", nil},
		{upToDishes + "2 ribs\n", nil, exitInput, "--dish '2 ribs'\nStill missing:\nRibs: which?", nil},
		{upToDishes + "brisket, 10 lb\nnone\n2 ribs\n", nil, exitInput, "--dish 'brisket, 10 lb, label none' --dish '2 ribs'", nil},
		{upToDishes + "2 chickens\n", nil, exitFine, "this was taken: Chickens, label: not read.", append(kept, "{name: Chickens, cut: chicken, count: 2}")},
		{upToDishes + "2 chickens", nil, exitFine, "Written: day.yaml", append(kept, "{name: Chickens, cut: chicken, count: 2}")},
		{upToDishes, []string{"--dish", "elephant", "--dish", "brisket"}, exitInput, `--dish: "elephant" is not`, nil},
		{"Sunday 1pm\n\n", []string{"--grill", "gas", "--dish", "brisket"}, exitInput, "--grill: ", nil},
		{"Sunday at 11\n", []string{"--dish", "brisket"}, exitFine, `for "Sunday at 11" was not understood`, []string{"{cut: brisket}"}},
	} {
		_ = os.Remove("day.yaml") // it may not be there
		r := invoke(c.stdin, append([]string{"new", "day.yaml"}, c.flags...)...)
		said := strings.Join(strings.Fields(r.out), " ") + "\n" + r.errors
		if r.code != c.code || !strings.Contains(said, c.said) {
			t.Errorf("%q %v: exit code %d\n%s", c.stdin, c.flags, r.code, said)
		}
		if _, err := os.Stat("day.yaml"); (err == nil) != (len(c.inRequest) > 0) {
			t.Errorf("%q %v: the file: %v", c.stdin, c.flags, err)
		}
		for _, part := range c.inRequest {
			if text := read(t, "day.yaml"); !strings.Contains(text, part) {
				t.Errorf("%q %v: %q is not in\n%s", c.stdin, c.flags, part, text)
			}
		}
	}
	if r := invoke("Sunday 1pm\n", "new", "-"); r.code != exitInput || strings.Contains(r.out, "serve:") || !strings.Contains(r.errors, "cookday new - --when '2027-01-03 13:00'") {
		t.Errorf("to standard output: exit code %d\n%s%s", r.code, r.out, r.errors)
	}
}
