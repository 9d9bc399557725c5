package fire

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

// controlRow is a report of a home cook (source key home_fire_report).
type controlRow map[string]string

func (r controlRow) or(column string, otherwise float64) float64 {
	if r[column] == "" {
		return otherwise
	}
	x, err := strconv.ParseFloat(r[column], 64)
	if err != nil {
		panic(r["id"] + "." + column + ": " + err.Error())
	}
	return x
}

func (r controlRow) says(words ...string) bool {
	text := r["note"] + " " + r["weather"]
	for _, w := range words {
		if strings.Contains(text, w) {
			return true
		}
	}
	return false
}

func readControl(t *testing.T) []controlRow {
	t.Helper()
	file, err := os.Open("testdata/fire_control.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	records, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []controlRow
	for _, record := range records[1:] {
		row := controlRow{}
		for i, name := range records[0] {
			row[name] = record[i]
		}
		if row["used"] == "1" {
			rows = append(rows, row)
		}
	}
	return rows
}

// grill of a row, and its setting. What a report leaves out is taken so: vents open, 70 F, calm (a rule on inputs only).
func (r controlRow) grill() (Grill, Setting) {
	g := kettle(r.or("diameter_in", 22.5))
	g.Deep = r["grill"] != "kettle"
	g.WaterPan = r.says("water") && !r.says("no water", "boiling away", "dry pan")
	w := Weather{AirC: fahrenheit(r.or("air_f", 70))}
	if r.says("wind") {
		w.WindMS = 4 // 9 mph in the open, for the word
	}
	s := g.Setting(w, min(r.or("top_open", 1), 1), r.or("bottom_open", 1), 0)
	return g, s
}

// modelF is what the lumped fire says of a report, told vents, counts and weather only.
func (r controlRow) modelF() float64 {
	g, s := r.grill()
	t, airF := g.Usual(), r.or("air_f", 70)
	layout := Banked
	if r["layout"] == "ring" {
		layout = Ring
	}
	h := g.Hearth(layout, nil)
	if r["note"] != "" && strings.Contains(r["note"], "2-1-1") {
		h = g.Hearth(layout, Section{2, 1, 1})
	}
	lump := 1.0
	if r["fuel"] == "lump" {
		lump = 1.3 // of its chimney count (assumption)
	}
	unlit := r.or("unlit", 100) * lump
	if r["layout"] == "all-lit" || r["layout"] == "two-zone" {
		unlit = r.or("unlit", 0) * lump
	}
	if r["before_f"] != "" && r["kind"] != "i" && r.or("before_f", 0) > airF+30 {
		c := Coals{RiseK: (r.or("before_f", 0) - airF) / 1.8, Unlit: unlit, Burnt: 15}
		c.Lit = h.litFor(&t, c.RiseK, &s, r["kind"] == "vi")
		if r["kind"] != "vi" && r["lit"] != "" && r["layout"] == "all-lit" {
			c.Lit += r.or("lit", 0) * lump // added
		}
		return airF + 1.8*run(&h, &t, c, &s, r.or("minutes", 45)).RiseK
	}
	if lit := r.or("lit", 0) * lump; lit > 0 {
		minutes := 90.0
		if unlit == 0 {
			minutes = 30
		}
		return airF + 1.8*run(&h, &t, Coals{Lit: lit, Unlit: unlit}, &s, r.or("minutes", minutes)).RiseK
	}
	if r["layout"] == "two-zone" {
		return airF + 1.8*run(&h, &t, Coals{Lit: 100 * lump}, &s, r.or("minutes", 30)).RiseK // a chimney
	}
	rise, _ := h.Established(&t, 15, s)
	return airF + 1.8*rise
}

func run(h *Hearth, t *Traits, c Coals, s *Setting, minutes float64) Coals {
	for m := 0.0; m < minutes; m += 3 {
		c = h.Step(t, c, s, min(3, minutes-m))
	}
	return c
}

// litFor are the lit coals that keep a rise: under these vents, or as established under others.
func (h *Hearth) litFor(t *Traits, riseK float64, s *Setting, these bool) float64 {
	q := riseK * (1 + riseK/curveK) * h.form * s.Loss
	n, qa := t.Full, q/-math.Expm1(-t.Full)
	if these {
		qa = airK(t, h.openings(t, 15, s), riseK, s)
		n = min(-math.Log(max(1-q/qa, 0.02)), 4)
	}
	return n * h.size * qa / t.LitK
}

// thumbF is the rule of thumb: the lesser opening to a level; a change is done in 15 min; untouched stays.
func (r controlRow) thumbF() float64 {
	if r["kind"] == "vi" {
		return r.or("before_f", 0)
	}
	most := 400.0
	if r["layout"] == "all-lit" {
		most = 375
	}
	xs, ys := []float64{0.02, 0.15, 0.35, 0.65, 1}, []float64{200, 225, 250, 300, most}
	x := min(r.or("top_open", 1), r.or("bottom_open", 1), 1)
	to := ys[0]
	for i := 1; i < len(xs) && x > xs[i-1]; i++ {
		to = ys[i-1] + (ys[i]-ys[i-1])*min((x-xs[i-1])/(xs[i]-xs[i-1]), 1)
	}
	if minutes := r.or("minutes", 15); r["kind"] == "ii" && r["before_f"] != "" && minutes < 15 {
		return r.or("before_f", 0) + (to-r.or("before_f", 0))*minutes/15
	}
	return to
}

// Reports of home cooks. The constants were fitted to these rows: this is a guard against getting worse, no
// promise for a stranger's grill (50 F there).
func TestAgainstControlReports(t *testing.T) {
	rows := readControl(t)
	kinds := map[string][3]float64{}
	for _, r := range rows {
		want, model, thumb := r.or("after_f", 0), r.modelF(), r.thumbF()
		t.Logf("%s %-3s %-8s said %3.0f  model %3.0f  thumb %3.0f  %s", r["id"], r["kind"], r["grill"], want, model, thumb, r["note"])
		for _, kind := range []string{r["kind"], "all", r["grill"]} {
			k := kinds[kind]
			kinds[kind] = [3]float64{k[0] + 1, k[1] + math.Abs(model-want), k[2] + math.Abs(thumb-want)}
		}
	}
	for kind, k := range kinds {
		t.Logf("%-9s n %2.0f  mean absolute error %.1f F, rule of thumb %.1f F", kind, k[0], k[1]/k[0], k[2]/k[0])
	}
	// Asked for: at most 43 F over 74 rows; the rule of thumb has 55.
	if all := kinds["all"]; all[0] != 74 || all[1]/all[0] > 43 {
		t.Errorf("%.0f rows, mean absolute error %.1f F", all[0], all[1]/all[0])
	}
}
