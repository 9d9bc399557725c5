package belief

import "math"

// Reading is one reading of a core, in minutes from the put-on.
type Reading struct {
	Minute, CoreC float64
	Doubt         string // why it is not taken for the core; empty if it is
}

func (r Reading) Counts() bool { return r.Doubt == "" }

// How readings become nodes (assumptions).
const (
	togetherMinutes = 10      // so close, readings are of one moment
	togetherShare   = 0.02    // of the whole cook: a quick one has shorter moments
	togetherK       = 6 / 1.8 // and of one place, if they are within 6 F
	mostNodes       = 24
	leastStretch    = 20 // minutes that older readings are averaged over
)

// Nodes are the readings that count, in few points: the newest is of the last ten
// minutes, older ones are means over stretches. Readings of one moment that do not agree
// are of two places or two pieces, and the coldest stands: the dish is done when its
// slowest part is.
func Nodes(readings []Reading, whole float64) []Reading {
	together := math.Min(togetherMinutes, togetherShare*whole)
	var believed []Reading
	for _, r := range readings {
		if r.Counts() {
			believed = append(believed, r)
		}
	}
	n := len(believed)
	if n == 0 {
		return nil
	}
	last := believed[n-1].Minute
	from := n - 1
	for from > 0 && last-believed[from-1].Minute <= together {
		from--
	}
	var out []Reading
	stretch := math.Max(leastStretch, last/(mostNodes-1))
	if from < mostNodes {
		stretch = together
	}
	for i := 0; i < from; {
		k := i + 1
		for k < from && believed[k].Minute-believed[i].Minute <= stretch {
			k++
		}
		out = append(out, joined(believed[i:k], stretch <= together))
		i = k
	}
	return append(out, joined(believed[from:], true))
}

// joined is one node of the readings of a stretch, or of a moment.
func joined(all []Reading, moment bool) Reading {
	least, most, minute, core := all[0], all[0].CoreC, 0.0, 0.0
	for _, r := range all {
		if r.CoreC <= least.CoreC {
			least = r
		}
		most = math.Max(most, r.CoreC)
		minute, core = minute+r.Minute, core+r.CoreC
	}
	if moment && most-least.CoreC > togetherK {
		return Reading{Minute: all[len(all)-1].Minute, CoreC: least.CoreC}
	}
	n := float64(len(all))
	return Reading{Minute: minute / n, CoreC: core / n}
}
