package push

import (
	"context"
	"errors"
	"log/slog"
	"sync"
	"time"

	"github.com/google/uuid"

	"example.com/cookday/api"
)

// Message is what a way is to take.
type Message struct {
	Topic string      // the name of the plan
	ID    string      // of the event; with the topic it is there once
	Event *api.Notice // nil: the plan is gone
	At    time.Time   // when it was due
}

// Way takes messages to where they are to go. It returns once they have arrived.
type Way interface {
	Name() string // in the outbox: it must stay the same
	Send(ctx context.Context, m Message) error
	// Refused says whether an error is an answer that asking again will hardly change.
	Refused(err error) bool
}

// Config is what a [Pusher] is made of. What is zero stands for the value in the comment.
type Config struct {
	Store   api.Outbox
	Service *api.Service
	Ways    []Way
	Clock   func() time.Time // time.Now
	Log     *slog.Logger     // discards
	Trials  bool             // trials are told too, though they do not go by the clock

	AtOnce   int           // plans told at once by each way: 8
	Look     time.Duration // between two looks: 1 s
	Lease    time.Duration // how long a plan is one process's to tell: 15 s
	Shortest time.Duration // first wait after a failure, doubled each time: 1 s
	Longest  time.Duration // and up to: 1 min
	Patience time.Duration // with a way that does not answer: 24 h
	Refusals int           // of one event, before it is given up: 5
}

func (c Config) withDefaults() Config {
	if c.Clock == nil {
		c.Clock = time.Now
	}
	if c.Log == nil {
		c.Log = slog.New(slog.DiscardHandler)
	}
	standsFor(&c.AtOnce, 8)
	standsFor(&c.Look, time.Second)
	standsFor(&c.Lease, 15*time.Second)
	standsFor(&c.Shortest, time.Second)
	standsFor(&c.Longest, time.Minute)
	standsFor(&c.Patience, 24*time.Hour)
	standsFor(&c.Refusals, 5)
	return c
}

func standsFor[T comparable](field *T, value T) {
	var zero T
	if *field == zero {
		*field = value
	}
}

// Pusher tells what comes due.
type Pusher struct {
	cfg   Config
	owner string // of the leases
	known *followers

	mu       sync.Mutex
	underWay map[followed]bool // by way and topic
}

// New makes a pusher, and opens its ways in the outbox.
func New(ctx context.Context, cfg Config) (*Pusher, error) {
	cfg = cfg.withDefaults()
	p := &Pusher{cfg: cfg, owner: uuid.NewString(), known: newFollowers(cfg.Service), underWay: map[followed]bool{}}
	for _, w := range cfg.Ways {
		if err := cfg.Store.OpenWay(ctx, w.Name(), cfg.Clock()); err != nil {
			return nil, err
		}
	}
	return p, nil
}

// Run tells until the context ends.
func (p *Pusher) Run(ctx context.Context) {
	var all sync.WaitGroup
	for _, w := range p.cfg.Ways {
		all.Go(func() { p.serve(ctx, w) })
	}
	all.Wait()
	p.known.closeAll()
}

// serve looks for plans of which something is due by a way, now and again and whenever a
// plan was changed.
func (p *Pusher) serve(ctx context.Context, w Way) {
	rings, stop := p.cfg.Service.Rings()
	defer stop()
	tick := time.NewTicker(p.cfg.Look)
	defer tick.Stop()
	free := make(chan struct{}, p.cfg.AtOnce)
	var under sync.WaitGroup
	defer under.Wait()
	for {
		for p.takeOne(ctx, w, free, &under) {
		}
		select {
		case <-ctx.Done():
			return
		case <-rings:
		case <-tick.C:
		}
	}
}

// takeOne begins to tell one plan; false if none is due.
func (p *Pusher) takeOne(ctx context.Context, w Way, free chan struct{}, under *sync.WaitGroup) bool {
	select {
	case free <- struct{}{}:
	case <-ctx.Done():
		return false
	}
	marks, err := p.cfg.Store.TakeMarks(ctx, w.Name(), p.lease(), 1)
	if err != nil || len(marks) == 0 {
		<-free
		if err != nil && ctx.Err() == nil {
			p.cfg.Log.Error("the outbox cannot be read", slog.String("way", w.Name()), slog.String("error", err.Error()))
		}
		return false
	}
	key := followed{w.Name(), marks[0].Topic}
	if !p.begin(key) { // its lease ended while it was told, for the clock has jumped
		<-free
		return true
	}
	under.Go(func() {
		defer func() { p.ended(key); <-free }()
		if err := p.tell(ctx, w, marks[0]); err != nil && ctx.Err() == nil && !errors.Is(err, api.ErrConflict) {
			p.cfg.Log.Error("not pushed", slog.String("way", w.Name()), slog.String("topic", marks[0].Topic), slog.String("error", err.Error()))
		}
	})
	return true
}

// begin says whether a plan is not under way yet, and is from now on.
func (p *Pusher) begin(key followed) bool {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.underWay[key] {
		return false
	}
	p.underWay[key] = true
	return true
}

func (p *Pusher) ended(key followed) {
	p.mu.Lock()
	defer p.mu.Unlock()
	delete(p.underWay, key)
}

// lease is one that begins now.
func (p *Pusher) lease() api.Lease {
	now := p.now()
	return api.Lease{Owner: p.owner, Now: now, Until: now.Add(p.cfg.Lease)}
}

// now is the clock, as exact as the outbox keeps it.
func (p *Pusher) now() time.Time { return p.cfg.Clock().Truncate(time.Millisecond) }
