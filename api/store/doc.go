// Package store keeps plans for package api: in memory for trials, in one file of an
// embedded SQL database, or in a PostgreSQL database that several processes share. All of
// them pass one suite of tests, which another database can be put through too, and say
// their errors in the words of package api.
//
//	memory.go, memory_log.go, memory_outbox.go  plans in memory
//	file.go, file_open.go, file_plan.go, file_revision.go, file_outbox.go, migrate.go, spare.go  in a file
//	postgres.go, postgres_plan.go, postgres_revision.go, postgres_outbox.go        in a database
//	postgres_listen.go, postgres_migrate.go  what other processes write; its tables
//	pack.go  how a revision is made small
package store
