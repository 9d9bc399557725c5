package cut

import (
	"cmp"
	"regexp"
	"strings"
	"testing"

	"example.com/cookday/schedule/internal/testbed"
)

// usualWeight is how the weights of foods.csv begin: "12-16 oz", "whole 3-4 oz", "2-3 lb side".
var usualWeight = regexp.MustCompile(`^\D*([\d.]+)(?:-([\d.]+))? (oz|lb)`)

// The weights that cooks know of a food are plausible for its cut. foods.csv.
func TestUsualWeightsArePlausible(t *testing.T) {
	foods, is := testbed.Rows(t, "testdata/foods.csv"), testbed.Rows(t, "testdata/foods_cuts.csv")
	read := 0
	for i, food := range foods {
		m := usualWeight.FindStringSubmatch(food["typical weight and thickness"])
		cuts := strings.Fields(is[i]["cuts"])
		if m == nil || len(cuts) == 0 {
			continue
		}
		read++
		kg := 0.45359237 // the pound, by definition
		if m[3] == "oz" {
			kg /= 16
		}
		least, most := number(t, m[1])*kg, number(t, cmp.Or(m[2], m[1]))*kg
		const rounding = 1e-9
		if c := find(t, cuts[0]); least < c.MinPieceKg-rounding || most > c.MaxPieceKg+rounding {
			t.Errorf("%s: %.3f to %.3f kg is usual, %s takes %.3f to %.3f", food["name"], least, most, c.Name, c.MinPieceKg, c.MaxPieceKg)
		}
	}
	if read < 70 { // 85 foods are cuts, of which 11 have no weight that is read
		t.Errorf("only %d weights read", read)
	}
}
