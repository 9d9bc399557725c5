package store

import (
	"context"
	"database/sql"
	"embed"
	"fmt"
	"io/fs"
)

//go:embed migrations/*.sql
var migrations embed.FS

// applicationID marks the file as ours in the header of the database ("cook" in ASCII).
const applicationID = 0x636f6f6b

// migrate brings a file to the schema of this program, each step in one
// transaction. It refuses a file of a newer program and one of another kind.
func migrate(ctx context.Context, db *sql.DB, path string) error {
	names, err := fs.Glob(migrations, "migrations/*.sql")
	if err != nil {
		return err
	}
	version, err := schemaOf(ctx, db, path)
	if err != nil {
		return err
	}
	if version > len(names) {
		return fmt.Errorf("%s was written by a newer cookday (its schema is %d, this program knows %d): update the program or name another file", path, version, len(names))
	}
	for i := version; i < len(names); i++ {
		text, err := migrations.ReadFile(names[i])
		if err == nil {
			err = step(ctx, db, string(text), i+1)
		}
		if err != nil {
			return fmt.Errorf("%s: %s: %w", path, names[i], err)
		}
	}
	return nil
}

// schemaOf is how many migrations a file has had; 0 for an empty one. It reads in
// one transaction, or it might see another process half-way through the first one.
func schemaOf(ctx context.Context, db *sql.DB, path string) (int, error) {
	tx, err := db.BeginTx(ctx, nil)
	if err != nil {
		return 0, fmt.Errorf("%s cannot be used to keep plans: %w", path, err)
	}
	defer tx.Rollback() // nothing is written
	var application, version, tables int
	for query, to := range map[string]*int{"PRAGMA application_id": &application, "PRAGMA user_version": &version, "SELECT count(*) FROM sqlite_master": &tables} {
		if err := tx.QueryRowContext(ctx, query).Scan(to); err != nil {
			return 0, fmt.Errorf("%s cannot be used to keep plans: %w", path, err)
		}
	}
	if application != applicationID && (application != 0 || version != 0 || tables != 0) {
		return 0, fmt.Errorf("%s is a database of another program: name another file", path)
	}
	return version, nil
}

// step applies one migration. Several processes may try at once: the transaction
// takes the write lock first, and who comes second finds the work done.
func step(ctx context.Context, db *sql.DB, text string, version int) error {
	tx, err := db.BeginTx(ctx, nil)
	if err != nil {
		return err
	}
	defer tx.Rollback() // does nothing after a commit
	var have int
	if err := tx.QueryRowContext(ctx, "PRAGMA user_version").Scan(&have); err != nil || have >= version {
		return err
	}
	if _, err := tx.ExecContext(ctx, text); err != nil {
		return err
	}
	if _, err := tx.ExecContext(ctx, fmt.Sprintf("PRAGMA user_version = %d; PRAGMA application_id = %d", version, applicationID)); err != nil {
		return err
	}
	return tx.Commit()
}
