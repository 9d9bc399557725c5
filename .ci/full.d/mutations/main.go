// Mutations changes one sign, constant or comparison of the models at a time and runs
// the tests that ought to notice, on the files as the overlay has them: the tree is not
// touched. Run it as
//
//	go run ./.ci/full.d/mutations [-only REGEXP] [-long]
//
// Its list is list.txt beside it. It fails if a change is no longer possible, does not
// compile, or goes unnoticed.
package main

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"regexp"
	"time"
)

// ready checks the list as a whole and that the tests pass without any change.
func ready(all []mutation) error {
	var faults []error
	runs := map[string]pass{}
	for _, m := range all {
		_, _, err := m.mutated()
		faults = append(faults, err)
		for _, p := range passes(m.tests(), false) {
			runs[p.folder] = p
		}
	}
	if err := errors.Join(faults...); err != nil {
		return err
	}
	for _, p := range runs {
		if passed, by, err := p.run(); err != nil || !passed {
			return errors.Join(err, fmt.Errorf("%s fails (%s) before anything is changed", p.folder, by))
		}
	}
	return nil
}

// caught says which test notices a change; "" for none.
func caught(dir string, m mutation, long bool) (string, error) {
	file, text, err := m.mutated()
	if err != nil {
		return "", err
	}
	plan, err := overlay(dir, file, text)
	if err != nil {
		return "", err
	}
	for _, p := range passes(m.tests(), long) {
		passed, by, err := p.run("-overlay", plan)
		if err != nil {
			return "", fmt.Errorf("%s:%d: %w", list, m.line, err)
		}
		if !passed {
			return p.folder + " " + by, nil
		}
	}
	return "", nil
}

// try makes each change alone and says what came of it.
func try(all []mutation, long bool) error {
	dir, err := os.MkdirTemp("", "mutations")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	var noticed, survived, equivalent int
	for _, m := range all {
		if m.equivalent != "" {
			equivalent++
			fmt.Printf("EQUIVALENT %s (%s)\n", m, m.equivalent)
			continue
		}
		began := time.Now()
		by, err := caught(dir, m, long)
		if err != nil {
			return err
		}
		took := time.Since(began).Round(time.Second / 10)
		if by == "" {
			survived++
			fmt.Printf("SURVIVED   %s (%s)\n", m, took)
			continue
		}
		noticed++
		fmt.Printf("caught     %s (by %s, %s)\n", m, by, took)
	}
	fmt.Printf("%d changes: %d caught, %d survived, %d equivalent\n", len(all), noticed, survived, equivalent)
	if survived > 0 {
		return fmt.Errorf("%d changes go unnoticed", survived)
	}
	return nil
}

func run() error {
	only := flag.String("only", "", "regular `expression` of the folders and changes to try")
	long := flag.Bool("long", false, "where short tests notice nothing, run the long ones too")
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
	var chosen []mutation
	for _, m := range all {
		if wanted.MatchString(m.String()) {
			chosen = append(chosen, m)
		}
	}
	return try(chosen, *long)
}

func main() {
	if err := run(); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}
