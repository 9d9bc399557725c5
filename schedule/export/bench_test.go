package export

import (
	"io"
	"maps"
	"slices"
	"testing"
)

// Each export of the crowded day, six dishes on two fires: at most 5 ms is wanted.
func BenchmarkExport(b *testing.B) {
	p := keptPlan(b, "crowded")
	for _, format := range slices.Sorted(maps.Keys(exports)) {
		b.Run(format, func(b *testing.B) {
			for b.Loop() {
				if err := exports[format](io.Discard, p); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	b.Run("json", func(b *testing.B) {
		for b.Loop() {
			if err := JSON(io.Discard, p); err != nil {
				b.Fatal(err)
			}
		}
	})
}
