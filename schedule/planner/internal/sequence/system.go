package sequence

// system is a set of links over instants y with holes and upper bounds. low is
// its least solution once settled; high is a bound that every solution obeys.
// All changes can be taken back to a mark.
type system struct {
	low, high []int
	holes     [][]Span
	out, in   [][]arc
	arcs      []link // in the order they were added
	trail     []change
	queue     []int
	dirty     []uint8
}

type arc struct{ other, by int }

// change remembers an old value of low[v] (v >= 0) or high[^v].
type change struct{ v, old int }

// mark is a state to go back to.
type mark struct{ trail, arcs int }

const (
	dirtyLow  = 1
	dirtyHigh = 2
)

// newSystem is one of so many instants, in the room of an old one.
func newSystem(old *system, n int) *system {
	if old == nil {
		old = new(system)
	}
	s := old
	s.low, s.high, s.holes = sized(s.low, n), sized(s.high, n), sized(s.holes, n)
	s.out, s.in, s.dirty = emptied(s.out, n), emptied(s.in, n), sized(s.dirty, n)
	s.arcs, s.trail, s.queue = s.arcs[:0], s.trail[:0], s.queue[:0]
	return s
}

func (s *system) mark() mark { return mark{len(s.trail), len(s.arcs)} }

// undo goes back to a mark.
func (s *system) undo(m mark) {
	s.drain()
	for i := len(s.trail) - 1; i >= m.trail; i-- {
		if c := s.trail[i]; c.v >= 0 {
			s.low[c.v] = c.old
		} else {
			s.high[^c.v] = c.old
		}
	}
	s.trail = s.trail[:m.trail]
	for i := len(s.arcs) - 1; i >= m.arcs; i-- {
		l := &s.arcs[i]
		s.out[l.from] = s.out[l.from][:len(s.out[l.from])-1]
		s.in[l.to] = s.in[l.to][:len(s.in[l.to])-1]
	}
	s.arcs = s.arcs[:m.arcs]
}

// drain forgets what was still to be passed on.
func (s *system) drain() {
	for _, v := range s.queue {
		s.dirty[v] = 0
	}
	s.queue = s.queue[:0]
}

// add adds a link and draws its first consequence; false: no solution is left.
func (s *system) add(l link) bool {
	s.arcs = append(s.arcs, l)
	s.out[l.from] = append(s.out[l.from], arc{l.to, l.by})
	s.in[l.to] = append(s.in[l.to], arc{l.from, l.by})
	return s.raise(l.to, s.low[l.from]+l.by) && s.lower(l.from, s.high[l.to]-l.by)
}

// raise makes low[v] at least y.
func (s *system) raise(v, y int) bool {
	if y <= s.low[v] {
		return true
	}
	y = lift(s.holes[v], y)
	if y > s.high[v] {
		return false
	}
	s.trail = append(s.trail, change{v, s.low[v]})
	s.low[v] = y
	s.touch(v, dirtyLow)
	return true
}

// lower makes high[v] at most y.
func (s *system) lower(v, y int) bool {
	if y >= s.high[v] {
		return true
	}
	y = sink(s.holes[v], y)
	if y < s.low[v] {
		return false
	}
	s.trail = append(s.trail, change{^v, s.high[v]})
	s.high[v] = y
	s.touch(v, dirtyHigh)
	return true
}

func (s *system) touch(v int, what uint8) {
	if s.dirty[v] == 0 {
		s.queue = append(s.queue, v)
	}
	s.dirty[v] |= what
}

// settle passes all changes on until nothing moves; false: no solution is left.
func (s *system) settle() bool {
	for i := 0; i < len(s.queue); i++ {
		v := s.queue[i]
		what := s.dirty[v]
		s.dirty[v] = 0
		if what&dirtyLow != 0 {
			y := s.low[v]
			for _, a := range s.out[v] {
				if y+a.by > s.low[a.other] && !s.raise(a.other, y+a.by) {
					s.drain()
					return false
				}
			}
		}
		if what&dirtyHigh != 0 {
			y := s.high[v]
			for _, a := range s.in[v] {
				if y-a.by < s.high[a.other] && !s.lower(a.other, y-a.by) {
					s.drain()
					return false
				}
			}
		}
	}
	s.queue = s.queue[:0]
	return true
}

// set gives v new holes and bounds on top of what it has; the holes are not
// taken back by undo, so they must be set again for each use.
func (s *system) set(v int, holes []Span, low, high int) bool {
	s.holes[v] = holes
	return s.raise(v, lift(holes, low)) && s.lower(v, sink(holes, high))
}

// lift returns the least allowed value that is y or more. Holes are merged.
func lift(holes []Span, y int) int {
	for _, h := range holes {
		if y < h.From {
			break
		}
		if y < h.To {
			return h.To
		}
	}
	return y
}

// sink returns the greatest allowed value that is y or less.
func sink(holes []Span, y int) int {
	for _, h := range holes {
		if y < h.From {
			break
		}
		if y < h.To {
			return h.From - 1
		}
	}
	return y
}
