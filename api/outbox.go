package api

import (
	"context"
	"time"

	"github.com/google/uuid"
)

// What is pushed goes out by ways, such as a broker or a webhook. The outbox of a way is
// a mark for each plan: the last event that was told. What is still to be told follows
// from the mark and from the plan's revisions, which never change; so nothing that was
// acknowledged can be forgotten, and what is told twice carries the same id.

// Mark is how far a plan was told by a way.
type Mark struct {
	Way   string
	Topic string // the name that the plan is told by, [TopicOf] its id
	Plan  string // its id; "" once the plan is gone, which is then to be told

	Revision int       // of the last event told
	Place    int       // its place in the revision; -1 for none of it
	From     time.Time // what was due before is not told; to the millisecond

	Next  time.Time // when there is something to tell; zero: nothing until the plan changes
	Retry time.Time // not before, after a failure
	Tries int       // of the next event, in vain
	Since time.Time // the first of them
	Fault string    // why the last one failed

	Changes int64 // of the plan, when the mark was taken: [Outbox.PutMark] compares them
}

// DeadLetter is an event that was given up.
type DeadLetter struct {
	Way, Topic, Event string
	Due, Buried       time.Time
	Tries             int
	Fault             string
}

// Lease gives marks to one process for a while. One that ends beyond Until was made by a
// clock that was wrong, and counts for nothing.
type Lease struct {
	Owner      string
	Now, Until time.Time
}

// Outbox is the part of a [Store] that pushing needs. Once a way is open, a plan gets a
// mark for it in the transaction that creates the plan; each change of the plan makes the
// mark due at once, and so does its end, which leaves the mark without the plan's id.
type Outbox interface {
	// OpenWay makes a way known. Plans that are there already and served after an instant
	// are told from that instant on; it does nothing the second time.
	OpenWay(ctx context.Context, way string, from time.Time) error
	// TakeMarks leases at most so many marks of a way that are due and nobody else's.
	TakeMarks(ctx context.Context, way string, l Lease, most int) ([]Mark, error)
	// PutMark keeps how far a plan was told, and what was given up on the way. The lease
	// goes on until its end, or ends now if that is over. A mark whose plan was changed
	// meanwhile stays due. ErrConflict: the lease is somebody else's.
	PutMark(ctx context.Context, m Mark, l Lease, dead ...DeadLetter) error
	// DropMark forgets the mark of a plan that is gone.
	DropMark(ctx context.Context, way, topic string) error
	// DeadLetters lists what was given up, the newest first, at most so many.
	DeadLetters(ctx context.Context, most int) ([]DeadLetter, error)
	// Waiting counts the marks that are due and were tried in vain, by way.
	Waiting(ctx context.Context) (map[string]int, error)
}

// MostDead is how many dead letters a store keeps of a way: the newest.
const MostDead = 1000

// topics is the name space of topics, made once for this program.
var topics = uuid.MustParse("6f2f6a4e-3c0b-4b57-9d6f-0d9a1c7b52e8")

// TopicOf is the name that a plan is told by. It follows from the plan's id and does not
// lead back to it: whoever listens learns of the day and gets no hold of the plan.
func TopicOf(plan string) string { return uuid.NewSHA1(topics, []byte(plan)).String() }
