package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// The fire is asked about from the command line, with a reading or with a log.
func TestFireCommand(t *testing.T) {
	out := mustRun(t, "", "fire", "--want", "250F", "--shows", "315F", "--at", "lid", "--top", "1/2", "--bottom", "1/4", "--since-lit", "90m")
	if !strings.HasPrefix(out, "Hold a thermometer at grate height first.") || strings.Contains(out, "Expect") || !strings.Contains(out, "a kettle, 22 in") {
		t.Errorf("of the lid alone:\n%s", out)
	}
	out = mustRun(t, "", "fire", "--want", "250F", "--shows", "315F", "--top", "1/2", "--bottom", "1/2")
	if !strings.HasPrefix(out, "Close the top vent from a half to ") || !strings.Contains(strings.Join(strings.Fields(out), " "), "by your thermometer at") {
		t.Errorf("of one reading:\n%s", out)
	}
	log := filepath.Join(t.TempDir(), "fire.csv")
	if err := os.WriteFile(log, []byte("time,kind,value\n09:00,lit,\n09:15,lit-coals,12\n09:15,vents,\"top 1/4, bottom 1/4\"\n10:30,grate,248 °F\n11:00,grate,251 °F\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if out = mustRun(t, "", "fire", "--want", "250F", "--log", log); !strings.HasPrefix(out, "Leave the vents as they are.") {
		t.Errorf("of a log:\n%s", out)
	}
	if again := mustRun(t, "", "fire", "--want", "250F", "--log", log); again != out {
		t.Errorf("the same log again:\n%s\n%s", out, again)
	}
	if out = mustRun(t, "", "fire", "--want", "250F", "--log", log, "--format", "json"); !strings.Contains(out, `"do": "leave"`) {
		t.Errorf("as JSON:\n%s", out)
	}
}
