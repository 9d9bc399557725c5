package export

import (
	"encoding/xml"
	"math"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
)

// shapes lists the elements of a picture whose class has the word, with their attributes.
func shapes(t *testing.T, picture, class string) []map[string]string {
	t.Helper()
	var found []map[string]string
	d := xml.NewDecoder(strings.NewReader(picture))
	for {
		token, err := d.Token()
		if err != nil {
			return found
		}
		if e, ok := token.(xml.StartElement); ok {
			attrs := map[string]string{"": e.Name.Local}
			for _, a := range e.Attr {
				attrs[a.Name.Local] = a.Value
			}
			if strings.Contains(" "+attrs["class"]+" ", " "+class+" ") {
				found = append(found, attrs)
			}
		}
	}
}

func num(t *testing.T, s string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

func startX(t *testing.T, path map[string]string) float64 {
	t.Helper()
	x, _, _ := strings.Cut(strings.TrimPrefix(path["d"], "M"), " ")
	return num(t, x)
}

// Bars, lines and marks lie where their instants are: the axis runs from the first
// light to ten minutes past the last instant, from 12 to 388 units.
func TestTimelineIsToScale(t *testing.T) {
	p := invented()
	now := p.ServeAt.Add(-5 * time.Hour)
	picture := exported(t, p, "timeline.svg")
	from, to := *p.LightAt, p.ServeAt.Add(10*time.Minute)
	x := func(at time.Time) float64 { return 12 + 376*at.Sub(from).Minutes()/to.Sub(from).Minutes() }
	near := func(what string, got, want float64) {
		if math.Abs(got-want) > 0.051 { // coordinates have one decimal
			t.Errorf("%s at %.1f, want %.1f", what, got, want)
		}
	}
	near("serving", startX(t, shapes(t, picture, "serve")[0]), x(p.ServeAt))
	near("now", startX(t, shapes(t, picture, "now")[0]), x(now))
	bare := shapes(t, picture, "bare")
	brisket := p.Dishes[0].Batches[0].Stages[0]
	near("brisket", num(t, bare[0]["x"]), x(brisket.From))
	near("its length", num(t, bare[0]["width"]), x(brisket.To)-x(brisket.From))
	marks := 0
	for _, s := range p.Steps {
		if s.Attended && s.Kind != schedule.StepServe && !s.At.Before(from) {
			marks++
		}
	}
	wedges := 0
	for _, m := range shapes(t, picture, "mark") {
		if strings.HasSuffix(m["d"], "h8z") {
			wedges++
		}
	}
	if wedges != marks+1 { // one more in the legend
		t.Errorf("%d wedges for %d attended moments", wedges, marks)
	}
}

// In the night when clocks go back the axis has the hour from 02:00 twice, and so the
// day has a tick more than its clock has hours.
func TestAxisOverAClockChange(t *testing.T) {
	berlin, _ := time.LoadLocation("Europe/Berlin")
	v := &view{loc: berlin}
	a := axis{view: v, from: time.Date(2027, 10, 31, 0, 0, 0, 0, berlin), to: time.Date(2027, 10, 31, 5, 0, 0, 0, berlin), left: 0, right: 6}
	var clocks []string
	for _, tick := range a.ticks() {
		clocks = append(clocks, tick.In(berlin).Format("15:04"))
	}
	if got := strings.Join(clocks, " "); got != "00:00 01:00 02:00 02:00 03:00 04:00 05:00" {
		t.Error(got)
	}
}

// Pieces lie where the plan puts them, in true size, on a grate as far across as it is.
func TestGrateMapIsToScale(t *testing.T) {
	p := invented()
	for phase := 1; phase <= 2; phase++ {
		var b strings.Builder
		if err := GrateMap(&b, p, phase); err != nil {
			t.Fatal(err)
		}
		grate := shapes(t, b.String(), "grate")[0]
		scale := num(t, grate["r"]) / (float64(p.Request.Grill.Across()) / 2)
		cx, cy := num(t, grate["cx"]), num(t, grate["cy"])
		drawn := shapes(t, b.String(), "piece")
		want := map[int]int{1: 1 + 2, 2: 12}[phase] // brisket and chickens, then patties
		if len(drawn) != want {
			t.Errorf("phase %d: %d pieces, want %d", phase, len(drawn), want)
		}
		first := p.Dishes[map[int]int{1: 0, 2: 2}[phase]].Batches[0].Pieces[0]
		for what, pair := range map[string][2]float64{
			"x":     {num(t, drawn[0]["cx"]), cx + first.Spots[0].XM*scale},
			"y":     {num(t, drawn[0]["cy"]), cy - first.Spots[0].YM*scale},
			"long":  {num(t, drawn[0]["rx"]), first.LengthM / 2 * scale},
			"broad": {num(t, drawn[0]["ry"]), first.WidthM / 2 * scale},
		} {
			if math.Abs(pair[0]-pair[1]) > 0.1 { // scale and centre are read back from rounded figures
				t.Errorf("phase %d: %s is %.1f, want %.1f", phase, what, pair[0], pair[1])
			}
		}
	}
}

// The brisket is off before the chickens lie in its place: two pictures of one fire.
func TestSittingsKeepTimesApart(t *testing.T) {
	p := invented()
	v, err := look(p, time.Time{})
	if err != nil {
		t.Fatal(err)
	}
	letters := func() string {
		var out []string
		for _, s := range v.sittings(p.Phases[0]) {
			word := ""
			for _, g := range s.guests {
				word += g.letter
			}
			out = append(out, word)
		}
		return strings.Join(out, " ")
	}
	if got := letters(); got != "A B" {
		t.Errorf("in the same place: %s", got)
	}
	for i := range p.Dishes[1].Batches[0].Pieces {
		p.Dishes[1].Batches[0].Pieces[i].Spots[0].YM = 5 // out of the way
	}
	if got := letters(); got != "AB" {
		t.Errorf("in places of their own: %s", got)
	}
}

// The chord that leaves 0.40 of a disc on one side lies at 0.158 of its radius: from
// acos(d) - d sqrt(1-d^2) = 0.4 pi, solved numerically to three digits.
func TestChordCut(t *testing.T) {
	for share, want := range map[float64]float64{0.5: 0, 0.4: 0.158, 0.6: -0.158} {
		if got := chordCut(share); math.Abs(got-want) > 0.0005 {
			t.Errorf("share %.1f: %.4f, want %.3f", share, got, want)
		}
	}
}

// The curve ends at the target's line, and the band lies about it.
func TestCurvesAreToScale(t *testing.T) {
	p := invented()
	picture := exported(t, p, "curves.svg")
	curve, target := shapes(t, picture, "curve"), shapes(t, picture, "target")
	if len(curve) != 1 || len(target) != 1 {
		t.Fatalf("%d curves, %d targets", len(curve), len(target))
	}
	_, end, _ := strings.Cut(curve[0]["d"][strings.LastIndex(curve[0]["d"], "L"):], " ")
	_, line, _ := strings.Cut(strings.Split(target[0]["d"], "H")[0], " ")
	if end != line {
		t.Errorf("the curve ends at %s, its target is at %s", end, line)
	}
}
