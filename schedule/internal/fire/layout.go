package fire

// Layout is how the coals lie.
type Layout string

// The layouts that a plan offers. Other is a grill described by its zones only.
const (
	Banked  Layout = "banked"
	Ring    Layout = "ring"
	TwoZone Layout = "two-zone"
	Spread  Layout = "spread"
	Heap    Layout = "heap"
	Other   Layout = "other"
)

// Description says what a layout is for and how to make it.
type Description struct {
	Layout       Layout
	Band         string  // band of the middle of its levels
	MinC, MaxC   float64 // levels it can hold, degC
	Zones        []ZoneKind
	Use          string
	Build        string  // what is done with the coals before they are lit, where some stay unlit
	Pour         string  // and with those that are lit then
	OpenTop      float64 // share of the top vent open to start from
	OpenBottom   float64
	LidOff       bool
	LayMinutes   int // hands, before lighting
	LightMinutes int // chimney or starter until the first coals are gray at the edge
	WarmMinutes  int // from pouring the lit coals to 90 % of the level
	Becomes      []Layout
	LitTopUps    bool // coals added later must be lit already
	ProbesOut    bool // hotter than common probes and their cables stand
}

// ZoneKind is a zone as a share of the grate and a lift above the level.
type ZoneKind struct {
	Name               string
	Share              float64 // of the grate area
	LiftMinK, LiftMaxK float64 // the zone's own heat above the level of the fire
	Direct             bool    // coals below
}

// LiftK is the middle of the zone's lift.
func (z ZoneKind) LiftK() float64 { return (z.LiftMinK + z.LiftMaxK) / 2 }

// Level ranges, vents and minutes are common practice of covered charcoal grilling, no source. Two figures are
// assumptions: a ring's longer warm-up (few coals are lit) and the minutes that laying takes. Shares of the grate are
// those with which the rule of room (room.go) meets what cooks report; that of a heap is an assumption,
// and beside a two-zone fire lies what its direct side leaves.
var layouts = []Description{
	{
		Layout: Banked, MinC: fahrenheit(225), MaxC: fahrenheit(325),
		Zones: []ZoneKind{{Name: "indirect", Share: 0.62}},
		Use:   "low and slow, and roasting at the upper end; meat beside the coals, under the top vent",
		Build: "Heap the unlit coals at one side, in a basket if there are many.", Pour: "Pour the lit coals on the edge of the unlit ones.",
		OpenTop: 0.25, OpenBottom: 0.25, LayMinutes: 5, LightMinutes: 15, WarmMinutes: 15,
		Becomes: []Layout{TwoZone, Spread, Heap},
	},
	{
		Layout: Ring, MinC: fahrenheit(225), MaxC: fahrenheit(275),
		Zones: []ZoneKind{{Name: "centre", Share: 0.58}},
		Use:   "the longest untended burn, for briskets and big shoulders; also called a fuse or a snake",
		Build: "Lay unlit coals in rows along the edge of the coal grate, with a gap between head and tail; the meat goes in the middle.", Pour: "Set the lit coals against one end of the rows.",
		OpenTop: 0.25, OpenBottom: 0.25, LayMinutes: 15, LightMinutes: 15, WarmMinutes: 30,
		Becomes: []Layout{Banked, TwoZone, Spread, Heap},
	},
	{
		Layout: TwoZone, MinC: fahrenheit(300), MaxC: fahrenheit(400),
		Zones: []ZoneKind{
			{Name: "indirect", Share: 0.55},
			{Name: "direct", Share: 0.45, LiftMinK: kelvins(100), LiftMaxK: kelvins(150), Direct: true},
		},
		Use:     "chicken and fish beside the coals, browning above them",
		Build:   "Pour the lit coals along one side, two deep, and leave the other side bare; open the vents.",
		OpenTop: 1, OpenBottom: 1, LayMinutes: 5, LightMinutes: 20, WarmMinutes: 15,
		Becomes: []Layout{Banked, Spread, Heap}, LitTopUps: true,
	},
	{
		Layout: Spread, MinC: fahrenheit(350), MaxC: fahrenheit(400),
		Zones:   []ZoneKind{{Name: "direct", Share: 0.90, Direct: true}},
		Use:     "burgers, sausages and vegetables straight above the coals",
		Build:   "Pour the lit coals out in one even layer; open the vents.",
		OpenTop: 1, OpenBottom: 1, LayMinutes: 5, LightMinutes: 20, WarmMinutes: 15,
		Becomes: []Layout{Banked, TwoZone, Heap}, LitTopUps: true,
	},
	{
		Layout: Heap, MinC: fahrenheit(550), MaxC: fahrenheit(650),
		Zones:   []ZoneKind{{Name: "centre", Share: 0.40, Direct: true}},
		Use:     "searing steaks and chops with the lid off",
		Build:   "Heap the lit coals high in the middle; vents open, lid off, probes out of the grill.",
		OpenTop: 1, OpenBottom: 1, LidOff: true, LayMinutes: 5, LightMinutes: 20, WarmMinutes: 15,
		Becomes: []Layout{TwoZone, Spread}, LitTopUps: true, ProbesOut: true,
	},
}

// Holds says whether the layout is made for a level, degC: within its range, or as near
// to it as is good enough.
func (d Description) Holds(levelC float64) bool {
	return levelC >= d.MinC-closeEnoughK && levelC <= d.MaxC+closeEnoughK
}

// Layouts lists every charcoal layout, coolest first. The result is the caller's own.
func Layouts() []Description {
	list := make([]Description, len(layouts))
	for i, d := range layouts {
		list[i] = d.copied()
	}
	return list
}

// Describe returns the description of a layout, and false for Other or an unknown one.
func Describe(l Layout) (Description, bool) {
	d := describe(l)
	if d == nil {
		return Description{}, false
	}
	return d.copied(), true
}

func (d Description) copied() Description {
	d.Band = Band((d.MinC + d.MaxC) / 2)
	d.Zones = append([]ZoneKind(nil), d.Zones...)
	d.Becomes = append([]Layout(nil), d.Becomes...)
	return d
}

// describe hands out the table's own row, nil if there is none: read only.
func describe(l Layout) *Description {
	for i := range layouts {
		if layouts[i].Layout == l {
			return &layouts[i]
		}
	}
	return nil
}

// Band names the heat of a level as the trade does: low (225-275 F), hot (350-400 F), sear (550 F and up), common
// practice, no source. Between two bands the nearer one counts; a banked fire at 325 F is hot.
func Band(levelC float64) string {
	switch {
	case levelC < (fahrenheit(275)+fahrenheit(350))/2:
		return "low"
	case levelC < (fahrenheit(400)+fahrenheit(550))/2:
		return "hot"
	}
	return "sear"
}

// The trade's figures are in degrees Fahrenheit; these keep the tables readable.
func fahrenheit(f float64) float64 { return (f - 32) / 1.8 }
func kelvins(f float64) float64    { return f / 1.8 }
