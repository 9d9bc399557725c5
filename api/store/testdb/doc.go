// Package testdb is a real PostgreSQL server for tests: a schema for each of them, and a
// server that can be killed. .ci/full.d/postgres.sh starts one and names it by flags;
// without them the tests that need it are skipped.
//
//	testdb.go  schemas, lines of one's own, kills
package testdb
