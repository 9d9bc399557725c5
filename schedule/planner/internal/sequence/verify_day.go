package sequence

// in says whether an instant lies in one of the spans.
func in(spans []Span, u int) bool {
	for _, s := range spans {
		if s.From <= u && u < s.To {
			return true
		}
	}
	return false
}

// lights checks the light and the changes against quiet and closed hours and the
// earliest instant.
func (v verifier) lights() error {
	for k, ph := range v.s.Phases {
		fire := &v.p.Fires[ph.Fire]
		if k == 0 {
			switch u := v.s.Light; {
			case u > v.p.Earliest:
				return broken(BrokenEarliest, "light at %d, earliest %d", u, v.p.Earliest)
			case v.p.LightHands >= 0 && in(v.p.Quiet, u):
				return broken(BrokenQuiet, "light at %d", u)
			case in(fire.LightClosed, u):
				return broken(BrokenClosed, "light of fire %d at %d", ph.Fire, u)
			}
			continue
		}
		switch u := v.s.Phases[k-1].End; {
		case v.p.ChangeHands >= 0 && in(v.p.Quiet, u):
			return broken(BrokenQuiet, "phase %d ends at %d", k-1, u)
		case in(fire.ChangeClosed, u):
			return broken(BrokenClosed, "change to fire %d at %d", ph.Fire, u)
		}
	}
	return nil
}

// idle checks that no fire burns for nothing for longer than it may.
func (v verifier) idle() error {
	for k, ph := range v.s.Phases {
		soonest := -1
		_ = v.each(func(_, _ int, _ *Task, _ *Mode, at Placed) error {
			if at.FirstPhase <= k && k <= at.LastPhase {
				soonest = max(soonest, at.Start)
			}
			return nil
		})
		if v.p.IdleMost > 0 && (soonest < 0 || ph.Begin-soonest > v.p.IdleMost) {
			return broken(BrokenIdle, "phase %d begins at %d, the first on it at %d, at most %d minutes later", k, ph.Begin, soonest, v.p.IdleMost)
		}
	}
	return nil
}

// instants checks quiet and closed hours and the earliest instant of each task.
func (v verifier) instants() error {
	return v.each(func(c, j int, t *Task, m *Mode, at Placed) error {
		switch {
		case at.Start > v.p.Earliest:
			return broken(BrokenEarliest, "chain %d task %d starts at %d, earliest %d", c, j, at.Start, v.p.Earliest)
		case t.StartHands >= 0 && in(v.p.Quiet, at.Start):
			return broken(BrokenQuiet, "chain %d task %d starts at %d", c, j, at.Start)
		case t.EndHands >= 0 && in(v.p.Quiet, at.End):
			return broken(BrokenQuiet, "chain %d task %d ends at %d", c, j, at.End)
		case in(m.Closed, at.Start):
			return broken(BrokenClosed, "chain %d task %d starts at %d", c, j, at.Start)
		}
		return nil
	})
}

// hands checks that nobody is needed twice at a time.
func (v verifier) hands() error {
	type stretch struct{ from, to, chain, task int }
	var all []stretch
	use := func(u, minutes, c, j int) {
		if minutes > 0 {
			all = append(all, stretch{u - minutes, u, c, j})
		}
	}
	for k, ph := range v.s.Phases {
		if k == 0 {
			use(v.s.Light, v.p.LightHands, -1, k)
		}
		if k+1 < len(v.s.Phases) {
			use(ph.End, v.p.ChangeHands, -1, k)
		}
	}
	_ = v.each(func(c, j int, t *Task, _ *Mode, at Placed) error {
		use(at.Start, t.StartHands, c, j)
		use(at.End, t.EndHands, c, j)
		return nil
	})
	for i, a := range all {
		for _, b := range all[i+1:] {
			if a.from < b.to && b.from < a.to {
				return broken(BrokenHands, "chain %d task %d and chain %d task %d both need hands from %d", a.chain, a.task, b.chain, b.task, min(a.to, b.to))
			}
		}
	}
	return nil
}

// room checks each zone at each instant at which something may begin to be
// there: the late end of a task or of the zone's own window.
func (v verifier) room() error {
	for z, capacity := range v.p.Ovens {
		if err := v.zoneRoom(-1, z, capacity, 0, limit); err != nil {
			return err
		}
	}
	for k, ph := range v.s.Phases {
		from, to := 0, limit // with the changes beside the phase
		if k+1 < len(v.s.Phases) {
			from = v.s.Phases[k+1].Begin
		}
		if k > 0 {
			to = v.s.Phases[k-1].End
		}
		for z, capacity := range v.p.Fires[ph.Fire].Zones {
			if err := v.zoneRoom(k, z, capacity, from, to); err != nil {
				return err
			}
		}
	}
	return nil
}

func (v verifier) zoneRoom(k, z, capacity, from, to int) error {
	here := func(m *Mode, at Placed) bool {
		if k < 0 {
			return m.Places[0] == Place{OvenFire, z}
		}
		return at.FirstPhase <= k && k <= at.LastPhase && v.zone(m, k) == z
	}
	return v.each(func(c, j int, _ *Task, m *Mode, at Placed) error {
		if !here(m, at) {
			return nil
		}
		u, load := max(at.End, from), 0
		if u >= max(to, from+1) || u >= at.Start {
			return nil
		}
		_ = v.each(func(_, _ int, _ *Task, m *Mode, at Placed) error {
			// A phase and changes of no length at all: who rides through meets in it.
			rides := from < to || at.End < u
			if here(m, at) && rides && at.End <= u && u < at.Start {
				load += m.Area
			}
			return nil
		})
		if load > capacity {
			return broken(BrokenRoom, "phase %d zone %d at %d: %d cm2 of %d", k, z, u, load, capacity)
		}
		return nil
	})
}

func (v verifier) cost() error {
	var want Parts
	if n := len(v.s.Phases); n > 0 {
		want.Change = v.p.FurtherCost * max(0, n-1-v.p.FewChanges)
		for k := range n - 1 {
			each := v.p.ChangeCost
			if v.p.ChangeCosts != nil {
				each = v.p.ChangeCosts[v.s.Phases[k].Fire][v.s.Phases[k+1].Fire]
			}
			want.Change += each
		}
		want.Burn = v.p.BurnCost * v.s.Light
	}
	_ = v.each(func(c, j int, _ *Task, m *Mode, at Placed) error {
		want.Mode += m.Cost
		if j == len(v.s.Chains[c])-1 {
			want.Hold += v.p.Chains[c].HoldCost * max(0, at.End-v.p.Chains[c].Serve-m.Gap.Ideal)
		}
		return nil
	})
	switch {
	case v.s.Parts != want:
		return broken(BrokenCost, "parts %+v, want %+v", v.s.Parts, want)
	case v.s.Cost != want.Hold+want.Mode+want.Change+want.Burn:
		return broken(BrokenCost, "%d, but the parts are %+v", v.s.Cost, want)
	case v.s.Bound > v.s.Cost || v.s.Status == Optimal && v.s.Bound != v.s.Cost:
		return broken(BrokenCost, "%s at %d with bound %d", v.s.Status, v.s.Cost, v.s.Bound)
	}
	return nil
}
