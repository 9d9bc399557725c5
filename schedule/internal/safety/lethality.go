package safety

import (
	"math"
	"slices"

	"example.com/cookday/schedule/unit"
)

// Product is what a lethality table was published for.
type Product string

// The products.
const (
	BeefProduct    Product = "beef" // beef, corned beef, roast beef
	RoastProduct   Product = "whole meat roasts"
	ChickenProduct Product = "chicken"
	TurkeyProduct  Product = "turkey"
	PoultryProduct Product = "chicken or turkey" // the larger value of the two
)

// LethalityTable is one column of a published time and temperature table.
type LethalityTable struct {
	Product      Product
	FatPct       float64 // poultry only
	LogReduction float64 // decades of Salmonella; 0: not printed
	Source       string
	Note         string
	instantF     float64 // reached at once from here on; 0: nothing printed
	points       []lethalityPoint
}

type lethalityPoint struct{ coreF, seconds float64 }

// LethalityTableFor picks the table for a piece: for beef the 7-log column, for other
// whole muscle the Food Code's roasts, for poultry the leanest column that is at
// least as fat (12 pct for fatter ones: nothing more is printed), and of two birds the
// slower; false where nothing is published (ground meat, fish). fatPct is in percent
// of mass. The caller leaves out stuffed pieces: no table covers a stuffing.
func LethalityTableFor(c Category, fatPct float64) (LethalityTable, bool) {
	switch c {
	case Beef:
		return tableOf(BeefProduct, 0, "fsis_app_a_beef", 7), true
	case Veal, Lamb, Pork, Ham:
		return tableOf(RoastProduct, 0, "fda_3_401_11B", 0), true
	case Poultry:
		switch {
		case fatPct <= 1:
			return tableOf(TurkeyProduct, 1, "fsis_poultry_2005", 7), true
		case fatPct <= 5:
			return tableOf(TurkeyProduct, 5, "fsis_poultry_2005", 7), true
		}
		return tableOf(PoultryProduct, 12, "fsis_poultry_2005", 7), true
	}
	return LethalityTable{}, false
}

func tableOf(p Product, fatPct float64, source string, logs float64) LethalityTable {
	for _, t := range lethalityTables {
		if t.Product == p && t.FatPct == fatPct && t.Source == source && t.LogReduction == logs {
			return t
		}
	}
	panic("safety: no lethality table for " + string(p))
}

// Seconds is how long the core has to stay at coreC for the whole reduction: printed
// at the table's points, between them with the logarithm of the time linear in
// temperature. Below the table it is +Inf; above it the last printed time stands, up to
// the row that prints "at once", from where on it is 0.
func (t LethalityTable) Seconds(coreC float64) float64 {
	return t.seconds(unit.Temperature(coreC).Fahrenheit())
}

// tableRounding puts a temperature that has been to Celsius and back on its row.
const tableRounding = 1e-9

func (t LethalityTable) seconds(f float64) float64 {
	if t.instantF > 0 && f >= t.instantF-tableRounding {
		return 0
	}
	last := t.points[len(t.points)-1]
	switch {
	case f < t.points[0].coreF-tableRounding:
		return math.Inf(1)
	case f >= last.coreF-tableRounding:
		return last.seconds
	}
	i := 1
	for t.points[i].coreF < f {
		i++
	}
	a, b := t.points[i-1], t.points[i]
	share := (f - a.coreF) / (b.coreF - a.coreF)
	return a.seconds * math.Pow(b.seconds/a.seconds, share)
}

// Lethality is what a core history adds up to against a table. It is information and
// never a permission: the published minimum and its rest stand beside it.
type Lethality struct {
	Table LethalityTable
	// Fraction of the table's reduction: 1 is the whole. It goes on growing, except
	// that where the table prints "at once" it is only known to be 1 or more.
	Fraction float64
	// LogReduction is Fraction of the table's decades; 0 if the table prints none.
	LogReduction  float64
	Reached       bool    // Fraction came to 1
	ReachedMinute float64 // when it did
}

// Integrate adds up dt / Seconds(core) over a history, exactly for a temperature that
// changes evenly between samples.
func (t LethalityTable) Integrate(core []Sample) (Lethality, error) {
	l := Lethality{Table: t}
	if err := checkSamples(core); err != nil {
		return l, err
	}
	for i, s := range core {
		from := s // one sample alone still shows an instant reduction
		if i > 0 {
			from = core[i-1]
		}
		t.segment(&l, from, s)
	}
	l.LogReduction = l.Fraction * t.LogReduction
	return l, nil
}

// segment adds one evenly changing stretch, cut at the table's rows, so that within a
// piece the logarithm of the rate is linear in time.
func (t LethalityTable) segment(l *Lethality, a, b Sample) {
	fromF, toF := unit.Temperature(a.C).Fahrenheit(), unit.Temperature(b.C).Fahrenheit()
	at := a.Minute
	for _, nextF := range t.cuts(fromF, toF) {
		end := b.Minute
		if toF != fromF {
			end = a.Minute + (b.Minute-a.Minute)*(nextF-a.fahrenheit())/(toF-a.fahrenheit())
		}
		t.piece(l, at, end, fromF, nextF)
		at, fromF = end, nextF
	}
}

func (s Sample) fahrenheit() float64 { return unit.Temperature(s.C).Fahrenheit() }

// cuts lists the rows strictly between two temperatures in the order in which they
// are passed, and then the end itself.
func (t LethalityTable) cuts(fromF, toF float64) []float64 {
	var rows []float64
	between := func(f float64) {
		if f > min(fromF, toF) && f < max(fromF, toF) {
			rows = append(rows, f)
		}
	}
	for _, p := range t.points {
		between(p.coreF)
	}
	if t.instantF > 0 {
		between(t.instantF)
	}
	if fromF > toF {
		slices.Reverse(rows)
	}
	return append(rows, toF)
}

func (t LethalityTable) piece(l *Lethality, start, end, fromF, toF float64) {
	r0, r1 := t.ratesInside(fromF, toF)
	if math.IsInf(r0, 1) {
		l.Fraction = max(l.Fraction, 1)
		l.reach(start)
		return
	}
	if r0 == 0 || end == start {
		return
	}
	span, growth := end-start, math.Log(r1/r0)
	add := r0 * span
	if math.Abs(growth) > 1e-9 {
		add = span * (r1 - r0) / growth
	}
	if need := 1 - l.Fraction; need > 0 && add >= need {
		wait := need / r0
		if math.Abs(growth) > 1e-9 {
			wait = span / growth * math.Log1p(need*growth/(r0*span))
		}
		l.reach(start + wait)
	}
	l.Fraction += add
}

// ratesInside are the shares a minute at both ends of a piece, as seen from inside
// it: at the table's edges the rate jumps. Both are +Inf from the instant row on.
func (t LethalityTable) ratesInside(fromF, toF float64) (r0, r1 float64) {
	middle := 60 / t.Seconds(celsius((fromF+toF)/2))
	if middle == 0 || math.IsInf(middle, 1) || (fromF+toF)/2 >= t.points[len(t.points)-1].coreF {
		return middle, middle
	}
	return 60 / t.Seconds(celsius(fromF)), 60 / t.Seconds(celsius(toF))
}

func (l *Lethality) reach(minute float64) {
	if !l.Reached {
		l.Reached, l.ReachedMinute = true, minute
	}
}
