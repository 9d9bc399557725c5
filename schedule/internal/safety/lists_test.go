package safety

import (
	"slices"
)

// Categories lists every category.
func Categories() []Category { return slices.Clone(categories) }

// Valid reports whether c is one of Categories. Rules treat any other value as
// the strictest row, 165 °F.
func (c Category) Valid() bool { return slices.Contains(categories, c) }

// Minutes is the time spent between 40 and 140 °F so far.
func (d *DangerClock) Minutes() float64 { return d.minutes }

// LethalityTables lists the published tables.
func LethalityTables() []LethalityTable { return slices.Clone(lethalityTables) }
