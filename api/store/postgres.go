package store

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"sync"
	"sync/atomic"

	"github.com/google/uuid"
	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgconn"
	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/cookday/api"
)

// Postgres keeps plans in a PostgreSQL database, where several processes may keep them
// at once. Each tells the others what it writes, through the database.
type Postgres struct {
	pool  *pgxpool.Pool
	owner string // names this process to the others

	heard   chan string
	changes atomic.Int64 // of other processes, that were heard of
	end     context.CancelFunc
	ended   sync.WaitGroup
}

// schema is where the tables are, if the address names no search_path.
const schema = "cookday"

// mostConnections of a process to the database, if its address has no pool_max_conns.
const mostConnections = 16

// IsPostgres says whether the name of a store is the address of a database.
func IsPostgres(name string) bool {
	return strings.HasPrefix(name, "postgres://") || strings.HasPrefix(name, "postgresql://")
}

// OpenPostgres opens a database of plans by its address (postgres://user@host/name), and
// brings its tables to the schema of this program.
func OpenPostgres(ctx context.Context, address string) (*Postgres, error) {
	cfg, err := pgxpool.ParseConfig(address)
	if err != nil {
		return nil, errors.New("the address of the database cannot be read; it is like postgres://user@host:5432/name") // the error has the address, and a password
	}
	if !strings.Contains(address, "pool_max_conns=") {
		cfg.MaxConns = mostConnections
	}
	own := cfg.ConnConfig.RuntimeParams
	if own["search_path"] == "" {
		own["search_path"] = schema
	}
	if own["application_name"] == "" {
		own["application_name"] = "cookday"
	}
	pool, err := pgxpool.NewWithConfig(ctx, cfg)
	if err != nil {
		return nil, fmt.Errorf("the database cannot be used: %w", err)
	}
	if err := migratePostgres(ctx, pool, firstOf(own["search_path"])); err != nil {
		pool.Close()
		return nil, err
	}
	p := &Postgres{pool: pool, owner: uuid.NewString(), heard: make(chan string, mostHeard)}
	listening, end := context.WithCancel(context.WithoutCancel(ctx))
	p.end = end
	p.ended.Go(func() { p.listen(listening) })
	return p, nil
}

// firstOf a search_path is the schema in which tables are made.
func firstOf(path string) string {
	first, _, _ := strings.Cut(path, ",")
	return strings.Trim(strings.TrimSpace(first), `"`)
}

// inTransaction does all of the work or nothing, and tells the other processes which
// plan it was about; "" tells nobody. Two that are in each other's way are tried again.
func (p *Postgres) inTransaction(ctx context.Context, about string, work func(pgx.Tx) error) error {
	const most = 5
	for try := 1; ; try++ {
		err := pgx.BeginFunc(ctx, p.pool, func(tx pgx.Tx) error {
			if err := work(tx); err != nil || about == "" {
				return err
			}
			return p.tell(ctx, tx, about)
		})
		var known *pgconn.PgError
		if errors.As(err, &known) && (known.Code == codeDeadlock || known.Code == codeSerialization) && try < most {
			continue
		}
		return toldByPostgres(ctx, err)
	}
}

// Codes of PostgreSQL (its manual, appendix A), and the first two signs of classes.
const (
	codeUnique        = "23505"
	codeReadOnly      = "25006"
	codeSerialization = "40001"
	codeDeadlock      = "40P01"
	codeDiskFull      = "53100"
	classConnection   = "08"
	classResources    = "53"
	classOperator     = "57" // it is being stopped, or starts
)

// toldByPostgres says the errors of a database in the words of package api.
func toldByPostgres(ctx context.Context, err error) error {
	var known *pgconn.PgError
	switch {
	case err == nil:
		return nil
	case errors.Is(err, pgx.ErrNoRows):
		return api.ErrNotFound
	case errors.Is(err, api.ErrNotFound), errors.Is(err, api.ErrConflict), errors.Is(err, api.ErrExists):
		return err
	case ctx.Err() != nil:
		return errors.Join(ctx.Err(), err)
	case !errors.As(err, &known):
		return errors.Join(api.ErrAway, err) // the line, not the database
	}
	switch class := known.Code[:2]; {
	case known.Code == codeUnique:
		return api.ErrExists
	case known.Code == codeDiskFull:
		return errors.Join(api.ErrFull, err)
	case known.Code == codeReadOnly:
		return errors.Join(api.ErrReadOnly, err)
	case class == classConnection, class == classResources, class == classOperator:
		return errors.Join(api.ErrAway, err)
	}
	return err
}

// changed is not found where no row was changed.
func changed(done pgconn.CommandTag, err error) error {
	if err == nil && done.RowsAffected() == 0 {
		return api.ErrNotFound
	}
	return err
}

// Ready writes a row: a disk that is full still reads well.
func (p *Postgres) Ready(ctx context.Context) error {
	_, err := p.pool.Exec(ctx, "UPDATE probe SET room = $1", make([]byte, probeBytes))
	return toldByPostgres(ctx, err)
}

// Close ends the use of the database.
func (p *Postgres) Close() error {
	p.end()
	p.ended.Wait()
	p.pool.Close()
	return nil
}
