package schedule

import (
	"encoding/csv"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"
	"time"
)

// Logs of home cooks that noted readings on the way (home_cook_report), replayed
// reading by reading. It is a record more than a test: five cooks are few, the
// times are rounded, and two of them changed their fire. No row was fitted to.
func TestCooksWithReadingsReplayed(t *testing.T) {
	rows, err := csv.NewReader(strings.NewReader(readTestFile(t, "testdata/logs/cook_readings.csv"))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	inside, total := 0, 0
	var errors []float64
	for _, r := range rows[1:] {
		real, _ := strconv.ParseFloat(r[3], 64)
		p := revisionDay(t, "format: 1\nserve: {date: 2027-07-04, time: \"20:00\", tz: America/Chicago}\n"+kettle22+"dishes:\n  - {id: d, "+r[2]+"}\n")
		on := revisionStep(t, p, StepPutOn, "d")
		log := fmt.Sprintf("time,dish,kind,value\n%s,d,on,\n", on.Format(time.RFC3339))
		first := revisionTakeOff(t, p, "d")
		line := fmt.Sprintf("%s real %.1f h, first plan %.1f %.1f %.1f", r[1], real, first.Early.Sub(on).Hours(), first.Expected.Sub(on).Hours(), first.Late.Sub(on).Hours())
		for _, pair := range strings.Fields(r[4]) {
			hours, core, _ := strings.Cut(pair, "@")
			h, _ := strconv.ParseFloat(hours, 64)
			at := on.Add(time.Duration(h * float64(time.Hour)))
			log += fmt.Sprintf("%s,d,core,%s F\n", at.Format(time.RFC3339), core)
			w := revisionTakeOff(t, revised(t, p, log, at.Format("2006-01-02 15:04")), "d")
			early, mid, late := w.Early.Sub(on).Hours(), w.Expected.Sub(on).Hours(), w.Late.Sub(on).Hours()
			line += fmt.Sprintf("; %s F at %s h: %.1f %.1f %.1f", core, hours, early, mid, late)
			errors = append(errors, math.Abs(mid/real-1))
			total++
			if real >= early-0.05 && real <= late+0.05 { // the tables give hours to one decimal
				inside++
			}
		}
		t.Log(line)
	}
	m := truthMedian(errors)
	t.Logf("median error %.0f %%, %d of %d inside the windows of 80 %%", 100*m, inside, total)
	if m > 0.15 || inside*3 < total {
		t.Errorf("worse than recorded: median error %.2f, %d of %d inside", m, inside, total)
	}
}
