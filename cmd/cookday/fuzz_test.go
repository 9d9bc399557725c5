package main

import (
	"strings"
	"testing"
)

// Whatever is typed after a command, one argument a line, and whatever comes in by
// standard input: no fault of the program, a word of complaint where it is no success,
// and every complaint on a line of its own.
func FuzzCommands(f *testing.F) {
	f.Add(uint8(0), "brisket\n12 lb", "")
	f.Add(uint8(0), "--cut\nbrisket\n--weight\n12 lb\n--grate\n250 F\n--format\njson", "")
	f.Add(uint8(1), "brisket\nburger\n--adults\n16\n--children\n6", "")
	f.Add(uint8(1), "turkey\n--adults\n9223372036854775807", "")
	f.Add(uint8(2), "--format\ncsv\n--now\n12:00", lunch)
	f.Add(uint8(2), "--brief=-1", crowd)
	f.Add(uint8(3), "", lunch)
	f.Add(uint8(3), "", `{"format":1,"feasible":true}`)
	f.Add(uint8(4), "briskett", "")
	f.Add(uint8(5), "--format\njson", "")
	commands := [][]string{{"forecast"}, {"amounts"}, {"plan", "-"}, {"check", "-"}, {"cuts"}, {"layouts"}}
	f.Fuzz(func(t *testing.T, which uint8, typed, stdin string) {
		args := commands[int(which)%len(commands)]
		if typed != "" {
			args = append(args[:len(args):len(args)], strings.Split(typed, "\n")...)
		}
		for _, a := range args[1:] {
			if strings.HasPrefix(a, "-o") || strings.HasPrefix(a, "--o") {
				return // it would write a file of that name
			}
		}
		r := invoke(stdin, args...)
		switch {
		case r.code == exitFault:
			t.Errorf("%q: %s", args, r.errors)
		case r.code == exitInput && r.errors == "", r.code == exitFine && r.errors != "":
			t.Errorf("%q: exit code %d with errors %q", args, r.code, r.errors)
		}
		if r.errors != "" && !strings.HasSuffix(r.errors, "\n") || strings.Contains(r.errors, "\n\n") {
			t.Errorf("%q: errors %q", args, r.errors)
		}
	})
}
