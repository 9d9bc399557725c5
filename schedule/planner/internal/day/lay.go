package day

import (
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/fire"
)

// Lay is a piece of the dish as it lies on the grate.
func (it *Item) Lay(massKg float64) fire.Laid {
	return fire.Lay(rawOf(it.Cut, massKg, float64(it.Dish.Thickness)), fire.Lie(it.Dish.Lies), it.reachM)
}

// rawOf is a piece before it is laid.
func rawOf(c cut.Cut, massKg, thicknessM float64) fire.Raw {
	l, w := c.Footprint(massKg, thicknessM)
	t, _, _ := c.Dimensions(massKg, thicknessM)
	r := fire.Raw{Footprint: fire.Footprint{LengthM: l, WidthM: w, Disc: c.Disc, Rack: c.Rack}, ThicknessM: t, Bends: c.Bends()}
	switch {
	case c.Thin():
		r.Fill = fire.FillThin
	case c.FlatBird():
		r.Fill = fire.FillFlat
	case c.Foiled():
		r.Fill = fire.FillFoil
	}
	return r
}
