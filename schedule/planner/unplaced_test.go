package planner_test

import (
	"fmt"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

const buttOff = buttToNoon + "2027-07-03 11:31,butt,pulled,\n"

func withOven(at string) string { return served(at) + "quiet: []\n" }

// Between its take-off and the first line that says where it is a piece is without heat for all
// that is known. The plan's own oven was taken for done, and whatever was logged hours later went
// on from there, "over 99%".
func TestWhereAPieceIsIsAsked(t *testing.T) {
	for _, tt := range []struct {
		name, serve, lines, now, code string
		says                          []string
		chance                        float64 // the most that is promised
	}{
		{"just off", "20:00", "", "11:50", "", nil, 1},
		{"sits open, as planned", "20:00", "", "12:10", "", nil, 1},
		{"due to go in, which is told", "20:00", "", "13:05", "", nil, 1},
		{"for longer than that", "20:00", "", "13:17", schedule.StandsOpen, []string{"in the oven since 11:31 AM?", "just under the surface", "by 1:31 PM"}, 1},
		{"off for three hours, as it may be planned", "20:00", "", "14:31", schedule.StandsOpen, []string{"in the oven since 11:31 AM?", "If it stood: throw it away"}, 0.9},
		{"into the oven at once", "20:00", "2027-07-03 11:40,butt,to-oven,170 F\n", "14:31", "", nil, 1},
		{"into the oven after an hour, as it was told to stand", "20:00", "2027-07-03 12:31,butt,to-oven,170 F\n", "12:40", "", nil, 1},
		{"into the oven half an hour after it was due", "20:00", "2027-07-03 13:20,butt,to-oven,170 F\n", "13:24", schedule.StandsOpen, []string{"Measure", "just under the surface", "by 1:31 PM"}, 1},
		{"and measured there", "20:00", "2027-07-03 13:20,butt,to-oven,170 F\n2027-07-03 13:23,butt,outer,151 F\n", "13:24", "", nil, 1},
		{"into the oven after three hours", "20:00", "2027-07-03 14:31,butt,to-oven,170 F\n", "14:35", "standing-over", []string{"Throw it away", "nothing tells of heat until 2:31 PM", "Log that"}, 0},
		{"and hot outside as it went in", "20:00", "2027-07-03 14:31,butt,to-oven,170 F\n2027-07-03 14:33,butt,outer,151 F\n", "14:35", "", nil, 1},
		{"in the cooler after three hours", "20:00", "2027-07-03 14:31,butt,boxed,cooler\n", "14:35", "standing-over", []string{"Throw it away"}, 0},
		{"back on the fire after three hours", "20:00", "2027-07-03 14:31,butt,restarted,\n", "14:35", "stopped-over", []string{"Throw it away"}, 0},
		{"chilled after three hours", "20:00", "2027-07-03 14:31,butt,chilled,\n", "14:35", schedule.StandsOpen, []string{"in the oven from 11:31 AM until it was chilled at 2:31 PM?", "throw it away"}, 0.9},
		{"served after four hours", "15:30", "2027-07-03 15:31,butt,served,\n", "15:35", schedule.StandsOpen, []string{"until it was served at 3:31 PM?", "stop eating"}, 1},
		{"its meal is past", "13:00", "", "13:10", schedule.Leftovers, []string{"was it eaten?", "Eat it by 1:31 PM"}, 1},
		{"and long past", "13:00", "", "16:10", schedule.Leftovers, []string{"was it eaten?", "stood out since 11:31 AM is thrown away since 1:31 PM"}, 1},
	} {
		lines := tt.lines
		q := trouble{withOven(tt.serve), troubledButt, buttOff + lines, "2027-07-03 " + tt.now}.revised(t)
		if tt.code != "" {
			q.wants(t, tt.code, tt.says...)
		} else if q.lacks(t, schedule.StandsOpen, schedule.Leftovers, "standing-over"); q.Chance.All <= 0.9 {
			t.Errorf("%s: %.2f", tt.name, q.Chance.All)
		}
		if tt.chance == 0.9 && !strings.Contains(q.first(schedule.StepServe).Text, "only if it was in heat") {
			t.Errorf("%s: %s", tt.name, q.first(schedule.StepServe).Text)
		}
		if q.Chance.All > tt.chance {
			t.Errorf("%s: promised at %.2f", tt.name, q.Chance.All)
		}
	}
}

// Chilling mends nothing: what was off for three hours and a half before it was chilled whole for
// the next day was "92 %" then, and served there.
func TestChillingMendsNothing(t *testing.T) {
	p := plantest.Plan(t, "serve: {date: 2027-08-01, time: \"13:00\", tz: America/Denver}\ngrill: kettle 22 in\nguests: 8\ndishes: [{cut: pork-butt, weight: 8 lb, prep: [], ready: day-before}, {cut: beans-pan}]\n")
	log := "time,dish,kind,value\n2027-07-31 05:30,,lit,\n2027-07-31 06:10,pork-butt,on,\n2027-07-31 16:30,pork-butt,core,203 F\n2027-07-31 16:40,pork-butt,pulled,\n2027-07-31 %s,pork-butt,chilled,\n"
	for at, thrown := range map[string]bool{"18:20": false, "20:10": true} {
		for _, now := range []string{"2027-07-31 20:11", "2027-08-01 12:50"} {
			q := plantest.Revised(t, p, fmt.Sprintf(log, at), now)
			f, found := plantest.Finding(q, "standing-over")
			if found != thrown || thrown && !strings.Contains(f.Text, "Throw it away") {
				t.Errorf("chilled at %s, asked at %s: %v", at, now, q.Findings)
			}
			for _, s := range q.Steps {
				eats := s.Kind == schedule.StepServe && strings.Contains(s.Text, "Serve: Pork butt") || strings.Contains(s.Text, "thickest portion")
				if thrown && !s.Done && eats {
					t.Errorf("chilled at %s, asked at %s: %s", at, now, s.Text)
				}
			}
		}
	}
}

// A reheating that was ordered and obeyed is heard, and one plain reading does not clear what a
// probe pushed through found cold. The first was thrown away, the second served.
func TestAReheatingIsHeard(t *testing.T) {
	held := buttOff + "2027-07-03 11:40,butt,boxed,cooler\n2027-07-03 14:00,butt,core,165 F\n2027-07-03 15:30,butt,outer,139 F\n2027-07-03 15:35,butt,to-oven,325 F\n"
	c := trouble{served("18:00") + "quiet: []\n", troubledButt, held, "2027-07-03 15:36"}
	c.revised(t).wants(t, "hold-over", "leave it in the oven until it reads 165 °F")
	c.log, c.now = held+"2027-07-03 15:58,butt,coldest,167 F\n", "2027-07-03 15:59"
	q := c.revised(t)
	q.wants(t, schedule.HoldRead, "Eat it now")
	q.lacks(t, "hold-over", schedule.CodeHoldShort)

	birds := "2027-07-03 15:50,,lit,\n2027-07-03 16:20,chickens,on,\n2027-07-03 17:28,chickens,core,163 F\n2027-07-03 17:30,chickens,pulled,\n2027-07-03 17:40,chickens,coldest,138 F\n2027-07-03 17:45,chickens,to-oven,325 F\n"
	c = trouble{served("18:00") + "quiet: []\n", troubledBirds, birds + "2027-07-03 18:25,chickens,core,166 F\n", "2027-07-03 18:26"}
	c.revised(t).wants(t, schedule.OffUndone, "Leave it in the oven", "coldest place was at 138 °F")
	c.log = birds + "2027-07-03 18:25,chickens,coldest,166 F\n"
	c.revised(t).lacks(t, schedule.OffUndone)
}

// A meal long past is over: it slid on by as much with each question.
func TestAMealThatIsPastDoesNotSlide(t *testing.T) {
	c := trouble{served("12:00") + "quiet: []\n", troubledButt, buttToNoon, "2027-07-03 11:55"}
	if q := c.revised(t); q.ServeAt.Hour() != 12 {
		t.Errorf("read at its target at 11:30: served at %v", q.ServeAt)
	}
	for _, now := range []string{"13:05", "15:00", "22:00"} {
		c.now = "2027-07-03 " + now
		q := c.revised(t)
		q.wants(t, schedule.Leftovers, "was it eaten?")
		if q.ServeAt.Hour() != 12 {
			t.Errorf("asked at %s: served at %v", now, q.ServeAt)
		}
	}
}
