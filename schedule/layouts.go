package schedule

import (
	"slices"
	"strings"

	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/say"
)

// Layout says how coals may lie, for what, and how to build that.
type Layout struct {
	Name         string       `json:"name"` // banked, ring, two-zone, spread, heap
	Band         string       `json:"band"` // of the middle of its levels
	MinC         float64      `json:"min_c"`
	MaxC         float64      `json:"max_c"`
	Zones        []LayoutZone `json:"zones"`
	Use          string       `json:"use"`
	Build        string       `json:"build"`
	TopVent      float64      `json:"top_vent"`    // share open to start from
	BottomVent   float64      `json:"bottom_vent"` // share open to start from
	LidOff       bool         `json:"lid_off,omitempty"`
	SetupMinutes int          `json:"setup_minutes"` // from the light until the grate is at its level
	Becomes      []string     `json:"becomes"`       // what it can be turned into
	LitTopUps    bool         `json:"lit_top_ups"`   // coals added later must be lit
}

// layoutNames are the words of a request for how coals lie.
func layoutNames() []string {
	var names []string
	for _, d := range fire.Layouts() {
		names = append(names, string(d.Layout))
	}
	return names
}

// layout refuses a way to lay coals that is none, and names those that are.
func (v *validator) layout(path, layout string) {
	if layout == "" {
		return
	}
	known := v.faults.Len()
	if names := layoutNames(); !slices.Contains(names, layout) {
		near := say.NearestWord(layout, names)
		v.faults.Add(path, "%s is no way to lay coals; there are %s, and cookday layouts tells what each is for", say.Quoted(layout), say.Listed(names, "and"))
		if near != "" {
			v.faults.Mended(known, layout, near)
		}
	}
}

// LayoutZone is a zone as a share of the grate. LiftK is how much hotter than
// the level its air is, K.
type LayoutZone struct {
	Name   string  `json:"name"`
	Share  float64 `json:"share"`
	LiftK  float64 `json:"lift_k,omitempty"`
	Direct bool    `json:"direct,omitempty"`
}

// Layouts lists the layouts of charcoal, coolest first. Figures are common
// practice, no source.
func Layouts() []Layout {
	var out []Layout
	for _, d := range fire.Layouts() {
		l := Layout{
			Name: string(d.Layout), Band: d.Band, MinC: d.MinC, MaxC: d.MaxC, Use: d.Use, Build: strings.TrimSpace(d.Build + " " + d.Pour),
			TopVent: d.OpenTop, BottomVent: d.OpenBottom, LidOff: d.LidOff, SetupMinutes: d.LightMinutes + d.WarmMinutes,
			Becomes: []string{}, LitTopUps: d.LitTopUps,
		}
		for _, z := range d.Zones {
			l.Zones = append(l.Zones, LayoutZone{Name: z.Name, Share: z.Share, LiftK: z.LiftK(), Direct: z.Direct})
		}
		for _, b := range d.Becomes {
			l.Becomes = append(l.Becomes, string(b))
		}
		out = append(out, l)
	}
	return out
}
