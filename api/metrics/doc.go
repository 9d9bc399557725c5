// Package metrics tells an operator how the service does, in the text format of
// Prometheus: calls by route and status, latencies, gates, streams, what is pushed, and
// the store. No label holds a secret, an id or anything that a caller may choose.
//
// [New] makes a [Metrics]. It is the service's Observer and its handler, has a store
// measured by [Metrics.Store] and ways by [Metrics.Way], and asks the rest when it is asked.
//
//	metrics.go  what is counted as it happens
//	load.go     what is asked for when somebody looks
//	store.go    a store, each of its calls measured
package metrics
