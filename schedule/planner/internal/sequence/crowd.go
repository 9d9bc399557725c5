package sequence

// crowd is a family of zones and the last tasks that have no choice but to go
// there. A zone family holds all zones that some way of some of its chains
// uses, so chains of different families never meet.
type crowd struct {
	classes []bool  // by class
	chains  []int   // those whose holds cost, the dearest first
	phases  [][]int // capacities of its zones, by phase; the oven in each
	most    int     // the greatest capacity at one time
}

// crowds parts the classes by the zones their last tasks may use.
func (c *course) crowds(all []crowd) []crowd {
	kin := c.kin()
	for root := range c.cells {
		if kin.root(root) != root {
			continue
		}
		if k := c.crowd(kin, root); len(k.chains) > 1 {
			all = append(all, k)
		}
	}
	return all
}

// kinship parts cells into families: each points to another of its family, the
// root to itself.
type kinship []int

func (k kinship) root(i int) int {
	for k[i] != i {
		i = k[i]
	}
	return i
}

// kin joins all cells that the last tasks of one class may use.
func (c *course) kin() kinship {
	kin := kinship(c.store.cells.of(len(c.cells)))
	for i := range kin {
		kin[i] = i
	}
	for class := range c.ways {
		home := c.home(class)
		for i := range c.ways[class] {
			stays := c.ways[class][i].stays
			for _, cell := range stays[len(stays)-1].cells {
				kin[kin.root(cell)] = kin.root(home)
			}
		}
	}
	return kin
}

// home is one cell that the last tasks of a class may use.
func (c *course) home(class int) int {
	stays := c.ways[class][0].stays // never the way out of a partial day, which comes last
	return stays[len(stays)-1].cells[0]
}

// crowd is that of the family with a root.
func (c *course) crowd(kin kinship, root int) crowd {
	k := crowd{classes: c.store.marks.of(len(c.ways)), chains: c.store.cells.take(len(c.Chains)), phases: c.store.phases.take(max(1, len(c.fires)))}
	for range max(1, len(c.fires)) {
		k.phases = append(k.phases, c.store.cells.take(len(c.cells)))
	}
	for class := range c.ways {
		k.classes[class] = kin.root(c.home(class)) == root
	}
	for _, ch := range c.dearest {
		if k.classes[c.class[ch]] {
			k.chains = append(k.chains, ch)
		}
	}
	for i, cell := range c.cells {
		if kin.root(i) != root {
			continue
		}
		for ph := range k.phases {
			if cell.phase < 0 || cell.phase == ph {
				k.phases[ph] = append(k.phases[ph], cell.capacity)
			}
		}
	}
	for _, caps := range k.phases {
		k.most = max(k.most, sum(caps))
	}
	return k
}

// together is how many tasks can be there at one time at most.
func (k *crowd) together(areas []int) int {
	most := 1
	for _, zones := range k.phases {
		n := 0
		for _, room := range zones {
			for _, a := range areas {
				if room -= a; room < 0 {
					break
				}
				n++
			}
		}
		most = max(most, n)
	}
	return most
}
