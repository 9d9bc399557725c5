package sequence

// near restricts a search to plans that resemble a given one. A nil near
// allows everything.
type near struct {
	ways  []*way // by chain: what is fixed; nil: free
	fixed []bool // by instant: keeps its place among the fixed
	y     []int  // where the given plan has it
}

// allows says whether a link may be added: one between two fixed instants must
// hold in the given plan already.
func (n *near) allows(l link) bool {
	return n == nil || !n.fixed[l.from] || !n.fixed[l.to] || n.y[l.to] >= n.y[l.from]+l.by
}
