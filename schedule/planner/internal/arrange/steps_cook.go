package arrange

// searedLater says whether a piece leaves the slow side before its sear.
func (p *Placed) SearedLater() bool { return p.Way.Sear && p.Stages() == 2 }
