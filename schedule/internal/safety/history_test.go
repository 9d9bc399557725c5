package safety

import (
	"fmt"
	"math"
	"slices"
	"testing"
)

func codes(all []Finding) []string {
	out := []string{}
	for _, f := range all {
		out = append(out, f.Code)
	}
	return out
}

func TestJudgeHistory(t *testing.T) {
	cook := func(c Category, core []Sample, episodes ...Episode) History {
		return History{Category: c, AirC: 20, Core: core, Episodes: episodes}
	}
	cases := []struct {
		name string
		h    History
		want []string
	}{
		{"nothing happened", cook(Beef, evenly(0, 38, 300, 160, 700, 203)), nil},
		{"fire out for two hours and a half, core at 120 °F", cook(Beef, evenly(0, 38, 200, 120, 215, 122, 230, 122, 260, 121, 290, 119, 320, 116, 350, 113), Episode{Kind: FireOut, FromMinute: 200, ToMinute: 350}), []string{"fire-out-over"}},
		{"fire out for an hour at 120 °F", cook(Beef, evenly(0, 38, 200, 120, 260, 121, 600, 190), Episode{Kind: FireOut, FromMinute: 200, ToMinute: 260}), []string{"fire-out"}},
		{"fire out for three hours, core stays above 140 °F", cook(Beef, evenly(0, 38, 400, 170, 420, 169, 440, 167, 580, 150), Episode{Kind: FireOut, FromMinute: 400, ToMinute: 580}), []string{"fire-out"}},
		{"no reading while it was out", cook(Pork, nil, Episode{Kind: FireOut, FromMinute: 200, ToMinute: 350}), []string{"fire-out-over"}},
		{"two outages add up", cook(Beef, evenly(0, 38, 200, 100, 400, 120), Episode{Kind: FireOut, FromMinute: 200, ToMinute: 280}, Episode{Kind: FireOut, FromMinute: 300, ToMinute: 380}), []string{"fire-out", "fire-out-over"}},
		{"stopped half-way for long", cook(Pork, evenly(0, 38, 120, 110, 300, 90), Episode{Kind: Stopped, FromMinute: 120, ToMinute: 300}), []string{"stopped-over"}},
		{"stopped half-way and chilled, restarted", cook(Beef, evenly(0, 38, 200, 120, 500, 38, 800, 200), Episode{Kind: Stopped, FromMinute: 200, ToMinute: 230}, Episode{Kind: Chilled, FromMinute: 230, ToMinute: 500}), []string{"partial-cooking"}},
		{"done, chilled in time, reheated in time", cook(Pork, evenly(0, 38, 500, 200, 560, 136, 561, 134, 660, 68, 800, 40, 1400, 38, 1500, 165), Episode{Kind: Standing, FromMinute: 500, ToMinute: 570}, Episode{Kind: Chilled, FromMinute: 570, ToMinute: 1400}), nil},
		{"chilled too slowly", cook(Pork, evenly(0, 38, 500, 200, 560, 136, 561, 134, 760, 68, 900, 40, 1400, 38), Episode{Kind: Chilled, FromMinute: 560, ToMinute: 1400}), []string{"cooling-outside"}},
		{"chilled without a reading", cook(Pork, evenly(0, 38, 500, 200), Episode{Kind: Chilled, FromMinute: 560, ToMinute: 1400}), []string{"cooling-unknown"}},
		{"reheated too slowly", cook(Pork, evenly(0, 38, 500, 200, 560, 136, 561, 134, 660, 68, 800, 40, 1400, 38, 1550, 165), Episode{Kind: Chilled, FromMinute: 560, ToMinute: 1400}), []string{"reheat-slow"}},
		{"on its way back up", cook(Pork, evenly(0, 38, 500, 200, 560, 136, 561, 134, 660, 68, 800, 40, 1400, 38, 1450, 120), Episode{Kind: Chilled, FromMinute: 560, ToMinute: 1400}), []string{"reheat"}},
		{"done and left on the counter", cook(Poultry, evenly(0, 38, 80, 165, 110, 140, 140, 120, 170, 105, 200, 95, 230, 88, 260, 84), Episode{Kind: Standing, FromMinute: 80, ToMinute: 260}), []string{"standing-over"}},
		{"done and eaten in time", cook(Poultry, evenly(0, 38, 80, 165, 110, 140, 140, 120), Episode{Kind: Standing, FromMinute: 80, ToMinute: 140}), nil},
		// What was lost before the minimum was reached does not count against the rest after.
		{"an outage, then cooked through, then rested", cook(Beef, evenly(0, 38, 200, 120, 290, 118, 600, 200, 640, 150, 660, 138, 740, 110), Episode{Kind: FireOut, FromMinute: 200, ToMinute: 290}, Episode{Kind: Standing, FromMinute: 640, ToMinute: 740}), []string{"fire-out"}},
	}
	for _, x := range cases {
		got, err := JudgeHistory(x.h)
		if err != nil {
			t.Errorf("%s: %v", x.name, err)
		}
		if !slices.Equal(codes(got), x.want) && len(got)+len(x.want) > 0 {
			t.Errorf("%s: %v, want %v", x.name, codes(got), x.want)
		}
	}
}

// Without heat the core falls fastest at first: a gap of 90 min between 170 and 100 °F
// counts whole, where a straight line would leave 51 min of it.
func TestALongGapCountsWhole(t *testing.T) {
	h := History{Category: Beef, AirC: 20, Core: evenly(0, 38, 400, 170, 490, 100, 520, 95, 525, 94), Episodes: []Episode{{Kind: FireOut, FromMinute: 400, ToMinute: 525}}}
	got, err := JudgeHistory(h)
	if err != nil || !slices.Equal(codes(got), []string{"fire-out-over"}) || math.Abs(got[0].OverMinutes-5) > 1e-6 {
		t.Errorf("%+v, %v", got, err)
	}
}

// Once the two hours are gone, the next outage is over from its first minute.
func TestASpentClockIsOverAtOnce(t *testing.T) {
	h := History{Category: Beef, AirC: 20, Core: evenly(0, 38, 100, 100, 500, 120), Episodes: []Episode{{Kind: FireOut, FromMinute: 100, ToMinute: 240}, {Kind: FireOut, FromMinute: 300, ToMinute: 330}}}
	got, err := JudgeHistory(h)
	if err != nil || len(got) != 2 || got[0].Minute != 220 || got[1].Minute != 300 || got[1].OverMinutes != 50 {
		t.Errorf("%+v, %v", got, err)
	}
}

func TestHotAirHalvesTheTime(t *testing.T) {
	h := History{Category: Poultry, AirC: celsius(95), Core: evenly(0, 165, 20, 139, 50, 120, 90, 105), Episodes: []Episode{{Kind: Standing, ToMinute: 90}}}
	got, err := JudgeHistory(h)
	if err != nil || !slices.Equal(codes(got), []string{"standing-over"}) {
		t.Fatalf("%v, %v", codes(got), err)
	}
	// In the zone from 140 °F, at 20*25/26 min, for 60 min.
	if want := 20*25.0/26 + 60; math.Abs(got[0].Minute-want) > 1e-6 {
		t.Errorf("over at %v, want %v", got[0].Minute, want)
	}
}

func TestSlowCookOfAnInjectedShoulder(t *testing.T) {
	h := History{Category: Pork, Prep: Prep{Injected: true}, AirC: 20, Core: evenly(0, 40, 400, 140, 700, 200)}
	got, err := JudgeHistory(h)
	if err != nil || !slices.Equal(codes(got), []string{"slow-through-danger-zone"}) || math.Abs(got[0].OverMinutes-160) > 1e-6 {
		t.Fatalf("%+v, %v", got, err)
	}
	h.Prep = Prep{}
	if got, _ = JudgeHistory(h); len(got) > 0 {
		t.Errorf("an intact one: %v", codes(got))
	}
}

func TestBadHistoriesAreRefused(t *testing.T) {
	for _, h := range []History{
		{Core: evenly(10, 40, 5, 50)},
		{Episodes: []Episode{{Kind: "lost", FromMinute: 0, ToMinute: 10}}},
		{Episodes: []Episode{{Kind: FireOut, FromMinute: 10, ToMinute: 0}}},
		{Episodes: []Episode{{Kind: FireOut, FromMinute: 0, ToMinute: 10}, {Kind: Chilled, FromMinute: 5, ToMinute: 20}}},
		{Episodes: []Episode{{Kind: FireOut, FromMinute: math.NaN(), ToMinute: 10}}},
		{Episodes: []Episode{{Kind: FireOut, FromMinute: 0, ToMinute: math.Inf(1)}}},
	} {
		if _, err := JudgeHistory(h); err == nil {
			t.Errorf("%+v went in unnoticed", h)
		}
	}
}

func ExampleJudgeHistory() {
	findings, _ := JudgeHistory(History{
		Category: Beef, AirC: 19,
		Core:     []Sample{{0, 4}, {240, 48}, {270, 48}, {300, 47}, {330, 46}, {360, 45}, {390, 44}},
		Episodes: []Episode{{Kind: FireOut, FromMinute: 240, ToMinute: 390}},
	})
	for _, f := range findings {
		fmt.Println(f.Severity, f.Code, f.Minute)
		fmt.Println(f.Sentence)
	}
	// Output:
	// danger fire-out-over 360
	// 2 hr 30 min without heat between 40 and 140 °F (4 and 60 °C); the published limit is 2 hr. With the fire out this is outside the published limits: do not serve it.
}
