package store

import "testing"

// A revision is packed alone and against the one before with every change, and unpacked
// with every read that is not kept ready.
func BenchmarkPack(b *testing.B) {
	one, two := long(1).JSON, long(2).JSON
	alone, err := pack(one, nil)
	if err != nil {
		b.Fatal(err)
	}
	against, err := pack(two, one)
	if err != nil {
		b.Fatal(err)
	}
	for name, work := range map[string]func() error{
		"alone": func() error { _, err := pack(one, nil); return err }, "against": func() error { _, err := pack(two, one); return err },
		"unpack-alone": func() error { _, err := unpack(alone, packedAlone, nil); return err }, "unpack-against": func() error { _, err := unpack(against, packedAgainst, one); return err },
	} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if err := work(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
