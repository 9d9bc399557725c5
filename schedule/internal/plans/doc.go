// Package plans has small things about requests and plans that several rooms need: ids
// and hashes, parts of a request, the order of steps, windows. It knows nothing of how a
// plan is made.
package plans
