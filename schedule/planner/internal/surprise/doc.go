// Package surprise answers one question: what may a reading be that is not as foretold?
//
// In: readings of one piece, what is expected of it ([belief.Outlook]), and what is known
// of its fire ([Scene]). Out: a [Verdict] for each reading that surprises: every
// explanation that is physically possible, with its chance. One is taken only if it is
// likely and nothing more dangerous is left; else two are named, and what tells them
// apart. When a fire may have died is found by physics, not by when it was seen.
//
//	scene.go      what is known of the fire, and proofs that it burned
//	proof.go      what a core proves of it
//	explain.go    explanations, and how likely each is
//	since.go      since when the fire may have been out
//	coldest.go    the colder of two places, and what finishes a piece too soon
//	stall.go      a bare piece in its stall is believed
//	judge.go      reading after reading: taken, left out, or open; what settles it
//
// It knows no dish, no clock and no plan: minutes count from the put-on.
package surprise
