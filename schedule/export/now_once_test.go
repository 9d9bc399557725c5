package export_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule/export"
	"example.com/cookday/schedule/internal/plantest"
)

// One question is asked once: what nobody read stood as a warning and again as a step.
func TestOneQuestionIsAskedOnce(t *testing.T) {
	p := plantest.Plan(t, "serve: {date: 2027-08-21, time: \"18:30\", tz: America/Chicago}\ngrill: kettle 22 in\nguests: 6\ndishes: [{cut: sausage, count: 8}]\n")
	var b strings.Builder
	q := plantest.Revised(t, p, "time,dish,kind,value\n2027-08-21 17:10,,lit,\n2027-08-21 18:00,sausage,on,\n2027-08-21 18:25,sausage,pulled,\n", "2027-08-21 18:28")
	if err := export.Now(&b, q, export.Options{Width: 200}); err != nil {
		t.Fatal(err)
	}
	_, do, _ := strings.Cut(b.String(), "Do now\n------\n")
	do, _, _ = strings.Cut(do, "\nNext\n")
	if n := strings.Count(do, "before anybody eats"); n != 1 {
		t.Errorf("asked %d times: %s", n, do)
	}
}
