package cut

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/cookday/schedule/internal/testbed"
)

func celsius(f float64) float64 { return (f - 32) * 5 / 9 }

// Ground meat, sausage and poultry offer no doneness below the published minimum;
// whole meat may, and then says so. fsg_safemin_2019; the tolerance is rounding only.
func TestDonenessAgainstPublishedMinimum(t *testing.T) {
	minimum, rest := map[string]float64{}, map[string]float64{}
	for _, row := range testbed.Rows(t, "testdata/safe_minimum.csv") {
		minimum[row["our_food"]] = celsius(number(t, row["internal_f"]))
		if row["rest_min"] != "" {
			rest[row["our_food"]] = number(t, row["rest_min"])
		}
	}
	redByDefault := map[string]bool{ // served medium-rare: common practice, no source
		"steak": true, "steak-sirloin": true, "steak-tender": true, "tri-tip": true, "picanha": true,
		"flank-steak": true, "skirt-steak": true, "hanger-steak": true, "bavette": true, "steak-shoulder": true,
	}
	for _, c := range All() {
		if c.Style == Timed {
			continue
		}
		least, known := minimum[c.Food]
		if !known {
			t.Errorf("%s: food %q has no published minimum in the test table", c.Name, c.Food)
		}
		for _, d := range c.Doneness {
			below := d.CoreC < least-1e-9
			if below && (c.Ground || c.Poultry || c.Food == "leftovers") {
				t.Errorf("%s %s: %.1f C is below the published minimum of %.1f C", c.Name, d.Name, d.CoreC, least)
			}
			if says := strings.Contains(d.Text, "below the USDA minimum"); says != below {
				t.Errorf("%s %s: below the minimum is %v, the text says %v", c.Name, d.Name, below, says)
			}
			if d.Default && below != redByDefault[c.Name] {
				t.Errorf("%s: default %s is below the minimum: %v", c.Name, d.Name, below)
			}
		}
		if c.Rest.MinMinutes < rest[c.Food] {
			t.Errorf("%s: rests %v min, published %v", c.Name, c.Rest.MinMinutes, rest[c.Food])
		}
	}
}

func TestEntriesAreSound(t *testing.T) {
	foods := []string{"beef", "pork", "veal", "lamb", "ham", "ham-cooked", "poultry", "fish", "ground", "sausage", "leftovers", "vegetable", "none"}
	spreads := []string{"brisket", "tough", "chuck", "tough-thin", "roast", "lamb", "bird", "flat-bird", "small", "direct"}
	for _, c := range All() {
		holds := map[string]bool{
			"title, plural and look":    c.Title != "" && c.Plural != "" && strings.HasSuffix(c.Look, "."),
			"style":                     slices.Contains([]Style{Tough, Roast, Bird, Small, Timed}, c.Style),
			"food":                      slices.Contains(foods, c.Food),
			"spread":                    slices.Contains(spreads, c.Spread),
			"source":                    len(c.Sources) > 0,
			"estimate says so":          c.Estimate == slices.Contains(c.Sources, "estimate"),
			"growth sums to 1":          math.Abs(c.Shape.Growth[0]+c.Shape.Growth[1]+c.Shape.Growth[2]-1) < 1e-12,
			"sides in order":            c.Shape.ThicknessM <= c.Shape.WidthM && c.Shape.WidthM <= c.Shape.LengthM,
			"factors":                   c.WetFactor > 0 && c.WetFactor <= 1 && c.SupplyFactor > 0 && c.SupplyFactor <= 1,
			"footprint and radius":      (c.Shape.FootprintScale >= 1 || math.Abs(c.Shape.FootprintScale*math.Exp(c.Shape.LogSize)-1) < 0.01) && (c.Shape.RadiusScale == 1 || c.Shape.RadiusScale == 1.165),
			"weights in order":          0 < c.MinPieceKg && c.MinPieceKg < c.Typical && c.Typical < c.MaxPieceKg,
			"reference weight in range": c.MinPieceKg < c.Shape.ReferenceKg && c.Shape.ReferenceKg < c.MaxPieceKg,
			"serving and loss":          c.ServingKg > 0.05 && c.ServingKg < 1 && c.LossFraction > 0 && c.LossFraction < 0.7,
			"rest in order":             0 <= c.Rest.MinMinutes && c.Rest.MinMinutes <= c.Rest.IdealMinutes && c.Rest.IdealMinutes < c.Rest.LongestMinutes,
			"hold cost":                 c.HoldCostTenths > 0,
			"wrap":                      (c.Wrap.With == "none") == (c.Wrap.FromC == 0) && (c.Wrap.With == "none" || c.WrapAllowed && c.Wrap.With == "foil"),
			"timed goes by minutes":     (c.Style == Timed) == (c.Timed[0] > 0) && slices.IsSorted(c.Timed[:]),
			"tender clock":              slices.IsSorted(c.TenderMinutes[:]) && (c.TenderMinutes[0] > 0) == (c.TenderAboveC > 0),
			"composition":               sumsToOne(c),
			"doneness":                  donenessInOrder(c),
			"places":                    placesSound(c),
		}
		for what, ok := range holds {
			if !ok {
				t.Errorf("%s: %s", c.Name, what)
			}
		}
	}
}

// Meat has no carbohydrate to speak of; what the tables leave is rounding and glycogen
// (up to 1 %), in sausages also filler (0.7 % in usda_sr26 07063).
func sumsToOne(c Cut) bool {
	k := c.Composition
	sum := k.Water + k.Protein + k.Fat + k.Ash
	if c.Style == Timed { // the rest is starch and sugar
		return sum > 0.3 && sum < 1
	}
	return math.Abs(sum-1) < 0.0151
}

func donenessInOrder(c Cut) bool {
	defaults := 0
	for i, d := range c.Doneness {
		if d.Default {
			defaults++
		}
		if d.Name == "" || d.Text == "" || i > 0 && d.CoreC <= c.Doneness[i-1].CoreC {
			return false
		}
	}
	if c.Style == Timed {
		return len(c.Doneness) == 0
	}
	return defaults == 1
}

// Bands in deg F: low 225-275 and the 300 that low and hot cooks share, hot 350-400 and
// the 325 that layouts of both kinds reach and that roasting charts use, sear from 550
// (common practice, no source). Birds are not cooked below 300: their skin is rubber then.
func placesSound(c Cut) bool {
	bands := map[string][2]float64{"low": {225, 300}, "hot": {325, 400}, "sear": {550, 700}}
	for _, p := range c.Places {
		band, ok := bands[p.Band]
		direct := p.Direct || p.Band != "sear" // searing is over the coals
		if !ok || !direct || len(p.LevelsC) == 0 || p.Direct && p.Band == "low" {
			return false
		}
		for _, l := range p.LevelsC {
			coolBird := c.Poultry && l < celsius(300)-1e-9
			if coolBird || l < celsius(band[0])-1e-9 || l > celsius(band[1])+1e-9 {
				return false
			}
		}
	}
	return len(c.Places) > 0
}

// Common practice, no source: spare ribs take 5-6 h and baby backs 4-5 h in the low
// band; brisket sliced at 203 F; chicken at 375 F; burgers over the coals.
func TestHabitsOfTheTrade(t *testing.T) {
	if got := find(t, "spare-ribs").TenderMinutes; got != [2]float64{300, 360} {
		t.Errorf("spare ribs: %v", got)
	}
	if got := find(t, "baby-backs").TenderMinutes; got != [2]float64{240, 300} {
		t.Errorf("baby backs: %v", got)
	}
	if d, ok := find(t, "brisket").DefaultDoneness(); !ok || d.Name != "sliced" || d.CoreC != celsius(203) {
		t.Errorf("brisket: %v", d)
	}
	if p := find(t, "chicken").Places[0]; p.Direct || p.Band != "hot" || p.LevelsC[0] != celsius(375) {
		t.Errorf("chicken: %v", p)
	}
	if p := find(t, "burger").Places[0]; !p.Direct || p.Band != "hot" {
		t.Errorf("burger: %v", p)
	}
	if _, ok := find(t, "steak").FindDoneness("medium-rare"); !ok {
		t.Error("no medium-rare steak")
	}
	if _, ok := find(t, "corn").DefaultDoneness(); ok {
		t.Error("corn has a core temperature")
	}
}

// A fault in the tables is found, and names the cut.
func TestLoadRefuses(t *testing.T) {
	for name, c := range map[string]struct{ from, to, want string }{
		"unknown habit": {"habit: ribs, title: Baby", "habit: riba, title: Baby", "baby-backs"},
		"unknown field": {"serving: 16 oz, loss: 0.43", "servings: 16 oz, loss: 0.43", "servings"},
		"no unit":       {"serving: 16 oz, loss: 0.43", "serving: 16, loss: 0.43", "needs a unit"},
		"missing cut":   {"\n  duck: {", "\n  drake: {", "duck"},
	} {
		broken := strings.Replace(string(kitchenYAML), c.from, c.to, 1)
		if broken == string(kitchenYAML) {
			t.Errorf("%s: nothing to break", name)
		}
		if _, err := load(bodiesCSV, []byte(broken), namesYAML); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: got %v", name, err)
		}
	}
}

func BenchmarkLoad(b *testing.B) {
	for b.Loop() {
		if _, err := load(bodiesCSV, kitchenYAML, namesYAML); err != nil {
			b.Fatal(err)
		}
	}
}

// What is rolled or pushed on a skewer has part of its outside inside, and carries that
// preparation, by whatever name it is called; poultry and ground meat are held to their
// minimum anyway. Rules of rolled and skewered meat: fda_3_401_11.
func TestRolledAndSkeweredSaySo(t *testing.T) {
	found := 0
	for _, c := range All() {
		says := slices.ContainsFunc(c.names(), func(name string) bool {
			name = strings.ToLower(name)
			return strings.Contains(name, "rolled") || strings.Contains(name, "skewer") || strings.Contains(name, "kebab")
		})
		if !says || c.Poultry || c.Ground {
			continue
		}
		found++
		if !slices.Contains(c.Prep, "rolled") {
			t.Errorf("%s: its names say rolled or skewered, its preparation is %v", c.Name, c.Prep)
		}
		if c.Doneness[0].CoreC < celsius(145)-1e-9 {
			t.Errorf("%s: offers %s below its minimum", c.Name, c.Doneness[0].Name)
		}
	}
	if found < 5 { // three skewers and two rolled roasts
		t.Errorf("only %d", found)
	}
}
