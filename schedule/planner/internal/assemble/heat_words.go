package assemble

// Where the heat of a grill is, in its own words: nobody knows what a grill of another kind burns, and many of those have
// no coals under the food.

// over is the place straight over the heat.
func (d *Assembler) over() string {
	if d.Grill.BurnsCharcoal() {
		return "over the coals"
	}
	return "over the hottest part"
}

// beside is the place away from it.
func (d *Assembler) beside() string {
	if d.Grill.BurnsCharcoal() {
		return "beside the coals"
	}
	return "away from the hottest part"
}
