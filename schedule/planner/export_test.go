package planner

// Contradictions for tests.
var Contradictions = contradictions
