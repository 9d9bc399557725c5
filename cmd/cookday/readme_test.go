package main

import (
	"flag"
	"fmt"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/export"
	"example.com/cookday/schedule/planner"
)

var renew = flag.Bool("renew", false, "write the terminal sessions of README.md anew")

// command is how a terminal session of README.md starts this program.
const command = "$ go run ./cmd/cookday "

// Every terminal session in README.md is what the program prints.
func TestREADMESessions(t *testing.T) {
	t.Chdir("../..")
	data, err := os.ReadFile("README.md")
	if err != nil {
		t.Fatal(err)
	}
	told := string(data)
	blocks := strings.Split(told, "```")
	sessions := 0
	for i := 1; i < len(blocks); i += 2 { // the odd ones are fenced
		if kind, body, _ := strings.Cut(blocks[i], "\n"); kind == "console" {
			blocks[i] = kind + "\n" + replay(body)
			sessions += strings.Count(body, command)
		}
	}
	if sessions == 0 {
		t.Error("README.md has no terminal session")
	}
	shown := strings.Join(blocks, "```")
	if shown == told {
		return
	}
	if !*renew {
		t.Errorf("README.md is no longer what the program prints; if that is meant, .ci/renew writes it anew\n%s", firstDifference(told, shown))
	} else if err := os.WriteFile("README.md", []byte(shown), 0o644); err != nil {
		t.Error(err)
	}
}

// The request that README.md shows a newcomer can be had, in summer and in winter.
func TestREADMERequest(t *testing.T) {
	data, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	_, rest, _ := strings.Cut(string(data), "```yaml\n")
	request, _, found := strings.Cut(rest, "```")
	if !found {
		t.Fatal("README.md shows no request")
	}
	for _, day := range []time.Time{time.Date(2027, 7, 1, 9, 0, 0, 0, time.UTC), time.Date(2027, 1, 14, 9, 0, 0, 0, time.UTC)} {
		r, err := schedule.Understand([]byte(request), day)
		if err != nil {
			t.Fatal(err)
		}
		p, err := planner.Make(t.Context(), r)
		if err != nil {
			t.Fatal(err)
		}
		if !p.Feasible || len(p.Dishes) != 3 {
			t.Errorf("asked on %s: feasible %t, %d dishes", day.Format(time.DateOnly), p.Feasible, len(p.Dishes))
		}
	}
}

// replay is a session with the output as it is now. Commands of other programs keep theirs.
func replay(session string) string {
	var b strings.Builder
	keep := true
	for line := range strings.Lines(session) {
		if strings.HasPrefix(line, "$ ") {
			keep = true
		}
		if keep {
			b.WriteString(line)
		}
		if args, ok := strings.CutPrefix(line, command); ok {
			r := invoke("", words(strings.TrimSpace(args))...)
			b.WriteString(r.out + r.errors)
			if r.code != exitFine {
				fmt.Fprintf(&b, "exit status %d\n", r.code) // says go run
			}
			keep = false
		}
	}
	return b.String()
}

// words splits a command line at spaces outside double quotes.
func words(line string) []string {
	var words []string
	for i, part := range strings.Split(line, `"`) {
		if i%2 == 1 {
			words = append(words, part)
			continue
		}
		words = append(words, strings.Fields(part)...)
	}
	return words
}

func firstDifference(told, shown string) string {
	a, b := strings.Split(told, "\n"), strings.Split(shown, "\n")
	for i := range min(len(a), len(b)) {
		if a[i] != b[i] {
			return fmt.Sprintf("line %d: %q\nnow:     %q", i+1, a[i], b[i])
		}
	}
	return "one is longer"
}

// The Go code that DEVELOPERS.md shows is in the example, which the gate runs.
func TestShownGoIsInTheExample(t *testing.T) {
	readme, err := os.ReadFile("../../DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	example, err := os.ReadFile("../../examples/backyard-party/main.go")
	if err != nil {
		t.Fatal(err)
	}
	_, after, found := strings.Cut(string(readme), "```go\n")
	code, _, _ := strings.Cut(after, "```")
	if !found {
		t.Fatal("DEVELOPERS.md shows no Go code")
	}
	for line := range strings.Lines(code) {
		if line = strings.TrimSpace(line); line != "" && !strings.Contains(string(example), line) {
			t.Errorf("%q is not in the example", line)
		}
	}
}

// Every column of the CSV tables is explained by help csv.
func TestHelpExplainsEveryColumn(t *testing.T) {
	told := mustRun(t, "", "help", "csv")
	windows := regexp.MustCompile(`_(early|expected|late)$`)
	for _, table := range []string{export.TableSteps, export.TableDishes} {
		_, section, found := strings.Cut(told, "Columns of "+table+":\n\n")
		section, _, _ = strings.Cut(section, "\n\n")
		header, _, _ := strings.Cut(mustRun(t, lunch, "plan", "-", "--format", "csv", "--table", table), "\r\n")
		for column := range strings.SplitSeq(header, ",") {
			if name := windows.ReplaceAllString(column, ""); !found || !slices.Contains(strings.FieldsFunc(section, func(r rune) bool { return r == ' ' || r == ',' || r == '\n' }), name) {
				t.Errorf("%s: column %s is not explained", table, column)
			}
		}
	}
}
