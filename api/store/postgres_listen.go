package store

import (
	"context"
	"strings"
	"time"

	"github.com/jackc/pgx/v5"
)

// The bell between processes: who writes notifies a channel of the database, on which all
// listen. A notice has the writer's name and the plan's id, and arrives with the commit.
const channel = "cookday"

// mostHeard notices wait to be taken; who is slower looks everywhere.
const mostHeard = 1024

// again is how long a process waits before it listens again after the line broke.
const again = 500 * time.Millisecond

func (p *Postgres) tell(ctx context.Context, tx pgx.Tx, plan string) error {
	_, err := tx.Exec(ctx, "SELECT pg_notify($1, $2)", channel, p.owner+" "+plan)
	return err
}

// Heard gives the ids of plans that other processes changed, and "" when some may have
// been missed.
func (p *Postgres) Heard() <-chan string { return p.heard }

// Changes counts what was heard of other processes.
func (p *Postgres) Changes(context.Context) (int64, error) { return p.changes.Load(), nil }

// listen hears what other processes write until the context ends.
func (p *Postgres) listen(ctx context.Context) {
	for ctx.Err() == nil {
		_ = p.listenOnce(ctx) // the line broke: whoever writes is told so too
		select {
		case <-ctx.Done():
		case <-time.After(again):
		}
	}
}

func (p *Postgres) listenOnce(ctx context.Context) error {
	c, err := p.pool.Acquire(ctx)
	if err != nil {
		return err
	}
	line := c.Hijack() // it never goes back to those that wait for one
	defer line.Close(context.WithoutCancel(ctx))
	if _, err := line.Exec(ctx, "LISTEN "+channel); err != nil {
		return err
	}
	p.hear("") // what was written while nobody listened
	for {
		n, err := line.WaitForNotification(ctx)
		if err != nil {
			return err
		}
		if owner, plan, _ := strings.Cut(n.Payload, " "); owner != p.owner {
			p.hear(plan)
		}
	}
}

// hear never waits: what nobody takes is counted all the same.
func (p *Postgres) hear(plan string) {
	p.changes.Add(1)
	select {
	case p.heard <- plan:
	default:
	}
}
