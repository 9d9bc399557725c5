// Package schedule plans a cook day on one grill: it works backward from the
// serving time through rest, wrap, stall and target temperature for several
// dishes that share one grate, and says when to light, load, wrap, take off,
// rest and serve, how sure that is, and how much charcoal it takes.
//
// [Read] decodes a [Request], [Make] turns it into a [Plan], [Forecast] answers
// for a single piece without a schedule, [Revise] follows the day as it goes,
// and [Check] looks at a finished plan without the code that made it.
//
// The package has no clock, no randomness and touches no files or network: the
// same build and time-zone data give the same plan.
package schedule
