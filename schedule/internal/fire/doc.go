// Package fire answers one question: how hot is each zone of the grate, when, and on how much charcoal?
//
// In: a [Grill], its [Weather], and the fires that are wanted and for how long. Out: charcoal
// with a range ([Burn]), when it is ready and when to add, zones ([Zone]) and places on them.
//
// It knows no food and no wall clock: time is minutes, from the instant the fire is ready unless a name says
// otherwise. Temperatures are degrees Celsius (C) or differences in kelvin (K), lengths metres, masses kilograms.
//
// Where to look:
//
//	grill.go    the cooker and its zones          layout.go   the ways to lay coals, as one table
//	upright.go  the one way of an upright cooker
//	weather.go  what wind, cold and rain do       rate.go     the burn law and its constants
//	burn.go     fuel of one phase (Plan)          ring.go, pile.go, bed.go   how much a way of laying holds
//	meter.go    fuel burnt by a given minute      topup.go    when to add, and when that cannot be
//	control.go  the lumped fire: what vents, coals and weather do, minute by minute; of many at once: abreast.go
//	decay.go    e to the power of -x, fast        opening.go  a vent's marks, in words and back
//	warm.go     heat-up, set-up, changes          change.go, vents.go, gauge.go   advice in figures
//	shape.go    zones as plane figures            serving.go which fires give a place its heat
//	other.go    grills described by their zones   grates.go  raised grates and levels
//	room.go     how much fits                     lay.go     flat, halved, upright, rolled or bent
//	arrange.go, middle.go, table.go, body.go                 who lies where
//
// Accuracy: the law reproduces the trade's figures within 10 %, but real fires differ by a factor of two either
// way (wet or old fuel, leaks, lid openings). Every amount therefore comes with a range and a margin.
package fire
