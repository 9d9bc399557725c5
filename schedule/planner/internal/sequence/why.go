package sequence

// reasons says what is tight at each start and at the light. It finds the least
// solution once more and keeps, for each instant, what raised it last; whatever
// that is, it is tight, and following it leads to a serving instant or a hole
// and never round in a circle.
func (p *plan) reasons() (why [][]Reason, light Reason) {
	y, last := p.retrace()
	for c, w := range p.ways {
		var r []Reason
		for j := range w.stays {
			r = append(r, p.reason(y, last, p.at[c]+j))
		}
		why = append(why, r)
	}
	light = Reason{LastServing, -1, -1, -1, -1}
	if len(p.fires) > 0 {
		light = p.reason(y, last, 0)
	}
	return why, light
}

// cause of the value of an instant: the arc that raised it, or -1 for its own
// base; lifted if a hole moved it on.
type cause struct {
	arc    int
	lifted bool
}

// retrace finds the least solution again, noting causes.
func (p *plan) retrace() ([]int, []cause) {
	y, last := make([]int, len(p.y)), make([]cause, len(p.y))
	holes := make([][]Span, len(p.y))
	for k := range p.fires {
		holes[k] = p.barred[k]
	}
	for c, w := range p.ways {
		for j := range w.stays {
			holes[p.at[c]+j] = w.stays[j].holes
		}
		y[p.at[c]+len(w.stays)-1] = p.Chains[c].Serve + w.gap.Min
	}
	for v := range y {
		base := y[v]
		y[v] = lift(holes[v], base)
		last[v] = cause{-1, y[v] > base}
	}
	for moved := true; moved; {
		moved = false
		for i, a := range p.arcs {
			if v := y[a.from] + a.by; v > y[a.to] {
				y[a.to] = lift(holes[a.to], v)
				last[a.to] = cause{i, y[a.to] > v}
				moved = true
			}
		}
	}
	return y, last
}

// reason puts the cause of instant v into words.
func (p *plan) reason(y []int, last []cause, v int) Reason {
	r := Reason{ServeRest, -1, -1, -1, -1}
	c := last[v]
	if c.lifted {
		r.Kind = p.holeKind(y[v], v)
		if c.arc >= 0 {
			r.Chain, r.Task = p.owner(p.arcs[c.arc].from)
		}
		return r
	}
	if c.arc < 0 {
		if v < len(p.fires) {
			r.Kind = LastServing
		}
		return r
	}
	a := p.arcs[c.arc]
	r.Chain, r.Task = p.owner(a.from)
	switch a.tie.kind {
	case bondNext:
		r.Kind = NextTask
	case bondBefore:
		r.Kind = TaskBefore
	case bondOrder:
		r.Kind = BatchOrder
	case bondZone:
		r.Kind = ZoneFull
		r.Phase, r.Zone = p.cells[a.tie.cell].phase, p.cells[a.tie.cell].zone
	case bondHands:
		r.Kind = HandsBusy
		if a.from < len(p.fires) {
			r.Phase = a.from - 1
		}
	case bondIdle:
		r.Kind, r.Phase = FireIdle, a.from
	case bondNeed:
		r.Kind, r.Phase = FireNotReady, a.to
	default: // bondOff, bondPhase: the next phase is needed by somebody
		r.Kind, r.Phase = FireNotReady, a.from
		r.Chain, r.Task = p.needer(last, a.from)
	}
	return r
}

// needer follows a phase begin to the task that needs it; -1 if it is a later
// phase or a hole that does.
func (p *plan) needer(last []cause, v int) (chain, task int) {
	if c := last[v]; c.arc >= 0 {
		return p.owner(p.arcs[c.arc].from)
	}
	return -1, -1
}

// holeKind tells quiet hours from closed ones: the instant just after the hole
// (in time) that the value was lifted over.
func (p *plan) holeKind(y, v int) Kind {
	quiet := func(u int) bool { return lift(p.quiet, u) != u }
	if v < len(p.fires) {
		if hands, before := p.kindling(v); hands >= 0 && quiet(y-1+before) {
			return QuietHours
		}
		return ClosedHours
	}
	c, j := p.owner(v)
	st, t := &p.ways[c].stays[j], &p.Chains[c].Tasks[j]
	if t.StartHands >= 0 && quiet(y-1+st.minutes) || t.EndHands >= 0 && quiet(y-1) {
		return QuietHours
	}
	return ClosedHours
}

// owner is the chain and task of an instant, -1 for a phase.
func (p *plan) owner(v int) (chain, task int) {
	if v < len(p.fires) {
		return -1, -1
	}
	c := len(p.at) - 1
	for p.at[c] > v {
		c--
	}
	return c, v - p.at[c]
}
