package sequence

import "slices"

func (t *twin) quiet(u int) bool { return inside(t.p.Quiet, u) }

func inside(spans []Span, u int) bool {
	return slices.ContainsFunc(spans, func(s Span) bool { return s.From <= u && u < s.To })
}

// chain lists every placement of the tasks from j on, in time: the first task
// starts at from or later.
func (t *twin) chain(c *Chain, j, from, before int, p placement) []placement {
	if j == len(c.Tasks) {
		return []placement{p}
	}
	var all []placement
	task := &c.Tasks[j]
	for m := range task.Modes {
		mode := &task.Modes[m]
		d := mode.Minutes[before]
		if d == 0 {
			continue
		}
		lags := [2]int{0, NoLimit}
		if j > 0 {
			lags = [2]int{c.Tasks[j-1].LagMin, c.Tasks[j-1].LagMax}
		}
		for start := from - lags[0]; start-d >= 0; start-- {
			if lags[1] >= 0 && from-start > lags[1] {
				break
			}
			if q, ok := t.task(c, j, mode, start, start-d, p); ok {
				all = append(all, t.chain(c, j+1, start-d, m, q)...)
			}
		}
	}
	return all
}

// task places one task, if it may be there at all.
func (t *twin) task(c *Chain, j int, m *Mode, start, end int, p placement) (placement, bool) {
	task := &c.Tasks[j]
	switch {
	case inside(m.Closed, start), task.StartHands >= 0 && t.quiet(start), task.EndHands >= 0 && t.quiet(end):
		return p, false
	}
	if j == 0 {
		p.starts = start
	}
	p.cost += m.Cost
	if j == len(c.Tasks)-1 {
		gap := end - c.Serve
		if gap < m.Gap.Min || m.Gap.Max >= 0 && gap > m.Gap.Max {
			return p, false
		}
		p.cost += c.HoldCost * max(0, gap-m.Gap.Ideal)
	}
	p.busy = slices.Clone(p.busy)
	for i := range task.StartHands {
		p.busy = append(p.busy, start-1-i)
	}
	for i := range task.EndHands {
		p.busy = append(p.busy, end-1-i)
	}
	p.room = slices.Clone(p.room)
	return t.stand(m, start, end, p)
}

// stand works out which zones a task takes, minute by minute.
func (t *twin) stand(m *Mode, start, end int, p placement) (placement, bool) {
	if m.Places[0].Fire == OvenFire {
		for u := end; u < start; u++ {
			p.room = append(p.room, use{[3]int{-1, m.Places[0].Zone, u}, m.Area})
		}
		return p, true
	}
	first, last := t.phaseOf(start-1), t.phaseOf(end)
	if first < 0 || last < 0 {
		return p, false
	}
	p.on = slices.Clone(p.on)
	for k := first; k <= last; k++ {
		p.on = append(p.on, [2]int{k, start})
		z := slices.IndexFunc(m.Places, func(pl Place) bool { return pl.Fire == t.fires[k] })
		if z < 0 {
			return p, false
		}
		z = m.Places[z].Zone
		none := true
		for u := end; u < start; u++ {
			if slices.Contains(t.owner[u], k) {
				p.room = append(p.room, use{[3]int{k, z, u}, m.Area})
				none = false
			}
		}
		if none { // a phase without a minute: its riders meet all the same
			p.room = append(p.room, use{[3]int{k, z, -1}, m.Area})
		}
	}
	return p, true
}

// phaseOf is the phase that burns in minute m (not a change), -1 for none.
func (t *twin) phaseOf(m int) int {
	for k := range t.begin {
		if t.end(k) <= m && m < t.begin[k] {
			return k
		}
	}
	return -1
}

func (t *twin) capacity(at [3]int) int {
	if at[0] < 0 {
		return t.p.Ovens[at[1]]
	}
	return t.p.Fires[t.fires[at[0]]].Zones[at[1]]
}
