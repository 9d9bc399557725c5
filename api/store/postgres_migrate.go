package store

import (
	"context"
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"strings"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgxpool"
)

//go:embed postgres/*.sql
var postgresMigrations embed.FS

// migrationLock keeps processes that start at once from migrating at once ("cook").
const migrationLock = applicationID

// migratePostgres brings a database to the schema of this program, in one transaction:
// who comes second waits, and finds the work done.
func migratePostgres(ctx context.Context, pool *pgxpool.Pool, schema string) error {
	names, err := fs.Glob(postgresMigrations, "postgres/*.sql")
	if err != nil {
		return err
	}
	err = pgx.BeginFunc(ctx, pool, func(tx pgx.Tx) error {
		if _, err := tx.Exec(ctx, "SELECT pg_advisory_xact_lock($1)", int64(migrationLock)); err != nil {
			return err
		}
		version, err := postgresSchema(ctx, tx, schema)
		if err != nil {
			return err
		}
		if version > len(names) {
			return fmt.Errorf("it was written by a newer cookday (its schema is %d, this program knows %d): update the program", version, len(names))
		}
		for i := version; i < len(names); i++ {
			text, err := postgresMigrations.ReadFile(names[i])
			if err != nil {
				return err
			}
			if _, err := tx.Exec(ctx, string(text)); err != nil {
				return fmt.Errorf("%s: %w", names[i], err)
			}
		}
		if version == len(names) {
			return nil
		}
		_, err = tx.Exec(ctx, "UPDATE cookday_schema SET version = $1", len(names))
		return err
	})
	if err != nil {
		return fmt.Errorf("the database cannot be used to keep plans: %s", strings.Join(strings.Fields(err.Error()), " ")) // it may have many lines
	}
	return nil
}

// postgresSchema is how many migrations a database has had, 0 for a new one. Nothing is
// made where it is there already, so that a user who may not make anything can go on.
func postgresSchema(ctx context.Context, tx pgx.Tx, schema string) (version int, err error) {
	var there bool
	if err := tx.QueryRow(ctx, "SELECT to_regclass($1) IS NOT NULL", pgx.Identifier{schema, "cookday_schema"}.Sanitize()).Scan(&there); err != nil {
		return 0, err
	}
	if there {
		err := tx.QueryRow(ctx, "SELECT version FROM cookday_schema").Scan(&version)
		if errors.Is(err, pgx.ErrNoRows) {
			err = errors.New("its table cookday_schema is empty")
		}
		return version, err
	}
	_, err = tx.Exec(ctx, "CREATE SCHEMA IF NOT EXISTS "+pgx.Identifier{schema}.Sanitize())
	if err == nil {
		_, err = tx.Exec(ctx, "CREATE TABLE cookday_schema (version integer NOT NULL); INSERT INTO cookday_schema VALUES (0)")
	}
	return 0, err
}
