package fire

// An upright cooker has one way to lay coals: a ring of its own at the bottom, filled with unlit ones, the few lit ones in
// a hollow on top (common practice, no source). Its draught comes in beside the doors too (control.go), so it is started with no
// more lit coals than a kettle for the same heat, but it loses more and burns more.
var uprightFire = Description{
	Layout: Other, MinC: uprightLeastC, MaxC: uprightMostC, Zones: []ZoneKind{{Name: uprightZone, Share: 1}},
	Use:   "low and slow on grates one above another",
	Build: "Fill the coal ring at the bottom with the unlit coals and leave a hollow in the middle for the lit ones; fill the pan, if it has one, before the cooker is put together over them.", Pour: "Pour the lit coals into the hollow.",
	OpenTop: 1, OpenBottom: 0.5, LayMinutes: 10, LightMinutes: 15, WarmMinutes: 30,
}

// uprightHeightM is how high the ring of an upright cooker is filled: with the coal grate's share of its width a ring of
// 18.5 in takes some 15 lb of briquettes (makers' figures, from memory).
const uprightHeightM = 0.15

// Lays says whether its coals may be laid in more ways than one.
func (g Grill) Lays() bool { return g.Kind == Kettle || g.Kind == Box }

// SteersBottom says whether the bottom vents are its fine control: those of an upright cooker, whose top one stays open.
func (g Grill) SteersBottom() bool { return g.Kind == Upright }

// Describe is the description of a layout on this grill, false where it is none of its own.
func (g Grill) Describe(l Layout) (Description, bool) {
	d := g.describe(l)
	if d == nil {
		return Description{}, false
	}
	return d.copied(), true
}

func (g Grill) describe(l Layout) *Description {
	switch {
	case g.Lays():
		return describe(l)
	case g.Kind == Upright && l == Other:
		return &uprightFire
	}
	return nil
}
