package sequence

// stage is what a mode of a task is after one mode of the task before, under any
// course: worked out once a day, since courses are many.
type stage struct {
	mode, minutes, area int
	holes               []Span // where its end may not lie
	oven                int    // zone of the oven, -1 for none
	zones               []int  // zone under each fire, -1 where it has none that it fits
}

// newStages lists, for each class, task and mode of the task before, what may
// follow. places says, for each class and task, under which fires it has a place;
// the last entry is the oven. used says which fires are of use to anything.
func (d *day) newStages() {
	d.used = make([]bool, len(d.Fires))
	for _, s := range d.sample {
		ch := &d.Chains[s]
		stages, places := make([][][]stage, len(ch.Tasks)), make([][]bool, len(ch.Tasks))
		before := 1
		for j := range ch.Tasks {
			t := &ch.Tasks[j]
			places[j] = make([]bool, len(d.Fires)+1)
			stages[j] = make([][]stage, before)
			for m := range t.Modes {
				d.spread(t, m, stages[j], places[j])
			}
			before = len(t.Modes)
		}
		d.stages, d.places = append(d.stages, stages), append(d.places, places)
	}
}

// spread enters a mode after each mode that it may follow.
func (d *day) spread(t *Task, m int, after [][]stage, places []bool) {
	mode := &t.Modes[m]
	s := stage{mode: m, area: mode.Area, oven: -1}
	if pl := mode.Places[0]; pl.Fire != OvenFire {
		s.zones = d.zonesOf(mode)
	} else if mode.Area <= d.Ovens[pl.Zone] {
		s.oven = pl.Zone
	} else {
		return
	}
	for before, minutes := range mode.Minutes {
		if minutes == 0 {
			continue
		}
		if s.holes == nil || s.minutes != minutes {
			s.minutes, s.holes = minutes, d.holes(t, mode, minutes)
		}
		after[before] = append(after[before], s)
		places[len(d.Fires)] = places[len(d.Fires)] || s.oven >= 0
		for f, z := range s.zones {
			places[f] = places[f] || z >= 0
			d.used[f] = d.used[f] || z >= 0
		}
	}
}

// zonesOf is the zone of a mode under each fire, -1 where it has none or does not
// fit into it.
func (d *day) zonesOf(m *Mode) []int {
	zones := d.store.cells.take(len(d.Fires))[:len(d.Fires)]
	for f := range zones {
		zones[f] = -1
	}
	for _, p := range m.Places {
		if m.Area <= d.Fires[p.Fire].Zones[p.Zone] {
			zones[p.Fire] = p.Zone
		}
	}
	return zones
}

// holes are the ends a task of so many minutes may not have.
func (d *day) holes(t *Task, m *Mode, minutes int) []Span {
	holes := appendShifted(d.store.spans.take(len(m.Closed)+2*len(d.quiet)), m.Closed, minutes)
	if t.StartHands >= 0 {
		holes = appendShifted(holes, d.quiet, minutes)
	}
	if t.EndHands >= 0 {
		holes = append(holes, d.quiet...)
	}
	return merge(holes)
}
