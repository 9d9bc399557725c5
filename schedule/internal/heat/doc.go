// Package heat answers one question: when does this body reach that state in
// these surroundings?
//
// A piece of meat is a one-dimensional body of equivalent shape (between slab
// and sphere) that conducts heat inside, takes it up at the surface by
// convection and radiation, and loses it by evaporation. Evaporation draws on
// a reservoir of free surface water that shrinking protein fills with a delay
// of hours: the plateau that cooks call the stall comes out of that balance and
// is not put in by hand.
//
// In: a [Body], its [Surroundings], and a [Recipe] or a [Fire]. Out: minutes, core and
// surface, the stall, and the carry-over of a rest, read off a [Sim] or a [Slab].
//
//	body.go, grid.go, properties.go       the piece, in cells
//	surroundings.go, grate.go, face.go    what its surface feels
//	water.go, vapour.go                   evaporation: the stall comes out of this
//	sim.go, step.go, cook.go, run_until.go, stem.go  a cook, step by step, and until when; cooks that begin alike
//	reading.go, trend.go, stall_watch.go, carryover.go  what is read off it
//	slab*.go                              a piece over coals, with two faces
//
// The package knows no names of cuts, no clock time and no rules of food
// safety. Everything is float64 in SI units and degrees Celsius, with the unit
// in the name. Nothing is allocated while a cook is simulated, and every run
// has a bounded number of steps. A [Sim] belongs to one goroutine; a value copy
// of it is an independent branch.
//
// Temperatures at which the surface may be wet are limited by the boiling point.
// Not modelled: freezing and thawing, stuffing, basting, rendering of fat,
// shrinkage, bones and cavities, and tenderness.
package heat
