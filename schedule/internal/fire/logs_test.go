package fire

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"
)

// Reports of home cooks on kettles, compared, not fitted (two guides set the bed of a hot fire, and say so). Gauges are
// uncalibrated and sizes often missing: what is asked is that the promised range, a factor of two, covers most rows and
// that the errors do not grow.
func TestAgainstKettleLogs(t *testing.T) {
	var sum, worst float64
	within, rows := 0, readLogs(t)
	for _, r := range rows {
		got, want := r.predicted(t), r.number(t, "value")
		off := math.Log(got / want)
		if r["bound"] == "at-least" {
			off = min(off, 0)
		}
		sum += math.Abs(off)
		worst = max(worst, math.Abs(off))
		if math.Abs(off) <= math.Log(rangeFactor) {
			within++
		}
		t.Logf("%s %-12s logged %-8s %5.2f  model %5.2f  (%+.0f %%)", r["id"], r["compare"], r["bound"], want, got, 100*(got/want-1))
	}
	typical := math.Exp(sum / float64(len(rows)))
	t.Logf("%d of %d within a factor of two, typically off by a factor of %.2f, at worst %.2f", within, len(rows), typical, math.Exp(worst))
	// Measured: 11 of 12, 1.39, 2.36 (F054, whose whole ring of the thickest rows is said to hold 6 h; a third of a thin one, F052, as long).
	if within < len(rows)-1 || typical > 1.45 || math.Exp(worst) > 2.5 {
		t.Errorf("worse than it was: %d of %d, typical %.2f, worst %.2f", within, len(rows), typical, math.Exp(worst))
	}
}

type logRow map[string]string

func readLogs(t *testing.T) []logRow {
	file, err := os.Open("testdata/fuel_logs_kettle.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	records, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []logRow
	for _, record := range records[1:] {
		row := logRow{}
		for i, name := range records[0] {
			row[name] = record[i]
		}
		rows = append(rows, row)
	}
	return rows
}

func (r logRow) number(t *testing.T, column string) float64 {
	x, err := strconv.ParseFloat(r[column], 64)
	if err != nil {
		t.Fatalf("%s.%s: %v", r["id"], column, err)
	}
	return x
}

func (r logRow) predicted(t *testing.T) float64 {
	g := kettle(r.number(t, "diameter_in"))
	g.Fuel = Fuel(r["fuel"])
	level, w := fahrenheit(r.number(t, "grate_f")), Weather{AirC: fahrenheit(r.number(t, "air_f"))}
	hourly := g.RateKgPerHour(level, w)
	switch r["compare"] {
	case "rate":
		return g.RatePerHour(level, w)
	case "ring-hours":
		section, _ := g.sectionFor(hourly)
		for _, s := range sections {
			if s.String() == r["section"] {
				section = s
			}
		}
		return (g.ringKg(section)*r.number(t, "ring_share") + r.number(t, "lit")*briquetteKg) / hourly
	case "basket-hours":
		return g.basketKg() / hourly
	case "bed-hours":
		return g.chimneyKg() / 2 / hourly
	case "bed-kg":
		const hours = 3.75
		return g.Plan(Fire{TwoZone, level}, Need{Slices: []Slice{{hours * 60, w}}, First: true}).Expected.MassKg
	case "layer-hours":
		return g.Plan(Fire{Spread, level}, Need{Slices: []Slice{{60, w}}, First: true}).LastsMinutes / 60
	}
	t.Fatalf("%s: nothing to compare", r["id"])
	return 0
}
