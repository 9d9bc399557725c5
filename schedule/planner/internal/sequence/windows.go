package sequence

// window is what is known of a task at some fire, whatever the sequence: its least and
// greatest end, its least start, its greatest minutes, the least cost of its mode, and up to
// which end nothing waits at a price. Where it has no place its least end is never.
type window struct{ least, most, start, longest, cost, free int }

var nowhere = window{least: never, start: never, cost: never}

// widen takes one more mode in.
func (w *window) widen(o window) {
	w.least, w.most = min(w.least, o.least), max(w.most, o.most)
	w.start, w.longest = min(w.start, o.start), max(w.longest, o.longest)
	w.cost, w.free = min(w.cost, o.cost), max(w.free, o.free)
}

// newWindows works the windows out: by class, task and fire, the oven last. What a task
// needs at the least follows from the one after it, and then from the one before it, which
// it may not be too far behind.
func (d *day) newWindows() {
	for k, c := range d.sample {
		ch := &d.Chains[c]
		all := make([][]window, len(ch.Tasks))
		for j := len(ch.Tasks) - 1; j >= 0; j-- {
			all[j] = d.windowsOf(ch, k, j, all, 0)
		}
		for j := 1; j < len(ch.Tasks); j++ {
			if lag := ch.Tasks[j-1].LagMax; lag >= 0 {
				all[j] = d.windowsOf(ch, k, j, all, leastEnd(all[j-1])-lag)
			}
		}
		d.windows = append(d.windows, all)
	}
}

// leastEnd is the least end of a task under any fire.
func leastEnd(all []window) int {
	least := never
	for _, w := range all {
		least = min(least, w.least)
	}
	return least
}

// windowsOf are those of one task, which starts at start or sooner; those of the task after
// it are known.
func (d *day) windowsOf(ch *Chain, class, j int, all [][]window, start int) []window {
	last := j == len(ch.Tasks)-1
	out := make([]window, len(d.Fires)+1)
	for f := range out {
		out[f] = nowhere
	}
	least, most := never, never
	if !last {
		least, most = ch.Tasks[j].endsBefore(all[j+1])
	}
	for _, list := range d.stages[class][j] {
		for i := range list {
			st := &list[i]
			m := &ch.Tasks[j].Modes[st.mode]
			w := window{least: least, most: most, longest: st.minutes, cost: m.Cost, free: never}
			if last {
				w.least, w.most, w.free = ch.Serve+m.Gap.Min, never, ch.Serve+m.Gap.Ideal
				if m.Gap.Max >= 0 {
					w.most = ch.Serve + m.Gap.Max
				}
			}
			w.least = lift(st.holes, max(w.least, start-st.minutes))
			w.start = w.least + st.minutes
			if w.least > w.most || w.start > d.Earliest {
				continue
			}
			if st.oven >= 0 {
				out[len(d.Fires)].widen(w)
			}
			for f, z := range st.zones {
				if z >= 0 {
					out[f].widen(w)
				}
			}
		}
	}
	return out
}

// endsBefore are the least and greatest end of a task whose next one has these windows.
func (t *Task) endsBefore(next []window) (least, most int) {
	least, most = never, 0
	for _, w := range next {
		if w.least == never {
			continue
		}
		least = min(least, w.start+t.LagMin)
		if w.most == never || t.LagMax < 0 {
			most = never
		} else {
			most = max(most, w.most+w.longest+t.LagMax)
		}
	}
	return least, min(most, never)
}

// holesOf are the instants at which a fire may not begin to burn, so many minutes after
// its light or after the end of the fire before it.
func (d *day) holesOf(fire int, first bool, before int) []Span {
	closed, hands := d.Fires[fire].ChangeClosed, d.ChangeHands
	if first {
		closed, hands = d.Fires[fire].LightClosed, d.LightHands
	}
	if hands < 0 && len(closed) == 0 {
		return nil
	}
	holes := appendShifted(d.store.spans.take(len(closed)+len(d.quiet)), closed, before)
	if hands >= 0 {
		holes = appendShifted(holes, d.quiet, before)
	}
	return merge(holes)
}

// newBarred works out when each fire may not begin: as the first of the day, and after
// each other one.
func (d *day) newBarred() {
	d.bars = make([][][]Span, 0, len(d.Fires))
	for f := range d.Fires {
		row := d.store.barred.of(len(d.Fires) + 1)
		for g := range d.Fires {
			if g != f && d.Change[f][g] >= 0 {
				row[g] = d.barredAfter(f, g)
			}
		}
		row[len(d.Fires)] = d.holesOf(f, true, d.Fires[f].Setup)
		d.bars = append(d.bars, row)
	}
}

// barredAfter is when a fire may not begin after another: as after one before that with a change as long, where there is one.
func (d *day) barredAfter(f, g int) []Span {
	for e := range f {
		if e != g && d.Change[e][g] == d.Change[f][g] {
			return d.bars[e][g]
		}
	}
	return d.holesOf(g, false, d.Change[f][g])
}

// holesAt are those of phase k of a sequence.
func (d *day) holesAt(fires []int, k int) []Span {
	if k == 0 {
		return d.bars[fires[0]][len(d.Fires)]
	}
	return d.bars[fires[k-1]][fires[k]]
}
