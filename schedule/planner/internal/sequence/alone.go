package sequence

// askedOften is how often a way is asked for before it is measured: most are under
// courses that are soon dropped.
const askedOften = 2

// unreached is the start of a longest path that does not reach an instant.
const unreached = -never

// alone is the least solution of the phases and one way.
func (s *search) alone(ch *Chain, w *way, y []int) ([]int, bool) {
	if w.asked < askedOften {
		w.asked++
		y = s.bounds(append(y, s.low[:len(s.fires)]...), ch, w)
		return y, s.obey(w, y, false)
	}
	if w.reach == nil {
		s.measure(ch, w)
	}
	n := len(s.fires) + len(w.stays)
	y = append(y, w.reach[:n]...)
	for k := range s.fires {
		low := s.low[k]
		for v, far := range w.reach[(k+1)*n : (k+2)*n] {
			y[v] = max(y[v], low+far)
		}
	}
	return y, s.obey(w, y, true)
}

// bounds appends to instants of the phases those of a way that nothing has pushed yet.
func (s *search) bounds(y []int, ch *Chain, w *way) []int {
	for range w.stays {
		y = append(y, 0)
	}
	y[len(y)-1] = ch.Serve + w.gap.Min
	return y
}

// measure works out what all instants need wherever the phases lie, and how far each
// phase pushes each of them (longest paths). The greatest of it all is the least
// solution, but for the holes that instants are then in.
func (s *search) measure(ch *Chain, w *way) {
	K := len(s.fires)
	n := K + len(w.stays)
	w.reach = s.bounds(append(s.store.cells.take((K+1)*n), make([]int, K)...), ch, w)
	for range K * n {
		w.reach = append(w.reach, unreached)
	}
	for k := range K {
		w.reach[(k+1)*n+k] = 0
	}
	for row := range K + 1 {
		s.stretch(w, w.reach[row*n:(row+1)*n])
	}
}

// stretch makes instants obey the links, whatever their holes; where it never ends,
// they are never.
func (s *search) stretch(w *way, y []int) {
	for range len(y) + 1 {
		if !s.push(w, y) {
			return
		}
	}
	for v := range y {
		y[v] = never
	}
}

// push makes each link be obeyed once, and says whether anything moved.
func (s *search) push(w *way, y []int) (moved bool) {
	for i := len(w.links) - 1; i >= 0; i-- { // from the table back: as the instants push each other
		l := &w.links[i]
		if v := y[l.from] + l.by; v > y[l.to] {
			y[l.to], moved = v, true
		}
	}
	for k := len(s.fires) - 1; k > 0; k-- {
		if v := y[k] + s.change[k-1]; v > y[k-1] {
			y[k-1], moved = v, true
		}
	}
	return moved
}

// obey lifts instants until they obey all holes and links; false: one would be later
// than it may.
func (s *search) obey(w *way, y []int, settled bool) bool {
	for {
		for v := range y {
			x := s.lifted(w, v, y[v])
			if x == never {
				return false
			}
			settled = settled && x == y[v]
			y[v] = x
		}
		if settled {
			return true
		}
		settled = !s.push(w, y)
	}
}

// lifted is the least allowed value of x or more for an instant by its local
// number, never if there is none.
func (s *search) lifted(w *way, v, x int) int {
	holes, high := []Span(nil), 0
	if K := len(s.fires); v < K {
		holes, high = s.system.holes[v], s.high[v]
	} else {
		holes, high = w.stays[v-K].holes, w.stays[v-K].latest
	}
	if x = lift(holes, x); x > high {
		return never
	}
	return x
}
