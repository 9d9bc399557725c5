package sequence

// A way is how a chain goes through the day under one sequence of fires: the
// mode and the phases of each task. With it chosen, all the chain asks for is a
// list of links.
type way struct {
	stays []stay
	uses  uint   // a bit for each phase
	links []link // local numbers: phase begins 0..K-1, then the tasks
	cost  int    // of the modes
	gap   Gap
}

// A stay is one task in one mode, from phase first to phase last (-1: oven).
type stay struct {
	mode, minutes, area int
	first, last         int
	cells               []int  // what it takes room in
	holes               []Span // where its end may not lie
	latest              int    // its end lies at this or a smaller u
}

// A link says y[to] >= y[from] + by.
type link struct {
	from, to, by int
	tie          tie
}

// tie says where a link comes from.
type tie struct {
	kind bond
	cell int // of a bondZone
}

type bond int8

const (
	bondNext   bond = iota // least lag: from the next task
	bondBefore             // greatest lag: from the task before
	bondOff                // off before the fire changes: from the next phase
	bondNeed               // the fire burns for a task: from the task
	bondPhase              // one fire after another: from the next phase
	bondZone               // room
	bondHands              // hands
	bondOrder              // identical batches
)

// A cell is room that tasks share: a zone while one phase burns, or a zone of
// the oven all day (phase -1).
type cell struct{ phase, zone, capacity int }

// course is one sequence of fires with all the ways of all classes under it.
type course struct {
	*day
	fires  []int
	change []int // change[k]: minutes between phases k and k+1
	cells  []cell
	base   []int    // first cell of each phase
	barred [][]Span // where the begin of each phase may not lie
	idle   []bool   // phases that may be of use without any task
	ways   [][]way  // by class
}

// newCourse lists all ways; nil if some chain has none.
func newCourse(d *day, fires []int) *course {
	c := &course{day: d, fires: fires}
	for z, v := range d.Ovens {
		c.cells = append(c.cells, cell{-1, z, v})
	}
	for k, f := range fires {
		c.base = append(c.base, len(c.cells))
		for z, v := range d.Fires[f].Zones {
			c.cells = append(c.cells, cell{k, z, v})
		}
		if k > 0 {
			c.change = append(c.change, d.Change[fires[k-1]][f])
		}
	}
	for k := range fires {
		c.idle = append(c.idle, c.mayIdle(k))
		c.barred = append(c.barred, c.phaseHoles(k))
	}
	c.ways = make([][]way, len(d.sample))
	for k, s := range d.sample {
		c.extend(k, &d.Chains[s], nil)
		if len(c.ways[k]) == 0 {
			return nil
		}
	}
	return c
}

// extend lists the ways that begin with the given stays.
func (c *course) extend(class int, ch *Chain, stays []stay) {
	j := len(stays)
	if j == len(ch.Tasks) {
		c.ways[class] = append(c.ways[class], c.finish(ch, stays))
		return
	}
	before, from := 0, 0
	if j > 0 {
		before = stays[j-1].mode
	}
	for i := range stays {
		from = max(from, stays[i].last)
	}
	for m := range ch.Tasks[j].Modes {
		mode := &ch.Tasks[j].Modes[m]
		if mode.Minutes[before] == 0 {
			continue
		}
		s := stay{mode: m, minutes: mode.Minutes[before], area: mode.Area, first: -1, last: -1}
		s.latest = c.Earliest - s.minutes
		if mode.Places[0].Fire == OvenFire {
			if z := mode.Places[0].Zone; mode.Area <= c.cells[z].capacity {
				s.cells = []int{z}
				c.extend(class, ch, append(stays[:j:j], s))
			}
			continue
		}
		for a := from; a < len(c.fires); a++ {
			var cells []int
			for b := a; b < len(c.fires); b++ {
				z := zoneOn(mode, c.fires[b])
				if z < 0 || mode.Area > c.cells[c.base[b]+z].capacity {
					break
				}
				cells = append(cells, c.base[b]+z)
				s.first, s.last, s.cells = a, b, cells[:len(cells):len(cells)]
				c.extend(class, ch, append(stays[:j:j], s))
			}
		}
	}
}

// zoneOn is the zone of a mode under a fire, -1 for none.
func zoneOn(m *Mode, fire int) int {
	for _, p := range m.Places {
		if p.Fire == fire {
			return p.Zone
		}
	}
	return -1
}

// finish works out the links of a complete way.
func (c *course) finish(ch *Chain, stays []stay) way {
	K, last := len(c.fires), len(stays)-1
	w := way{stays: append([]stay(nil), stays...)}
	for j := range w.stays {
		s := &w.stays[j]
		t := &ch.Tasks[j]
		m := &t.Modes[s.mode]
		w.cost += m.Cost
		s.holes = c.holes(t, m, s.minutes)
		x := K + j
		if j == last {
			w.gap = m.Gap
			if m.Gap.Max >= 0 && !c.soft {
				s.latest = min(s.latest, ch.Serve+m.Gap.Max)
			}
		} else {
			d := w.stays[j+1].minutes
			w.links = append(w.links, link{x + 1, x, d + t.LagMin, tie{kind: bondNext}})
			if t.LagMax >= 0 {
				w.links = append(w.links, link{x, x + 1, -d - t.LagMax, tie{kind: bondBefore}})
			}
		}
		if s.first >= 0 {
			w.links = append(w.links, c.burning(s, x)...)
			w.uses |= 1<<(s.last+1) - 1<<s.first
		}
	}
	return w
}

// burning returns the links between the end x of a stay and its phases.
func (c *course) burning(s *stay, x int) []link {
	links := []link{{x, s.first, s.minutes, tie{kind: bondNeed}}}
	if s.last+1 < len(c.fires) {
		links = append(links, link{s.last + 1, x, c.change[s.last], tie{kind: bondOff}})
	}
	if s.first < s.last { // strictly inside both, so that nothing rides by touching
		links = append(links,
			link{s.first + 1, x, c.change[s.first] + 1 - s.minutes, tie{kind: bondOff}},
			link{x, s.last, 1, tie{kind: bondNeed}})
	}
	return links
}

// holes are the ends a task of d minutes may not have.
func (c *course) holes(t *Task, m *Mode, d int) []Span {
	holes := shifted(m.Closed, d)
	if t.StartHands >= 0 {
		holes = append(holes, shifted(c.quiet, d)...)
	}
	if t.EndHands >= 0 {
		holes = append(holes, c.quiet...)
	}
	return merge(holes)
}

// phaseHoles are the instants at which phase k may not begin: for the first the
// light, for the others the end of the one before, would be in quiet or closed
// hours.
func (c *course) phaseHoles(k int) []Span {
	closed := c.Fires[c.fires[k]].LightClosed
	if k > 0 {
		closed = c.Fires[c.fires[k]].ChangeClosed
	}
	hands, before := c.kindling(k)
	holes := shifted(closed, before)
	if hands >= 0 {
		holes = append(holes, shifted(c.quiet, before)...)
	}
	return merge(holes)
}

// kindling is the hands that phase k takes to bring about, and the minutes from
// the light or the change until it begins.
func (c *course) kindling(k int) (hands, before int) {
	if k == 0 {
		return c.LightHands, c.setup()
	}
	return c.ChangeHands, c.change[k-1]
}

// setup is the minutes from light until the first phase, 0 without any fire.
func (c *course) setup() int {
	if len(c.fires) == 0 {
		return 0
	}
	return c.Fires[c.fires[0]].Setup
}
