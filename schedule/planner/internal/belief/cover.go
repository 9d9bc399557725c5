package belief

// Cover lets a belief answer for what else may be: other holds with a chance, and edge is
// the coldest that a reading could have been which is not taken for the core. The middle
// stays; the late edge covers them all, and the chance is no better than the mean. Nil is
// none.
func (b *Belief) Cover(other *Belief, chance float64, edge *Belief) {
	b.Worse, b.lateLeast = b.Rest, 0
	cover := func(x *Belief, with Rest) {
		b.Worse = b.Worse.NoSooner(with)
		b.lateLeast = max(b.lateLeast, x.Rest.Quantile(0.9))
	}
	if other != nil {
		cover(other, other.Rest.Mixed(b.Rest, chance))
	}
	if edge != nil {
		cover(edge, edge.Rest)
	}
	b.covered = other != nil || edge != nil
}

// MaySoon says that the piece may be done as it is, with a chance: what it was read at lies where
// tenderness decides. It changes nothing of a piece that is done.
func (b *Belief) MaySoon(chance float64) {
	if b.Rest == nil || chance <= 0 {
		return
	}
	b.Rest = Rest(nil).Mixed(b.Rest, chance)
}

// Open says that something else may be, so that its chance is not that of its window.
func (b *Belief) Open() bool { return b.covered || b.Creep.On() }
