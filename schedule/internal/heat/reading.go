package heat

// ElapsedS is the time since Start in s.
func (s *Sim) ElapsedS() float64 { return s.elapsed }

// CoreC is the temperature of the centre in degC.
func (s *Sim) CoreC() float64 { return s.coreOf(&s.state) }

// coreOf extends the two innermost cells to the centre by a parabola.
func (s *Sim) coreOf(st *state) float64 {
	return st.tempC[0] - (st.tempC[1]-st.tempC[0])/8
}

// SurfaceC is the temperature of the very surface in degC.
func (s *Sim) SurfaceC() float64 { return s.state.surfaceC }

// OuterC is the temperature in degC of the outermost cell, one sixteenth of the
// radius thick.
func (s *Sim) OuterC() float64 { return s.state.tempC[s.cells-1] }

// ColdestC is the temperature in degC of the coldest cell, inside or out.
func (s *Sim) ColdestC() float64 {
	least := s.state.tempC[0]
	for _, c := range s.state.tempC[1:s.cells] {
		least = min(least, c)
	}
	return least
}

// Shift makes all of the body warmer by a difference in K, for a reading that says so.
func (s *Sim) Shift(byK float64) {
	for i := range s.cells {
		s.state.tempC[i] += byK
	}
	s.state.surfaceC += byK
	s.Change(s.in)
}

// MeanC is the mean temperature by volume in degC.
func (s *Sim) MeanC() float64 {
	var sum, volume float64
	for i := range s.cells {
		sum += s.volume[i] * s.state.tempC[i]
		volume += s.volume[i]
	}
	return sum / volume
}

// AsymptoteC is the temperature in degC at which a surface gone dry takes up no
// more heat: the core comes close to it and no further.
func (s *Sim) AsymptoteC() float64 {
	dry := s.face.cover * s.wetFactor * dryWetness
	low, high := s.face.limits()
	for range 60 {
		mid := (low + high) / 2
		if q, _ := s.face.flux(mid, dry); q > 0 {
			low = mid
		} else {
			high = mid
		}
		if high-low < 1e-3 {
			break
		}
	}
	return (low + high) / 2
}

// at reads a profile at a depth from the centre, as a share of the radius.
func (s *Sim) at(profile *[maxCells]float64, depth float64) float64 {
	x := depth*float64(s.cells) - 0.5
	i := int(min(max(x, 0), float64(s.cells-2)))
	share := min(max(x-float64(i), 0), 1)
	return profile[i] + share*(profile[i+1]-profile[i])
}
