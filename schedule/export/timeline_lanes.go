package export

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
)

const (
	barHeight = 16.0
	laneGap   = 12.0
	markRoom  = 12.0 // between the words of a lane and its bar, for the marks
	laneRoom  = pictureWidth - 2*pictureEdge
)

func (t *timeline) fireLane() {
	t.label(pictureEdge, t.y+letterSize, "strong", "Fire")
	t.y += lineHeight
	phases := slices.DeleteFunc(slices.Clone(t.Phases), func(f schedule.Phase) bool { return !f.To.After(t.from) || f.SetupFrom.After(t.to) })
	for _, f := range phases {
		t.paragraph(pictureEdge, laneRoom, "soft", fmt.Sprintf("%d: %s, %s, %s", f.Number, clean(f.Layout), clean(f.Band), t.grate(f.LevelC)))
	}
	t.y += markRoom
	for _, f := range phases {
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

// markWidth is the breadth of a mark at its top, markHeight how far it stands over its bar.
const (
	markWidth  = 9.0
	markHeight = 8.0
)

// marks puts a wedge over every attended moment of a lane; where wedges would touch, one
// reaches from the first to the last of them.
func (t *timeline) marks(of func(schedule.Step) bool) {
	var at []float64
	for _, s := range t.Steps {
		if s.Attended && of(s) && t.axis.holds(s.At) {
			at = append(at, t.axis.x(s.At))
		}
	}
	slices.Sort(at)
	for i := 0; i < len(at); {
		k := i
		for k+1 < len(at) && at[k+1]-at[k] < markWidth+1 {
			k++
		}
		t.mark(at[i], at[k], t.y)
		i = k + 1
	}
}

// mark points from above at a stretch of a bar that begins at y.
func (t *timeline) mark(from, to, y float64) {
	half := markWidth / 2
	t.shape("path", "class", "mark", "d", fmt.Sprintf("M%s %sH%sL%s %sH%sz", short(from-half), short(y-markHeight), short(to+half), short(to), short(y), short(from)))
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

// batchTimes says the instants of a batch in one line: the likely one, and the window
// behind it.
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
		words = append(words, word+" "+v.likelyTime(m.Window))
	}
	return strings.Join(words, ", ")
}

// likelyTime says when something is expected, and between which times: "2:15 PM (12:49-4:06)".
func (v *view) likelyTime(w schedule.Window) string {
	text := v.clock(w.Expected)
	if w.Early.IsZero() || v.at(w.Early).Equal(v.at(w.Late)) {
		return text
	}
	early, late := v.clock(w.Early), v.clock(w.Late)
	for _, half := range []string{" AM", " PM"} {
		if strings.HasSuffix(text, half) && strings.HasSuffix(early, half) && strings.HasSuffix(late, half) {
			return text + " (" + strings.TrimSuffix(early, half) + "-" + strings.TrimSuffix(late, half) + ")"
		}
	}
	if !strings.Contains(text+early+late, " ") { // a clock of 24 hours
		return text + " (" + early + "-" + late + ")"
	}
	return text + " (" + early + " to " + late + ")"
}

func (t *timeline) batchLane(d schedule.DishPlan, b schedule.Batch) {
	t.label(pictureEdge, t.y+letterSize, "strong", shorten(t.batchTitle(d, b), laneRoom, true))
	t.y += lineHeight
	t.paragraph(pictureEdge, laneRoom, "soft", t.batchTimes(b))
	t.y += markRoom
	off, known := takeOff(b)
	stages := likely(b)
	for _, s := range stages {
		t.stageBar(s.Kind, s.From, s.To)
	}
	if wrap, ok := b.Milestone(schedule.MilestoneWrap); ok {
		t.softWrap(stages, wrap.Window)
	}
	for _, s := range stages {
		if known && onFire(s) {
			t.softEnd(s, off)
		}
	}
	if known && !t.at(off.Early).Equal(t.at(off.Late)) {
		t.whisker(off)
	}
	t.marks(func(s schedule.Step) bool {
		return s.Dish == d.ID && (s.Batch == 0 || s.Batch == b.Number) && s.Kind != schedule.StepServe
	})
	if !t.at(d.ServeAt).Equal(t.at(t.ServeAt)) && !d.ServeAt.IsZero() {
		x := short(t.axis.x(d.ServeAt))
		t.shape("path", "class", "serve", "d", "M"+x+" "+short(t.y-3)+"v"+short(barHeight+6))
	}
	t.y += barHeight + laneGap
}

// warmLane shows a dish of the day before in the oven.
func (t *timeline) warmLane(d schedule.AheadDish) {
	t.label(pictureEdge, t.y+letterSize, "strong", shorten(isolated(t.dish(d.Dish))+", warmed in the oven", laneRoom, true))
	t.y += lineHeight
	t.paragraph(pictureEdge, laneRoom, "soft", t.warmTimes(d))
	t.y += markRoom
	t.bar("edge", "warm", *d.From, warmBy(d, d.Minutes.Expected))
	t.whisker(schedule.Window{Early: warmBy(d, d.Minutes.Early), Expected: warmBy(d, d.Minutes.Expected), Late: warmBy(d, d.Minutes.Late)})
	t.marks(func(s schedule.Step) bool { return s.Dish == d.Dish && s.Kind != schedule.StepServe })
	t.y += barHeight + laneGap
}

func (v *view) warmTimes(d schedule.AheadDish) string {
	hot := schedule.Window{Early: warmBy(d, d.Minutes.Early), Expected: warmBy(d, d.Minutes.Expected), Late: warmBy(d, d.Minutes.Late)}
	return "in " + v.clock(*d.From) + ", hot " + v.likelyTime(hot)
}

// warmBy is so many minutes after a dish goes into the oven.
func warmBy(d schedule.AheadDish, minutes float64) time.Time {
	return d.From.Add(time.Duration(minutes * float64(time.Minute)))
}

func takeOff(b schedule.Batch) (schedule.Window, bool) {
	m, ok := b.Milestone(schedule.MilestoneTakeOff)
	return m.Window, ok
}

func onFire(s schedule.Stage) bool {
	return s.Kind == schedule.StageBare || s.Kind == schedule.StageWrapped || s.Kind == schedule.StageSear
}
