package planner_test

import (
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
	"example.com/cookday/schedule/planner/internal/spread"
)

// paceGrills is how many grills cook five times; .ci/full.d/fire.sh asks for two hundred.
var paceGrills = flag.Int("pace-grills", 0, "let so many grills cook five times, each learned from the cooks before; minutes")

const cooksOfAGrill = 5

// pacedCook is one cook: its own window, and where its truth lay.
type pacedCook struct {
	inside bool
	width  float64 // of the logarithm
}

// cooksOf is one grill: a pace that is its own in every cook and the rest anew each time, both drawn as the windows of a plan for
// a grill that nobody knows say that cooks lie. Each cook is planned with what those before it taught, through the same doors
// as a household's: request, plan, log, record.
func cooksOf(t *testing.T, d *rand.Rand, text string) (out [cooksOfAGrill]pacedCook) {
	t.Helper()
	strange := plantest.Day(t, text)
	minutes, slow, fast := pacedWindow(t, strange)
	rest := func(sd float64) float64 { return math.Sqrt(sd*sd - spread.BetweenCooks*spread.BetweenCooks) }
	pace, p := spread.BetweenCooks*d.NormFloat64(), strange
	for k := range out {
		u := d.NormFloat64()
		by := rest(slow)
		if u < 0 {
			by = rest(fast)
		}
		took := minutes * math.Exp(pace+by*u)
		on, off := putOn(t, p), plantest.TakeOff(t, p, "brisket")
		early, late := off.Early.Sub(on).Minutes(), off.Late.Sub(on).Minutes()
		out[k] = pacedCook{took >= early && took <= late, math.Log(late / early)}
		own, err := json.Marshal(pacedLesson(t, p, took).Own)
		if err != nil {
			t.Fatal(err)
		}
		p = plantest.Day(t, strings.Replace(text, "fuel: briquettes", "fuel: briquettes, own: "+string(own), 1))
	}
	return out
}

// pacedWindow is how long the brisket of a plan takes, and the spread of its logarithm towards a slow day and a fast one.
func pacedWindow(t *testing.T, p schedule.Plan) (minutes, slow, fast float64) {
	t.Helper()
	on, off := putOn(t, p), plantest.TakeOff(t, p, "brisket")
	minutes = off.Expected.Sub(on).Minutes()
	return minutes, math.Log(off.Late.Sub(on).Minutes()/minutes) / spread.ZTenth, math.Log(minutes/off.Early.Sub(on).Minutes()) / spread.ZTenth
}

// pacedLesson is what a cook teaches of which on, core and off were logged.
func pacedLesson(t *testing.T, p schedule.Plan, took float64) schedule.GrillLesson {
	t.Helper()
	on := putOn(t, p)
	at := on.Add(time.Duration(took * float64(time.Minute)))
	log, err := schedule.ReadLog([]byte(fmt.Sprintf("time,dish,kind,value\n%s,brisket,on,\n%s,brisket,core,203 F\n%s,brisket,pulled,\n",
		on.Format(time.RFC3339), at.Add(-time.Minute).Format(time.RFC3339), at.Format(time.RFC3339))), p)
	if err != nil {
		t.Fatal(err)
	}
	lesson, err := planner.Learn(context.Background(), p, log)
	if err != nil || lesson.Own == nil {
		t.Fatalf("%v: %+v", err, lesson)
	}
	return lesson
}

// Windows of plans with a record hold what they promise, cook by cook, and narrow by what was learned. Two hundred grills tell the
// share to 1 in 100; the few of the gate only that it is not far off.
func TestWindowsOfOnesOwnGrillHold(t *testing.T) {
	grills, low, high := 2, 0.5, 1.0
	if *paceGrills > 0 {
		grills, low, high = *paceGrills, 0.76, 0.84 // asked for
	}
	d := rand.New(rand.NewPCG(20270703, 2))
	text := plantest.ReadFile(t, "testdata/logs/brisket-alone.yaml")
	var held, width [cooksOfAGrill]float64
	for range grills {
		for k, c := range cooksOf(t, d, text) {
			width[k] += c.width / float64(grills)
			if c.inside {
				held[k]++
			}
		}
	}
	all := 0.0
	for k := range held {
		all += held[k] / float64(grills*cooksOfAGrill)
		t.Logf("cook %d: %.1f %% inside, window %.3f of the first", k+1, 100*held[k]/float64(grills), width[k]/width[0])
		if k > 0 && !(width[k] < width[k-1]) {
			t.Errorf("cook %d: the window does not narrow", k+1)
		}
	}
	t.Logf("all: %.1f %% inside", 100*all)
	if all < low || all > high {
		t.Errorf("%.1f %% inside", 100*all)
	}
}
