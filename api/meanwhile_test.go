package api

import (
	"context"
	"fmt"
	"net/http"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
)

// TestTheDayGoesOnWithoutReadings: the fire is out and nobody logs anything for three
// hours. The published limit is 2 h between 40 and 140 F (USDA FSIS, danger zone); then
// nothing may lead to eating the brisket, wherever a cook looks.
func TestTheDayGoesOnWithoutReadings(t *testing.T) {
	cfg, clock := testConfig()
	s := New(cfg)
	p := planned(t, s, party(t), asYAML...)
	base := "/v1/plans/" + p.ID
	log, at := cookLog(p)
	log += at.Format(time.RFC3339) + ",,fire-out,\r\n"
	clock.set(at.Add(time.Minute).Format(time.RFC3339))
	if a := ask(t, s, http.MethodPost, base+"/readings", []byte(log), "Content-Type", "text/csv"); a.StatusCode != http.StatusOK {
		t.Fatalf("%d %s", a.StatusCode, a.body)
	}
	rung, stop := s.bell.listen(p.ID)
	defer stop()
	clock.set(at.Add(2 * time.Minute).Format(time.RFC3339))
	s.meanwhile(context.Background())
	if n := newestOf(t, s, p.ID); n != 1 {
		t.Errorf("a minute leads to revision %d", n)
	}
	clock.set(at.Add(3 * time.Hour).Format(time.RFC3339))
	s.meanwhile(context.Background())
	select {
	case <-rung:
	default:
		t.Error("nobody is told")
	}
	sheet := string(ask(t, s, http.MethodGet, base+".html", nil).body)
	_, now, _ := strings.Cut(sheet, "Do now")
	now, _, _ = strings.Cut(now, "</section>")
	if !strings.Contains(now, "Throw it away") || strings.Contains(sheet, "Take off Brisket") {
		t.Errorf("the sheet says\n%s", now)
	}
	kept, err := schedule.ReadPlan(ask(t, s, http.MethodGet, base, nil).body)
	if err != nil {
		t.Fatal(err)
	}
	for _, step := range kept.Steps {
		if step.Dish == p.Dishes[0].ID && !step.Done && step.Kind == schedule.StepServe {
			t.Errorf("%s at %s", step.Kind, step.At)
		}
	}
	if n := newestOf(t, s, p.ID); n != 2 {
		t.Errorf("revision %d", n)
	}
	s.meanwhile(context.Background())
	if n := newestOf(t, s, p.ID); n != 2 {
		t.Errorf("the same moment leads to revision %d", n)
	}
}

// TestOnlyDaysUnderWayAreFollowed: nothing happens to plans without a log, to trials, and
// to meals long over.
func TestOnlyDaysUnderWayAreFollowed(t *testing.T) {
	cfg, clock := testConfig()
	s := New(cfg)
	waiting := planned(t, s, party(t), asYAML...)
	trial := planned(t, s, []byte(burgers), "Content-Type", "application/json")
	r := cfg.Store.(*mapStore).records[trial.ID]
	r.Trial = true
	cfg.Store.(*mapStore).records[trial.ID] = r
	lit := fmt.Sprintf(`[{"time": %q, "kind": "lit"}]`, trial.ServeAt.Add(-45*time.Minute).Format(time.RFC3339))
	if a := ask(t, s, http.MethodPost, "/v1/plans/"+trial.ID+"/readings?at="+trial.ServeAt.UTC().Add(-45*time.Minute).Format(time.RFC3339), []byte(lit), "Content-Type", "application/json"); a.StatusCode != http.StatusOK {
		t.Fatalf("%d %s", a.StatusCode, a.body)
	}
	clock.set(trial.ServeAt.Add(2 * time.Hour).Format(time.RFC3339))
	s.meanwhile(context.Background())
	if a, b := newestOf(t, s, waiting.ID), newestOf(t, s, trial.ID); a != 0 || b != 1 {
		t.Errorf("revisions %d, %d", a, b)
	}
}

func newestOf(t *testing.T, s *Service, id string) int {
	t.Helper()
	r, err := s.cfg.Store.Plan(context.Background(), id)
	if err != nil {
		t.Fatal(err)
	}
	return r.Newest
}

// TestACookWhoSaysNothingKeepsThePlan: three readings and nothing more, though everything
// goes well. What the plan says must not creep away from under a cook who follows it.
func TestACookWhoSaysNothingKeepsThePlan(t *testing.T) {
	cfg, clock := testConfig()
	s := New(cfg)
	p := planned(t, s, party(t), asYAML...)
	log, at := cookLog(p)
	clock.set(at.Format(time.RFC3339))
	if a := ask(t, s, http.MethodPost, "/v1/plans/"+p.ID+"/readings", []byte(log), "Content-Type", "text/csv"); a.StatusCode != http.StatusOK {
		t.Fatalf("%d %s", a.StatusCode, a.body)
	}
	const looks, pause = 16, 12 * time.Minute
	for i := range looks {
		clock.set(at.Add(time.Duration(i+1) * pause).Format(time.RFC3339))
		s.meanwhile(context.Background())
	}
	if n := newestOf(t, s, p.ID); n != 1 {
		t.Errorf("%d looks in %s lead to revision %d", looks, looks*pause, n)
	}
}
