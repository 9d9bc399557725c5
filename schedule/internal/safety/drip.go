package safety

// Over one another, from below: poultry, ground meat and sausage, pork, beef and lamb, fish, vegetables and bread, so
// that what drips meets only what is cooked as far or further (after FDA Food Code 3-302.11; the order is common practice).
const (
	levelPoultry = iota
	levelGround
	levelPork
	levelRed
	levelFish
	levelPlants
)

// Hanging is a piece on one of several grates: its food, and when it is on, in minutes that grow.
type Hanging struct {
	Category Category
	MinimumC float64 // its published minimum
	On, Off  float64
	RawUntil float64 // the core is at the minimum from here on
}

// Level is where it belongs, 0 for the lowest.
func (h Hanging) Level() int {
	switch h.Category {
	case Poultry, GroundPoultry:
		return levelPoultry
	case Ground, Sausage:
		return levelGround
	case Pork, Ham:
		return levelPork
	case Fish:
		return levelFish
	case Vegetable, None:
		return levelPlants
	}
	return levelRed
}

// Drips says whether a piece drips raw juice at all: what was cooked before, and plants, do not.
func (h Hanging) Drips() bool {
	switch h.Category {
	case Vegetable, None, Leftovers, HamCooked:
		return false
	}
	return true
}

// minuteApart is what rounding may part two instants by.
const minuteApart = 1

// MayHangOver says whether a piece may be on a grate above another while both are on. Raw, it may not hang over what
// comes off sooner, has a lower minimum or belongs above it.
func MayHangOver(above, below Hanging) bool {
	if !above.Drips() || above.RawUntil <= below.On || above.On >= below.Off {
		return true
	}
	return below.Off >= above.Off-minuteApart && below.MinimumC >= above.MinimumC-0.1 && below.Level() <= above.Level()
}
