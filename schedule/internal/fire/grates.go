package fire

import "strconv"

// raisedShare is the part of the grate that a second one over the side away from the coals adds (common practice, no
// source); raisedMostM is how thick a piece goes under the lid there, about 3 in.
const (
	raisedShare = 0.45
	raisedMostM = 3 * inchM
)

// raisedGrate stands over the zone beside the coals.
func (g Grill) raisedGrate(l Layout) Grate {
	k := ZoneKind{Share: raisedShare}
	return Grate{Name: "raised grate", AreaM2: raisedShare * g.GrateAreaM2(), Shape: g.zoneShape(l, k), MostThickM: raisedMostM}
}

// An upright cooker has one zone, in which all of its grates are as hot (assumption), and holds low to hot heat (common
// practice, no source).
const uprightZone = "grates"

var (
	uprightLeastC = fahrenheit(200)
	uprightMostC  = fahrenheit(350)
)

// UprightZone is the heat of an upright cooker.
func (g Grill) UprightZone() OtherZone {
	return OtherZone{Name: uprightZone, AreaM2: g.GrateAreaM2(), MinC: uprightLeastC, MaxC: uprightMostC}
}

func (g Grill) uprightZones(f Fire) []Zone {
	if f.Layout != Other {
		return nil
	}
	z := Zone{
		Name: uprightZone, Share: 1, AreaM2: g.GrateAreaM2(), Shape: g.Grate(),
		LiftK: min(max(f.LevelC, uprightLeastC), uprightMostC) - f.LevelC,
	}
	for level := 2; level <= g.Levels; level++ {
		z.Above = append(z.Above, Grate{Name: levelName(level, g.Levels), AreaM2: z.AreaM2, Shape: z.Shape})
	}
	return []Zone{z}
}

// levelName names a grate counted from below.
func levelName(level, of int) string {
	switch {
	case level == of:
		return "top grate"
	case level == 1:
		return "bottom grate"
	case of == 3:
		return "middle grate"
	}
	return "grate " + strconv.Itoa(level) + " from below"
}

// Grates are all grates of the zone from below, the one that every zone has first.
func (z Zone) Grates() []Grate {
	all := make([]Grate, z.Levels())
	for i := range all {
		all[i] = z.Grate(i)
	}
	return all
}

// Levels is how many grates the zone has.
func (z Zone) Levels() int { return 1 + len(z.Above) }

// Grate is one of the grates of the zone, 0 for the lowest.
func (z Zone) Grate(level int) Grate {
	if level > 0 {
		return z.Above[level-1]
	}
	name := "main grate"
	if n := len(z.Above); n > 0 && z.Above[0].MostThickM == 0 {
		name = levelName(1, n+1)
	}
	return Grate{Name: name, AreaM2: z.AreaM2, Shape: z.Shape}
}

// Takes says whether a piece so thick goes on the grate.
func (g Grate) Takes(thicknessM float64) bool { return g.MostThickM == 0 || thicknessM <= g.MostThickM }

// RoomM2 is the area of all grates of the zone.
func (z Zone) RoomM2() float64 {
	sum := z.AreaM2
	for _, a := range z.Above {
		sum += a.AreaM2
	}
	return sum
}
