package api

import (
	"log/slog"
	"net/netip"
	"runtime"
	"time"

	"github.com/google/uuid"
)

// Limits of a request, the same for everyone.
const (
	maxBodyBytes   = 1 << 20
	maxHeaderBytes = 16 << 10
)

// Config is what a [Service] is made of. Only Store is required; what is zero
// stands for the value in the comment.
type Config struct {
	Store   Store
	Planner Planner          // Library{}
	Clock   func() time.Time // time.Now
	NewID   func() string    // random UUID
	Log     *slog.Logger     // discards

	Token   string         // bearer token asked of every call but the health checks; empty asks for none
	Hosts   []string       // names and addresses this service answers to; empty answers to any
	Proxies []netip.Prefix // whose X-Forwarded-For is believed; empty believes none

	Solves    int           // plans made at once: the number of processors
	Queue     int           // calls that may wait for that: 64
	Patience  time.Duration // how long one waits before it is refused: 5 s
	SolveTime time.Duration // the longest a plan may take: 15 s
	Streams   int           // event streams open at once: 256
	Heartbeat time.Duration // longest silence of a stream: 15 s
}

// withDefaults fills what was left out.
func (c Config) withDefaults() Config {
	if c.Planner == nil {
		c.Planner = Library{}
	}
	if c.Clock == nil {
		c.Clock = time.Now
	}
	if c.NewID == nil {
		c.NewID = uuid.NewString
	}
	if c.Log == nil {
		c.Log = slog.New(slog.DiscardHandler)
	}
	standsFor(&c.Solves, runtime.GOMAXPROCS(0))
	standsFor(&c.Queue, 64)
	standsFor(&c.Patience, 5*time.Second)
	standsFor(&c.SolveTime, 15*time.Second)
	standsFor(&c.Streams, 256)
	standsFor(&c.Heartbeat, 15*time.Second)
	return c
}

func standsFor[T comparable](field *T, value T) {
	var zero T
	if *field == zero {
		*field = value
	}
}
