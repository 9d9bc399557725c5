package sequence

// estimate is what is known of a class of chains that have no way yet, under
// the phases as they stand.
type estimate struct {
	cost, starts int       // least hold and mode cost; least first start
	joint        int       // least of hold, mode and burn beyond the phases as they stand
	last         applicant // its last task in a queue
	need         []int     // least begin of each phase, over all ways
	useCost      []int     // as joint, over the ways that use a phase
	useNeed      []int     // as need, likewise
	alive        []int     // ways that still work
	known        bool      // it was worked out
	key          []int     // the phase bounds it was worked out for
}

// survey brings the estimates up to date and raises the phases to what every
// way of some chain needs.
func (s *search) survey() (moved, ok bool) {
	for _, c := range s.order {
		if s.chosen[c] != nil {
			continue
		}
		e := &s.est[s.class[c]]
		if !s.fresh(e) && !s.estimate(e, c) {
			return false, false
		}
		for k, y := range e.need {
			if y > s.low[k] {
				if !s.raise(k, y) {
					return false, false
				}
				moved = true
			}
		}
		if moved {
			return true, true
		}
	}
	s.detour, moved, ok = s.wanted()
	return moved, ok
}

// fresh says that the estimate was worked out for the phases as they stand.
func (s *search) fresh(e *estimate) bool {
	if !e.known {
		return false
	}
	for k := range s.fires {
		if e.key[2*k] != s.low[k] || e.key[2*k+1] != s.high[k] {
			return false
		}
	}
	return true
}

// estimate tries every way that a chain may still go alone against the phases; false:
// none is left.
func (s *search) estimate(e *estimate, c int) bool {
	K, ch := len(s.fires), &s.Chains[c]
	e.reset(s)
	var room [16]int
	for _, i := range s.viable[s.class[c]] {
		w := &s.ways[s.class[c]][i]
		y, ok := s.alone(ch, w, room[:0])
		if !ok {
			continue
		}
		cost := w.cost + s.hold(ch, w.gap, y[len(y)-1])
		a := ch.applicant(w, y[len(y)-1])
		if len(e.alive) == 0 {
			e.last = a
		}
		if !w.out {
			e.last.join(a)
		}
		e.alive = append(e.alive, i)
		e.cost = min(e.cost, cost)
		e.starts = min(e.starts, y[K]+w.stays[0].minutes)
		if K > 0 {
			cost += s.BurnCost * (y[0] - s.low[0])
		}
		e.joint = min(e.joint, cost)
		for k := range s.fires {
			e.need[k] = min(e.need[k], y[k])
			if w.uses>>k&1 > 0 {
				e.useNeed[k] = min(e.useNeed[k], y[k])
				e.useCost[k] = min(e.useCost[k], cost)
			}
		}
	}
	if s.atRoot { // what does not work here works nowhere
		s.viable[s.class[c]] = append(s.viable[s.class[c]][:0], e.alive...)
	}
	if len(e.alive) == 0 {
		e.known = false
		return false
	}
	return true
}

// reset forgets all ways; what follows is worked out for the phases of now.
func (e *estimate) reset(s *search) {
	e.known = true
	e.key = e.key[:0]
	e.cost, e.starts, e.joint = never, never, never
	e.need, e.useCost, e.useNeed, e.alive = e.need[:0], e.useCost[:0], e.useNeed[:0], e.alive[:0]
	for k := range s.fires {
		e.key = append(e.key, s.low[k], s.high[k])
		e.need, e.useCost, e.useNeed = append(e.need, never), append(e.useCost, never), append(e.useNeed, never)
	}
}

// hold is the cost of a chain whose last task ends at x.
func (d *day) hold(c *Chain, g Gap, x int) int {
	return c.HoldCost * max(0, x-c.Serve-g.Ideal)
}
