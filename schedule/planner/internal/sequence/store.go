package sequence

// Room is memory for problems that are solved one after another: what one of them took the
// next one takes again. The zero value is empty. It serves one caller at a time.
type Room struct{ store store }

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
	spans   pool[Span]
	path    []stay // for building
	found   []way
	scratch []link
	search  *search // of a course that was thrown out
}

// pools are how far a store was used.
type pools struct{ ways, lists, stays, links, cells, rooms, marks, barred, phases, spans place }

// mark is how far the store is used now.
func (s *store) mark() pools {
	return pools{s.ways.place, s.lists.place, s.stays.place, s.links.place, s.cells.place, s.rooms.place, s.marks.place, s.barred.place, s.phases.place, s.spans.place}
}

// back gives back what was taken since a mark; all, since none.
func (s *store) back(m *pools) {
	s.ways.place, s.lists.place, s.stays.place = m.ways, m.lists, m.stays
	s.links.place, s.cells.place, s.rooms.place = m.links, m.cells, m.rooms
	s.marks.place, s.barred.place, s.phases.place, s.spans.place = m.marks, m.barred, m.phases, m.spans
}

// pool hands out short lists from longer ones.
type pool[T any] struct {
	all [][]T
	place
}

// place is how far a pool is used: the longer list that lists are taken from, and how much
// of it was.
type place struct{ list, used int }

// poolSize is the length of the first of those longer lists; later ones are longer, up to
// poolMost.
const (
	poolSize = 256
	poolMost = 2048
)

// take returns an empty list that may grow to n.
func (p *pool[T]) take(n int) []T {
	for p.list < len(p.all) && p.used+n > len(p.all[p.list]) {
		p.place = place{list: p.list + 1}
	}
	if p.list == len(p.all) {
		p.all = append(p.all, make([]T, max(n, min(poolSize<<p.list, poolMost))))
	}
	v := p.all[p.list][p.used : p.used : p.used+n]
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
