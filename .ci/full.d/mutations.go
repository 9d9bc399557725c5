// Mutations changes one sign, constant or comparison of the models at a time and runs
// the tests that ought to notice, on the files as the overlay has them: the tree is not
// touched. Run it as
//
//	go run .ci/full.d/mutations.go [-only REGEXP] [-effort little|most]
//
// Its list is mutations.txt beside it. It fails if a change is no longer possible, does
// not compile, or goes unnoticed.
package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"time"
)

const list = ".ci/full.d/mutations.txt"

// door is the package that composes the models: what a model's own tests let through
// may still be noticed there.
const door = "./schedule"

// mutation is one change of one file of a folder.
type mutation struct {
	line       int // of the list
	folder     string
	old, now   string
	equivalent string // why no test can notice it; "" for the others
}

func (m mutation) String() string { return fmt.Sprintf("%s: %s => %s", m.folder, m.old, m.now) }

func (m mutation) tests() string { return "./" + m.folder }

// mutated is the file that has the old text, and its text with the change.
func (m mutation) mutated() (file, text string, err error) {
	files, err := filepath.Glob(filepath.Join(m.folder, "*.go"))
	if err != nil {
		return "", "", err
	}
	n := 0
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		content, err := os.ReadFile(name)
		if err != nil {
			return "", "", err
		}
		if k := strings.Count(string(content), m.old); k > 0 {
			n += k
			file, text = name, strings.Replace(string(content), m.old, m.now, 1)
		}
	}
	if n != 1 {
		return "", "", fmt.Errorf("%s:%d: %q is %d times in %s, must be there once", list, m.line, m.old, n, m.folder)
	}
	return file, text, nil
}

// read parses the list.
func read() (all []mutation, err error) {
	text, err := os.ReadFile(list)
	if err != nil {
		return nil, err
	}
	folder := ""
	for i, line := range strings.Split(string(text), "\n") {
		trimmed := strings.TrimSpace(line)
		switch {
		case trimmed == "" || strings.HasPrefix(line, "#"):
		case !strings.HasPrefix(line, "\t"):
			folder = trimmed
		case strings.HasPrefix(trimmed, "equivalent: ") && len(all) > 0:
			all[len(all)-1].equivalent = strings.TrimPrefix(trimmed, "equivalent: ")
		default:
			old, now, ok := strings.Cut(trimmed, " => ")
			if !ok || folder == "" || old == now {
				return nil, fmt.Errorf("%s:%d: %q is no folder, change or reason", list, i+1, line)
			}
			all = append(all, mutation{line: i + 1, folder: folder, old: old, now: now})
		}
	}
	return all, nil
}

// overlay writes the changed file and what tells the go command to take it.
func overlay(dir, file, text string) (string, error) {
	changed, plan := filepath.Join(dir, "changed.go"), filepath.Join(dir, "overlay.json")
	path, err := filepath.Abs(file)
	if err != nil {
		return "", err
	}
	content, err := json.Marshal(map[string]any{"Replace": map[string]string{path: changed}})
	if err != nil {
		return "", err
	}
	return plan, errors.Join(os.WriteFile(changed, []byte(text), 0o600), os.WriteFile(plan, content, 0o600))
}

var (
	firstFailure = regexp.MustCompile(`(?m)^\s*--- FAIL: (\S+)`)
	notBuilt     = regexp.MustCompile(`(?m)\[(build|setup) failed\]`)
)

// test runs the tests of a package with more flags; by tells which failed first.
func test(folder string, more ...string) (passed bool, by string, err error) {
	args := append([]string{"test", "-vet=off", "-failfast", "-timeout", "15m"}, more...)
	args = append(args, folder)
	if usesRapid(folder) { // it would leave its findings in testdata
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

// telling are tests of the door that notice most and take seconds, where all take minutes.
const telling = "^(TestCheckCatches|TestPlansAreSound|TestSlowest|TestNormal|TestChance|TestPace|TestReadingsTeach|TestADenseLog|TestWindows|TestCookLogs|TestForecast|TestTheDemo|ExampleMake|ExampleRevise)"

// passes are the flags of the runs over a package's tests, quick ones first.
func passes(folder, effort string) [][]string {
	all := [][]string{{"-short"}}
	if folder == door {
		// Unoptimised, because the compiler takes longer than these tests.
		all = [][]string{{"-short", "-run", telling, "-gcflags=-N -l", "-ldflags=-s -w"}}
		if effort != "little" {
			all = append(all, []string{"-short"})
		}
	}
	if effort == "most" {
		all = append(all, nil)
	}
	return all
}

// caught says which test notices a change; "" for none.
func caught(dir string, m mutation, effort string) (string, error) {
	file, text, err := m.mutated()
	if err != nil {
		return "", err
	}
	plan, err := overlay(dir, file, text)
	if err != nil {
		return "", err
	}
	folders := []string{m.tests()}
	if m.tests() != door {
		folders = append(folders, door)
	}
	for _, folder := range folders {
		for _, flags := range passes(folder, effort) {
			passed, by, err := test(folder, append(flags, "-overlay", plan)...)
			if err != nil {
				return "", fmt.Errorf("%s:%d: %w", list, m.line, err)
			}
			if !passed {
				return strings.TrimPrefix(folder, door+"/") + " " + by, nil
			}
		}
	}
	return "", nil
}

// ready checks the list as a whole and that the tests pass without any change.
func ready(all []mutation) error {
	var faults []error
	folders := map[string]bool{door: true}
	for _, m := range all {
		if _, _, err := m.mutated(); err != nil {
			faults = append(faults, err)
		}
		folders[m.tests()] = true
	}
	if len(faults) > 0 {
		return errors.Join(faults...)
	}
	for folder := range folders {
		for _, flags := range passes(folder, "little") {
			if passed, by, err := test(folder, flags...); err != nil || !passed {
				return errors.Join(err, fmt.Errorf("%s fails (%s) before anything is changed", folder, by))
			}
		}
	}
	return nil
}

func run() error {
	only := flag.String("only", "", "regular `expression` of the folders and changes to try")
	effort := flag.String("effort", "", "`how much` to run where quick tests notice nothing: little (no more), else all short tests, or most (the long ones too)")
	flag.Parse()
	wanted, err := regexp.Compile(*only)
	if err != nil {
		return err
	}
	all, err := read()
	if err != nil {
		return err
	}
	if err := ready(all); err != nil {
		return err
	}
	dir, err := os.MkdirTemp("", "mutations")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	var noticed, equivalent int
	var survivors []mutation
	for _, m := range all {
		if !wanted.MatchString(m.String()) {
			continue
		}
		if m.equivalent != "" {
			equivalent++
			fmt.Printf("EQUIVALENT %s (%s)\n", m, m.equivalent)
			continue
		}
		began := time.Now()
		by, err := caught(dir, m, *effort)
		if err != nil {
			return err
		}
		took := time.Since(began).Round(time.Second / 10)
		if by == "" {
			survivors = append(survivors, m)
			fmt.Printf("SURVIVED   %s (%s)\n", m, took)
			continue
		}
		noticed++
		fmt.Printf("caught     %s (by %s, %s)\n", m, by, took)
	}
	fmt.Printf("%d changes: %d caught, %d survived, %d equivalent\n", noticed+len(survivors)+equivalent, noticed, len(survivors), equivalent)
	if len(survivors) > 0 {
		return fmt.Errorf("%d changes go unnoticed", len(survivors))
	}
	return nil
}

func main() {
	if err := run(); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}
