package sequence

import "reflect"

// groups requires that the chains of one group are identical.
func (c *checker) groups(p *Problem) {
	first := make(map[int]int) // looked up only, never ranged over
	for i := range p.Chains {
		g := p.Chains[i].Group
		if g <= 0 {
			continue
		}
		k, ok := first[g]
		if !ok {
			first[g] = i
			continue
		}
		c.require(reflect.DeepEqual(p.Chains[k], p.Chains[i]), g, "identical chains in one group", "chains[%d].group", i)
	}
}
