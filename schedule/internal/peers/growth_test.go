package peers

import (
	"context"
	"fmt"
	"io"
	"math"
	"net/http"
	"net/http/httptest"
	"os"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"example.com/cookday/api"
	"example.com/cookday/api/store"
	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
)

// menu is what the dishes of a growing day are taken from, in turn: small pieces that
// may wait, so that two dozen dishes find room and hands at one large grill.
var menu = []string{
	"{cut: chuck-roast, weight: 2 lb}", "{cut: pork-butt, weight: 3 lb}", "{cut: baby-backs, weight: 1.5 lb}",
	"{cut: tri-tip, weight: 1.5 lb}", "{cut: brisket-flat, weight: 3 lb}", "{cut: pork-loin, weight: 2 lb}",
}

// dayOf is a day of n dishes.
func dayOf(n int) string {
	text := "format: 1\nserve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\ngrill: {kind: box, width: 60 in, depth: 40 in}\noven: {hold: 170 F}\ndishes:\n"
	for i := range n {
		text += fmt.Sprintf("  - %s, name: Dish %d}\n", strings.TrimSuffix(menu[i%len(menu)], "}"), i+1)
	}
	return text
}

// TestGrowth measures how cost grows with dishes, readings and callers, prints the
// figures and draws them in growth.svg.
func TestGrowth(t *testing.T) {
	asked(t)
	panels := []panel{
		{title: "A plan, by dishes", x: "dishes", y: "processor time, ms", points: byDishes(t)},
		{title: "A revision, by readings", x: "readings in the log", y: "processor time, ms", points: byReadings(t)},
		{title: "Plans over HTTP, by callers", x: "callers at once", y: "median answer, ms", points: byCallers(t)},
	}
	for _, p := range panels {
		fmt.Printf("| %s | %s | %s | grows with the power %.2f from end to end, %.2f over its upper half |\n", p.title, p.x, p.figures(), p.power(0), p.power(len(p.points)/2))
	}
	if err := os.WriteFile("growth.svg", []byte(draw(panels)), 0o644); err != nil {
		t.Fatal(err)
	}
}

func milliseconds(d time.Duration) float64 { return float64(d) / 1e6 }

func byDishes(t *testing.T) (points []point) {
	for _, n := range []int{1, 2, 3, 4, 6, 8, 12, 16, 24} {
		r, err := schedule.Read([]byte(dayOf(n)))
		if err != nil {
			t.Fatal(err)
		}
		p, err := planner.Make(context.Background(), r)
		if err != nil {
			t.Fatal(err)
		}
		took := cost(func() { _, _ = planner.Make(context.Background(), r) })
		t.Logf("%d dishes: %s, feasible %t, proven %t", n, brief(took), p.Feasible, p.Solution.Proven)
		points = append(points, point{float64(n), milliseconds(took)})
	}
	return points
}

// byReadings revises the party five hours into its brisket, which has sent readings at
// even intervals: of its core, and every other time of the grate.
func byReadings(t *testing.T) (points []point) {
	r, err := schedule.Read([]byte(party(t)))
	if err != nil {
		t.Fatal(err)
	}
	p, err := planner.Make(context.Background(), r)
	if err != nil || !p.Feasible {
		t.Fatal(err, p.Feasible)
	}
	on := p.Dishes[0].Batches[0].Stages[0].From
	for _, n := range []int{1, 5, 20, 50, 100, 200, 500, 1000, 2000} {
		log := fmt.Sprintf("time,dish,kind,value\n%s,%s,on,\n", on.Format(time.RFC3339), p.Dishes[0].ID)
		for i := range n {
			share := float64(i+1) / float64(n)
			at := on.Add(time.Duration(share * float64(5*time.Hour))).Format(time.RFC3339)
			line := fmt.Sprintf("%s,%s,core,%.1f F\n", at, p.Dishes[0].ID, 40+110*share)
			if i%2 == 1 {
				line = fmt.Sprintf("%s,,grate,%d F\n", at, 248+i%7)
			}
			log += line
		}
		entries, err := schedule.ReadLog([]byte(log), p)
		if err != nil {
			t.Fatal(err)
		}
		now := on.Add(5*time.Hour + time.Minute)
		if _, err := planner.Revise(context.Background(), p, entries, now); err != nil {
			t.Fatal(err)
		}
		took := cost(func() { _, _ = planner.Revise(context.Background(), p, entries, now) })
		t.Logf("%d readings: %s", n, brief(took))
		points = append(points, point{float64(n), milliseconds(took)})
	}
	return points
}

// byCallers has as many callers ask for a plan of burgers again and again over
// loopback. This is time on the wall: other work on the machine shows.
func byCallers(t *testing.T) (points []point) {
	server := httptest.NewServer(api.New(api.Config{Store: store.NewMemory(), Queue: 64, Patience: time.Minute}).Handler())
	defer server.Close()
	client := &http.Client{Transport: &http.Transport{MaxIdleConnsPerHost: 64}}
	for _, n := range []int{1, 2, 4, 8, 16, 32, 64} {
		times := make([][]time.Duration, n)
		var wg sync.WaitGroup
		began := time.Now()
		for i := range n {
			wg.Go(func() {
				for time.Since(began) < 4*time.Second {
					asked := time.Now()
					r, err := client.Post(server.URL+"/v1/plans", "application/json", strings.NewReader(burgers))
					if err != nil {
						t.Error(err)
						return
					}
					if _, err := io.Copy(io.Discard, r.Body); err != nil || r.StatusCode != http.StatusCreated {
						t.Errorf("%d %v", r.StatusCode, err)
					}
					r.Body.Close()
					times[i] = append(times[i], time.Since(asked))
				}
			})
		}
		wg.Wait()
		all := slices.Concat(times...)
		slices.Sort(all)
		t.Logf("%d callers: median %s, p99 %s, %.0f plans a second", n, brief(all[len(all)/2]), brief(all[len(all)*99/100]), float64(len(all))/time.Since(began).Seconds())
		points = append(points, point{float64(n), milliseconds(all[len(all)/2])})
	}
	return points
}

type point struct{ x, y float64 }

// panel is one chart.
type panel struct {
	title, x, y string
	points      []point
}

// figures are the points as text.
func (p panel) figures() string {
	var parts []string
	for _, q := range p.points {
		parts = append(parts, fmt.Sprintf("%g: %.3g ms", q.x, q.y))
	}
	return strings.Join(parts, ", ")
}

// power is the slope of the line of least squares through the logarithms, from a point on.
func (p panel) power(from int) float64 {
	var x, y, xx, xy, n float64
	for _, q := range p.points[from:] {
		lx, ly := math.Log(q.x), math.Log(q.y)
		x, y, xx, xy, n = x+lx, y+ly, xx+lx*lx, xy+lx*ly, n+1
	}
	return (n*xy - x*y) / (n*xx - x*x)
}
