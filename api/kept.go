package api

import (
	"context"
	"errors"
	"time"
)

// Errors of a [Store].
var (
	ErrNotFound = errors.New("there is no such plan")
	ErrExists   = errors.New("there is a plan of that id already")
	ErrConflict = errors.New("the plan was revised meanwhile")
)

// Revision is one state of a plan, kept as the JSON it was answered with: a later
// version of the models must not move the past.
type Revision struct {
	Number int       // 0 for the first
	At     time.Time // when it was kept, to the millisecond
	JSON   []byte    // owned by whoever got it
}

// Store keeps plans, their revisions and the readings that led to them. Revisions
// and readings are only ever added. What a method has returned without an error
// survives the end of the process at any moment, if the store is kept on a disk.
// All methods may be called from several goroutines.
type Store interface {
	// Create keeps a new plan with its first revision; ErrExists if the id is taken.
	Create(ctx context.Context, id string, first Revision) error
	// Newest returns the last revision; ErrNotFound.
	Newest(ctx context.Context, id string) (Revision, error)
	// Revision returns the one with that number; ErrNotFound.
	Revision(ctx context.Context, id string, number int) (Revision, error)
	// History returns all revisions, the first one first; ErrNotFound.
	History(ctx context.Context, id string) ([]Revision, error)
	// Readings returns the readings in the order they were added, each a JSON value; ErrNotFound.
	Readings(ctx context.Context, id string) ([][]byte, error)
	// Append adds readings and the revision they led to, both or neither. The number of
	// next must follow the newest one, else ErrConflict; ErrNotFound.
	Append(ctx context.Context, id string, readings [][]byte, next Revision) error
	// Delete removes a plan with everything that was kept of it; ErrNotFound.
	Delete(ctx context.Context, id string) error
	// Ready says whether the store can be used.
	Ready(ctx context.Context) error
	// Close ends the use of the store.
	Close() error
}
