package belief

import "math"

// Rebiased is what is left of a piece if clock A were corrected by other logarithms.
func (b *Belief) Rebiased(bare, wrapped float64) Rest {
	x := *b
	for _, c := range []*clock{&x.clockA, &x.clockA0} {
		if b.Journey.Wrapped <= c.minute {
			c.bias = wrapped
			continue
		}
		through := b.through(b.Nodes[len(b.Nodes)-1].CoreC)
		if built := math.Expm1(biasBare * through); built != 0 { // the bare share of what is left
			c.bias = math.Log1p(math.Expm1(c.bias) / built * math.Expm1(bare*through))
		}
	}
	return x.product(b.zs, b.weight)
}

// Biases are those that are built in.
func Biases() (bare, wrapped float64) { return biasBare, biasWrapped }
