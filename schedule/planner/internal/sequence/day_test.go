package sequence

// Realistic days for benchmarks. All minutes, areas and hold limits here are
// common practice, no source; the grate is a 22 in kettle's (2453 cm2), filled
// to 0.75 of an indirect and 0.55 of a direct zone.

const (
	low   = iota // banked, 250 F
	mid          // two-zone, 350 F
	even         // spread, 375 F
	sear         // heap, 550 F
	fires        // their number
)

// realisticDay makes a day of n batches. On every other day pieces are half as
// large. From 12 batches on they always are, and may be held twice as long, as
// on a day planned for a crowd; from 16 on the grate is twice as large.
func realisticDay(seed uint64, n int) *Problem {
	g := &dayMaker{dice: newDice(seed), crowd: n >= 12, light: n >= 12 || seed%2 == 0}
	p := &Problem{
		Fires: []Fire{{Setup: 40, Zones: []int{1104}}, {Setup: 30, Zones: []int{920, 540}}, {Setup: 25, Zones: []int{1147}}, {Setup: 20, Zones: []int{472}}},
		Change: [][]int{
			{0, 20, 20, 25},
			{40, 0, 15, 20},
			{45, 15, 0, 15},
			{60, 30, 25, 0},
		},
		MaxPhases: 3, ChangeCost: 300, BurnCost: 1, LightHands: 10, ChangeHands: 10, Earliest: 24 * 60,
	}
	for f := range p.Fires {
		for z := range p.Fires[f].Zones {
			p.Fires[f].Zones[z] *= 1 + n/16 // nobody cooks so much on one kettle
		}
	}
	if g.in(2) {
		p.Ovens = []int{1500}
		g.oven = true
	}
	if g.in(2) {
		from := g.from(11, 13) * 60 // before the meal: served in the evening
		p.Quiet = []Span{{from, from + 7*60}}
	}
	second := 0
	if g.in(3) {
		second = 15 * g.from(4, 10)
	}
	for len(p.Chains) < n {
		dish := g.dish()
		dish.Serve = second * g.from(0, 1)
		for range min(g.batches, n-len(p.Chains)) {
			if g.batches > 1 {
				dish.Group = len(p.Chains) + 1
			}
			p.Chains = append(p.Chains, dish)
		}
	}
	for c := range p.Chains { // one number for the whole group
		if c > 0 && p.Chains[c].Group > 0 && alike(&p.Chains[c], &p.Chains[c-1]) {
			p.Chains[c].Group = p.Chains[c-1].Group
		}
	}
	return p
}

type dayMaker struct {
	dice
	crowd, light, oven bool
	batches            int // of the dish just made
}

// about varies a number by a fifth either way.
func (g *dayMaker) about(n int) int { return g.from(n-n/5, n+n/5) }

func (g *dayMaker) gap(min, ideal, max int) Gap {
	if g.crowd {
		max *= 2
	}
	return Gap{min, ideal, max}
}

func (g *dayMaker) area(cm2 int) int {
	if g.light {
		cm2 /= 2
	}
	return g.about(cm2)
}

// single is a task that ends with an attended pull.
func single(hands int, modes ...Mode) Task {
	return Task{Modes: modes, LagMax: NoLimit, StartHands: hands}
}

// at is a mode in a zone of each of some fires.
func at(area, cost, minutes int, gap Gap, places ...Place) Mode {
	return Mode{Area: area, Cost: cost, Minutes: []int{minutes}, Gap: gap, Places: places}
}

func (g *dayMaker) dish() Chain {
	g.batches = 1
	switch g.from(0, 7) {
	case 0:
		return g.tough(650, 360, 270, g.gap(60, 120, 300), 2)
	case 1:
		return g.tough(350, 330, 210, g.gap(45, 90, 240), 2)
	case 2:
		g.batches = g.from(1, 2)
		return g.tough(480, 150, 110, g.gap(10, 20, 60), 20)
	case 3:
		return g.bird()
	case 4:
		return g.roast()
	case 5:
		g.batches = g.from(1, 2)
		if g.crowd {
			g.batches = g.from(1, 4)
		}
		return g.patties()
	case 6:
		return g.thighs()
	default:
		return g.vegetables()
	}
}

// tough is cooked bare, then wrapped: on the low fire, hotter, or through a
// change; the wrapped piece may move to the oven.
func (g *dayMaker) tough(cm2, bare, wrapped int, gap Gap, cost int) Chain {
	cm2, bare, wrapped = g.area(cm2), g.about(bare), g.about(wrapped)
	first := Task{StartHands: 5, EndHands: Unattended, LagMax: 0, Modes: []Mode{
		at(cm2, 0, bare, Gap{}, Place{low, 0}),
		at(cm2, 150, bare*2/3, Gap{}, Place{mid, 0}),
	}}
	second := single(5,
		at(cm2, 0, wrapped, gap, Place{low, 0}),
		at(cm2, 60, wrapped*3/4, gap, Place{mid, 0}),
		at(cm2, 20, wrapped, gap, Place{low, 0}, Place{mid, 0}))
	if g.oven {
		second.Modes = append(second.Modes, at(cm2, 40, wrapped, gap, Place{OvenFire, 0}))
	}
	for m := range second.Modes {
		v := second.Modes[m].Minutes[0]
		second.Modes[m].Minutes = []int{v, v * 4 / 5}
	}
	return Chain{HoldCost: cost, Tasks: []Task{first, second}}
}

func (g *dayMaker) bird() Chain {
	cm2, d, gap := g.area(440), g.about(80), g.gap(5, 15, 45)
	return Chain{HoldCost: 30, Tasks: []Task{single(5,
		at(cm2, 200, 2*d, gap, Place{low, 0}),
		at(cm2, 0, d, gap, Place{mid, 0}),
		at(cm2, 50, d*4/5, gap, Place{even, 0}))}}
}

// roast is cooked slowly, rests, and is seared at the end.
func (g *dayMaker) roast() Chain {
	cm2, d, gap := g.area(350), g.about(140), g.gap(5, 10, 30)
	first := single(5, at(cm2, 0, d, Gap{}, Place{low, 0}), at(cm2, 100, d*3/5, Gap{}, Place{mid, 0}))
	first.LagMin, first.LagMax = 10, 60
	last := single(3, at(cm2, 50, 10, gap, Place{mid, 1}), at(cm2, 0, 7, gap, Place{sear, 0}))
	for m := range last.Modes {
		v := last.Modes[m].Minutes[0]
		last.Modes[m].Minutes = []int{v, v}
	}
	return Chain{HoldCost: 20, Tasks: []Task{first, last}}
}

func (g *dayMaker) patties() Chain {
	cm2, d, gap := g.from(3, 5)*95, g.from(8, 11), g.gap(0, 2, 20)
	return Chain{HoldCost: 100, Tasks: []Task{single(3,
		at(cm2, 0, d, gap, Place{mid, 1}),
		at(cm2, 50, d, gap, Place{even, 0}),
		at(cm2, 0, d*3/4, gap, Place{sear, 0}))}}
}

func (g *dayMaker) thighs() Chain {
	cm2, d, gap := g.area(450), g.about(35), g.gap(0, 10, 40)
	return Chain{HoldCost: 30, Tasks: []Task{single(4,
		at(cm2, 100, d*3/2, gap, Place{mid, 0}),
		at(cm2, 0, d, gap, Place{even, 0}))}}
}

func (g *dayMaker) vegetables() Chain {
	cm2, d, gap := g.area(400), g.about(15), g.gap(0, 15, 40)
	return Chain{HoldCost: 10, Tasks: []Task{single(4,
		at(cm2, 0, d, gap, Place{mid, 1}),
		at(cm2, 30, d*2, gap, Place{mid, 0}),
		at(cm2, 0, d, gap, Place{even, 0}))}}
}
