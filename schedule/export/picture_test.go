package export

import (
	"encoding/xml"
	"math"
	"regexp"
	"slices"
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

// Bars, lines and marks lie where their instants are: the axis runs from where the fire is
// laid to ten minutes past the last instant, from 6 to 334 units.
func TestTimelineIsToScale(t *testing.T) {
	p := invented()
	now := p.ServeAt.Add(-5 * time.Hour)
	picture := exported(t, p, "timeline.svg")
	from, to := p.Steps[0].At, p.ServeAt.Add(10*time.Minute)
	x := func(at time.Time) float64 { return 6 + 328*at.Sub(from).Minutes()/to.Sub(from).Minutes() }
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
	marks := marksOf(t, picture)
	v, err := look(p, now)
	if err != nil {
		t.Fatal(err)
	}
	scales, err := v.drawnDays() // the chickens and the patties are drawn larger
	if err != nil || len(scales) != 2 {
		t.Fatal(len(scales), err)
	}
	for _, st := range p.Steps {
		at := x(st.At)
		if st.Dish != "" && st.Dish != "brisket" {
			at = scales[1].axis.x(st.At)
		}
		under := slices.ContainsFunc(marks, func(m [3]float64) bool { return m[0] <= at+0.06 && at-0.06 <= m[1] })
		if st.Attended && st.Kind != schedule.StepServe && !under {
			t.Errorf("no mark at %s, %.1f: %v", st.Kind, at, marks)
		}
	}
}

// marksOf are the wedges of a picture: from and to at their tips, and their height.
func marksOf(t *testing.T, picture string) (marks [][3]float64) {
	t.Helper()
	for _, m := range shapes(t, picture, "mark") {
		_, tips, ok := strings.Cut(m["d"], "L")
		if !ok {
			continue // a lozenge
		}
		end, rest, _ := strings.Cut(tips, " ")
		y, start, _ := strings.Cut(strings.TrimSuffix(rest, "z"), "H")
		marks = append(marks, [3]float64{num(t, start), num(t, end), num(t, y)})
	}
	return marks
}

// Wedges of one lane do not run into each other: what would is one wedge.
func TestMarksDoNotRunTogether(t *testing.T) {
	for _, day := range days {
		marks, wide := marksOf(t, exported(t, keptPlan(t, day), "timeline.svg")), 0
		for i, a := range marks {
			if a[1] > a[0] {
				wide++
			}
			for _, b := range marks[:i] {
				if a[2] == b[2] && a[0]-b[1] < markWidth && b[0]-a[1] < markWidth {
					t.Errorf("%s: marks at %v and %v", day, b, a)
				}
			}
		}
		if day == "crowded" && wide == 0 {
			t.Error("a crowded day has no wedge over several moments")
		}
	}
}

// The wrapped stretch begins at the expected wrap, and what is before and after it fades
// over the whole window.
func TestWrapFadesOverItsWindow(t *testing.T) {
	p := invented()
	b := &p.Dishes[0].Batches[0]
	w := &b.Milestones[2].Window
	w.Early, w.Late = w.Expected.Add(-time.Hour), w.Expected.Add(2*time.Hour)
	picture := exported(t, p, "timeline.svg")
	from, to := p.Steps[0].At, p.ServeAt.Add(10*time.Minute)
	x := func(at time.Time) float64 { return 6 + 328*at.Sub(from).Minutes()/to.Sub(from).Minutes() }
	wrapped := 0.0
	for _, bar := range shapes(t, picture, "edge") {
		if bar["fill"] == "url(#t-wrapped)" && wrapped == 0 {
			wrapped = num(t, bar["x"])
		}
	}
	strips := shapes(t, picture, "turn")
	if len(strips) != 2*fadeSteps {
		t.Fatalf("%d strips", len(strips))
	}
	first, last := strips[0], strips[len(strips)-1]
	for what, pair := range map[string][2]float64{"the wrapped stretch": {wrapped, x(w.Expected)}, "the first strip": {num(t, first["x"]), x(w.Early)},
		"the end of the last": {num(t, last["x"]) + num(t, last["width"]), x(w.Late)}} {
		if math.Abs(pair[0]-pair[1]) > 0.11 { // two rounded figures
			t.Errorf("%s is at %.1f, want %.1f", what, pair[0], pair[1])
		}
	}
}

// On a phone of 360 px a picture has 328 px, and its letters at least 14.
func TestLettersAreLargeEnoughForAPhone(t *testing.T) {
	if high := letterSize * 328 / pictureWidth; high < 14 {
		t.Errorf("letters are %.1f px high", high)
	}
	for _, rule := range regexp.MustCompile(`font-size: (\d+)px`).FindAllStringSubmatch(pictureCSS, -1) {
		if num(t, rule[1]) < letterSize {
			t.Errorf("%s is less than the letters are reckoned with", rule[0])
		}
	}
}

// Words on the dark of a fire and on food have no halo: it would fill the letters.
func TestWordsOnShapesHaveNoHalo(t *testing.T) {
	if !strings.Contains(pictureCSS, ".picture .inside, .picture .letter { stroke: none; }") {
		t.Error("a halo")
	}
}

// Of a long day the last minutes are drawn again on a scale on which they can be read, and
// no batch is lost.
func TestShortBarsAreDrawnLarger(t *testing.T) {
	p := keptPlan(t, "party")
	v, err := look(p, time.Time{})
	if err != nil {
		t.Fatal(err)
	}
	days, err := v.drawnDays()
	if err != nil {
		t.Fatal(err)
	}
	if len(days) != 2 || len(days[0].closer) != len(days[1].lanes) {
		t.Fatalf("%d scales", len(days))
	}
	batches := 0
	for _, d := range p.Dishes {
		batches += len(d.Batches)
	}
	if got := len(days[0].lanes) + len(days[1].lanes); got != batches {
		t.Errorf("%d lanes for %d batches", got, batches)
	}
	for _, l := range days[1].lanes {
		on, off := l.cooks()
		before, now := days[0].axis.x(off)-days[0].axis.x(on), days[1].axis.x(off)-days[1].axis.x(on)
		if before >= sliver || now < 2*before {
			t.Errorf("%s: %.0f wide, and %.0f where it is larger", l.dish.ID, before, now)
		}
	}
}

// A picture of a day without a plan says that and nothing of chances.
func TestPictureOfNoDaySaysOnlyThat(t *testing.T) {
	p := invented()
	p.Feasible = false
	if _, text := elements(t, exported(t, p, "timeline.svg")); strings.Contains(text, "everything") || strings.Contains(text, "Eat at") || !strings.Contains(text, "nothing to draw") {
		t.Error(text)
	}
}

// In the night when clocks go back the axis has the hour from 02:00 twice, and so the
// day has a tick more than its clock has hours.
func TestAxisOverAClockChange(t *testing.T) {
	berlin, _ := time.LoadLocation("Europe/Berlin")
	v := &view{loc: berlin}
	a := axis{view: v, from: time.Date(2027, 10, 31, 0, 0, 0, 0, berlin), to: time.Date(2027, 10, 31, 5, 0, 0, 0, berlin), left: 0, right: 600}
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

// The curve ends at the target's line, at the expected take-off, and the band goes on to the
// late one.
func TestCurvesAreToScale(t *testing.T) {
	p := invented()
	b := &p.Dishes[0].Batches[0]
	b.Curve = append(b.Curve, schedule.Point{At: b.Curve[len(b.Curve)-1].At.Add(2 * time.Hour), CoreC: 95, LowC: 95, HighC: 95})
	picture := exported(t, p, "curves.svg")
	curve, target, end := shapes(t, picture, "curve"), shapes(t, picture, "target"), shapes(t, picture, "end")
	if len(curve) != 1 || len(target) != 1 || len(end) != 1 {
		t.Fatalf("%d curves, %d targets, %d ends", len(curve), len(target), len(end))
	}
	x, y, _ := strings.Cut(curve[0]["d"][strings.LastIndex(curve[0]["d"], "L")+1:], " ")
	_, line, _ := strings.Cut(strings.Split(target[0]["d"], "H")[0], " ")
	if y != line || x != end[0]["cx"] || y != end[0]["cy"] {
		t.Errorf("the curve ends at %s %s, its target is at %s, its dot at %v", x, y, line, end[0])
	}
	off, _ := b.Milestone(schedule.MilestoneTakeOff)
	all := b.Curve[len(b.Curve)-1].At.Sub(b.Curve[0].At).Minutes()
	want := curveLeft + (pictureWidth-12-curveLeft)*off.Window.Expected.Sub(b.Curve[0].At).Minutes()/all
	if math.Abs(num(t, x)-want) > 0.06 {
		t.Errorf("the curve ends at %s, want %.1f", x, want)
	}
}

// Where the bend decides no figure of the core stands in the picture beside the range in the steps.
func TestCurveOfABendHasNoTarget(t *testing.T) {
	p := keptPlan(t, "crowded")
	bends := 0
	for _, s := range p.Steps {
		if s.Kind == schedule.StepTakeOff && strings.Contains(s.Text, "usually at ") {
			bends++
		}
	}
	picture := exported(t, p, "curves.svg")
	panels := len(shapes(t, picture, "curve"))
	if got := strings.Count(picture, "take-off "); bends == 0 || got != panels-bends {
		t.Errorf("%d figures to take off at in %d curves, of which %d are of what bends", got, panels, bends)
	}
}

// A dish without a curve is named once, however many batches it has.
func TestDishesWithoutCurveAreNamedOnce(t *testing.T) {
	p := invented()
	p.Dishes[2].Batches = append(p.Dishes[2].Batches, p.Dishes[2].Batches[0])
	if got := exported(t, p, "curves.svg"); strings.Count(got, "Burgers") != 1 {
		t.Errorf("burgers are named %d times", strings.Count(got, "Burgers"))
	}
}
