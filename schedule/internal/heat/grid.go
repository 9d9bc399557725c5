package heat

import "math"

// grid is the body cut into cells of equal thickness from the centre outward,
// with everything that does not change during a cook. Volumes are per unit of
// outer surface, so they are in m.
type grid struct {
	cells       int
	shape       float64 // E
	cellM       float64
	area        [maxCells]float64 // of the outer side of each cell over the outer surface
	volume      [maxCells]float64 // m
	material    material
	wetFactor   float64
	supplyKgM3  float64 // water that a cell can give to the surface
	massKgM2    float64 // of the body per outer surface
	shapeRadius float64 // m
}

func (g *grid) lay(b Body, in Surroundings, cells int) {
	g.cells = cells
	g.shape = b.Dimensionality(in.shapeWM2K())
	g.shapeRadius = b.Radius()
	g.cellM = g.shapeRadius / float64(cells)
	inner := 0.0
	for i := range cells {
		r := float64(i+1) / float64(cells)
		g.area[i] = math.Pow(r, g.shape-1)
		outer := g.area[i] * r
		g.volume[i] = (outer - inner) * g.shapeRadius / g.shape
		inner = outer
	}
	g.material = mix(b.Water, b.Protein, b.Fat, b.Ash)
	g.wetFactor = b.WetFactor
	g.supplyKgM3 = supplyKgKg * b.SupplyFactor * b.Water / leanWater * g.material.densityKgM3
	g.massKgM2 = g.material.densityKgM3 * g.shapeRadius / g.shape
}
