// Mutations changes one sign, constant or comparison of the models at a time and runs
// the tests that ought to notice, on the files as the overlay has them: the tree is not
// touched. Run it as
//
//	go run .ci/full.d/mutations.go [-only REGEXP] [-long]
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

// mutation is one change of one file.
type mutation struct {
	line       int // of the list
	file       string
	old, now   string
	equivalent string // why no test can notice it; "" for the others
}

func (m mutation) String() string { return fmt.Sprintf("%s: %s => %s", m.file, m.old, m.now) }

func (m mutation) folder() string { return "./" + filepath.Dir(m.file) }

// mutated is the text of the file with the change. The old text must be there once.
func (m mutation) mutated() (string, error) {
	text, err := os.ReadFile(m.file)
	if err != nil {
		return "", err
	}
	if n := strings.Count(string(text), m.old); n != 1 {
		return "", fmt.Errorf("%s:%d: %q is %d times in %s, must be there once", list, m.line, m.old, n, m.file)
	}
	return strings.Replace(string(text), m.old, m.now, 1), nil
}

// read parses the list.
func read() (all []mutation, err error) {
	text, err := os.ReadFile(list)
	if err != nil {
		return nil, err
	}
	file := ""
	for i, line := range strings.Split(string(text), "\n") {
		trimmed := strings.TrimSpace(line)
		switch {
		case trimmed == "" || strings.HasPrefix(line, "#"):
		case !strings.HasPrefix(line, "\t"):
			file = trimmed
		case strings.HasPrefix(trimmed, "equivalent: ") && len(all) > 0:
			all[len(all)-1].equivalent = strings.TrimPrefix(trimmed, "equivalent: ")
		default:
			old, now, ok := strings.Cut(trimmed, " => ")
			if !ok || file == "" || old == now {
				return nil, fmt.Errorf("%s:%d: %q is no file, change or reason", list, i+1, line)
			}
			all = append(all, mutation{line: i + 1, file: file, old: old, now: now})
		}
	}
	return all, nil
}

// overlay writes the changed file and what tells the go command to take it.
func overlay(dir string, m mutation, text string) (string, error) {
	changed, plan := filepath.Join(dir, "changed.go"), filepath.Join(dir, "overlay.json")
	path, err := filepath.Abs(m.file)
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

// lengths are the flags of the passes over a package's tests, quick ones first.
func lengths(long bool) [][]string {
	if long {
		return [][]string{{"-short"}, nil}
	}
	return [][]string{{"-short"}}
}

// caught says which test notices a change; "" for none.
func caught(dir string, m mutation, long bool) (string, error) {
	text, err := m.mutated()
	if err != nil {
		return "", err
	}
	plan, err := overlay(dir, m, text)
	if err != nil {
		return "", err
	}
	folders := []string{m.folder()}
	if m.folder() != door {
		folders = append(folders, door)
	}
	for _, folder := range folders {
		for _, length := range lengths(long) {
			passed, by, err := test(folder, append(length, "-overlay", plan)...)
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
		if _, err := m.mutated(); err != nil {
			faults = append(faults, err)
		}
		folders[m.folder()] = true
	}
	if len(faults) > 0 {
		return errors.Join(faults...)
	}
	for folder := range folders {
		if passed, by, err := test(folder, "-short"); err != nil || !passed {
			return errors.Join(err, fmt.Errorf("%s fails (%s) before anything is changed", folder, by))
		}
	}
	return nil
}

func run() error {
	only := flag.String("only", "", "regular `expression` of the files and changes to try")
	long := flag.Bool("long", false, "run long tests too where the short ones notice nothing")
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
		by, err := caught(dir, m, *long)
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
