package safety

import (
	"slices"
)

// Category says which row of the published charts a food belongs to.
type Category string

// The categories. Beef, pork, veal and lamb are whole muscle: steaks, chops, roasts.
const (
	Beef          Category = "beef"
	Pork          Category = "pork"
	Veal          Category = "veal"
	Lamb          Category = "lamb"
	Ham           Category = "ham"        // fresh or smoked, raw
	HamCooked     Category = "ham-cooked" // cooked by the packer, reheated
	Poultry       Category = "poultry"    // whole or in parts, any bird
	Fish          Category = "fish"       // fin fish
	Ground        Category = "ground"     // beef, pork, veal, lamb
	GroundPoultry Category = "ground-poultry"
	Sausage       Category = "sausage" // raw, of red meat: the charts' ground row
	Vegetable     Category = "vegetable"
	None          Category = "none"      // bread, fruit: no rule of temperature
	Leftovers     Category = "leftovers" // anything cooked, chilled and warmed again
)

var categories = []Category{Beef, Pork, Veal, Lamb, Ham, HamCooked, Poultry, Fish,
	Ground, GroundPoultry, Sausage, Vegetable, None, Leftovers}

// SurfaceInside reports whether the inside of a piece may carry what is otherwise only on
// its surface, by its kind or by what was done to it. It is never planned below its
// minimum, and is at it before a sear or a skin step: those earn no credit.
func SurfaceInside(c Category, p Prep) bool { return c.inner() || p.opened() }

// inner reports whether the inside of the piece may carry what is otherwise only on
// its surface; such pieces are never planned below their minimum.
func (c Category) inner() bool {
	switch c {
	case Beef, Pork, Veal, Lamb, Ham, HamCooked, Fish, Vegetable, None:
		return false
	}
	return true
}

// Prep says what was done to a piece before it is cooked.
type Prep struct {
	Stuffed    bool
	Injected   bool
	Tenderised bool // by needles or blades
	Rolled     bool
	Boned      bool
	Brined     bool // soaked or rubbed: nothing is carried inside, no rule changes
	// InspectedPlant: a cooked ham packed in a plant under USDA inspection, as its
	// label says. The chart then asks for 140 F instead of 165 F.
	InspectedPlant bool
}

// PrepOf is what the words of a request say was done to a piece.
func PrepOf(words []string) Prep {
	return Prep{
		Stuffed: slices.Contains(words, "stuffed"), Injected: slices.Contains(words, "injected"),
		Tenderised: slices.Contains(words, "tenderised"), Rolled: slices.Contains(words, "rolled"),
		Brined: slices.Contains(words, "brined"),
	}
}

// pierced reports whether the surface was carried inside by needles or blades.
func (p Prep) pierced() bool { return p.Injected || p.Tenderised }

// opened reports whether any part of the surface now lies inside.
func (p Prep) opened() bool { return p.pierced() || p.Stuffed || p.Rolled || p.Boned }
