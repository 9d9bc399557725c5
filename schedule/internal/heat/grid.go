package heat

import "math"

// grid is the body cut into cells of equal thickness from the centre outward,
// with everything that does not change during a cook. Volumes are per unit of
// outer surface, so they are in m.
type grid struct {
	cells      int
	shape      float64 // E
	cellM      float64
	area       [maxCells]float64 // of the outer side of each cell over the outer surface
	volume     [maxCells]float64 // m
	material   material
	wetFactor  float64
	supplyKgM3 float64 // water that a cell can give to the surface
	massKgM2   float64 // of the body per outer surface
}

func (g *grid) lay(b Body, in Surroundings, cells int) {
	g.divide(b.Dimensionality(in.shapeWM2K()), b.Radius(), cells)
	g.material = mix(b.Water, b.Protein, b.Fat, b.Ash)
	g.wetFactor = b.WetFactor
	g.supplyKgM3 = supplyKgKg * b.SupplyFactor * b.Water / leanWater * g.material.densityKgM3
	g.massKgM2 = g.material.densityKgM3 * b.Radius() / g.shape
}

// divide cuts a body of dimensionality shape and radius in m into cells.
func (g *grid) divide(shape, radiusM float64, cells int) {
	g.cells, g.shape = cells, shape
	g.cellM = radiusM / float64(cells)
	inner := 0.0
	for i := range cells {
		r := float64(i+1) / float64(cells)
		g.area[i] = math.Pow(r, shape-1)
		outer := g.area[i] * r
		g.volume[i] = (outer - inner) * radiusM / shape
		inner = outer
	}
}
