package planner_test

import (
	"context"
	"fmt"
	"math"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
	"example.com/cookday/schedule/unit"
)

// gridNoise is what the model's own grid and steps are good for.
const gridNoise = 0.005

var figureNames = [3]string{"early", "expected", "late"}

// gridTimes are early, expected and late take-off in minutes, infinite where the piece
// does not get there: that counts as longest.
type gridTimes struct {
	minutes [3]float64
	lowered bool    // the target is held below the boiling point
	wrapC   float64 // core at the wrap at the expected pace; 0: not wrapped
}

// gridQuestion is a forecast asked by named texts. An inquiry has no name for wind, and
// so it is set beside them.
type gridQuestion struct {
	fields  map[string]string
	windMph float64
}

func (q gridQuestion) ask(t *testing.T) gridTimes {
	t.Helper()
	inquiry, err := schedule.ReadInquiry(q.fields)
	if err != nil {
		t.Fatalf("%v: %v", q.fields, err)
	}
	const mphMS = 0.44704
	inquiry.Weather.Wind = unit.Speed(q.windMph * mphMS)
	o, err := planner.Forecast(context.Background(), inquiry)
	if err != nil {
		t.Fatalf("%v: %v", q.fields, err)
	}
	_, lowered := plantest.Finding(schedule.Plan{Findings: o.Findings}, "target-lowered")
	if !o.Reaches {
		never := math.Inf(1)
		return gridTimes{minutes: [3]float64{never, never, never}, lowered: lowered}
	}
	off := plantest.Milestone(o, schedule.MilestoneTakeOff)
	return gridTimes{
		minutes: [3]float64{off.EarlyMinutes, off.ExpectedMinutes, off.LateMinutes},
		lowered: lowered, wrapC: plantest.Milestone(o, schedule.MilestoneWrap).CoreC,
	}
}

// gridCook is a usual cook whose questions are varied one field at a time.
type gridCook struct {
	cut, weight, wrap, target string // no target: by the clock of tenderness
	lightLb, heavyLb          float64
	leastF, mostF             int // targets
	coolF, warmF              int // grates besides those of the row of grates
}

// Weights, targets and wraps that cooks have (common practice, no source). Targets of
// tough cuts go on to boiling water.
var gridCooks = []gridCook{
	{"brisket", "12 lb", "none", "203 F", 6, 20, 145, 212, 205, 250},
	{"brisket", "12 lb", "foil@165F", "203 F", 6, 20, 166, 212, 205, 250},
	{"pork-butt", "8 lb", "none", "200 F", 4, 12, 145, 212, 225, 275},
	{"pork-butt", "8 lb", "foil@160F", "203 F", 4, 12, 161, 212, 210, 250},
	{"chuck-roast", "4 lb", "none", "203 F", 2, 8, 145, 212, 215, 275},
	{"brisket-flat", "6 lb", "foil@160F", "203 F", 3, 9, 161, 212, 225, 275},
	{"beef-plate-ribs", "6 lb", "none", "203 F", 3, 8, 145, 212, 225, 300},
	{"spare-ribs", "3.25 lb", "none", "", 2, 5, 0, 0, 225, 275},
	{"spare-ribs", "3.25 lb", "none", "200 F", 2, 5, 145, 212, 200, 250},
	{"lamb-shoulder", "4.5 lb", "none", "195 F", 3, 7, 145, 212, 225, 275},
	{"turkey", "14 lb", "none", "165 F", 8, 22, 165, 185, 225, 350},
	{"chicken", "4 lb", "none", "165 F", 3, 7, 165, 185, 250, 375},
	{"chicken-spatchcock", "4.5 lb", "none", "165 F", 3, 7, 165, 185, 225, 325},
	{"rib-roast-bone-in", "7 lb", "none", "130 F", 4, 15, 110, 170, 225, 325},
	{"lamb-leg-rolled", "5 lb", "none", "145 F", 3, 8, 145, 175, 225, 300},
	{"pork-loin", "4 lb", "none", "145 F", 2, 8, 130, 170, 225, 350},
	{"salmon-side", "2.5 lb", "none", "140 F", 1.5, 4, 110, 150, 225, 275},
}

// with is the question of the cook with some fields put otherwise, name by value.
func (c gridCook) with(pairs ...string) gridQuestion {
	q := gridQuestion{fields: map[string]string{"cut": c.cut, "weight": c.weight, "wrap": c.wrap, "layout": "banked"}}
	if c.target != "" {
		q.fields["target"] = c.target
	}
	for i := 0; i < len(pairs); i += 2 {
		q.fields[pairs[i]] = pairs[i+1]
	}
	return q
}

// gridRow is a row of questions, each of which takes no less time than those before it.
type gridRow struct {
	name      string
	questions []gridQuestion
}

// rows are the grates from warm to cool, and for a cool and a warm grate weights, days,
// winds, heights and targets.
func (c gridCook) rows() []gridRow {
	var grates []gridQuestion
	for f := 350.0; f >= 195; f -= 2.5 {
		grates = append(grates, c.with("grate", fmt.Sprintf("%.1f F", f)))
	}
	rows := []gridRow{{"grate", grates}}
	for _, f := range []int{c.coolF, c.warmF} {
		grate := fmt.Sprintf("%d F", f)
		var weights, days, winds, heights, targets []gridQuestion
		for i := range 13 {
			lb := c.lightLb + (c.heavyLb-c.lightLb)*float64(i)/12
			weights = append(weights, c.with("grate", grate, "weight", fmt.Sprintf("%.3f lb", lb)))
		}
		for air := 100; air >= -10; air -= 10 {
			days = append(days, c.with("grate", grate, "air", fmt.Sprintf("%d F", air)))
		}
		for mph := 0.0; mph <= 25; mph += 5 {
			winds = append(winds, gridQuestion{c.with("grate", grate).fields, mph})
		}
		for m := 0; m <= 2400; m += 200 {
			heights = append(heights, c.with("grate", grate, "altitude", fmt.Sprintf("%d m", m)))
		}
		for target := c.leastF; target <= c.mostF && target > 0; target++ {
			targets = append(targets, c.with("grate", grate, "target", fmt.Sprintf("%d F", target)))
		}
		rows = append(rows, gridRow{"weight", weights}, gridRow{"day", days}, gridRow{"wind", winds}, gridRow{"altitude", heights}, gridRow{"target", targets})
	}
	return rows
}

// gridCount says what a part of the grid came to.
type gridCount struct {
	compared, never, lowered map[string]int
	nearest                  float64 // least change of an answer against the longest before it, as a share
}

// check compares each answer of a row with the longest before it. A height at which the
// target is lowered, since water boils sooner there, is another cook, and not compared.
func (r gridRow) check(t *testing.T, n *gridCount) {
	t.Helper()
	var longest [3]float64
	for i, q := range r.questions {
		got := q.ask(t)
		if r.name == "altitude" && got.lowered {
			n.lowered[r.name]++
			continue
		}
		if i > 0 {
			n.compared[r.name]++
		}
		if math.IsInf(got.minutes[1], 1) {
			n.never[r.name]++
		}
		for k, minutes := range got.minutes {
			if minutes < longest[k] {
				n.nearest = math.Min(n.nearest, minutes/longest[k]-1)
			}
			if minutes < longest[k]*(1-gridNoise) {
				t.Errorf("%s, wind %g mph: %s %.1f min, %.1f before it in the row of %ss", q.fields, q.windMph, figureNames[k], minutes, longest[k], r.name)
			}
			longest[k] = math.Max(longest[k], minutes)
		}
	}
}

// A cooler grate, a heavier piece, a colder or windier day, a higher place and a higher
// target are never sooner: early, expected and late. Wind acts on the fuel alone in the
// model, and so its answers are equal.
func TestForecastIsMonotoneOnAGrid(t *testing.T) {
	n := gridCount{map[string]int{}, map[string]int{}, map[string]int{}, 0}
	for _, c := range gridCooks {
		for _, r := range c.rows() {
			r.check(t, &n)
		}
	}
	sum := -n.compared["wind"]
	for _, compared := range n.compared {
		sum += compared
	}
	t.Logf("%d comparisons of three figures besides those of the wind: %v; not reached: %v; target lowered and not compared: %v; at most %.4f %% sooner",
		sum, n.compared, n.never, n.lowered, -100*n.nearest)
	if sum < 3000 {
		t.Errorf("%d comparisons, want 3,000 at least", sum)
	}
}

// knownJumps are steps of 0.1 F in the target that take over 5 % longer, as shares: the
// last one that even a hot grate can give. A thin rack comes to the temperature of its air
// within a day, and its minutes grow the steeper the less is left (1 % for 0.02 F there).
var knownJumps = map[string]float64{"spare-ribs, 195 F, 206.0 F, late": 0.055}

// Near what the air can give minutes go on without a jump: 0.1 F more takes 5 % longer at
// most, and what is not reached comes after what takes most of a day.
func TestMinutesGoOnUpToTheCeiling(t *testing.T) {
	const step, mostJump, mostOfADay = 0.1, 0.05, 20 * 60
	compared, never, most := 0, 0, 0.0
	for _, i := range []int{0, 2, 4, 8} { // bare brisket, butt, chuck and ribs
		for _, grate := range []string{"195 F", "205 F", "215 F"} {
			before := gridTimes{}
			for target := 200.0; target < 211; target += step {
				q := gridCooks[i].with("grate", grate, "target", fmt.Sprintf("%.1f F", target))
				got := q.ask(t)
				if math.IsInf(got.minutes[1], 1) {
					if never++; !math.IsInf(before.minutes[1], 1) && before.minutes[1] < mostOfADay {
						t.Errorf("%v: never, and 0.1 F less takes %.0f min", q.fields, before.minutes[1])
					}
				}
				for k, minutes := range got.minutes {
					last := before.minutes[k]
					if last == 0 || math.IsInf(last, 1) && math.IsInf(minutes, 1) {
						continue
					}
					compared++
					what := fmt.Sprintf("%s, %s, %.1f F, %s", gridCooks[i].cut, grate, target, figureNames[k])
					jump := minutes/last - 1
					known := knownJumps[what]
					if !math.IsInf(jump, 1) && known == 0 {
						most = math.Max(most, jump)
					}
					if jump < -gridNoise || jump > math.Max(mostJump, known) && !math.IsInf(minutes, 1) {
						t.Errorf("%s: %.1f min, %.1f at 0.1 F less", what, minutes, last)
					}
				}
				before = got
			}
		}
	}
	t.Logf("%d comparisons, %d targets not reached; 0.1 F more takes at most %.1f %% longer, but for %v", compared, never, 100*most, knownJumps)
}
