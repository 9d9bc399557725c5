package planner_test

import (
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// A seared dish that goes on as planned keeps the sear that was planned, over the coals of the
// fire that burns: a minute after its put-on the log "did not fit together", another full
// chimney was to be lit and dinner was moved by two hours.
func TestASearedDishIsFollowedAsPlanned(t *testing.T) {
	for name, c := range map[string][2]string{
		"roasts beside corn": {"{kind: kettle, diameter: 22 in, fuel: lump}\nguests: 4\nweather: {air: 80 F}\ndishes: [{cut: tri-tip, weight: 2.2 lb, count: 2, target: 130 F, finish: sear}, {cut: corn, count: 6}]\n",
			"time,dish,kind,value\n2027-08-14 17:13,,lit,\n2027-08-14 17:48,tri-tip,on,\n"},
		"steaks": {"kettle 22 in\nguests: 4\ndishes: [{cut: steak, count: 4, thickness: 1.5 in, finish: sear}]\n",
			"time,dish,kind,value\n2027-08-14 17:40,,lit,\n2027-08-14 18:15,steak,on,\n"},
	} {
		p := plantest.Plan(t, "serve: {date: 2027-08-14, time: \"19:00\", tz: America/New_York}\ngrill: "+c[0])
		for _, now := range []string{"2027-08-14 18:16", "2027-08-14 18:20"} {
			q := plantest.Revised(t, p, c[1], now)
			if f, unsound := plantest.Finding(q, "unsound"); unsound {
				t.Errorf("%s at %s: %s", name, now, f.Text)
			}
			if !q.Dishes[0].ServeAt.Equal(p.Dishes[0].ServeAt) || q.Dishes[0].Chance < p.Dishes[0].Chance-0.25 {
				t.Errorf("%s at %s: served at %v, %.2f; planned %v, %.2f", name, now, q.Dishes[0].ServeAt, q.Dishes[0].Chance, p.Dishes[0].ServeAt, p.Dishes[0].Chance)
			}
			fires := 0
			for _, s := range q.Steps {
				if s.Kind == schedule.StepLight {
					fires++
				}
			}
			if fires > 1 {
				t.Errorf("%s at %s: %d fires are lit", name, now, fires)
			}
		}
	}
}
