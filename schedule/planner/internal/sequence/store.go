package sequence

// store keeps the many small lists of all courses of a day in few pieces of
// memory. What a course that is thrown out took, the next one takes again.
type store struct {
	ways    pool[way]
	lists   pool[[]way]
	stays   pool[stay]
	links   pool[link]
	cells   pool[int]
	rooms   pool[cell]
	marks   pool[bool]
	barred  pool[[]Span]
	phases  pool[[]int]
	path    []stay // for building
	found   []way
	scratch []link
	search  *search // of a course that was thrown out
}

// pools are how far a store was used.
type pools struct {
	ways   pool[way]
	lists  pool[[]way]
	stays  pool[stay]
	links  pool[link]
	cells  pool[int]
	rooms  pool[cell]
	marks  pool[bool]
	barred pool[[]Span]
	phases pool[[]int]
}

// mark is how far the store is used now.
func (s *store) mark() pools {
	return pools{s.ways, s.lists, s.stays, s.links, s.cells, s.rooms, s.marks, s.barred, s.phases}
}

// back gives back what was taken since a mark.
func (s *store) back(m *pools) {
	s.ways.back(m.ways)
	s.lists.back(m.lists)
	s.stays.back(m.stays)
	s.links.back(m.links)
	s.cells.back(m.cells)
	s.rooms.back(m.rooms)
	s.marks.back(m.marks)
	s.barred.back(m.barred)
	s.phases.back(m.phases)
}

// pool hands out short lists from longer ones.
type pool[T any] struct {
	all  []T
	used int
}

// poolSize is the length of those longer lists.
const poolSize = 256

// take returns an empty list that may grow to n.
func (p *pool[T]) take(n int) []T {
	if p.used+n > len(p.all) {
		p.all, p.used = make([]T, max(n, poolSize)), 0
	}
	v := p.all[p.used : p.used : p.used+n]
	p.used += n
	return v
}

// of returns a list of n zeros.
func (p *pool[T]) of(n int) []T {
	v := p.take(n)[:n]
	clear(v)
	return v
}

// keep returns a copy of a list.
func (p *pool[T]) keep(v []T) []T { return append(p.take(len(v)), v...) }

// back gives back what was taken since the pool was as m: of a longer list that was begun
// since then, all.
func (p *pool[T]) back(m pool[T]) {
	if len(m.all) == 0 || &p.all[0] != &m.all[0] {
		p.used = 0
		return
	}
	p.used = m.used
}

// sized is a list of n zeros, in the room of another one where that is large enough.
func sized[T any](v []T, n int) []T {
	if cap(v) < n {
		return make([]T, n)
	}
	v = v[:n]
	clear(v)
	return v
}

// emptied is a list of n empty lists, likewise; they keep their room.
func emptied[T any](v [][]T, n int) [][]T {
	if cap(v) < n {
		v = append(v[:cap(v)], make([][]T, n-cap(v))...)
	}
	v = v[:n]
	for i := range v {
		v[i] = v[i][:0]
	}
	return v
}
