package fire

// meter counts the fuel that a level burns through a phase, hour by hour of weather, in expected kilograms. Minute 0
// is the instant the fire is ready; what the warm-up took is counted before it.
type meter struct {
	startKg  float64   // burnt by minute 0
	minutes  float64   // length of the phase
	perMin   []float64 // kg a minute in each slice
	ends     []float64 // minute at which each slice ends; the last one goes on for ever
	mostHour float64   // the hungriest slice, kg an hour
}

func (g Grill) newMeter(f Fire, n Need) meter {
	m := meter{}
	for _, s := range n.Slices {
		rate := g.RateKgPerHour(f.LevelC, s.Weather)
		m.minutes += max(s.Minutes, 0)
		m.perMin = append(m.perMin, rate/60)
		m.ends = append(m.ends, m.minutes)
		m.mostHour = max(m.mostHour, rate)
	}
	if n.First && len(m.perMin) > 0 {
		m.startKg = m.perMin[0] * warmBurnMinutes
	}
	return m
}

// used is the fuel burnt by a minute of the phase, kg.
func (m meter) used(minute float64) float64 {
	kg, from := m.startKg, 0.0
	for i, end := range m.ends {
		if i == len(m.ends)-1 {
			end = max(end, minute)
		}
		if minute <= from {
			break
		}
		kg += (min(end, minute) - from) * m.perMin[i]
		from = end
	}
	return kg
}

// when is the minute at which so much fuel is burnt; 0 if it was before the fire was ready.
func (m meter) when(kg float64) float64 {
	left, from := kg-m.startKg, 0.0
	if left <= 0 {
		return 0
	}
	last := len(m.ends) - 1
	for i, end := range m.ends {
		if burnt := (end - from) * m.perMin[i]; i == last || burnt >= left {
			return from + left/m.perMin[i]
		}
		left -= (end - from) * m.perMin[i]
		from = end
	}
	return 0
}
