package export

import (
	"fmt"
	"strings"
	"time"

	"example.com/cookday/schedule"
)

const (
	barHeight = 14.0
	laneGap   = 10.0
)

func (t *timeline) fireLane() {
	t.label(12, t.y+letterSize, "strong", "Fire")
	t.y += lineHeight
	var fires []string
	for _, f := range t.Phases {
		fires = append(fires, fmt.Sprintf("%d %s, %s, %s", f.Number, clean(f.Layout), clean(f.Band), t.grate(f.LevelC)))
	}
	t.paragraph(12, pictureWidth-24, "soft", strings.Join(fires, "; "))
	t.y += 5
	for _, f := range t.Phases {
		setup, from, to := t.axis.x(f.SetupFrom), t.axis.x(f.From), t.axis.x(f.To)
		t.shape("rect", "class", "edge", "x", setup, "y", t.y, "width", from-setup, "height", barHeight, "fill", t.fill("setup"))
		t.shape("rect", "class", "edge fire", "x", from, "y", t.y, "width", to-from, "height", barHeight)
		if to-from > letterSize {
			t.label((from+to)/2, t.y+barHeight-3, "inside", fmt.Sprint(f.Number))
		}
	}
	t.marks(func(s schedule.Step) bool { return s.Dish == "" && s.Kind != schedule.StepServe })
	t.y += barHeight + laneGap
}

// marks puts a wedge at every attended moment of a lane.
func (t *timeline) marks(of func(schedule.Step) bool) {
	for _, s := range t.Steps {
		if x := t.axis.x(s.At); s.Attended && of(s) && t.axis.holds(s.At) {
			t.shape("path", "class", "mark", "d", fmt.Sprintf("M%s %sl-4 -7h8z", short(x), short(t.y+3)))
		}
	}
}

func (v *view) batchTitle(d schedule.DishPlan, b schedule.Batch) string {
	text := isolated(v.dish(d.ID))
	if len(d.Batches) > 1 {
		return fmt.Sprintf("%s, batch %d of %d", text, b.Number, len(d.Batches))
	}
	if portion := v.portion(d); portion != "" {
		text += ", " + portion
	}
	return text
}

// batchTimes says the instants of a batch in one line.
func (v *view) batchTimes(b schedule.Batch) string {
	var words []string
	for _, m := range b.Milestones {
		word := ""
		switch m.Kind {
		case schedule.MilestoneOn:
			word = "on"
		case schedule.MilestoneWrap:
			word = "wrap"
		case schedule.MilestoneTakeOff:
			word = "off"
		default:
			continue
		}
		if v.at(m.Window.Early).Equal(v.at(m.Window.Late)) {
			words = append(words, word+" "+v.clock(m.Window.Expected))
		} else {
			words = append(words, word+" "+v.clock(m.Window.Early)+" to "+v.clock(m.Window.Late)+", likely "+v.clock(m.Window.Expected))
		}
	}
	return strings.Join(words, "; ")
}

func (t *timeline) batchLane(d schedule.DishPlan, b schedule.Batch) {
	t.label(12, t.y+letterSize, "strong", shorten(t.batchTitle(d, b), pictureWidth-24, true))
	t.y += lineHeight
	t.paragraph(12, pictureWidth-24, "soft", t.batchTimes(b))
	t.y += 5
	off, known := takeOff(b)
	for _, s := range likely(b) {
		t.stageBar(s.Kind, s.From, s.To)
		if known && onFire(s) {
			t.softEnd(s, off)
		}
	}
	if known && !t.at(off.Early).Equal(t.at(off.Late)) {
		t.whisker(off)
	}
	t.marks(func(s schedule.Step) bool { return s.Dish == d.ID && (s.Batch == 0 || s.Batch == b.Number) })
	if !t.at(d.ServeAt).Equal(t.at(t.ServeAt)) && !d.ServeAt.IsZero() {
		x := short(t.axis.x(d.ServeAt))
		t.shape("path", "class", "serve", "d", "M"+x+" "+short(t.y-3)+"v"+short(barHeight+6))
	}
	t.y += barHeight + laneGap
}

func takeOff(b schedule.Batch) (schedule.Window, bool) {
	m, ok := b.Milestone(schedule.MilestoneTakeOff)
	return m.Window, ok
}

func onFire(s schedule.Stage) bool {
	return s.Kind == schedule.StageBare || s.Kind == schedule.StageWrapped || s.Kind == schedule.StageSear
}

// least is the narrowest bar: twelve minutes of a long day are less than a pixel.
const least = 3.0

func (t *timeline) stageBar(kind schedule.StageKind, from, to time.Time) {
	x := t.axis.x(from)
	pairs := []any{"class", "edge", "x", x, "y", t.y, "width", max(t.axis.x(to)-x, least), "height", barHeight}
	if kind == schedule.StageBare {
		pairs[1] = "edge bare"
	} else {
		pairs = append(pairs, "fill", t.fill(string(kind)))
	}
	t.shape("rect", pairs...)
}

// softEnd fades a stage of cooking out over the window in which it ends, in four steps.
func (t *timeline) softEnd(s schedule.Stage, off schedule.Window) {
	from, to := t.axis.x(later(off.Early, s.From)), t.axis.x(s.To)
	if to-from < 4 {
		return
	}
	const steps = 4
	for i := range steps {
		t.shape("rect", "class", "fade", "x", from+(to-from)*float64(i)/steps, "y", t.y+1, "width", (to-from)/steps, "height", barHeight-2,
			"opacity", 0.2*float64(i+1))
	}
}

func later(a, b time.Time) time.Time {
	if a.After(b) {
		return a
	}
	return b
}

// whisker shows a window below a bar: its ends, and a lozenge where it is expected.
func (t *timeline) whisker(w schedule.Window) {
	early, middle, late, y := t.axis.x(w.Early), t.axis.x(w.Expected), t.axis.x(w.Late), t.y+barHeight+4
	t.shape("path", "class", "spread", "d", fmt.Sprintf("M%s %sv4m0 -2H%sm0 -2v4", short(early), short(y-2), short(late)))
	t.shape("path", "class", "mark", "d", fmt.Sprintf("M%s %sl3.5 3.5l-3.5 3.5l-3.5 -3.5z", short(middle), short(y-3.5)))
}

// legend explains bars and marks, as many in a row as fit.
func (t *timeline) legend() {
	x := 12.0
	key := func(word string, draw func(x, y float64)) {
		room := 24 + size(word, false) + 12
		if x+room > pictureWidth {
			x, t.y = 12, t.y+lineHeight+2
		}
		draw(x, t.y)
		t.label(x+24, t.y+letterSize-1, "soft", word)
		x += room
	}
	bar := func(class, pattern string) func(x, y float64) {
		return func(x, y float64) {
			pairs := []any{"class", "edge " + class, "x", x, "y", y, "width", 18.0, "height", 12.0}
			if pattern != "" {
				pairs = append(pairs, "fill", t.fill(pattern))
			}
			t.shape("rect", pairs...)
		}
	}
	used := t.stageKinds()
	for _, k := range []struct {
		kind                 schedule.StageKind
		word, class, pattern string
	}{{schedule.StageBare, "cooking", "bare", ""}, {schedule.StageWrapped, "wrapped", "", "wrapped"},
		{schedule.StageSear, "sear", "", "sear"}, {schedule.StageRest, "rest", "", "rest"}, {schedule.StageHold, "hold", "", "hold"}} {
		if used[k.kind] {
			key(k.word, bar(k.class, k.pattern))
		}
	}
	if len(t.Phases) > 0 {
		key("lighting, warming up", bar("", "setup"))
		key("fire ready", bar("fire", ""))
	}
	key("a person is needed", func(x, y float64) {
		t.shape("path", "class", "mark", "d", fmt.Sprintf("M%s %sl-4 -7h8z", short(x+9), short(y+9)))
	})
	key("take-off: early, likely, late", func(x, y float64) {
		t.shape("path", "class", "spread", "d", fmt.Sprintf("M%s %sv4m0 -2h18m0 -2v4", short(x), short(y+4)))
		t.shape("path", "class", "mark", "d", fmt.Sprintf("M%s %sl3.5 3.5l-3.5 3.5l-3.5 -3.5z", short(x+9), short(y+2.5)))
	})
	t.y += lineHeight + 6
}

func (v *view) stageKinds() map[schedule.StageKind]bool {
	used := map[schedule.StageKind]bool{}
	for _, d := range v.Dishes {
		for _, b := range d.Batches {
			for _, s := range likely(b) {
				used[s.Kind] = true
			}
		}
	}
	return used
}
