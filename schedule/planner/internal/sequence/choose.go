package sequence

import "slices"

// guest is a task that takes room in a cell.
type guest struct{ chain, v, minutes, area int }

// hand is a stretch of hands: it lasts from instant y[v]+off on.
type hand struct{ chain, v, off, minutes int }

// keep gives the chains that near fixes their ways.
func (s *search) keep() bool {
	if s.near == nil {
		return true
	}
	for c, w := range s.near.ways {
		if w == nil {
			continue
		}
		s.kept = slices.Insert(s.kept, 0, c) // the last one is taken back first
		if !s.choose(c, w) {
			return false
		}
	}
	return true
}

// choose gives a chain its way.
func (s *search) choose(c int, w *way) bool {
	K, at, ch := len(s.fires), s.at[c], &s.Chains[c]
	s.chosen[c] = w
	s.enlist(c, w, 1)
	ok := true
	for j := range w.stays {
		st := &w.stays[j]
		v, low := at+j, 0
		if j == len(w.stays)-1 {
			low = ch.Serve + w.gap.Min
		}
		for _, cell := range st.cells {
			if st.area > 0 {
				s.guests[cell] = append(s.guests[cell], guest{c, v, st.minutes, st.area})
			}
		}
		t := &ch.Tasks[j]
		if t.StartHands > 0 && !w.out {
			s.hands = append(s.hands, hand{c, v, st.minutes, t.StartHands})
		}
		if t.EndHands > 0 && !w.out {
			s.hands = append(s.hands, hand{c, v, 0, t.EndHands})
		}
		ok = ok && s.set(v, st.holes, low, st.latest)
	}
	for i := range w.links {
		if !ok {
			return false
		}
		l := w.links[i]
		if l.from >= K {
			l.from += at - K
		}
		if l.to >= K {
			l.to += at - K
		}
		ok = s.add(l)
	}
	return ok && s.ranks(c)
}

// enlist counts (with -1: discounts) a chain that has its way.
func (s *search) enlist(c int, w *way, n int) {
	s.waiting[s.class[c]] -= n
	for k := range s.users {
		s.users[k] += n * int(w.uses>>k&1)
	}
}

// unchoose takes back what choose appended.
func (s *search) unchoose(c int) {
	w := s.chosen[c]
	s.chosen[c] = nil
	s.enlist(c, w, -1)
	for j := range w.stays {
		if w.stays[j].area > 0 {
			for _, cell := range w.stays[j].cells {
				s.guests[cell] = s.guests[cell][:len(s.guests[cell])-1]
			}
		}
		t := &s.Chains[c].Tasks[j]
		if t.StartHands > 0 && !w.out {
			s.hands = s.hands[:len(s.hands)-1]
		}
		if t.EndHands > 0 && !w.out {
			s.hands = s.hands[:len(s.hands)-1]
		}
	}
}

// ranks keeps alike chains in order: an earlier one ends no later.
func (s *search) ranks(c int) bool {
	if s.near != nil || s.partial { // record puts them in order afterwards
		return true
	}
	end := func(c int) int { return s.at[c] + len(s.Chains[c].Tasks) - 1 }
	for o := c - 1; o >= 0; o-- {
		if s.class[o] == s.class[c] && s.chosen[o] != nil {
			if !s.add(link{end(c), end(o), 0, tie{kind: bondOrder}}) {
				return false
			}
			break
		}
	}
	for o := c + 1; o < len(s.Chains); o++ {
		if s.class[o] == s.class[c] && s.chosen[o] != nil {
			return s.add(link{end(o), end(c), 0, tie{kind: bondOrder}})
		}
	}
	return true
}
