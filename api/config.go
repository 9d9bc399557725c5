package api

import (
	"log/slog"
	"net/http"
	"net/netip"
	"runtime"
	"time"

	"github.com/google/uuid"
)

// Limits of a request, the same for everyone.
const (
	maxBodyBytes   = 1 << 20
	maxHeaderBytes = 16 << 10
	maxEntries     = 5000            // that a plan keeps, withdrawn ones among them
	maxAhead       = 2 * time.Minute // by which clocks may differ
)

// Config is what a [Service] is made of. Only Store is required; what is zero
// stands for the value in the comment.
type Config struct {
	Store    Store
	Planner  Planner          // Library{}
	Clock    func() time.Time // time.Now
	NewID    func() string    // random UUID, of plans and of feeds
	Log      *slog.Logger     // discards
	Version  string           // of the build; "" says none
	Document []byte           // openapi.yaml, as it is served; nil serves none
	Observer Observer         // is told of every call; nil for none
	Metrics  http.Handler     // answers GET /metrics; nil for none

	Token   string         // bearer token asked of every call but the health checks; empty asks for none
	Hosts   []string       // names and addresses this service answers to; empty answers to any
	Proxies []netip.Prefix // whose X-Forwarded-For is believed; empty believes none

	Solves      int           // plans made at once, and as many that are light: the number of processors
	Queue       int           // calls that may wait for a place, of each kind: 256
	Patience    time.Duration // how long one waits before it is refused: 5 s
	SolveTime   time.Duration // the longest a plan may take: 15 s
	Streams     int           // event streams open at once: 5000
	StreamsEach int           // of one client: a quarter of them
	Heartbeat   time.Duration // longest silence of a stream: 15 s
	Look        time.Duration // between two looks for what another process wrote: 1 s
	Probe       time.Duration // how long the answer of a check that writes is believed: 1 s
	Keep        time.Duration // how long a plan is kept after its meal and its last change: for ever
	Drain       time.Duration // how long the service answers that it is about to end before it does: none
	CacheBytes  int           // of answers that are kept ready: 64 MiB
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
	standsFor(&c.Queue, 256)
	standsFor(&c.Patience, 5*time.Second)
	standsFor(&c.SolveTime, 15*time.Second)
	standsFor(&c.Streams, 5000)
	standsFor(&c.StreamsEach, max(c.Streams/4, 1))
	standsFor(&c.Heartbeat, 15*time.Second)
	standsFor(&c.Look, time.Second)
	standsFor(&c.Probe, time.Second)
	standsFor(&c.CacheBytes, 64<<20)
	return c
}

// program is how the service names itself.
func (c Config) program() string {
	if c.Version == "" {
		return "cookday"
	}
	return "cookday/" + c.Version
}

func standsFor[T comparable](field *T, value T) {
	var zero T
	if *field == zero {
		*field = value
	}
}
