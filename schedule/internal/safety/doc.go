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
// Nothing here says that food is safe. A verdict says whether a plan or a record
// lies within a published limit; the thermometer and the local code decide.
package safety
