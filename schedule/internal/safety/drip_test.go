package safety

import "testing"

// The order of levels (FDA Food Code 3-302.11 for raw over cooked; from below poultry, ground meat, pork, beef, fish,
// vegetables: common practice, no source). Minima are the charts'.
func TestMayHangOver(t *testing.T) {
	at := func(c Category, on, raw, off float64) Hanging {
		return Hanging{Category: c, MinimumC: MinimumFor(c, Prep{}).CoreC, On: on, RawUntil: raw, Off: off}
	}
	butt, beef := at(Pork, 0, 300, 700), at(Beef, 0, 200, 700)
	for _, row := range []struct {
		name         string
		above, below Hanging
		want         bool
	}{
		{"pork over chicken that comes off with it", at(Pork, 600, 660, 700), at(Poultry, 600, 700, 700), true},
		{"chicken over pork", at(Poultry, 600, 690, 700), butt, false},
		{"chicken over pork, one after the other", at(Poultry, 700, 790, 800), butt, true},
		{"pork over beef", butt, beef, false},
		{"beef over pork", beef, butt, true},
		{"raw pork over chicken that comes off sooner", butt, at(Poultry, 100, 190, 200), false},
		{"pork over chicken, when it is raw no more", butt, at(Poultry, 400, 490, 500), true},
		{"pork over bread", at(Pork, 0, 60, 90), at(None, 10, 10, 20), false},
		{"bread over pork", at(None, 10, 20, 20), at(Pork, 0, 60, 90), true},
		{"cooked ham over bread", at(HamCooked, 0, 60, 90), at(None, 10, 10, 20), true},
		{"fish over beef", at(Fish, 650, 700, 700), beef, true},
		{"like pieces", butt, butt, true},
	} {
		if got := MayHangOver(row.above, row.below); got != row.want {
			t.Errorf("%s: %t", row.name, got)
		}
	}
}
