package export

import (
	"fmt"
	"slices"
	"time"

	"example.com/cookday/schedule"
)

// least is the narrowest bar: twelve minutes of a long day are less than a pixel.
const least = 4.0

// bar draws a stretch of a lane, in the fill of its class or of a pattern.
func (t *timeline) bar(class, pattern string, from, to time.Time) {
	x := t.axis.x(from)
	pairs := []any{"class", class, "x", x, "y", t.y, "width", max(t.axis.x(to)-x, least), "height", barHeight}
	if pattern != "" {
		pairs = append(pairs, "fill", t.fill(pattern))
	}
	t.shape("rect", pairs...)
}

func (t *timeline) stageBar(kind schedule.StageKind, from, to time.Time) {
	if kind == schedule.StageBare {
		t.bar("edge bare", "", from, to)
		return
	}
	t.bar("edge", string(kind), from, to)
}

// fadeSteps is in how many steps one stage fades into the next.
const fadeSteps = 4

// softWrap lets the wrapped stretch begin where it is expected to, and fade over its
// window: before it may be wrapped already, after it may still be bare.
func (t *timeline) softWrap(stages []schedule.Stage, w schedule.Window) {
	k := slices.IndexFunc(stages, func(s schedule.Stage) bool { return s.Kind == schedule.StageWrapped })
	if k < 1 {
		return
	}
	begins := t.axis.x(stages[k].From)
	strips := func(from, to, first, last float64, paint ...any) {
		if to-from < fadeSteps {
			return
		}
		for i := range fadeSteps {
			wide := (to - from) / fadeSteps
			opacity := first + (last-first)*float64(i)/(fadeSteps-1)
			t.shape("rect", append([]any{"class", "turn", "x", from + wide*float64(i), "y", t.y + 1, "width", wide, "height", barHeight - 2, "opacity", opacity}, paint...)...)
		}
	}
	strips(t.axis.x(later(w.Early, stages[k-1].From)), begins, 0.2, 0.6, "fill", t.fill("wrapped"))
	strips(begins, t.axis.x(earlier(w.Late, stages[k].To)), 0.5, 0.1, "fill", "var(--bare)")
}

// softEnd fades a stage of cooking out over the window in which it ends, in four steps.
func (t *timeline) softEnd(s schedule.Stage, off schedule.Window) {
	from, to := t.axis.x(later(off.Early, s.From)), t.axis.x(s.To)
	if to-from < fadeSteps {
		return
	}
	for i := range fadeSteps {
		t.shape("rect", "class", "fade", "x", from+(to-from)*float64(i)/fadeSteps, "y", t.y+1, "width", (to-from)/fadeSteps, "height", barHeight-2,
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
