package planner_test

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

var (
	atClock  = regexp.MustCompile(`time: "(\d+):(\d+)"`)
	inPounds = regexp.MustCompile(`weight: ([\d.]+) lb`)
)

// Dinner five minutes later, or a tenth of a pound more of the largest piece, changes no fire
// of these drawn days: layouts, heats and their order stay.
func TestFiveMinutesOrATenthOfAPoundChangeNoFire(t *testing.T) {
	days := strings.Split(plantest.ReadFile(t, "testdata/drawn/days.yaml"), "---\n")
	for _, i := range []int{35, 266, 187, 107, 280, 197, 118, 135, 222, 194} {
		text := days[i]
		want := firesOf(plantest.Plan(t, text))
		if want == "" {
			t.Errorf("%03d cannot be had: it tests nothing", i)
		}
		if got := firesOf(plantest.Plan(t, fiveMinutesLater(text))); got != want {
			t.Errorf("%03d, five minutes later: %s, before %s", i, got, want)
		}
		if got := firesOf(plantest.Plan(t, aTenthMore(text))); got != want {
			t.Errorf("%03d, a tenth of a pound more: %s, before %s", i, got, want)
		}
	}
}

func fiveMinutesLater(text string) string {
	return atClock.ReplaceAllStringFunc(text, func(s string) string {
		m := atClock.FindStringSubmatch(s)
		hours, _ := strconv.Atoi(m[1])
		minutes, _ := strconv.Atoi(m[2])
		return fmt.Sprintf(`time: "%02d:%02d"`, hours, minutes+5)
	})
}

// aTenthMore is a request with a tenth of a pound more of its heaviest piece.
func aTenthMore(text string) string {
	most, said := 0.0, ""
	for _, m := range inPounds.FindAllStringSubmatch(text, -1) {
		if lb, _ := strconv.ParseFloat(m[1], 64); lb > most {
			most, said = lb, m[0]
		}
	}
	return strings.Replace(text, said, fmt.Sprintf("weight: %.2f lb", most+0.1), 1)
}

func firesOf(p schedule.Plan) string {
	var out []string
	for _, ph := range p.Phases {
		out = append(out, fmt.Sprintf("%s %.0f", ph.Layout, ph.LevelC))
	}
	return strings.Join(out, ", ")
}
