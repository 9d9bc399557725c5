package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"

	"example.com/cookday/schedule"
)

// Exit codes.
const (
	exitFine       = 0
	exitInfeasible = 1
	exitInput      = 2
	exitFault      = 3
)

// errInfeasible ends a command whose plan says that the day cannot be done. The
// plan is printed already: there is nothing to add.
var errInfeasible = errors.New("the day cannot be done as asked")

// usageError is a mistake on the command line or about a file.
type usageError struct{ sentence string }

func (e *usageError) Error() string { return e.sentence }

func usage(format string, values ...any) error {
	return &usageError{fmt.Sprintf(format, values...)}
}

// fileFault is an [schedule.InputError] of a file: its name stands for the path
// where a fault is about the whole document.
type fileFault struct {
	name string
	*schedule.InputError
}

func (e *fileFault) Unwrap() error { return e.InputError }

// toldError is one that was printed already.
type toldError struct{ code int }

func (e *toldError) Error() string { return "told already" }

// inFile says which file the faults are in.
func inFile(name string, err error) error {
	if input, ok := errors.AsType[*schedule.InputError](err); ok {
		return &fileFault{name, input}
	}
	return err
}

// report prints an error, one fault a line, and returns the exit code it means.
func report(w io.Writer, err error) int {
	var file *fileFault
	var input *schedule.InputError
	var misuse *usageError
	var told *toldError
	switch {
	case err == nil:
		return exitFine
	case errors.As(err, &told):
		return told.code
	case errors.Is(err, errInfeasible):
		return exitInfeasible
	case errors.As(err, &file):
		printFaults(w, file.name, file.Faults)
		return exitInput
	case errors.As(err, &input):
		printFaults(w, "cookday", input.Faults)
		return exitInput
	case errors.As(err, &misuse):
		fmt.Fprintln(w, misuse.sentence)
		return exitInput
	case errors.Is(err, context.Canceled):
		fmt.Fprintln(w, "cookday: stopped before it was done; nothing is written")
	default:
		fmt.Fprintf(w, "cookday: %s\n", err)
	}
	return exitFault
}

// printFaults prints "path: sentence (line 7)", one a line.
func printFaults(w io.Writer, name string, faults []schedule.Fault) {
	for _, f := range faults {
		if f.Path == "" {
			f.Path = name
		}
		line := ""
		if f.Line > 0 && !strings.HasPrefix(f.Path, fmt.Sprintf("line %d:", f.Line)) {
			line = fmt.Sprintf(" (line %d)", f.Line)
		}
		fmt.Fprintf(w, "%s%s\n", f, line)
	}
}
