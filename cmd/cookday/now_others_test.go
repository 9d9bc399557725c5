package main

import (
	"strings"
	"testing"
)

// One patty of eight was read: what lies on the fire is not told to be done under the order to read the others.
func TestOneOfManyIsNotToldToBeDone(t *testing.T) {
	day := file(t, "burgers.yaml", "serve: {date: 2027-07-04, time: \"18:00\", tz: America/Chicago}\ngrill: {kind: kettle, diameter: 22 in}\nguests: 8\ndishes:\n  - {cut: burger, count: 8}\n")
	const one = "time,dish,kind,value\n2027-07-04 17:40,burger,on,\n2027-07-04 17:50,burger,core,161 F\n"
	for more, done := range map[string]bool{"": false, "2027-07-04 17:51,burger,coldest,160 F\n": true} {
		out := mustRun(t, one+more, "now", day, "-", "--now", "2027-07-04 17:52")
		if asks := strings.Contains(out, "check the others before they come off"); asks == done || strings.Contains(out, "It is done: off now.") != done {
			t.Errorf("%q: %s", more, out)
		}
	}
}
