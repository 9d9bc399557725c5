// Package day answers one question: what can each dish do by itself today?
//
// In: a sound request ([Examine]). Out: a [Day], which has the clock, the quiet hours,
// the weather and the grill as the models take them, and for every dish an [Item] with
// the ways it may cook ([Way], worked out by heat and kept in a [Memo]) and the ways it
// may wait ([HoldOption]). Ways that break a rule of safety are dropped here, before
// anybody could trade them against time.
//
// Instants are minutes before the last serving: larger is earlier. It knows nothing of
// other dishes on the grate, of the solver, or of the sentences of a plan but those
// that refuse or warn of one dish.
//
//	resolve.go, day.go, item.go, quiet.go   the request as a day, and who sleeps when
//	simulate.go, kitchen.go, memo.go        how a piece cooks: the minutes of a stall come from here
//	way.go, scatter.go                      one way of cooking it, and how far real cooks are off it
//	wrap.go, direct.go, sear.go, frozen.go  wraps, coals, sears, frozen pieces
//	hold.go, finished.go, course.go         how it waits, and how long at the most
//	rest.go, chill.go                       how it rests, and is chilled for another day
//	kept_hot.go                             minutes for a published minimum, still on the fire
//	lay.go                                  how a piece lies on the grate
//	spot.go, big_bird.go                    where it may cook
//	weather.go, actual.go, air.go           in what air, and grates that are doubtful
//	findings.go, text.go                    what the cook must know, and words for it
package day
