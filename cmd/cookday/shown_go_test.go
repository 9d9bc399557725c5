package main

import (
	"context"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
)

// What the Go code of DEVELOPERS.md leaves out: imports, the request, and a way to print
// an instant.
const (
	beforeShownCode = `package main

import (
	"context"
	"fmt"
	"log"
	"os"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
)

func about(t time.Time) string { return t.Format("Mon 15:04") }

func main() {
	request, err := os.ReadFile(os.Args[1])
	if err != nil {
		log.Fatal(err)
	}
	run(request)
}

func run(request []byte) {
`
	afterShownCode = "}\n"
)

// tooMuch is invented: twice as many burgers as lie on so small a grate, and burgers do
// not wait for the others.
const tooMuch = `format: 1
serve: {date: 2027-07-03, time: "18:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 18 in}
dishes:
  - {name: Burgers, cut: burger, weight: 6 oz, count: 24}
`

// The Go code that DEVELOPERS.md shows compiles, plans the party beside it, and asks whether
// a day can be had before it speaks of its dishes.
func TestShownGoRuns(t *testing.T) {
	party, err := os.ReadFile("../../examples/backyard-party/request.yaml")
	if err != nil {
		t.Fatal(err)
	}
	overlay := shownProgram(t)
	for _, request := range []string{string(party), tooMuch} {
		p := planOfRequest(t, request)
		said := runShown(t, overlay, request)
		for _, d := range p.Dishes {
			line := regexp.MustCompile(`(?m)^` + d.Name + ` +comes off between [A-Z][a-z]{2} \d\d:\d\d and [A-Z][a-z]{2} \d\d:\d\d$`)
			if line.MatchString(said) != p.Feasible {
				t.Errorf("feasible is %v, and of %s is said:\n%s", p.Feasible, d.Name, said)
			}
		}
		if p.Feasible {
			continue
		}
		if len(p.Findings) == 0 || len(p.Remedies) == 0 {
			t.Fatalf("%d findings and %d remedies: there is nothing to say", len(p.Findings), len(p.Remedies))
		}
		for _, f := range p.Findings {
			if !strings.Contains(said, f.Text) {
				t.Errorf("%q is not said:\n%s", f.Text, said)
			}
		}
		for _, r := range p.Remedies {
			if !strings.Contains(said, r.Text) || !strings.Contains(said, r.Price) {
				t.Errorf("%q, %q is not said:\n%s", r.Text, r.Price, said)
			}
		}
	}
}

// shownProgram writes the Go code of DEVELOPERS.md as a program, and gives the file that
// lays it over the module: there it is a folder of the examples.
func shownProgram(t *testing.T) string {
	t.Helper()
	readme, err := os.ReadFile("../../DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	_, after, found := strings.Cut(string(readme), "```go\n")
	code, _, closed := strings.Cut(after, "```")
	if !found || !closed {
		t.Fatal("DEVELOPERS.md shows no Go code")
	}
	if strings.Contains(after, "```go\n") {
		t.Error("DEVELOPERS.md shows Go code twice, and only the first is run")
	}
	folder, err := filepath.Abs("../../examples/readme-sample")
	if err != nil {
		t.Fatal(err)
	}
	program := write(t, "main.go", beforeShownCode+code+afterShownCode)
	overlay, err := json.Marshal(map[string]any{"Replace": map[string]string{filepath.Join(folder, "main.go"): program}})
	if err != nil {
		t.Fatal(err)
	}
	return write(t, "overlay.json", string(overlay))
}

// runShown runs the program on a request, and gives what it prints. It must end well.
func runShown(t *testing.T, overlay, request string) string {
	t.Helper()
	cmd := exec.Command("go", "run", "-overlay", overlay, "./examples/readme-sample", write(t, "request.yaml", request))
	cmd.Dir = "../.."
	said, err := cmd.CombinedOutput()
	if err != nil {
		t.Fatalf("the Go code of DEVELOPERS.md: %v\n%s", err, said)
	}
	return string(said)
}

// write puts a text into a file of its own.
func write(t *testing.T, name, text string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func planOfRequest(t *testing.T, request string) schedule.Plan {
	t.Helper()
	r, err := schedule.Read([]byte(request))
	if err != nil {
		t.Fatal(err)
	}
	p, err := planner.Make(context.Background(), r, planner.Judged())
	if err != nil {
		t.Fatal(err)
	}
	return p
}
