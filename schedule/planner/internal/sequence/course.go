package sequence

// course is one sequence of fires with all the ways of all classes under it.
type course struct {
	*day
	fires  []int
	change []int // change[k]: minutes between phases k and k+1
	cost   int   // of the changes
	cells  []cell
	base   []int    // first cell of each phase
	barred [][]Span // where the begin of each phase may not lie
	idle   []bool   // phases that may be of use without any task
	ways   [][]way  // by class
}

// newCourse lists all ways; nil if some chain has none, or a phase no use.
func newCourse(d *day, fires []int) *course {
	c := &course{day: d, fires: fires, cost: d.changes(fires)}
	if !c.serves() {
		return nil
	}
	n := len(fires)
	c.change, c.base, c.barred = d.store.cells.take(n), d.store.cells.take(n), d.store.barred.take(n)
	zones := len(d.Ovens)
	for _, f := range fires {
		zones += len(d.Fires[f].Zones)
	}
	c.cells = d.store.rooms.take(zones)
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
		c.barred = append(c.barred, c.holesAt(fires, k))
	}
	if !c.newWays() {
		return nil
	}
	return c
}

// serves says whether each task has a place under some of the fires, or in the
// oven, and each fire a task or another use. Most sequences fail here already.
func (c *course) serves() bool {
	for class := range c.sample {
		for j := range c.places[class] {
			if p := c.places[class][j]; !p[len(c.Fires)] && !c.any(p) {
				return false
			}
		}
	}
	c.idle = c.store.marks.of(len(c.fires))
	for k, f := range c.fires {
		c.idle[k] = c.mayIdle(k)
		if !c.idle[k] && !c.used[f] {
			return false
		}
	}
	return true
}

// any says that one of the fires is marked.
func (c *course) any(marked []bool) bool {
	for _, f := range c.fires {
		if marked[f] {
			return true
		}
	}
	return false
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
