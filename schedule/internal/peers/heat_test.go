package peers

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"os/exec"
	"testing"
	"time"

	"example.com/cookday/schedule/internal/heat"
)

// cook is one that both sides simulate: a body through stages up to core temperatures.
type cook struct {
	Name    string    `json:"name"`
	Body    heat.Body `json:"body"`
	Stages  []stage   `json:"stages"`
	Minutes float64   `json:"minutes"` // what the Go program says
}

type stage struct {
	In     heat.Surroundings `json:"in"`
	UntilC float64           `json:"until_c"`
}

// answer is SciPy's.
type answer struct {
	Name      string
	Reference float64 // minutes on a fine grid
	Minutes   float64
	Seconds   float64 // of processor time
	Method    string
	Cells     int
	RTol      float64
}

func fahrenheit(f float64) float64 { return (f - 32) / 1.8 }

// cooks are typical bodies of the catalogue (sizes are estimates from anatomy).
func cooks() []cook {
	brisket := heat.Body{ThicknessM: 0.085, WidthM: 0.28, LengthM: 0.42, RadiusScale: 1, Water: 0.58, Protein: 0.165, Fat: 0.245, Ash: 0.01,
		WetFactor: 0.8, SupplyFactor: 1, StartC: heat.RefrigeratorC}
	chicken := heat.Body{ThicknessM: 0.077, WidthM: 0.102, LengthM: 0.146, RadiusScale: 1.085, Water: 0.66, Protein: 0.186, Fat: 0.145, Ash: 0.01,
		WetFactor: 0.3, SupplyFactor: 0.8, StartC: heat.RefrigeratorC}
	grate := heat.Grate(fahrenheit(237), heat.CalmDay())
	return []cook{
		{Name: "brisket, 12 lb, 237 F, bare to 195 F", Body: brisket, Stages: []stage{{grate, fahrenheit(195)}}},
		{Name: "the same in foil from 150 F", Body: brisket, Stages: []stage{{grate, fahrenheit(150)}, {grate.InFoil(), fahrenheit(195)}}},
		{Name: "chicken, 4 lb, oven 350 F, to 165 F", Body: chicken, Stages: []stage{{heat.Oven(fahrenheit(350)), fahrenheit(165)}}},
	}
}

func (c cook) run(s *heat.Sim) (minutes float64) {
	s.Start(c.Body, c.Stages[0].In)
	for i, st := range c.Stages {
		if i > 0 {
			s.Change(st.In)
		}
		s.RunTo(st.UntilC, heat.MaxRunS)
	}
	return s.ElapsedS() / 60
}

// TestHeatBesideSciPy has SciPy's stiff solvers integrate the same equations, stated
// anew in heat.py, with the cheapest of many settings that is at least as exact as our
// simulation. That both agree with the fine solution is a check of the simulation too.
func TestHeatBesideSciPy(t *testing.T) {
	asked(t)
	python := "/usr/bin/python3"
	all := cooks()
	var own []time.Duration
	var sim heat.Sim
	for i := range all {
		all[i].Minutes = all[i].run(&sim)
		own = append(own, cost(func() { all[i].run(&sim) }))
	}
	question, err := json.Marshal(all)
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(python, "heat.py")
	cmd.Stdin, cmd.Stderr = bytes.NewReader(question), os.Stderr
	cmd.Env = append(os.Environ(), "OPENBLAS_NUM_THREADS=1")
	text, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	var answers []answer
	if err := json.Unmarshal(text, &answers); err != nil || len(answers) != len(all) {
		t.Fatalf("%v: %s", err, text)
	}
	for i, a := range answers {
		off := all[i].Minutes/a.Reference - 1
		row(a.Name, fmt.Sprintf("simulation, off by %+.2f %%", 100*off),
			fmt.Sprintf("SciPy %s, %d cells, rtol %g, off by %+.2f %%", a.Method, a.Cells, a.RTol, 100*(a.Minutes/a.Reference-1)),
			own[i], time.Duration(a.Seconds*1e9))
		if math.Abs(off) > 0.005 { // the simulation's own figures: 0.3 % at worst
			t.Errorf("%s: %.1f min, the fine solution has %.1f", a.Name, all[i].Minutes, a.Reference)
		}
	}
}
