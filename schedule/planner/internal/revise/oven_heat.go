package revise

import "example.com/cookday/schedule/unit"

// coolestOvenC is an oven in which something cooks, 170 F: what was typed below that is no such heat.
var coolestOvenC = unit.FToC(170)

// carriedC is the heat of the oven that a piece was carried to, degC; 0 where that is not known.
func (a *liveBatch) carriedC() float64 {
	if a.ovenC < coolestOvenC {
		return 0
	}
	return a.ovenC
}

// oneHeat gives pieces that were carried into the oven, and of which nobody said how hot it is,
// the heat of what is in it with them: as told, or else as the first of them wants it.
func (v *Revision) oneHeat() {
	var first, told *liveBatch
	for _, a := range v.batches {
		if a.where != cooking || !a.oven.set {
			continue
		}
		if first == nil || a.oven.at.Before(first.oven.at) {
			first = a
		}
		if a.carriedC() > 0 && (told == nil || a.oven.at.After(told.oven.at)) {
			told = a
		}
	}
	for _, a := range v.batches {
		if a.where != cooking || !a.oven.set || a.carriedC() > 0 || a == first && told == nil {
			continue
		}
		if a.ovenC = first.way().AirC; told != nil {
			a.ovenC = told.ovenC
		}
	}
}
