package sequence

// Where fires may burn for nothing as long as they like, a phase in which nothing cooks can be left out without loss, unless it is a
// short cut or dodges closed hours: then each instant at which something attended happens stays where
// it was, or goes away, and no cost grows. So only plans that use each such
// phase need be looked at; the others are found under a shorter sequence.

// mayIdle says that phase k may be a short cut between its neighbours, or bring
// about a fire that may not be lit or changed to at that instant.
func (c *course) mayIdle(k int) bool {
	f := c.fires
	switch {
	case c.IdleMost > 0: // something must be on it
		return false
	case k == len(f)-1: // nothing has to be ready after it
		return false
	case k == 0: // light the second fire at the same instant
		return len(c.Fires[f[1]].LightClosed) > 0 || c.Fires[f[1]].Setup > c.Fires[f[0]].Setup+c.Change[f[0]][f[1]]
	case f[k-1] == f[k+1]: // the fire before just goes on
		return false
	}
	direct := c.Change[f[k-1]][f[k+1]] // begin the change at the same instant
	return direct < 0 || len(c.Fires[f[k+1]].ChangeClosed) > 0 || direct > c.Change[f[k-1]][f[k]]+c.Change[f[k]][f[k+1]]
}

// wanted draws what follows from phases that some chain without a way has yet
// to use: the least begin of the phase, and what that use costs beyond the
// cheapest ways. ok is false if nothing can use one.
func (s *search) wanted() (extra int, moved, ok bool) {
	for k := range s.fires {
		if s.idle[k] || s.users[k] > 0 {
			continue
		}
		cost, need := never, never
		for class := range s.sample {
			if s.waiting[class] > 0 {
				e := &s.est[class]
				cost, need = min(cost, e.useCost[k]-e.cost), min(need, e.useNeed[k])
			}
		}
		if cost >= never/2 {
			return 0, false, false
		}
		extra = max(extra, cost)
		if need > s.low[k] {
			if !s.raise(k, need) {
				return 0, false, false
			}
			moved = true
		}
	}
	return extra, moved, true
}

// idling looks for a fire that burns longer than it may before anything is on it. One of
// what it is for must then be on it sooner, each of them a way out. Only once all chains
// have their ways is it known what those are.
func (p *picker) idling() (found, forced, dead bool) {
	if p.IdleMost == 0 || p.next() >= 0 {
		return false, false, false
	}
	for k := range p.fires {
		if p.inUse(k) {
			continue
		}
		p.outs, p.score, p.best = p.outs[:0], never, -1
		p.sooner(k)
		if p.weigh() {
			return true, true, !p.force()
		}
		return true, false, false
	}
	return false, false, false
}

// inUse says whether something is on the fire of phase k soon enough.
func (p *picker) inUse(k int) bool {
	for c, w := range p.chosen {
		for j := range w.stays {
			if st := &w.stays[j]; st.first <= k && k <= st.last && !w.out && p.low[p.at[c]+j]+st.minutes+p.IdleMost >= p.low[k] {
				return true
			}
		}
	}
	return false
}

// sooner offers to put each task of phase k on soon enough.
func (p *picker) sooner(k int) {
	for c, w := range p.chosen {
		for j := range w.stays {
			if st := &w.stays[j]; st.first <= k && k <= st.last && !w.out {
				p.offer(link{k, p.at[c] + j, -st.minutes - p.IdleMost, tie{kind: bondIdle}})
			}
		}
	}
}
