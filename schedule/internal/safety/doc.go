// Package safety answers one question: does this temperature history keep to the
// published rules, and by what margin? It does not know where a history came from.
//
// The rules are the ones a household cook is held to by the United States charts
// (FoodSafety.gov, USDA FSIS), and where those are silent the FDA Food Code. Each
// rule carries the key of its source; Document names the publication. What has no
// published source says so: its key is NoSource.
//
// Units: temperatures in degrees Celsius, differences in kelvin, time in minutes
// from any origin the caller likes, mass in kilograms. Tables are written in
// degrees Fahrenheit and pounds, as they were published.
//
// In: a [Category] and its [Prep], and a target, a hold, [Sample]s or a [History]. Out: a
// [Verdict], a published [Minimum], reports, [Caution]s. To be found in:
//
//	category.go, minimum.go, verdict.go   what a food is, how hot it must get, targets judged
//	lethality*.go                         minimum times at a core temperature
//	hold*.go, cooling.go, danger.go       hot, cold, and between the two
//	history.go, heatless.go, sample.go    a record judged, and the clock of food without heat
//	drip.go                               what may hang over what
//	thaw.go, oven.go, unwatched.go        thawing; the air of smokers and ovens; fires that nobody watches
//	caution.go, catalogue.go, source.go   what a cook is warned of, and who says so
//
// Nothing here says that food is safe. A verdict says whether a plan or a record
// lies within a published limit; the thermometer and the local code decide.
package safety
