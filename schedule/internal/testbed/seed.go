package testbed

import (
	"flag"
	"os"
	"testing"
)

// Main runs the tests of a package with a fixed seed of its property tests, so that the
// gate answers the same twice; -rapid.seed=N on the command line tries others.
func Main(m *testing.M) {
	flag.Parse()
	asked := false
	flag.Visit(func(f *flag.Flag) { asked = asked || f.Name == "rapid.seed" })
	if !asked {
		if err := flag.Set("rapid.seed", "20270703"); err != nil {
			panic(err)
		}
	}
	os.Exit(m.Run())
}
