package api

import (
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"math/rand/v2"
	"net/http"
	"regexp"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
)

var drawnDays = flag.Int("drawn", 40, "drawn days that are kept and followed through every address")

// hastyLibrary searches little: addresses do not depend on how good a plan is.
type hastyLibrary struct{ Library }

func (hastyLibrary) Make(ctx context.Context, r schedule.Request, notBefore time.Time) (schedule.Plan, error) {
	return planner.Make(ctx, r, planner.Cheaply(50), planner.NotBefore(notBefore))
}

// drawnDay is a day of any kind: dishes of any cut, alone and together, ready the day
// before, with and without an oven, a name and an id.
func drawnDay(dice *rand.Rand, cuts []schedule.Cut) map[string]any {
	day := map[string]any{"format": 1, "serve": map[string]any{"date": "2027-07-03", "time": fmt.Sprintf("%02d:00", 10+dice.IntN(12)), "tz": "America/Chicago"},
		"grill": map[string]any{"kind": "kettle", "diameter": "22 in"}}
	if dice.IntN(2) == 0 {
		day["oven"] = map[string]any{"hold": "170 F"}
	}
	if dice.IntN(3) == 0 {
		day["quiet"] = []map[string]any{{"from": "23:00", "to": "05:30"}}
	}
	if dice.IntN(3) == 0 {
		day["name"] = "A day"
	}
	var dishes []map[string]any
	for i := range 1 + dice.IntN(3) {
		c := cuts[dice.IntN(len(cuts))]
		dish := map[string]any{"cut": c.Name, "weight": fmt.Sprintf("%.3f kg", c.TypicalKg), "name": fmt.Sprintf("Dish %d", i+1)}
		if dice.IntN(2) == 0 {
			dish["ready"] = "day-before"
		}
		if dice.IntN(4) == 0 {
			dish["id"] = fmt.Sprintf("own-%d", i)
		}
		dishes = append(dishes, dish)
	}
	day["dishes"] = dishes
	return day
}

var uuidText = regexp.MustCompile(`^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$`)

// TestEveryAddressOfEveryAnswerLeadsSomewhere: what was acknowledged can be reached, read,
// followed and deleted.
func TestEveryAddressOfEveryAnswerLeadsSomewhere(t *testing.T) {
	dice, cuts := rand.New(rand.NewPCG(18, 1)), schedule.Cuts().Cuts
	cfg, _ := testConfig()
	cfg.Planner = hastyLibrary{}
	h := New(cfg).Handler()
	kept, ahead, drawn, revised := 0, 0, 0, 0
	for ; kept < *drawnDays && drawn < 10**drawnDays; drawn++ {
		body, err := json.Marshal(drawnDay(dice, cuts))
		if err != nil {
			t.Fatal(err)
		}
		trial := dice.IntN(2) == 0
		a := ask(t, h, http.MethodPost, fmt.Sprintf("/v1/plans?trial=%v", trial), body, asJSON...)
		if a.StatusCode == http.StatusBadRequest { // small cuts are not cooked the day before
			continue
		}
		var p schedule.Plan
		if err := json.Unmarshal(a.body, &p); err != nil || a.StatusCode != http.StatusCreated {
			t.Fatalf("%s: %d %s", body, a.StatusCode, a.body)
		}
		kept++
		if p.Ahead != nil {
			ahead++
			if p.Ahead.Plan != nil && !uuidText.MatchString(p.Ahead.Plan.ID) {
				t.Errorf("%s: the plan of the day before has the id %q", body, p.Ahead.Plan.ID)
			}
		}
		if trial && p.Feasible {
			revised += reviseDrawn(t, h, p)
		}
		follow(t, h, a, p)
	}
	t.Logf("%d of %d drawn days kept, %d of them of two days, %d revised", kept, drawn, ahead, revised)
	if kept < *drawnDays || ahead < *drawnDays/20 {
		t.Errorf("only %d days were kept, %d of two days: the dice are loaded", kept, ahead)
	}
}

// reviseDrawn logs that the lid was opened in the middle of a day: the steps keep their
// ids, whichever of two days they are of.
func reviseDrawn(t *testing.T, h http.Handler, p schedule.Plan) int {
	t.Helper()
	at := p.Steps[len(p.Steps)/2].At
	a := ask(t, h, http.MethodPost, "/v1/plans/"+p.ID+"/readings?at="+at.UTC().Format(time.RFC3339),
		fmt.Appendf(nil, `[{"time": %q, "kind": "lid-opened"}]`, at.Format(time.RFC3339)), asJSON...)
	if a.StatusCode == http.StatusBadRequest && strings.Contains(string(a.body), "cannot be arranged") { // nothing is on, and it is late
		return 0
	}
	q := planIn(t, a)
	before, shared := stepIDs(p), 0
	for id := range stepIDs(q) {
		if _, ok := before[id]; ok {
			shared++
		}
	}
	if q.ID != p.ID || q.Revision != 1 || len(q.Steps) > 0 && shared < len(p.Steps)/3 { // what is past and was not logged is left out
		t.Errorf("plan %s, revision %d: %d of %d steps keep their ids, %d now", q.ID, q.Revision, shared, len(p.Steps), len(q.Steps))
	}
	return 1
}

var linkTarget = regexp.MustCompile(`^<([^>]+)>; rel="alternate"`)

func follow(t *testing.T, h http.Handler, a answer, p schedule.Plan) {
	t.Helper()
	base := a.Header.Get("Location")
	link := linkTarget.FindStringSubmatch(a.Header.Get("Link"))
	if base != "/v1/plans/"+p.ID || !uuidText.MatchString(p.ID) || link == nil {
		t.Fatalf("Location %q, Link %q of plan %q", base, a.Header.Get("Link"), p.ID)
	}
	for _, target := range []string{base, base + ".json", base + ".ics", base + ".html", base + ".csv", base + ".svg", base + ".txt", base + "/due", base + "/now", base + "/readings", base + "/feed",
		link[1], link[1] + ".ics", link[1] + "/due"} {
		got := ask(t, h, http.MethodGet, target, nil, "Accept", "*/*")
		if got.StatusCode != http.StatusOK {
			t.Errorf("GET %s: %d %.200s", target, got.StatusCode, got.body)
		}
		if strings.HasPrefix(target, "/v1/feeds/") && strings.Contains(string(got.body), p.ID) {
			t.Errorf("GET %s tells the owner's address", target)
		}
	}
	for _, target := range []string{base + "/stream", link[1] + "/stream"} {
		ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
		text := listenFor(t, h, ctx, cancel, target, "", 5*time.Millisecond)
		if !strings.Contains(text, "event: plan") || strings.HasPrefix(target, "/v1/feeds/") && strings.Contains(text, p.ID) {
			t.Errorf("GET %s: %.300s", target, text)
		}
		cancel()
	}
	if got := ask(t, h, http.MethodDelete, base, nil); got.StatusCode != http.StatusNoContent {
		t.Errorf("DELETE %s: %d %s", base, got.StatusCode, got.body)
	}
	for _, target := range []string{base, link[1], base + "/due"} {
		if got := ask(t, h, http.MethodGet, target, nil); got.StatusCode != http.StatusNotFound {
			t.Errorf("GET %s after the deletion: %d", target, got.StatusCode)
		}
	}
}
