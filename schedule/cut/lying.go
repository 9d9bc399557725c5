package cut

// How pieces lie on a grate follows from what they are.

// thinM and thinRatio tell wings, drumsticks, sausages and skewers from steaks and roasts: narrower than so much, and so
// much longer than wide (assumption).
const (
	thinM     = 0.07
	thinRatio = 1.8
)

// Thin says whether pieces are narrow and long: wings, drumsticks, sausages, skewers.
func (c Cut) Thin() bool {
	l, w := c.Footprint(c.Shape.ReferenceKg, 0)
	return !c.Disc && !c.Rack && w <= thinM && l >= thinRatio*w
}

// FlatBird says whether pieces are of a bird and flat, so that they may touch: halves, flattened birds, legs.
func (c Cut) FlatBird() bool {
	return c.Poultry && !c.Disc && !c.Thin() && (c.Spread == "flat-bird" || c.Style == Small)
}

// Foiled says whether pieces are parcels in foil, whose edges may overlap.
func (c Cut) Foiled() bool { return c.Name == "cooked-meat" }

// Ribs says whether pieces are racks of ribs, which may be cut in half, stand on edge or be rolled up.
func (c Cut) Ribs() bool { return c.Rack && c.Style == Tough }

// Bends says whether a piece can be bent over a support: what is tough, wide and without a bone through it.
func (c Cut) Bends() bool {
	switch c.Name {
	case "brisket", "brisket-flat", "pork-belly":
		return true
	}
	return c.Ribs()
}

// TooStiffToRoll says whether racks of ribs do not roll up: beef ribs, and spare ribs that keep their brisket bone.
func (c Cut) TooStiffToRoll() bool { return c.Food == "beef" || c.Name == "spare-ribs" }

// ShrunkTo is what of its room a piece needs once it is wrapped, to lie easily and at the least. After the first hours a
// shoulder or a brisket is a tenth smaller each way, and a rack of ribs covers 0.85 of what it did; racks in foil may lie
// two high. (Meat loses 30 to 40 % of its weight. No length by the hour was found: these are assumptions. They count
// from the wrap on, which comes after the first three hours.)
func (c Cut) ShrunkTo(with string) (easy, least float64) {
	switch {
	case c.Style != Tough:
		return 1, 1
	case c.Ribs() && with == "foil":
		return 0.85, 0.85 / 2
	case c.Ribs():
		return 0.85, 0.85
	}
	return 0.81, 0.81
}
