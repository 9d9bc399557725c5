// Package spread answers one question: how far may a time be off?
//
// A [Pace] is a length of time at the 10th, 50th and 90th percentile and at the asked
// chance; a [Spread] is the log-normal scatter behind it; a [Readiness] is the chance of
// being ready in time, which dishes on one grill share through its grate.
//
// It knows no dish and no clock.
package spread
