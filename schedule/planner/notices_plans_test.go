package planner_test

import (
	"context"
	"errors"
	"maps"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
)

// What plans find, first and revised, has the severity and the source of its notice:
// "may be late" was once said as grave in one place and as light in another.
func TestFindingsAreAsGraveAsTheirNotices(t *testing.T) {
	seen := map[string]bool{}
	look := func(p schedule.Plan) {
		plantest.Noticed(t, p.Findings)
		for _, f := range p.Findings {
			seen[f.Code] = true
		}
		if p.Ahead != nil && p.Ahead.Plan != nil {
			plantest.Noticed(t, p.Ahead.Plan.Findings)
		}
	}
	for _, text := range foundDays {
		p, _ := planned(t, []byte(text), false)
		look(p)
	}
	party := plantest.Party(t, "../..")
	for _, c := range []struct{ log, now string }{ // a party that goes well, goes slowly, and goes wrong
		{"", "2027-07-03 07:50"},
		{"", "2027-07-03 18:30"},
		{"07:40,Brisket,on,\n12:00,brisket,core,152 F\n12:30,brisket,core,153 F\n", "2027-07-03 12:40"},
		{"07:40,Brisket,on,\n12:00,brisket,core,110 F\n13:00,brisket,core,112 F\n14:00,,gauge,300 F\n14:00,,grate,190 F\n", "2027-07-03 14:30"},
		{"07:40,Brisket,on,\n12:00,brisket,core,150 F\n13:00,brisket,core,120 F\n14:00,,fire-out,\n", "2027-07-03 14:10"},
		{"07:40,Brisket,on,\n12:00,brisket,core,250 F\n12:30,brisket,core,84 F\n13:00,brisket,core,40 F\n", "2027-07-03 15:30"},
	} {
		look(plantest.Revised(t, party, "time,dish,kind,value\n"+c.log, c.now))
	}
	rnd := rand.New(rand.NewPCG(1, 2))
	for range 200 {
		p, ok := planned(t, []byte(plantest.FuzzedRequest(drawnBytes(rnd, 120))), false)
		if !ok {
			continue
		}
		look(p)
		if !p.Feasible {
			continue
		}
		log, err := schedule.ReadLog([]byte(plantest.FuzzedLog(drawnBytes(rnd, 60), p)), p)
		if err != nil {
			log = nil // an empty log has findings, too
		}
		now := p.Steps[0].At.Add(time.Duration(rnd.IntN(1200)) * time.Minute)
		q, err := planner.Revise(context.Background(), p, log, now)
		var bad *schedule.InputError
		switch {
		case err == nil:
			look(q)
		case !errors.As(err, &bad):
			t.Fatal(err)
		}
	}
	if n := len(schedule.Notices()) / 3; len(seen) < n {
		t.Errorf("only %d codes were found, of %d wanted: %v", len(seen), n, slices.Sorted(maps.Keys(seen)))
	}
}

func drawnBytes(rnd *rand.Rand, n int) []byte {
	all := make([]byte, n)
	for i := range all {
		all[i] = byte(rnd.IntN(256))
	}
	return all
}
