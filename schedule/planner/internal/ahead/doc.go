// Package ahead answers one question: what is the plan of a request, which may be of
// two days?
//
// In: a request. Out: its plan, without remedies ([Plan]). Dishes that are ready the
// day before are cooked, cut and chilled on a day of their own, warmed on the other,
// and both days are joined ([TwoDays]).
//
// It knows no solver and no fire; each day is planned as any other.
package ahead
