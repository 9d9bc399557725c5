package logbook

import (
	"time"

	"example.com/cookday/schedule/unit"
)

// Day is what a log needs to know of the plan that it belongs to.
type Day struct {
	Loc         *time.Location
	First, Last time.Time // every entry lies between
	From, To    time.Time // the cooking and the eating as planned
	Units       unit.System
	Dishes      []Dish // of the plan
	DayBefore   []Dish // of the day before it
	Fires       []Fire // by time
	Chimney     int    // coals of a full one
	// NewDish reads a dish that is added to the menu, and gives it an id.
	NewDish func(text string) (Dish, error)
}

// Dish is a dish as a log may call it.
type Dish struct {
	ID, Name, Cut string
	OvenC         float64 // of the oven in which it waits when it is done, degC; 0 for none
	OvenCooks     bool    // it goes on cooking in the oven
	Count         int     // pieces of it
	Batches       int     // loads of the grate in which it goes on
	Poultry       bool
	LeastC        float64 // its published minimum, degC; 0 for none
	DoneC         float64 // what it must have shown when it comes off for good: its published minimum, or what is asked for below that, degC; 0 for none
	RawOvenC      float64 // the coolest oven that takes it below that, degC; 0 for none
}

// Fire is a level of the grate from an instant on, degC.
type Fire struct {
	From   time.Time
	LevelC float64
}

// Entry is one line of a log, as it was read.
type Entry struct {
	At    time.Time
	Dish  string // its id; empty for the grill
	Kind  Kind
	C     float64 // degC
	Value string
	Line  int
}
