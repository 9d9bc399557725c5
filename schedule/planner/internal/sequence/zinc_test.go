package sequence

import (
	"fmt"
	"strings"
)

// zinc writes a problem as data for testdata/day.mzn.
func zinc(p *Problem) string {
	w := &zincWriter{}
	w.fires(p)
	w.tasks(p)
	return w.String()
}

type zincWriter struct{ strings.Builder }

func (w *zincWriter) int(name string, v int) { fmt.Fprintf(w, "%s = %d;\n", name, v) }

func (w *zincWriter) list(name string, v []int) {
	fmt.Fprintf(w, "%s = [%s];\n", name, joined(v))
}

// table writes rows of equal length.
func (w *zincWriter) table(name string, rows, columns int, at func(i, j int) int) {
	var v []int
	for i := range rows {
		for j := range columns {
			v = append(v, at(i, j))
		}
	}
	fmt.Fprintf(w, "%s = array2d(1..%d, 1..%d, [%s]);\n", name, rows, columns, joined(v))
}

func joined(v []int) string { return strings.Trim(strings.ReplaceAll(fmt.Sprint(v), " ", ", "), "[]") }

// least is what negative values, which mean "none" or "no limit", become.
func least(v int) int { return max(-1, v) }

func (w *zincWriter) fires(p *Problem) {
	zones := 1
	var setup []int
	for _, f := range p.Fires {
		zones = max(zones, len(f.Zones))
		setup = append(setup, f.Setup)
	}
	most := p.MaxPhases
	if most == 0 {
		most = DefaultPhases
	}
	w.int("F", len(p.Fires))
	w.int("Z", zones)
	w.table("room", len(p.Fires), zones, func(f, z int) int {
		if z < len(p.Fires[f].Zones) {
			return p.Fires[f].Zones[z]
		}
		return 0
	})
	w.list("setup", setup)
	w.table("change", len(p.Fires), len(p.Fires), func(f, g int) int { return least(p.Change[f][g]) })
	w.int("ovens", len(p.Ovens))
	w.list("ovenRoom", p.Ovens)
	w.int("Kmax", most)
	w.int("changeCost", p.ChangeCost)
	w.int("burnCost", p.BurnCost)
	w.int("earliest", p.Earliest)
	w.int("lightHands", p.LightHands)
	w.int("changeHands", p.ChangeHands)
	var lights, changes [][3]int
	for f, fire := range p.Fires {
		lights, changes = appendClosed(lights, f, fire.LightClosed), appendClosed(changes, f, fire.ChangeClosed)
	}
	w.closed("HL", "lightClosed", lights)
	w.closed("HC", "changeClosed", changes)
	w.int("Q", len(p.Quiet))
	w.table("quiet", len(p.Quiet), 2, func(i, j int) int { return [2]int{p.Quiet[i].From, p.Quiet[i].To}[j] })
}

func (w *zincWriter) tasks(p *Problem) {
	var serve, hold, chain, lagMin, lagMax, start, end, first, count []int
	var isFirst, isLast []bool
	var modes []*Mode
	for c := range p.Chains {
		ch := &p.Chains[c]
		serve, hold = append(serve, ch.Serve), append(hold, ch.HoldCost)
		for j := range ch.Tasks {
			t := &ch.Tasks[j]
			chain = append(chain, c+1)
			lagMin, lagMax = append(lagMin, t.LagMin), append(lagMax, least(t.LagMax))
			start, end = append(start, t.StartHands), append(end, t.EndHands)
			first, count = append(first, len(modes)+1), append(count, len(t.Modes))
			isFirst, isLast = append(isFirst, j == 0), append(isLast, j == len(ch.Tasks)-1)
			for m := range t.Modes {
				modes = append(modes, &t.Modes[m])
			}
		}
	}
	w.int("C", len(p.Chains))
	w.list("serve", serve)
	w.list("holdCost", hold)
	w.int("T", len(chain))
	w.list("chain", chain)
	w.list("lagMin", lagMin)
	w.list("lagMax", lagMax)
	w.list("startHands", start)
	w.list("endHands", end)
	w.list("firstMode", first)
	w.list("modes", count)
	fmt.Fprintf(w, "isFirst = [%s];\nisLast = [%s];\n", flags(isFirst), flags(isLast))
	w.modes(p, modes)
}

func flags(v []bool) string {
	return strings.Trim(strings.ReplaceAll(fmt.Sprint(v), " ", ", "), "[]")
}

func (w *zincWriter) modes(p *Problem, modes []*Mode) {
	most := 1
	var area, cost, oven, gapMin, gapIdeal, gapMax []int
	var closed [][3]int
	for i, m := range modes {
		most = max(most, len(m.Minutes))
		area, cost = append(area, m.Area), append(cost, m.Cost)
		gapMin, gapIdeal, gapMax = append(gapMin, m.Gap.Min), append(gapIdeal, m.Gap.Ideal), append(gapMax, least(m.Gap.Max))
		zone := 0
		if m.Places[0].Fire == OvenFire {
			zone = m.Places[0].Zone + 1
		}
		oven = append(oven, zone)
		closed = appendClosed(closed, i, m.Closed)
	}
	w.int("M", len(modes))
	w.int("B", most)
	w.list("area", area)
	w.list("modeCost", cost)
	w.table("minutes", len(modes), most, func(m, b int) int {
		if b < len(modes[m].Minutes) {
			return modes[m].Minutes[b]
		}
		return 0
	})
	w.table("zone", len(modes), len(p.Fires), func(m, f int) int {
		for _, pl := range modes[m].Places {
			if pl.Fire == f {
				return pl.Zone + 1
			}
		}
		return 0
	})
	w.list("oven", oven)
	w.list("gapMin", gapMin)
	w.list("gapIdeal", gapIdeal)
	w.list("gapMax", gapMax)
	w.closed("H", "closed", closed)
}

// appendClosed appends rows of a number, counted from 1, and a span.
func appendClosed(rows [][3]int, i int, spans []Span) [][3]int {
	for _, s := range spans {
		rows = append(rows, [3]int{i + 1, s.From, s.To})
	}
	return rows
}

func (w *zincWriter) closed(count, name string, rows [][3]int) {
	w.int(count, len(rows))
	w.table(name, len(rows), 3, func(i, j int) int { return rows[i][j] })
}
