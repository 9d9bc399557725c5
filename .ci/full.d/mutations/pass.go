package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
)

// doors are the packages that see all models at work: what a package's own tests let
// through may still be noticed there.
var doors = []string{"./schedule/check", "./schedule/planner"}

// pass is one run over the tests of a package.
type pass struct {
	folder string
	flags  []string
}

// passes are the runs that may notice a change in a folder, quick ones first.
func passes(folder string, long bool) []pass {
	all := []pass{{folder, []string{"-short"}}}
	for _, door := range doors {
		if door != folder {
			// Unoptimised: all below the door is compiled anew, which takes longer than the tests.
			all = append(all, pass{door, []string{"-short", "-gcflags=-N -l", "-ldflags=-s -w"}})
		}
	}
	if long {
		for _, p := range all[:len(all):len(all)] {
			all = append(all, pass{folder: p.folder})
		}
	}
	return all
}

var (
	firstFailure = regexp.MustCompile(`(?m)^\s*--- FAIL: (\S+)`)
	notBuilt     = regexp.MustCompile(`(?m)\[(build|setup) failed\]`)
)

// run runs the tests with more flags; by tells which failed first.
func (p pass) run(more ...string) (passed bool, by string, err error) {
	args := append([]string{"test", "-vet=off", "-failfast", "-timeout", "15m"}, p.flags...)
	args = append(append(args, more...), p.folder)
	if usesRapid(p.folder) { // it would leave its findings in testdata
		args = append(args, "-rapid.nofailfile")
	}
	out, fault := exec.Command("go", args...).CombinedOutput()
	switch {
	case fault == nil:
		return true, "", nil
	case notBuilt.Match(out):
		return false, "", fmt.Errorf("does not compile:\n%s", out)
	}
	by = "a panic or the time limit"
	if found := firstFailure.FindSubmatch(out); found != nil {
		by = string(found[1])
	}
	return false, by, nil
}

// usesRapid says whether a package has property tests, and so their flags.
func usesRapid(folder string) bool {
	files, _ := filepath.Glob(filepath.Join(folder, "*_test.go"))
	for _, file := range files {
		if text, err := os.ReadFile(file); err == nil && strings.Contains(string(text), `"pgregory.net/rapid"`) {
			return true
		}
	}
	return false
}
