package export

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"time"

	"example.com/cookday/schedule"
)

// Tables that [CSV] writes.
const (
	TableSteps  = "steps"
	TableDishes = "dishes"
)

// CSV writes a table of the plan as RFC 4180 with a header: its steps, or its
// dishes with a row for each batch. The first column says what a row is: step or
// dish, and after those the findings and cautions that go with the plan. Columns
// keep their name, unit and order; new ones come last. The error names a table
// that does not exist, an unknown time zone, or is that of the writer.
func CSV(w io.Writer, p schedule.Plan, table string) error {
	v, err := look(p, time.Time{})
	if err != nil {
		return err
	}
	var t csvTable
	switch table {
	case TableSteps:
		t = v.stepTable()
	case TableDishes:
		t = v.dishTable()
	default:
		return fmt.Errorf("table: %q is not %s or %s", table, TableSteps, TableDishes)
	}
	v.addRemarks(&t)
	out := csv.NewWriter(w)
	out.UseCRLF = true
	out.Write(t.columns) // the error stays with the writer until Flush
	for _, row := range t.rows {
		cells := make([]string, len(t.columns))
		for i, column := range t.columns {
			cells[i] = row[column]
		}
		out.Write(cells)
	}
	out.Flush()
	return out.Error()
}

type csvTable struct {
	columns []string
	rows    []map[string]string
}

func (v *view) stepTable() csvTable {
	t := csvTable{columns: []string{"row", "id", "at", "early", "expected", "late", "local_date", "local_time", "kind", "dish_id", "dish",
		"batch", "phase", "attended", "hands_minutes", "core_c", "grate_c", "done", "text", "why"}}
	for _, s := range v.Steps {
		t.rows = append(t.rows, map[string]string{"row": "step", "id": s.ID, "at": v.instant(s.At),
			"early": v.instant(s.Window.Early), "expected": v.instant(s.Window.Expected), "late": v.instant(s.Window.Late),
			"local_date": v.at(s.At).Format(time.DateOnly), "local_time": v.at(s.At).Format("15:04"),
			"kind": string(s.Kind), "dish_id": cell(s.Dish), "dish": cell(v.names[s.Dish]), "batch": count(s.Batch), "phase": count(s.Phase),
			"attended": strconv.FormatBool(s.Attended), "hands_minutes": number(s.Minutes, 1), "core_c": some(s.CoreC, 1),
			"grate_c": some(s.GrateC, 1), "done": strconv.FormatBool(s.Done), "text": cell(s.Text), "why": cell(s.Why)})
	}
	return t
}

// dishMilestones are the instants that get three columns each in the table of dishes.
var dishMilestones = []schedule.MilestoneKind{schedule.MilestoneOn, schedule.MilestoneStallBegins, schedule.MilestoneWrap, schedule.MilestoneStallEnds,
	schedule.MilestoneTakeOff, schedule.MilestoneRested, schedule.MilestoneServe}

func (v *view) dishTable() csvTable {
	t := csvTable{columns: []string{"row", "id", "name", "cut", "count", "mass_kg", "serve_at", "target_c", "doneness", "minimum_c",
		"way", "chance", "batch", "batch_pieces", "batch_chance", "hold"}}
	for _, kind := range dishMilestones {
		for _, end := range []string{"early", "expected", "late"} {
			t.columns = append(t.columns, strings.ReplaceAll(string(kind), "-", "_")+"_"+end)
		}
	}
	t.columns = append(t.columns, "text")
	for _, d := range v.Dishes {
		for _, b := range d.Batches {
			t.rows = append(t.rows, v.batchRow(d, b))
		}
		if len(d.Batches) == 0 { // a day without a plan
			t.rows = append(t.rows, v.batchRow(d, schedule.Batch{}))
		}
	}
	return t
}

func (v *view) batchRow(d schedule.DishPlan, b schedule.Batch) map[string]string {
	row := map[string]string{"row": "dish", "id": cell(d.ID), "name": cell(d.Name), "cut": cell(d.Cut), "count": count(d.Count),
		"mass_kg": number(d.MassKg, 3), "serve_at": v.instant(d.ServeAt), "target_c": some(d.TargetC, 1), "doneness": cell(d.Doneness),
		"minimum_c": some(d.MinimumC, 1), "way": cell(d.Way), "chance": number(d.Chance, 2), "batch": count(b.Number),
		"batch_pieces": count(len(b.Pieces)), "batch_chance": number(b.Chance, 2), "text": cell(d.Probe)}
	for _, h := range d.Holds {
		if h.Chosen {
			row["hold"] = h.Method
		}
	}
	for _, m := range b.Milestones {
		name := strings.ReplaceAll(string(m.Kind), "-", "_")
		row[name+"_early"], row[name+"_expected"], row[name+"_late"] = v.instant(m.Window.Early), v.instant(m.Window.Expected), v.instant(m.Window.Late)
	}
	return row
}

// addRemarks puts findings and cautions below the table, so that no copy of it goes
// without them.
func (v *view) addRemarks(t *csvTable) {
	for _, f := range v.Findings {
		t.rows = append(t.rows, map[string]string{"row": "finding", "id": cell(f.Code), "text": cell(v.finding(f))})
	}
	for _, c := range v.Cautions {
		t.rows = append(t.rows, map[string]string{"row": "caution", "id": cell(c.Code), "text": cell(sentence(c.Text))})
	}
	t.rows = append(t.rows, map[string]string{"row": "caution", "id": "closing", "text": closing})
}

// cell makes a stranger's text harmless for a spreadsheet: one that starts like a
// formula gets an apostrophe in front, which spreadsheets read as plain text.
func cell(s string) string {
	s = clean(s)
	for _, start := range []string{"=", "+", "-", "@", "＝", "＋", "－", "＠"} {
		if strings.HasPrefix(s, start) {
			return "'" + s
		}
	}
	return s
}

// instant is RFC 3339 with the offset of the plan's zone, to the minute.
func (v *view) instant(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return v.at(t).Format(time.RFC3339)
}

// number prints with a fixed number of decimals, and never a negative zero.
func number(x float64, decimals int) string {
	scale := math.Pow10(decimals)
	return strconv.FormatFloat(math.Round(x*scale)/scale+0, 'f', decimals, 64)
}

// some leaves out what the plan does not know.
func some(x float64, decimals int) string {
	if x == 0 {
		return ""
	}
	return number(x, decimals)
}

func count(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}
