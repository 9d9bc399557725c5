package fire

import "math"

// otherZones puts the described zones side by side; each follows the level as far as its own range allows.
func (g Grill) otherZones(f Fire) []Zone {
	if f.Layout != Other {
		return nil
	}
	whole, zones := g.Grate(), make([]Zone, len(g.OtherZones))
	x := -whole.WidthM / 2
	for i, z := range g.OtherZones {
		width := z.AreaM2 / whole.DepthM
		zones[i] = Zone{
			Name: z.Name, Share: z.AreaM2 / g.GrateAreaM2(), AreaM2: z.AreaM2, Direct: z.Direct,
			LiftK: min(max(f.LevelC, z.MinC), z.MaxC) - f.LevelC,
			Shape: Shape{Form: Rectangle, Centre: Point{XM: x + width/2}, WidthM: width, DepthM: whole.DepthM},
		}
		x += width
	}
	return zones
}

// otherDepthM draws an undescribed grate three wide to two deep (assumption, for the picture only).
func (g Grill) otherDepthM() float64 { return math.Sqrt(g.GrateAreaM2() * 2 / 3) }
