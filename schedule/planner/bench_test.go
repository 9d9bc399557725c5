package planner_test

import (
	"context"
	"testing"

	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
)

// BenchmarkMakeParty plans the example: a brisket, two chickens and twelve
// burgers on one kettle, with windows.
func BenchmarkMakeParty(b *testing.B) {
	r := plantest.Request(b, plantest.ReadFile(b, "../../examples/backyard-party/request.yaml"))
	b.ReportAllocs()
	for b.Loop() {
		if p, err := planner.Make(context.Background(), r); err != nil || !p.Feasible {
			b.Fatal(err, p.Feasible)
		}
	}
}
