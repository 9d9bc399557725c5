package export

import (
	"bytes"
	"encoding/csv"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
)

func tableOf(t *testing.T, p schedule.Plan, table string) []map[string]string {
	t.Helper()
	var b bytes.Buffer
	if err := CSV(&b, p, table); err != nil {
		t.Fatal(err)
	}
	if strings.Count(b.String(), "\n") != strings.Count(b.String(), "\r\n") {
		t.Error("a line does not end in CR LF (RFC 4180, section 2)")
	}
	records, err := csv.NewReader(&b).ReadAll() // refuses rows of another length
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]string
	for _, record := range records[1:] {
		row := map[string]string{}
		for i, name := range records[0] {
			row[name] = record[i]
		}
		rows = append(rows, row)
	}
	return rows
}

func kinds(rows []map[string]string) map[string]int {
	n := map[string]int{}
	for _, row := range rows {
		n[row["row"]]++
	}
	return n
}

func TestCSVHasEveryStepAndDish(t *testing.T) {
	p := invented()
	steps := tableOf(t, p, TableSteps)
	if n := kinds(steps); n["step"] != len(p.Steps) || n["caution"] != len(p.Cautions)+1 || n["finding"] != len(p.Findings) {
		t.Errorf("rows: %v", n)
	}
	if at, err := time.Parse(time.RFC3339, steps[1]["at"]); err != nil || !at.Equal(*p.LightAt) || steps[1]["local_time"] != "21:30" {
		t.Errorf("light: %v", steps[1])
	}
	dishes := tableOf(t, p, TableDishes)
	if n := kinds(dishes); n["dish"] != 3 || dishes[0]["mass_kg"] != "5.443" || dishes[0]["take_off_late"] != "2027-07-03T14:30:00-05:00" {
		t.Errorf("dishes: %v %v", n, dishes[0])
	}
}

func TestCSVIsHarmlessInASpreadsheet(t *testing.T) {
	p := invented()
	for in, want := range map[string]string{`=HYPERLINK("http://x")`: `'=HYPERLINK("http://x")`, "\t=1+1": "'=1+1", "\r@x": "'@x", "-2": "'-2", "+1": "'+1",
		"＝1": "'＝1", "\u202e=1": "'=1", `a "quote", and` + "\n line": `a "quote", and line`, "a\x00\x1b[31mb": "a[31mb"} {
		p.Dishes[0].Name = in
		if got := tableOf(t, p, TableDishes)[0]["name"]; got != want {
			t.Errorf("%q: got %q, want %q", in, got, want)
		}
	}
}

func TestCSVRefusesAnUnknownTable(t *testing.T) {
	if err := CSV(&bytes.Buffer{}, invented(), "step"); err == nil || !strings.Contains(err.Error(), `"step" is not steps or dishes`) {
		t.Error(err)
	}
}

func TestCellIsHarmless(t *testing.T) {
	for text, want := range map[string]string{"=1+1": "'=1+1", "+1": "'+1", "-1": "'-1", "@a": "'@a", "a=1": "a=1", "": "", "a\nb": "a b", "\t=1": "'=1"} {
		if got := cell(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}
