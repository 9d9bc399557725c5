package fire

import "strings"

// Change is what to do with the coals when one fire becomes another.
type Change struct {
	From, To    Fire
	OK          bool
	Coals       string // what to do with the coals that lie there, one sentence
	Add         Amount // if nothing useful is left: the pessimistic end
	AddAtLeast  Amount // if as much is left as expected
	AddLit      bool
	LeadMinutes int // light that many minutes before the change begins
	Minutes     int
	Vents       VentAdvice
	LiftGrate   bool // coals are moved: food off the grate first
	ProbesOut   bool
}

// ChangeAdvice is the change from one fire, with leftKg expected to be left of it, to the next, which was planned.
func (g Grill) ChangeAdvice(from, to Fire, leftKg float64, next Burn) Change {
	c := Change{From: from, To: to, Vents: Vents(to)}
	c.Minutes, c.OK = g.ChangeMinutes(from, to)
	d := g.describe(to.Layout)
	if !c.OK || d == nil {
		return c
	}
	c.Coals = moves[from.Layout][to.Layout]
	c.LiftGrate = from.Layout != to.Layout
	c.ProbesOut = d.ProbesOut
	c.Add = next.Lay
	c.AddAtLeast = g.amount(max(next.Lay.MassKg-leftKg, 0))
	if c.AddLit = d.LitTopUps; c.AddLit && c.Add.MassKg > 0 {
		c.LeadMinutes = chimneyMinutes
	}
	if c.Add.MassKg > 0 && !strings.Contains(c.Coals, "lit ones") && !strings.Contains(c.Coals, "lit coals") {
		c.Coals += c.whereNew()
	}
	return c
}

// whereNew is where the coals go that are added.
func (c Change) whereNew() string {
	switch {
	case c.AddLit && c.To.Layout == Spread:
		return " Pour the freshly lit ones out among them."
	case c.AddLit:
		return " Pour the freshly lit ones over them."
	}
	return " Lay the unlit ones against them."
}

// moves is common practice, no source.
var moves = map[Layout]map[Layout]string{
	Banked: {
		Banked:  "Leave the coals as they lie and move the vents.",
		TwoZone: "Rake the burning coals flat along their side and pour the freshly lit ones over them.",
		Spread:  "Rake the burning coals out over the whole coal grate and pour the freshly lit ones between them.",
		Heap:    "Rake the burning coals together in the middle and heap the freshly lit ones on top.",
	},
	Ring: {
		Ring:    "Leave the fuse as it lies and move the vents.",
		Banked:  "Push what is left of the fuse together at one side, burning coals on top.",
		TwoZone: "Push what is left of the fuse to one side and pour the freshly lit coals over it.",
		Spread:  "Rake what is left of the fuse out flat and pour the freshly lit coals over it.",
		Heap:    "Push what is left of the fuse together in the middle and heap the freshly lit coals on top.",
	},
	TwoZone: {
		TwoZone: "Leave the coals as they lie and move the vents.",
		Banked:  "Close up the burning coals at their side, lay the unlit ones against them and close the vents to a quarter; wait for the grate to cool.",
		Spread:  "Rake the coals out into one even layer.",
		Heap:    "Rake the coals together in the middle and heap the freshly lit ones on top.",
	},
	Spread: {
		Spread:  "Leave the coals as they lie and move the vents.",
		Banked:  "Rake the coals to one side, lay the unlit ones against them and close the vents to a quarter; wait for the grate to cool.",
		TwoZone: "Rake the coals to one side and leave the other bare.",
		Heap:    "Rake the coals together in the middle and heap the freshly lit ones on top.",
	},
	Other: {
		Other: "Leave the coals as they lie and move the vents.",
	},
	Heap: {
		Heap:    "Leave the heap as it lies.",
		TwoZone: "Rake the heap to one side and leave the other bare.",
		Spread:  "Rake the heap out into one even layer.",
	},
}
