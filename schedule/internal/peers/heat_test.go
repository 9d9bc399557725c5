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

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/unit"
)

// cook is one that both sides simulate: a body through stages up to core temperatures.
type cook struct {
	Name    string    `json:"name"`
	Body    heat.Body `json:"body"`
	Stages  []stage   `json:"stages"`
	Minutes float64   `json:"minutes"` // what the Go program says
	fine    float64   // minutes in small cells and short steps
}

// stage is said in words, so that the peer finds its own figures for them.
type stage struct {
	Cooker string  `json:"cooker"` // "grate" or "oven"
	LevelC float64 `json:"level_c"`
	Wrap   string  `json:"wrap"` // "", "foil" or "paper"
	UntilC float64 `json:"until_c"`
}

func (s stage) surroundings(t *testing.T) heat.Surroundings {
	t.Helper()
	var in heat.Surroundings
	switch s.Cooker {
	case "grate":
		in = heat.Grate(s.LevelC, heat.CalmDay())
	case "oven":
		in = heat.Oven(s.LevelC)
	default:
		t.Fatalf("cooker is %q, want grate or oven", s.Cooker)
	}
	switch s.Wrap {
	case "":
		return in
	case "foil":
		return in.InFoil()
	case "paper":
		return in.InPaper()
	}
	t.Fatalf("wrap is %q, want none, foil or paper", s.Wrap)
	return in
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

// piece is one of the catalogue, out of the refrigerator.
func piece(t *testing.T, name string, pounds float64) heat.Body {
	t.Helper()
	c, ok := cut.Find(name)
	if !ok {
		t.Fatalf("no cut %q in the catalogue", name)
	}
	thickness, width, length := c.HeatDimensions(float64(unit.FromPounds(pounds)), 0)
	k := c.Composition
	return heat.Body{
		ThicknessM: thickness, WidthM: width, LengthM: length, RadiusScale: c.Shape.RadiusScale,
		Water: k.Water, Protein: k.Protein, Fat: k.Fat, Ash: k.Ash,
		WetFactor: c.WetFactor, SupplyFactor: c.SupplyFactor, StartC: heat.RefrigeratorC,
	}
}

// cooks try a bare surface, each wrapping, and skin; both cookers.
func cooks(t *testing.T) []cook {
	t.Helper()
	brisket, butt, chicken := piece(t, "brisket", 12), piece(t, "pork-butt", 8), piece(t, "chicken", 4)
	grate := func(levelF float64, wrap string, untilF float64) stage {
		return stage{"grate", unit.FToC(levelF), wrap, unit.FToC(untilF)}
	}
	return []cook{
		{Name: "brisket, 12 lb, 237 F, bare to 195 F", Body: brisket, Stages: []stage{grate(237, "", 195)}},
		{Name: "the same in foil from 150 F", Body: brisket, Stages: []stage{grate(237, "", 150), grate(237, "foil", 195)}},
		{Name: "pork butt, 8 lb, 262 F, in paper from 165 F to 203 F", Body: butt, Stages: []stage{grate(262, "", 165), grate(262, "paper", 203)}},
		{Name: "chicken, 4 lb, oven 350 F, to 165 F", Body: chicken, Stages: []stage{{"oven", unit.FToC(350), "", unit.FToC(165)}}},
	}
}

// run follows the cook, in the surroundings of its stages, and says how long it takes.
func (c cook) run(t *testing.T, s *heat.Sim, in []heat.Surroundings, p heat.Precision) (minutes float64) {
	s.StartWith(c.Body, in[0], p)
	for i, st := range c.Stages {
		if i > 0 {
			s.Change(in[i])
		}
		if got := s.RunTo(st.UntilC, heat.MaxRunS); got != heat.Reached {
			t.Fatalf("%s: stage %d: %v", c.Name, i, got)
		}
	}
	return s.ElapsedS() / 60
}

// fine leaves the simulation next to no error of its own: what is then left lies in the
// equations. Steps much shorter would be too many, and the simulation would lengthen them.
var fine = heat.Precision{Cells: 32, ToleranceK: 0.05, MaxStepS: 60}

// TestHeatBesideSciPy has SciPy's stiff solvers integrate the same equations, stated
// anew in heat.py, with the cheapest of many settings that is at least as exact as our
// simulation. That both agree with the fine solution is a check of the simulation too.
func TestHeatBesideSciPy(t *testing.T) {
	asked(t)
	python := "/usr/bin/python3"
	all := cooks(t)
	var own []time.Duration
	var sim heat.Sim
	for i := range all {
		var in []heat.Surroundings
		for _, st := range all[i].Stages {
			in = append(in, st.surroundings(t))
		}
		all[i].Minutes = all[i].run(t, &sim, in, heat.Standard)
		all[i].fine = all[i].run(t, &sim, in, fine)
		own = append(own, cost(func() { all[i].run(t, &sim, in, heat.Standard) }))
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
		// Off by 0.06 % at worst; any constant of the first edition of the model, in either
		// statement, puts one of these cooks off by 0.13 % or more.
		if exact := all[i].fine/a.Reference - 1; math.Abs(exact) > 0.001 {
			t.Errorf("%s: %.2f min in small cells and short steps, the fine solution has %.2f: the equations differ", a.Name, all[i].fine, a.Reference)
		} else {
			t.Logf("%s: in small cells and short steps off by %+.3f %%", a.Name, 100*exact)
		}
	}
}
