package assemble

import (
	"math"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/unit"
)

// The integral over the plan's own curve, added up row by row of the table, agrees
// with the one over the finer history up to the take-off.
func TestLethalityAgreesWithTheCurve(t *testing.T) {
	d := dayOf(t, "grill: {kind: kettle, diameter: 22 in}\n")
	it := &d.Items[0]
	ways := d.WaysAt(it, it.Lots[0], day.Spot{Band: schedule.BandLow, LevelC: unit.FToC(250)})
	p := &arrange.Placed{Batch: &arrange.Batch{It: it, Number: 1, MassKg: it.Lots[0].MassKg, Count: 1, Ways: ways}, Way: ways[0], On: 1200, Wrap: math.NaN()}
	table, _ := safety.LethalityTableFor(it.Category, 24)
	sum, low := 0.0, 0.0
	curve := d.curve(p)
	for i := 1; i < len(curve); i++ {
		a, b := curve[i-1], curve[i]
		if b.CoreC > unit.FToC(150) { // from here on the table is all but instant
			break
		}
		sum += b.At.Sub(a.At).Seconds() / table.Seconds(b.CoreC)
		low += b.At.Sub(a.At).Seconds() / table.Seconds(a.CoreC)
	}
	l, err := table.Integrate(d.coreHistory(p))
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("to 150 F between %.2f and %.2f of the table; the history as a whole %.1f", low, sum, l.Fraction)
	if l.Fraction < low || !l.Reached {
		t.Errorf("%.2f of the table over the whole cook, %.2f already below 150 F", l.Fraction, low)
	}
}
