package store

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"syscall"
	"testing"

	"example.com/cookday/api"
)

// A disk that is full, to the last byte: nothing can be kept, and plans can be deleted;
// then there is room again. It needs to mount a small disk, which root may.
func TestDeletingOnAFullDisk(t *testing.T) {
	disk := t.TempDir()
	if err := syscall.Mount("tmpfs", disk, "tmpfs", 0, "size=24m"); err != nil {
		t.Skip("no disk can be mounted here: ", err)
	}
	t.Cleanup(func() { syscall.Unmount(disk, 0) })
	s := openFile(t, filepath.Join(disk, "plans.db"))
	defer s.Close()
	random := rand.New(rand.NewPCG(1, 1))
	large := func() api.Revision { // what cannot be packed
		r := revision(0)
		r.JSON = make([]byte, 200<<10)
		for i := range r.JSON {
			r.JSON[i] = byte(random.Uint32())
		}
		return r
	}
	var ids []string
	var err error
	for i := 0; err == nil && i < 1000; i++ {
		id := fmt.Sprint("plan ", i)
		if err = s.Create(ctx, record(id), large()); err == nil {
			ids = append(ids, id)
		}
	}
	if !errors.Is(err, api.ErrFull) || len(ids) < 10 {
		t.Fatalf("%d plans, %v: the disk is not full", len(ids), err)
	}
	rest, err := os.Create(filepath.Join(disk, "others"))
	if err != nil {
		t.Fatal(err)
	}
	for _, err = rest.Write(make([]byte, 4096)); err == nil; {
		_, err = rest.Write(make([]byte, 4096))
	}
	rest.Close()
	for _, id := range ids {
		if err := s.Delete(ctx, id); err != nil {
			t.Fatalf("%s of %d: %v", id, len(ids), err)
		}
	}
	if err := s.Create(ctx, record("after"), large()); err != nil {
		t.Errorf("all plans are gone, and there is no room: %v", err)
	}
	if err := s.Ready(ctx); err != nil {
		t.Error(err)
	}
	t.Logf("%d plans on a full disk, all deleted", len(ids))
}
