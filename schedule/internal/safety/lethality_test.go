package safety

import (
	"fmt"
	"math"
	"testing"
)

// productOf names the tables of the file as the code does.
var productOf = map[string]Product{
	"beef, corned beef, roast beef": BeefProduct,
	"whole meat roasts":             RoastProduct, "whole beef and pork roasts": RoastProduct,
	"chicken": ChickenProduct, "turkey": TurkeyProduct, "chicken or turkey, larger value": PoultryProduct,
}

func zeroIfBlank(v float64) float64 {
	if math.IsNaN(v) {
		return 0
	}
	return v
}

func tableOfRow(t testing.TB, r row) LethalityTable {
	return tableOf(productOf[r["product"]], zeroIfBlank(r.number(t, "fat_pct")), r["source"],
		zeroIfBlank(r.number(t, "log_reduction")))
}

// Every published row is reproduced: the time itself, and an even hold for just that
// long adds up to one, at its very end.
func TestEveryLethalityRow(t *testing.T) {
	rows := readRows(t, "lethality.csv")
	printed := 0
	for _, table := range LethalityTables() {
		printed += len(table.points)
	}
	finite := 0
	for _, r := range rows {
		table, f, want := tableOfRow(t, r), r.number(t, "internal_f"), r.number(t, "hold_seconds")
		c := celsius(f)
		if got := table.Seconds(c); !near(got, want) {
			t.Errorf("%s %s %v °F: %v s, want %v", r["source"], r["product"], f, got, want)
		}
		l, err := table.Integrate([]Sample{{5, c}, {5 + want/60, c}})
		if err != nil {
			t.Fatal(err)
		}
		if !near(l.Fraction, 1) || l.Reached && !near(l.ReachedMinute, 5+want/60) {
			t.Errorf("%s %s %v °F held %v s: fraction %v, reached at %v", r["source"], r["product"], f, want, l.Fraction, l.ReachedMinute)
		}
		if want > 0 {
			finite++
			short, _ := table.Integrate([]Sample{{5, c}, {5 + 0.99*want/60, c}})
			if short.Reached || !near(short.Fraction, 0.99) {
				t.Errorf("%s %v °F: a hold one per cent short gives %v", r["source"], f, short.Fraction)
			}
		}
	}
	if finite != printed {
		t.Errorf("file has %d rows with a time, tables %d", finite, printed)
	}
}

// The Food Code leaves out rows that Appendix A prints, and has the same times in
// the others: what interpolation puts there can be compared with print. Up to 145 °F
// the times are printed in whole minutes, above in seconds: tolerance is half of that
// unit in the row, half of both neighbours' (a mean of their logarithms stands in),
// and half a per cent for the bend of the curve.
func TestInterpolationAgainstPrintedRows(t *testing.T) {
	code := tableOf(RoastProduct, 0, "fda_3_401_11B", 0)
	printed := tableOf(BeefProduct, 0, "fsis_app_a_beef", 6.5).points
	rounding := func(i int) float64 {
		p := printed[min(max(i, 0), len(printed)-1)]
		if p.coreF > 145 {
			return 0.5 / p.seconds
		}
		return 30 / p.seconds
	}
	worst := 0.0
	for i, p := range printed {
		off := math.Abs(code.Seconds(celsius(p.coreF))/p.seconds - 1)
		worst = max(worst, off)
		if off > rounding(i)+(rounding(i-1)+rounding(i+1))/2+0.005 {
			t.Errorf("%v °F: interpolated %.1f s, printed %v (%.1f %%)", p.coreF, code.Seconds(celsius(p.coreF)), p.seconds, off*100)
		}
	}
	t.Logf("worst %.1f %%", worst*100)
}

// One table prints times for 6.5 and 7 decades. Reductions add up in proportion to
// time (first order) if the columns differ by 7/6.5; from 146 °F on they are printed
// to the second, so each may be off by half of one.
func TestDecadesAreProportionalToTime(t *testing.T) {
	less, more := tableOf(BeefProduct, 0, "fsis_app_a_beef", 6.5), tableOf(BeefProduct, 0, "fsis_app_a_beef", 7)
	for i, p := range less.points {
		if p.coreF < 146 {
			continue
		}
		lo, hi := (p.seconds-0.5)*7/6.5-0.5, (p.seconds+0.5)*7/6.5+0.5
		if s := more.points[i].seconds; s < lo || s > hi {
			t.Errorf("%v °F: %v s for 6.5, %v s for 7 decades", p.coreF, p.seconds, s)
		}
	}
}

// brute adds up a history by the midpoint rule in tiny steps, with its own
// interpolation of the file's rows.
func brute(rows []lethalityPoint, samples []Sample, steps int) float64 {
	seconds := func(f float64) float64 {
		if f < rows[0].coreF {
			return math.Inf(1)
		}
		for i := 1; i < len(rows); i++ {
			if f <= rows[i].coreF {
				w := (rows[i].coreF - f) / (rows[i].coreF - rows[i-1].coreF)
				return math.Exp(w*math.Log(rows[i-1].seconds) + (1-w)*math.Log(rows[i].seconds))
			}
		}
		return rows[len(rows)-1].seconds
	}
	sum := 0.0
	for i := 1; i < len(samples); i++ {
		a, b := samples[i-1], samples[i]
		dt := (b.Minute - a.Minute) / float64(steps)
		for k := 0; k < steps; k++ {
			share := (float64(k) + 0.5) / float64(steps)
			sum += dt * 60 / seconds(fahrenheit(a.C+share*(b.C-a.C)))
		}
	}
	return sum
}

func fileRows(t testing.TB, table LethalityTable) []lethalityPoint {
	var out []lethalityPoint
	for _, r := range readRows(t, "lethality.csv") {
		own := tableOfRow(t, r)
		if s := r.number(t, "hold_seconds"); s > 0 && own.Source == table.Source && own.Product == table.Product &&
			own.FatPct == table.FatPct && own.LogReduction == table.LogReduction {
			out = append(out, lethalityPoint{r.number(t, "internal_f"), s})
		}
	}
	return out
}

// Ramps up, down, through a plateau and below the table. The midpoint rule's own error
// is about 1e-4 of a jump's step (the rate jumps at the first row).
func TestRampsAgainstFineSteps(t *testing.T) {
	for _, table := range LethalityTables() {
		rows := fileRows(t, table)
		top := rows[len(rows)-1].coreF
		histories := [][]Sample{
			{{0, celsius(40)}, {240, celsius(top)}},
			{{0, celsius(top)}, {90, celsius(100)}},
			{{0, celsius(120)}, {30, celsius(rows[0].coreF + 2)}, {50, celsius(rows[0].coreF + 2)}, {70, celsius(top - 1)}, {71, celsius(70)}},
			{{0, celsius(rows[0].coreF - 5)}, {600, celsius(rows[0].coreF - 1)}},
		}
		for i, h := range histories {
			l, err := table.Integrate(h)
			if err != nil {
				t.Fatal(err)
			}
			want := brute(rows, h, 100000)
			if math.Abs(l.Fraction-want) > 2e-4*math.Max(want, 0.01) {
				t.Errorf("%s %s %v pct, history %d: %.8f, fine steps %.8f", table.Source, table.Product, table.FatPct, i, l.Fraction, want)
			}
		}
	}
}

// A ramp inside one interval has a closed form: the logarithm of the rate rises
// evenly, so the integral is (rate1 - rate0) * minutes / ln(rate1 / rate0).
func TestRampInClosedForm(t *testing.T) {
	table := tableOf(ChickenProduct, 1, "fsis_poultry_2005", 7)
	r0, r1 := 60/1512.0, 60/504.0 // rows at 140 and 145 F, a minute
	l, err := table.Integrate([]Sample{{0, celsius(140)}, {10, celsius(145)}})
	if err != nil {
		t.Fatal(err)
	}
	if want := 10 * (r1 - r0) / math.Log(r1/r0); !near(l.Fraction, want) || !near(l.LogReduction, 7*want) {
		t.Errorf("fraction %v, %v decades; want %v", l.Fraction, l.LogReduction, want)
	}
}

func TestInstantRowIsReachedOnTheWay(t *testing.T) {
	table, _ := LethalityTableFor(Beef, 0)
	l, err := table.Integrate([]Sample{{0, celsius(40)}, {1.2, celsius(160)}})
	if err != nil {
		t.Fatal(err)
	}
	if !l.Reached || math.Abs(l.ReachedMinute-1.18) > 1e-9 { // (158-40)/(160-40) of 1.2 min
		t.Errorf("reached %v at %v, want at 1.18", l.Reached, l.ReachedMinute)
	}
}

// When a ramp comes to 1: the closed form is compared with fine steps up to there.
func TestReachedMinuteOnARamp(t *testing.T) {
	for _, table := range LethalityTables() {
		rows := fileRows(t, table)
		h := []Sample{{0, celsius(rows[0].coreF)}, {2000, celsius(rows[len(rows)-1].coreF)}}
		l, err := table.Integrate(h)
		if err != nil || !l.Reached {
			t.Fatalf("%+v, %v", l, err)
		}
		share := l.ReachedMinute / 2000
		until := []Sample{h[0], {l.ReachedMinute, h[0].C + share*(h[1].C-h[0].C)}}
		if got := brute(rows, until, 100000); math.Abs(got-1) > 1e-6 {
			t.Errorf("%s %s: %v at the minute it is reached", table.Source, table.Product, got)
		}
	}
}

func ExampleLethalityTable_Integrate() {
	table, _ := LethalityTableFor(Beef, 0)
	half := 37.0 / 2 // minutes; the table prints 37 min at 135 F for 7 decades
	l, _ := table.Integrate([]Sample{{0, celsius(135)}, {half, celsius(135)}})
	fmt.Printf("%.1f of %g decades, by %s\n", l.LogReduction, table.LogReduction, Document(table.Source))
	// Output:
	// 3.5 of 7 decades, by USDA FSIS, Appendix A, Compliance Guidelines for Meeting Lethality Performance Standards, 1999
}
