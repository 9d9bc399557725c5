package belief

// Rebiased is what is left of a piece if clock A were corrected by other logarithms.
func (b *Belief) Rebiased(bare, wrapped float64) Rest {
	x := *b
	for _, c := range []*clock{&x.clockA, &x.clockA0} {
		if b.Journey.Wrapped <= c.minute {
			c.bias = wrapped
		} else {
			c.bias = bare * b.through(b.Nodes[len(b.Nodes)-1].CoreC)
		}
	}
	return x.product(b.zs, b.weight)
}

// Biases are those that are built in.
func Biases() (bare, wrapped float64) { return biasBare, biasWrapped }
