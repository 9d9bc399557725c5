package safety

import (
	"fmt"
	"math"
	"strings"

	"example.com/cookday/schedule/unit"
)

// Minimum is a published minimum of the core temperature. The zero value means
// that no rule of temperature applies.
type Minimum struct {
	CoreC       float64 // degC at the coldest point; 0: no rule
	RestMinutes float64 // stands untouched at least so long before it is cut
	HoldSeconds float64 // the core stays at CoreC or above at least so long
	Source      string  // source key; Document names the publication
	Note        string
}

// Applies reports whether there is a rule at all.
func (m Minimum) Applies() bool { return m.CoreC > 0 }

// Whose names who publishes the minimum, to stand before the word: "the USDA". The chart of
// foodsafety.gov is the USDA's.
func (m Minimum) Whose() string {
	if strings.HasPrefix(m.Source, "fda_") {
		return "the FDA"
	}
	return "the USDA"
}

type minimumRow struct {
	category Category
	coreF    float64
	restMin  float64
	source   string
	note     string
}

// minimums are the household charts. Where the two editions differ (cooked ham) the
// newer one stands, and the older one's figure is kept for inspected plants.
var minimums = []minimumRow{
	{Beef, 145, 3, "fsg_safemin_2019", "steaks, roasts, chops"},
	{Veal, 145, 3, "fsg_safemin_2019", "steaks, roasts, chops"},
	{Lamb, 145, 3, "fsg_safemin_2019", "steaks, roasts, chops"},
	{Pork, 145, 3, "fsg_safemin_2019", "fresh: chops, steaks, roasts"},
	{Ham, 145, 3, "fsg_safemin_2019", "fresh or smoked, raw"},
	{HamCooked, 165, 0, "fsg_safemin_2019", "reheated; 140 °F if packed in an inspected plant"},
	{Poultry, 165, 0, "fsg_safemin_2019", "whole, parts, giblets"},
	{Fish, 145, 0, "fsg_safemin_2019", "fin fish"},
	{Ground, 160, 0, "fsg_safemin_2019", "ground beef, pork, veal, lamb"},
	{GroundPoultry, 165, 0, "fsg_safemin_2019", "ground turkey, chicken"},
	{Sausage, 160, 0, "fsg_safemin_2019", "raw sausage of red meat is ground meat"},
	{Leftovers, 165, 0, "fsg_safemin_2019", "all"},
}

// inspectedHam is the cooked ham of an inspected plant.
var inspectedHam = minimumRow{HamCooked, 140, 0, "fsis_safemin_2012", "packed in an inspected plant"}

// stuffed is the rule for stuffing, and so for whatever holds it.
var stuffed = minimumRow{"", 165, 0, "fsg_safemin_2019", "stuffing, alone or in the piece"}

// pierced are the Food Code's pairs for injected and mechanically tenderised meat,
// the hottest first; each alone satisfies the rule. The household charts have no row
// for them. The 2017 edition asks 17 s at 155 F (from memory).
var pierced = []struct{ coreF, holdSeconds float64 }{
	{158, 1}, {155, 15}, {150, 60}, {145, 180},
}

const piercedSource = "fda_3_401_11"

func (r minimumRow) minimum() Minimum {
	return Minimum{CoreC: celsius(r.coreF), RestMinutes: r.restMin, Source: r.source, Note: r.note}
}

// MinimumFor is the published minimum of a category with its preparation, the
// strictest that applies. For injected and tenderised red meat it is 155 F for 15 s;
// MinimaFor has the cooler, longer pairs. An unknown category gets 165 F.
func MinimumFor(c Category, p Prep) Minimum {
	m := chartMinimum(c, p)
	if p.Stuffed && m.CoreC <= celsius(stuffed.coreF) {
		rest := m.RestMinutes
		m = stuffed.minimum()
		m.RestMinutes = rest
	}
	if p.pierced() && c != None && c != Vegetable && m.CoreC < celsius(155) {
		m = piercedMinimum(155, 15, m.RestMinutes)
	}
	return m
}

// MinimaFor lists every published pair of temperature and hold that satisfies the
// rule, the hottest first; for most food it is the one of MinimumFor.
func MinimaFor(c Category, p Prep) []Minimum {
	m := MinimumFor(c, p)
	if m.Source != piercedSource {
		return []Minimum{m}
	}
	floorC := chartMinimum(c, p).CoreC
	var all []Minimum
	for _, pair := range pierced {
		if celsius(pair.coreF) >= floorC {
			all = append(all, piercedMinimum(pair.coreF, pair.holdSeconds, m.RestMinutes))
		}
	}
	return all
}

// ReheatMinimum is the rule for anything cooked, chilled and warmed again, and
// ReheatWithinMinutes the time it may take to get there.
func ReheatMinimum() Minimum {
	m := MinimumFor(Leftovers, Prep{})
	m.HoldSeconds, m.Source = 15, "fda_3_403_11"
	return m
}

// ReheatWithinMinutes is the longest that reheating may take (FDA Food Code 3-403.11).
const ReheatWithinMinutes = 120.0

func piercedMinimum(coreF, holdSeconds, restMin float64) Minimum {
	return Minimum{CoreC: celsius(coreF), HoldSeconds: holdSeconds, RestMinutes: restMin,
		Source: piercedSource, Note: "injected or mechanically tenderised"}
}

func chartMinimum(c Category, p Prep) Minimum {
	if c == HamCooked && p.InspectedPlant {
		return inspectedHam.minimum()
	}
	for _, row := range minimums {
		if row.category == c {
			return row.minimum()
		}
	}
	if c == None || c == Vegetable {
		return Minimum{}
	}
	return Minimum{CoreC: celsius(165), Source: "fsg_safemin_2019", Note: "unknown category: the strictest row"}
}

// celsius converts a table's degrees Fahrenheit.
func celsius(f float64) float64 { return unit.FToC(f) }

// spoken writes a temperature for a sentence in both scales: "145 °F (63 °C)". Celsius is
// rounded up to whole degrees: a minimum that is rounded down is another minimum.
func spoken(c float64) string {
	const tolerance = 0.01 // K; what conversion leaves is no degree more
	return spokenAs(c-tolerance, math.Ceil)
}

// spokenMost is spoken for the most that may be.
func spokenMost(c float64) string { return spokenAs(c, math.Floor) }

func spokenAs(c float64, whole func(float64) float64) string {
	return fmt.Sprintf("%.0f °F (%.0f °C)", unit.Temperature(c).Fahrenheit(), whole(c))
}

// spokenMinutes writes a duration for a sentence: "45 min", "2 hr", "2 hr 40 min".
func spokenMinutes(minutes float64) string {
	n := int(minutes + 0.5)
	switch h, m := n/60, n%60; {
	case h == 0:
		return fmt.Sprintf("%d min", m)
	case m == 0:
		return fmt.Sprintf("%d hr", h)
	default:
		return fmt.Sprintf("%d hr %d min", h, m)
	}
}
