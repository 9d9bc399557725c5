package arrange

import (
	"cmp"
	"math"
	"slices"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/sequence"
)

// Where a zone has grates one above another the solver counts with all of them as one. Stack then gives every piece
// its grate: within the room of each, thin pieces only on a raised one, and nothing raw above what it must not drip on.

// lying is a piece on one grate for a stage.
type lying struct {
	piece    int // counted over all batches
	stage    int
	from, to float64
	needs    fire.Needs
	alone    fire.Needs
	rooms    []float64 // of each grate of its zone, m2: the least of the fires that it lies over
}

func (l lying) meets(o lying) bool { return l.from > o.to && o.from > l.to }

// tower is the grates of the day's zones, from below, with what lies on each.
type tower struct {
	grates []fire.Grate
	on     [][]lying
	hangs  [][]safety.Hanging
}

// Stack sets the grate of every piece, counted from below; false where they cannot be parted so. Pieces that have one
// keep it.
func (d *Arranger) Stack(h Hearth, phases []sequence.Phase, all []*Placed) bool {
	grates := h.stacked()
	if grates == nil {
		return true
	}
	t := tower{grates: grates, on: make([][]lying, len(grates)), hangs: make([][]safety.Hanging, len(grates))}
	ok, piece := true, 0
	for _, p := range d.fromBelow(all) {
		stretches, hang := stays(p), d.Hanging(p)
		for i := range stretches {
			stretches[i].rooms = h.roomsUnder(grates, phases, p, stretches[i].stage)
		}
		kept := slices.Clone(p.Grate)
		p.Grate = make([]int, p.Count)
		for k := range p.Count {
			piece++
			for i := range stretches {
				stretches[i].piece = piece
			}
			if len(stretches) == 0 {
				continue
			}
			g := 0
			if k < len(kept) {
				g = kept[k]
			} else if g = t.lowest(stretches, hang, p.thick()); g < 0 {
				ok, g = false, 0
			}
			t.on[g], t.hangs[g] = append(t.on[g], stretches...), append(t.hangs[g], hang)
			p.Grate[k] = g
		}
	}
	return ok
}

// stacked are the grates of the first zone that has several.
func (h Hearth) stacked() []fire.Grate {
	for _, zones := range h.Zones {
		for _, z := range zones {
			if len(z.Above) > 0 {
				return z.Grates()[:h.levels(z)]
			}
		}
	}
	return nil
}

// roomsUnder is the room of each grate over the fires that a batch lies over in a stage: a
// banked fire leaves another side free than one along the wall does.
func (h Hearth) roomsUnder(grates []fire.Grate, phases []sequence.Phase, p *Placed, stage int) []float64 {
	rooms := make([]float64, len(grates))
	for g := range grates {
		rooms[g] = math.Inf(1)
		for k := p.Phases[stage].First; k <= p.Phases[stage].Last && k < len(phases); k++ {
			if z := p.ZoneIn(h.Zones[phases[k].Fire], stage); g < z.Levels() {
				rooms[g] = math.Min(rooms[g], z.Grate(g).AreaM2)
			}
		}
		if math.IsInf(rooms[g], 1) {
			rooms[g] = grates[g].AreaM2
		}
	}
	return rooms
}

// fromBelow is the order in which pieces are given their grate: what has one, what goes on the lowest only, then as
// they belong from below, what comes off last and is largest first.
func (d *Arranger) fromBelow(all []*Placed) []*Placed {
	out := slices.Clone(all)
	free := func(p *Placed) int {
		if len(p.Grate) > 0 {
			return 0
		}
		return 1
	}
	slices.SortStableFunc(out, func(a, b *Placed) int {
		ha, hb := d.category(a), d.category(b)
		return cmp.Or(cmp.Compare(free(a), free(b)), cmp.Compare(ha.Level(), hb.Level()), cmp.Compare(a.Off, b.Off),
			cmp.Compare(b.LoadIn(b.Way, false).areaM2(), a.LoadIn(a.Way, false).areaM2()))
	})
	return out
}

func (d *Arranger) category(p *Placed) safety.Hanging { return safety.Hanging{Category: p.It.Category} }

func (p *Placed) thick() float64 { return p.It.Lay(p.MassKg).HighM }

// stays are the stretches of a batch on such grates.
func stays(p *Placed) []lying {
	var out []lying
	for s := range p.Stages() {
		if p.Phases[s].First < 0 || s == 0 && p.Way.Direct || s == 1 && (p.Way.Sear || p.Oven) {
			continue
		}
		from, to := p.On, p.Off
		if p.Stages() == 2 && s == 0 {
			to = p.Wrap
		} else if s == 1 {
			from = p.Wrap
		}
		l := p.LoadIn(p.Way, s == 1)
		out = append(out, lying{stage: s, from: from, to: to, needs: l.Needs(1, false), alone: l.Needs(1, true)})
	}
	return out
}

// lowest is the lowest grate on which a piece lies easily, else the lowest that takes it; -1 for none.
func (t *tower) lowest(stays []lying, hang safety.Hanging, thickM float64) int {
	for _, want := range []fire.Room{fire.Easy, fire.Tight} {
		for g := range t.grates {
			if t.grates[g].Takes(thickM) && t.room(g, stays) >= want && t.clean(g, hang) {
				return g
			}
		}
	}
	return -1
}

// room is how a piece would lie on a grate beside what lies there, at the worst instant.
func (t *tower) room(g int, stays []lying) fire.Room {
	worst := fire.Easy
	for _, s := range stays {
		at := []float64{s.from}
		for _, o := range t.on[g] {
			if o.meets(s) {
				at = append(at, math.Min(o.from, s.from))
			}
		}
		for _, u := range at {
			sum, n := s.needs, 1
			for _, o := range t.on[g] {
				if o.from >= u && o.to < u {
					sum, n = sum.Plus(o.needs), n+1
				}
			}
			if n == 1 {
				sum = s.alone
			}
			worst = min(worst, sum.In(s.rooms[g]))
		}
	}
	return worst
}

// clean says whether a piece on a grate drips on nothing, and nothing on it, that it must not.
func (t *tower) clean(g int, hang safety.Hanging) bool {
	for other, hangs := range t.hangs {
		for _, o := range hangs {
			if other < g && !safety.MayHangOver(hang, o) || other > g && !safety.MayHangOver(o, hang) {
				return false
			}
		}
	}
	return true
}

// OnStack says whether the batch lies in a zone with several grates.
func (p *Placed) OnStack(h Hearth) bool { return h.stacked() != nil && len(stays(p)) > 0 }

// CountOn is how many pieces of the batch lie on one grate of a zone, counted from below.
func (p *Placed) CountOn(z fire.Zone, level int) int {
	if len(z.Above) == 0 || len(p.Grate) == 0 {
		if level == 0 {
			return p.Count
		}
		return 0
	}
	n := 0
	for _, at := range p.Grate {
		if at == level {
			n++
		}
	}
	return n
}

// OnGrate are the pieces of the batch on one grate of a zone, counted from below.
func (p *Placed) OnGrate(z fire.Zone, level int) []int {
	var out []int
	for k := range p.Count {
		at := 0
		if len(z.Above) > 0 && k < len(p.Grate) {
			at = p.Grate[k]
		}
		if at == level {
			out = append(out, k)
		}
	}
	return out
}

// rawMargin is what a curve that is drawn in steps may be off by, minutes.
const rawMargin = 5

// Hanging is a batch as it may drip: raw until the slow end of when its core comes to the published minimum, or until it
// is off where the model follows no core.
func (d *Arranger) Hanging(p *Placed) safety.Hanging {
	h := safety.Hanging{Category: p.It.Category, MinimumC: p.It.Verdict.Minimum.CoreC, On: -p.On, Off: -p.Off, RawUntil: -p.Off}
	if p.Way.State == nil || p.Way.Direct || p.Way.Sear || p.Way.Believed != nil || p.It.Cut.Style == cut.Timed {
		return h
	}
	model, _ := d.ModelCook(p)
	for i, pt := range model.Points {
		if pt.CoreC >= h.MinimumC {
			at := float64(i) * model.EveryS / 60 / p.Way.ModelDone * p.Way.Total().Late
			h.RawUntil = math.Min(h.RawUntil, h.On+at+rawMargin)
			break
		}
	}
	return h
}
