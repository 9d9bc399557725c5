package planner_test

import (
	"context"
	"errors"
	"flag"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
)

var cancels = flag.Int("cancels", 8, "how often TestCancelAtAnyInstant cancels each work")

// Whenever a context is cancelled, the work ends soon and gives no half of an answer.
// The figures are printed; what is asked for is coarse, because the machine may be busy.
func TestCancelAtAnyInstant(t *testing.T) {
	dishes := strings.Split(strings.Repeat("{cut: chicken, weight: 4 lb};{cut: spare-ribs, weight: 3 lb};", 6)+"{cut: corn, count: 12}", ";")
	full := plantest.Request(t, plantest.Evening("grill: {kind: kettle, diameter: 26 in}\noven: {hold: 170 F}", dishes...))
	tight := plantest.Request(t, plantest.Evening("grill: {kind: kettle, diameter: 18 in}\nearliest: \"12:00\"", "{cut: pork-butt, weight: 8 lb}", "{cut: burger, weight: 6 oz, count: 12}"))
	p := plantest.Party(t, "../..")
	on := plantest.StepAt(t, p, schedule.StepPutOn, "brisket")
	log := []schedule.Entry{{At: on, Dish: "brisket", Kind: schedule.LogOn}}
	for i := range 2000 {
		log = append(log, schedule.Entry{At: on.Add(time.Duration(i+1) * 14 * time.Second), Dish: "brisket", Kind: schedule.LogCore, C: 5 + 0.03*float64(i)})
	}
	for name, work := range map[string]func(context.Context) error{
		"a full day": func(ctx context.Context) error { _, err := planner.Make(ctx, full); return err },
		"remedies":   func(ctx context.Context) error { _, err := planner.Make(ctx, tight); return err },
		"2,000 readings": func(ctx context.Context) error {
			_, err := planner.Revise(ctx, p, log, on.Add(8*time.Hour))
			return err
		},
		"a day of always": func(ctx context.Context) error { _, err := planner.Make(ctx, p.Request); return err },
	} {
		start := time.Now()
		if err := work(context.Background()); err != nil {
			t.Fatal(name, err)
		}
		whole := time.Since(start)
		var late []time.Duration
		for range *cancels {
			ctx, cancel := context.WithCancel(context.Background())
			var at time.Time
			timer := time.AfterFunc(time.Duration(rand.Int64N(int64(whole))), func() { at = time.Now(); cancel() })
			err := work(ctx)
			ended := time.Now()
			switch stopped := timer.Stop(); {
			case err == nil: // it was faster this time
			case stopped || !errors.Is(err, context.Canceled):
				t.Errorf("%s: %v", name, err)
			default:
				<-ctx.Done()
				late = append(late, ended.Sub(at))
			}
			cancel()
		}
		slices.Sort(late)
		if n := len(late); n > 0 {
			t.Logf("%s, %v in whole: %d times cancelled; ended after %v in the middle, %v in the 99th percentile, %v at the most",
				name, whole.Round(time.Millisecond), n, late[n/2], late[n*99/100], late[n-1])
			if late[n-1] > 2*time.Second {
				t.Errorf("%s: goes on for %v after it is cancelled", name, late[n-1])
			}
		}
	}
}
