package api

import (
	"context"
	"errors"
	"time"
)

// Errors of a [Store].
var (
	ErrNotFound = errors.New("there is no such plan")
	ErrExists   = errors.New("there is a plan of that id, feed or key already")
	ErrConflict = errors.New("the plan was revised meanwhile")
	ErrFull     = errors.New("there is no room left to keep plans")
	ErrReadOnly = errors.New("plans can be read and not written")
	ErrAway     = errors.New("the store of plans does not answer")
)

// Record is what is kept of a plan beside its revisions.
type Record struct {
	ID      string    // the owner's address
	Feed    string    // the address for reading alone; "" for none
	Key     string    // digest of the caller's idempotency key; "" for none
	Body    string    // digest of the body that was posted with the key
	Made    time.Time // when it was first kept, to the millisecond
	Changed time.Time // when its newest revision was kept
	Newest  int       // the number of that revision
	Facts
}

// Facts are what a list and the next revision need of the newest one.
type Facts struct {
	Name      string
	Feasible  bool
	Serve     time.Time // the last serving instant, to the millisecond
	NotBefore time.Time // nothing may start before it; zero for no such instant
	Trial     bool      // the plan does not go by the service's clock
}

// Revision is one state of a plan, kept as the JSON it was answered with: a later
// version of the models must not move the past.
type Revision struct {
	Number int       // 0 for the first
	At     time.Time // when it was kept, to the millisecond
	JSON   []byte    // owned by whoever got it
}

// Reading is one row of a plan's log.
type Reading struct {
	Revision int    // the one that it led to
	JSON     []byte // an entry, or the withdrawal of one
}

// Store keeps plans, their revisions and the readings that led to them. Revisions
// and readings are only ever added. What a method has returned without an error
// survives the end of the process at any moment, if the store is kept on a disk.
// All methods may be called from several goroutines. A store without room says
// [ErrFull], one that cannot be written [ErrReadOnly], one that is not there [ErrAway].
type Store interface {
	// Create keeps a new plan with its first revision; ErrExists if the id, the feed or the
	// key is taken.
	Create(ctx context.Context, r Record, first Revision) error
	// Plan returns what is kept of a plan; ErrNotFound.
	Plan(ctx context.Context, id string) (Record, error)
	// ByFeed finds the plan of a feed; ErrNotFound.
	ByFeed(ctx context.Context, feed string) (Record, error)
	// ByKey finds the plan that was made with a key; ErrNotFound.
	ByKey(ctx context.Context, key string) (Record, error)
	// List returns plans in the order in which they were made, the newest first: at most so
	// many, made before the plan of an id; "" begins with the newest.
	List(ctx context.Context, before string, most int) ([]Record, error)
	// Newest returns the last revision; ErrNotFound.
	Newest(ctx context.Context, id string) (Revision, error)
	// Revision returns the one with that number; ErrNotFound.
	Revision(ctx context.Context, id string, number int) (Revision, error)
	// History returns at most so many revisions after a number, in order; after -1 the first
	// one comes first. There may be none. ErrNotFound.
	History(ctx context.Context, id string, after, most int) ([]Revision, error)
	// Readings returns the log in the order it was added to; ErrNotFound.
	Readings(ctx context.Context, id string) ([]Reading, error)
	// Append adds readings and the revision they led to, both or neither. The number of
	// next must follow the newest one, else ErrConflict; ErrNotFound.
	Append(ctx context.Context, id string, readings [][]byte, next Revision, facts Facts) error
	// SetFeed gives a plan another feed, "" for none; ErrNotFound, ErrExists.
	SetFeed(ctx context.Context, id, feed string) error
	// Expire removes the plans that were changed and served before an instant, and says which.
	Expire(ctx context.Context, before time.Time) ([]string, error)
	// Delete removes a plan with everything that was kept of it; ErrNotFound.
	Delete(ctx context.Context, id string) error
	// Ready says whether plans can be kept: it writes.
	Ready(ctx context.Context) error
	// Changes is a number that is another one after another process has written.
	Changes(ctx context.Context) (int64, error)
	// Close ends the use of the store.
	Close() error
	Outbox
}
