package main

import (
	"path/filepath"
	"strings"
	"testing"
)

// A refusal ends with one command; what that command prints is planned at once, and the sheet
// says what was guessed and what was not used.
func TestARefusalEndsWithAGuessThatPlans(t *testing.T) {
	request := file(t, "note.txt", "saturday, we eat at 5.30\n9 guests\npellet grill\n4x racks of ribs\n6 gnomes\n")
	refused := invoke("", "plan", request)
	lines := strings.Split(strings.TrimSpace(refused.errors), "\n")
	if last := lines[len(lines)-1]; refused.code != exitInput || last != "cookday check --guess "+request+" > guess.yaml" {
		t.Fatalf("exit code %d, last line %q", refused.code, last)
	}
	guess := invoke("", "check", "--guess", request)
	for _, want := range []string{"# not used: 6 gnomes\n", "# guessed: ", "count: 4", `time: "17:30"`} {
		if guess.code != exitFine || !strings.Contains(guess.out, want) {
			t.Errorf("want %q; exit code %d:\n%s%s", want, guess.code, guess.out, guess.errors)
		}
	}
	sheet := invoke(guess.out, "plan", "-")
	told := strings.Join(strings.Fields(sheet.out), " ")
	if sheet.code > exitInfeasible || !strings.Contains(told, "guessed: ") || !strings.Contains(told, "not used: 6 gnomes") {
		t.Errorf("exit code %d:\n%s%s", sheet.code, sheet.out, sheet.errors)
	}
}

// Where nothing can be guessed nothing is offered, and the refusal stands.
func TestWhereNothingCanBeGuessedNothingIsOffered(t *testing.T) {
	request := file(t, "note.txt", "saturday 5 pm\n9 guests\nkettle\n6 gnomes\n")
	if r := invoke("", "plan", request); r.code != exitInput || strings.Contains(r.errors, "--guess") {
		t.Errorf("exit code %d: %s", r.code, r.errors)
	}
	if r := invoke("", "check", "--guess", request); r.code != exitInput || r.out != "" || !strings.Contains(r.errors, "no guess") {
		t.Errorf("exit code %d: %q %s", r.code, r.out, r.errors)
	}
}

// The name of a file is one word of the command that is offered, and no file is written over itself.
func TestAGuessIsOfferedInAShellsWords(t *testing.T) {
	for _, c := range []struct{ name, last string }{{"my day.txt", "'%' > guess.yaml"}, {"guess.yaml", "% > guess-2.yaml"}} {
		request := file(t, c.name, "saturday 5 pm\n9 guests\npellet grill\n8 burgers\n")
		want := "cookday check --guess " + strings.Replace(c.last, "%", filepath.ToSlash(request), 1)
		if r := invoke("", "check", request); !strings.HasSuffix(strings.TrimSpace(r.errors), want) {
			t.Errorf("%s\nwant %q", r.errors, want)
		}
	}
}
