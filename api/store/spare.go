package store

import (
	"crypto/rand"
	"errors"
	"io"
	"os"

	"example.com/cookday/api"
)

// spareBytes are kept free beside the file of plans: twice as much as its log takes. A
// disk that is full must let plans be deleted, and that needs room before it gives any.
const spareBytes = 2 * walPages * pageBytes

// keepSpare puts a file there that takes the room, where there is room. It is of bytes that
// no disk can make smaller, and done without if it cannot be had.
func keepSpare(path string) {
	if info, err := os.Stat(path); err == nil && info.Size() == spareBytes {
		return
	}
	file, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_TRUNC, 0o600)
	if err != nil {
		return
	}
	_, err = io.CopyN(file, rand.Reader, spareBytes)
	if err = errors.Join(err, file.Sync(), file.Close()); err != nil {
		os.Remove(path)
	}
}

// freeing does what makes room. Where there is none it gives up the spare room for it, and
// takes it back afterwards.
func (f *File) freeing(work func() error) error {
	err := work()
	if !errors.Is(err, api.ErrFull) || os.Remove(f.spare) != nil {
		return err
	}
	defer keepSpare(f.spare)
	return work()
}
