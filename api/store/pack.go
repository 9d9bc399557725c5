package store

import (
	"fmt"
	"sync"

	"github.com/klauspost/compress/zstd"
)

// How the bytes of a revision are kept. A revision differs from the one before in a
// few instants and curves, so that against it it takes a tenth of what it takes alone.
const (
	packedNot     = 0
	packedAlone   = 1
	packedAgainst = 2 // the revision before
)

// packEvery is how many revisions share one that is packed alone: to read one, those
// since then are unpacked.
const packEvery = 64

const (
	packDictionary = 1        // its number in the frame; any will do, for there is one
	packWindow     = 1 << 20  // bytes that are looked back
	packLargest    = 64 << 20 // bytes of a revision; beyond it the file was tampered with
)

// packingOf is how the revision of a number is packed.
func packingOf(number int) int {
	if number%packEvery == 0 {
		return packedAlone
	}
	return packedAgainst
}

// aloneEncoder is the one encoder for everything that is packed alone: making one costs
// more than using it. It may be used by several goroutines.
var aloneEncoder = sync.OnceValues(func() (*zstd.Encoder, error) {
	return zstd.NewWriter(nil, zstd.WithEncoderConcurrency(1), zstd.WithWindowSize(packWindow))
})

// pack makes a text small; against is the revision before, nil for alone.
func pack(text, against []byte) ([]byte, error) {
	if against == nil {
		e, err := aloneEncoder()
		if err != nil {
			return nil, err
		}
		return e.EncodeAll(text, nil), nil
	}
	e, err := zstd.NewWriter(nil, zstd.WithEncoderConcurrency(1), zstd.WithWindowSize(packWindow), zstd.WithEncoderLevel(zstd.SpeedFastest),
		zstd.WithLowerEncoderMem(true), zstd.WithEncoderDictRaw(packDictionary, against))
	if err != nil {
		return nil, err
	}
	defer e.Close()
	return e.EncodeAll(text, nil), nil
}

// unpack is the way back.
func unpack(data []byte, packing int, against []byte) ([]byte, error) {
	options := []zstd.DOption{zstd.WithDecoderConcurrency(1), zstd.WithDecoderLowmem(true), zstd.WithDecoderMaxMemory(packLargest)}
	switch packing {
	case packedNot:
		return data, nil
	case packedAgainst:
		options = append(options, zstd.WithDecoderDictRaw(packDictionary, against))
	case packedAlone:
	default:
		return nil, fmt.Errorf("a revision is packed in a way %d that is not known", packing)
	}
	d, err := zstd.NewReader(nil, options...)
	if err != nil {
		return nil, err
	}
	defer d.Close()
	return d.DecodeAll(data, nil)
}
