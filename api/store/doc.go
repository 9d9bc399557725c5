// Package store keeps plans for package api: in memory for trials, or in one file
// of an embedded SQL database. Both pass one suite of tests, which another database
// can be put through too.
package store
