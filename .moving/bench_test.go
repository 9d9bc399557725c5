package schedule

import (
	"context"
	"os"
	"testing"
)

// BenchmarkMakeParty plans the example: a brisket, two chickens and twelve
// burgers on one kettle, with windows.
func BenchmarkMakeParty(b *testing.B) {
	text, err := os.ReadFile("../examples/backyard-party/request.yaml")
	if err != nil {
		b.Fatal(err)
	}
	r, err := Read(text)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if p, err := Make(context.Background(), r); err != nil || !p.Feasible {
			b.Fatal(err, p.Feasible)
		}
	}
}
