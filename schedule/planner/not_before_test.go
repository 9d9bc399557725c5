package planner_test

import (
	"context"
	"encoding/json"
	"errors"
	"strings"
	"testing"
	"time"

	"github.com/google/uuid"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
)

// askedBefore plans an evening of 18:00 in Chicago, asked so long before the meal.
func askedBefore(t *testing.T, head, dishes string, before time.Duration) (schedule.Request, time.Time, schedule.Plan, error) {
	t.Helper()
	r, err := schedule.Read([]byte(plantest.Evening(head, dishes)))
	if err != nil {
		t.Fatal(err)
	}
	chicago, err := r.Location()
	if err != nil {
		t.Fatal(err)
	}
	now := time.Date(2027, 7, 3, 18, 0, 0, 0, chicago).Add(-before)
	p, err := planner.Make(context.Background(), r, planner.Judged(), planner.NotBefore(now))
	return r, now, p, err
}

// An hour is not enough for a brisket of 12 lb, and enough for burgers.
func TestNothingStartsBeforeNow(t *testing.T) {
	const brisket, burgers = "{name: Brisket, cut: brisket, weight: 12 lb}", "{name: Burgers, cut: burger, weight: 6 oz, count: 4}"
	for name, c := range map[string]struct {
		dish     string
		before   time.Duration
		feasible bool
	}{
		"brisket, an hour":      {brisket, time.Hour, false},
		"brisket, a day":        {brisket, 24 * time.Hour, true},
		"burgers, an hour":      {burgers, time.Hour, true},
		"burgers, five minutes": {burgers, 5 * time.Minute, false},
		"burgers, 30 s":         {burgers, 30 * time.Second, false},
		"burgers, a month":      {burgers, 30 * 24 * time.Hour, true},
	} {
		r, now, p, err := askedBefore(t, plantest.Kettle22, c.dish, c.before)
		if err != nil || p.Feasible != c.feasible {
			t.Errorf("%s: feasible %v, %v", name, p.Feasible, err)
			continue
		}
		for _, s := range p.Steps {
			if s.At.Before(now) {
				t.Errorf("%s: %s at %s, before %s", name, s.Kind, s.At, now)
			}
		}
		for _, m := range p.Remedies {
			if m.LightAt != nil && m.LightAt.Before(now) {
				t.Errorf("%s: %s lights at %s, before %s", name, m.Code, m.LightAt, now)
			}
		}
		if !c.feasible && len(p.Remedies) == 0 && c.before == time.Hour {
			t.Errorf("%s: nothing is said that would help", name)
		}
		free, err := planner.Make(context.Background(), r)
		if err != nil || free.ID != p.ID || free.Provenance.RequestHash != p.Provenance.RequestHash || p.Request.Earliest != nil {
			t.Errorf("%s: id %s, without now %s; earliest %v, %v", name, p.ID, free.ID, p.Request.Earliest, err)
		}
		if c.before >= 24*time.Hour && len(free.Steps) > 0 && free.Steps[0].ID != p.Steps[0].ID {
			t.Errorf("%s: steps have other ids than without now", name)
		}
	}
}

func TestAMealThatIsPast(t *testing.T) {
	for _, before := range []time.Duration{0, -time.Minute, -24 * time.Hour} {
		_, _, _, err := askedBefore(t, plantest.Kettle22, "{name: Burgers, cut: burger, weight: 6 oz, count: 4}", before)
		var input *schedule.InputError
		if !errors.As(err, &input) || input.Faults[0].Path != "serve" || !strings.Contains(err.Error(), "is past") {
			t.Errorf("%s before: %v", before, err)
		}
	}
}

func TestTooLateForTheDayBefore(t *testing.T) {
	_, _, _, err := askedBefore(t, plantest.Kettle22+plantest.Oven170, "{name: Brisket, cut: brisket, weight: 12 lb, ready: day-before}", 2*time.Hour)
	var input *schedule.InputError
	if !errors.As(err, &input) || input.Faults[0].Path != "serve" || !strings.Contains(err.Error(), "the day before") {
		t.Errorf("%v", err)
	}
}

// A revision makes the first plan again: the same that was made with now.
func TestRevisedAfterNow(t *testing.T) {
	r, now, p, err := askedBefore(t, plantest.Kettle22, "{name: Burgers, cut: burger, weight: 6 oz, count: 4}", 50*time.Minute)
	if err != nil || !p.Feasible {
		t.Fatalf("feasible %v, %v", p.Feasible, err)
	}
	log := []schedule.Entry{{At: now.Add(2 * time.Minute), Kind: schedule.LogLit}}
	v, err := planner.Revise(context.Background(), p, log, now.Add(3*time.Minute), planner.Judged(), planner.NotBefore(now))
	if err != nil {
		t.Fatal(err)
	}
	if v.Request.Earliest != nil || v.Provenance.RequestHash != p.Provenance.RequestHash || v.ID != p.ID {
		t.Errorf("%+v, hash %s and %s", v.Request.Earliest, v.Provenance.RequestHash, p.Provenance.RequestHash)
	}
	same := map[string]bool{}
	for _, s := range p.Steps {
		same[s.ID] = true
	}
	shared := 0
	for _, s := range v.Steps {
		if same[s.ID] {
			shared++
		}
	}
	if shared < len(p.Steps)/2 {
		t.Errorf("%d of %d steps keep their ids (request %s)", shared, len(p.Steps), r.Name)
	}
}

// The hour from 1:00 to 2:00 of 2027-11-07 comes twice in Chicago (first Sunday of
// November, Energy Policy Act of 2005).
func TestNowInTheHourThatComesTwice(t *testing.T) {
	r, err := schedule.Read([]byte(strings.Replace(plantest.Evening(plantest.Kettle22, "{name: Burgers, cut: burger, weight: 6 oz, count: 4}"), "2027-07-03", "2027-11-07", 1)))
	if err != nil {
		t.Fatal(err)
	}
	for _, now := range []string{"2027-11-07T01:30:00-05:00", "2027-11-07T01:30:00-06:00"} {
		at, err := time.Parse(time.RFC3339, now)
		if err != nil {
			t.Fatal(err)
		}
		if p, err := planner.Make(context.Background(), r, planner.Judged(), planner.NotBefore(at)); err != nil || !p.Feasible {
			t.Errorf("%s: %v", now, err)
		}
	}
}

// Whatever is ready when: the id of a plan that was asked for, and of the day before it.
func TestIDsOfTwoDays(t *testing.T) {
	const id = "7f1c1c8e-3b0a-4d2e-9a63-0c6f4f1f4b1d" // any UUID
	for _, dishes := range []string{"{name: Brisket, cut: brisket, weight: 12 lb, ready: day-before}",
		"{name: Brisket, cut: brisket, weight: 12 lb, ready: day-before}\n  - {name: Burgers, cut: burger, weight: 6 oz, count: 4}"} {
		r, err := schedule.Read([]byte(plantest.Evening(plantest.Kettle22+plantest.Oven170, dishes)))
		if err != nil {
			t.Fatal(err)
		}
		r.ID = id
		p, err := planner.Make(context.Background(), r, planner.Judged())
		if err != nil || p.ID != id {
			t.Errorf("id %s, %v", p.ID, err)
		}
		if p.Ahead != nil && p.Ahead.Plan != nil {
			if _, err := uuid.Parse(p.Ahead.Plan.ID); err != nil {
				text, _ := json.Marshal(p.Ahead.Plan.ID)
				t.Errorf("%s is no UUID", text)
			}
		}
	}
}
