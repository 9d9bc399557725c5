package assemble

import (
	"fmt"
	"slices"
	"strings"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/planner/internal/arrange"
)

// stretch is what a batch has on one grate during one of its stages.
type stretch struct {
	b        *arrange.Placed
	from, to float64
	load     arrange.Load
	count    int
	wrapped  bool
}

// noteTight finds what lies closer than easy: between that and the most that goes.
func (d *Assembler) noteTight(a arrange.Arrangement, all []*arrange.Placed) {
	for i := range a.Solution.Phases {
		zones := a.Hearth.Zones[a.Solution.Phases[i].Fire]
		for _, z := range zones {
			for level := range z.Levels() {
				on := stretches(all, i, zones, z, level)
				for _, s := range on {
					if !easyAt(on, s.from, z.Grate(level).AreaM2) {
						d.tight(s.b, z.Name, closer(s))
					}
				}
			}
		}
	}
	for _, b := range all {
		if l := b.It.Lay(b.MassKg); l.Squeezed && b.Phases[0].First >= 0 {
			d.tight(b, b.Zones[0], longer(l, b.Count))
		}
	}
}

// stretches are those of all batches on one grate of a zone during a phase.
func stretches(all []*arrange.Placed, phase int, zones []fire.Zone, z fire.Zone, level int) []stretch {
	var out []stretch
	for _, b := range all {
		for s := range b.Stages() {
			if b.Phases[s].First < 0 || b.Phases[s].First > phase || b.Phases[s].Last < phase || b.ZoneIn(zones, s).Name != z.Name {
				continue
			}
			from, to := b.On, b.Off
			if b.Stages() == 2 && s == 0 {
				to = b.Wrap
			} else if s == 1 {
				from = b.Wrap
			}
			if n := b.CountOn(z, level); n > 0 {
				out = append(out, stretch{b: b, from: from, to: to, load: b.LoadIn(b.Way, s == 1), count: n, wrapped: s == 1 && !b.Way.Sear})
			}
		}
	}
	return out
}

// easyAt says whether what lies there at an instant lies easily.
func easyAt(on []stretch, u, areaM2 float64) bool {
	var sum fire.Needs
	var only stretch
	n := 0
	for _, o := range on {
		if o.from >= u && o.to < u {
			sum, n, only = sum.Plus(o.load.Needs(o.count, false)), n+o.count, o
		}
	}
	if n == 1 {
		sum = only.load.Needs(1, true)
	}
	return n == 0 || sum.In(areaM2) == fire.Easy
}

// closer is what to do with pieces that lie close.
func closer(s stretch) string {
	switch {
	case s.wrapped && s.load.Shrunk.Least < s.load.Shrunk.Easy:
		return "In foil they may lie two high."
	case s.load.Laid.Part.Standing:
		return "Push the slots together and swap the racks halfway."
	case s.load.Laid.Part.Rack:
		return "Let the ends overlap a little and swap them halfway."
	case s.b.Count > 1:
		return "Lay the pieces close, turn them halfway, and measure where they touch."
	}
	return "Turn it halfway, and measure on the side where it touches."
}

// longer is what to do with pieces that are longer than what lies there easily.
func longer(l fire.Laid, n int) string {
	switch {
	case l.Parts > 1:
		return "The racks are longer than the grate: cut each in half."
	case l.Lie == fire.LieBent && n > 1:
		return "They are longer than the grate: bend each over a support until it has shrunk."
	case l.Lie == fire.LieBent:
		return "It is longer than the grate: bend it over a support until it has shrunk."
	case l.Part.Rack:
		return "The racks reach from rim to rim: push the ends in."
	}
	return "It reaches from rim to rim."
}

// tight finds that a dish is, once in all, with what to do about it.
func (d *Assembler) tight(b *arrange.Placed, zone, what string) {
	if what == "" {
		what = "Bend or turn the pieces, or move them closer."
	}
	if i := slices.IndexFunc(d.findings, func(f schedule.Finding) bool {
		return f.Code == codeTight && slices.Contains(f.Dishes, b.It.Dish.ID)
	}); i >= 0 {
		if !strings.Contains(d.findings[i].Text, what) {
			d.findings[i].Text += " " + what
		}
		return
	}
	where := "on the " + zone + " side"
	switch {
	case !d.Grill.Lays():
		where = "on the grate"
	case zone == "centre":
		where = "in the center"
	}
	d.find(codeTight, "", b.It, fmt.Sprintf("%s: tight fit %s. %s", b.It.Dish.Name, where, what))
}

const codeTight = "tight"

// laid says how to lay a batch, for its put-on: only what is not lying flat on the one grate.
func (it *Itinerary) laid(p *arrange.Placed) string {
	var out []string
	l := p.It.Lay(p.MassKg)
	if l.Parts > 1 {
		out = append(out, "Cut each rack in half first.")
	}
	switch l.Lie {
	case fire.LieStanding:
		out = append(out, "Stand the racks on edge in an upright rack.")
	case fire.LieRolled:
		out = append(out, "Roll each rack up loosely, meat side out, and hold it with a skewer.")
	case fire.LieBent:
		who := "It is longer than the grate: bend it"
		if p.Count > 1 {
			who = "They are longer than the grate: bend each"
		}
		out = append(out, who+" over a can, a log of foil or an upright rack, flat again once it has shrunk.")
	}
	if p.OnStack(it.A.Hearth) {
		out = append(out, it.onGrates(p)...)
	}
	return strings.Join(out, " ")
}

// onGrates says which grate takes how many.
func (it *Itinerary) onGrates(p *arrange.Placed) []string {
	var z fire.Zone
	for _, zones := range it.A.Hearth.Zones {
		for _, o := range zones {
			if len(o.Above) > 0 {
				z = o
			}
		}
	}
	var parts []string
	raised := false
	for level, g := range z.Grates() {
		n := p.CountOn(z, level)
		switch {
		case n == 0:
			continue
		case n == p.Count:
			parts = append(parts, "on the "+g.Name)
		default:
			parts = append(parts, fmt.Sprintf("%d on the %s", n, g.Name))
		}
		raised = raised || g.MostThickM > 0
	}
	text := strings.Join(parts, ", ") + "."
	out := []string{strings.ToUpper(text[:1]) + text[1:]}
	if raised {
		out = append(out, "The raised grate runs hotter: look there first.")
	}
	return out
}
