package export

import (
	"html/template"
	"io"
	"slices"
	"time"

	"example.com/cookday/schedule"
)

// On a long day what cooks for minutes is a sliver. Where several such come close together
// they are drawn again on a scale of their own.
const (
	sliver      = 30.0             // units of the picture that a bar must have
	leastLarger = 2                // batches
	leadLarger  = 20 * time.Minute // drawn before the first of them goes on
	mostLarger  = 0.3              // of the day, or nothing is won
)

// larger is the part of a day that is drawn again, and takes its batches from the day's
// own lanes; nil where that is not needed.
func (t *timeline) larger() *timeline {
	var small, other []lane
	from := t.to
	for _, l := range t.lanes {
		on, off := l.cooks()
		if off.IsZero() || t.axis.x(off)-t.axis.x(on) >= sliver {
			other = append(other, l)
			continue
		}
		small = append(small, l)
		from = earlier(from, on.Add(-leadLarger))
	}
	if len(small) < leastLarger || len(other) == 0 || t.to.Sub(from).Seconds() > mostLarger*t.to.Sub(t.from).Seconds() {
		return nil
	}
	t.lanes, t.closer = other, small
	z := &timeline{view: t.view, from: from.Truncate(time.Minute), to: t.to, end: t.end, lanes: small}
	z.title = "From " + t.clock(z.from) + ", larger"
	z.scaled()
	return z
}

func (t *timeline) isCloseUp() bool { return t.title != "" }

// closeUps are the parts of a day that are drawn again, in a picture of their own; empty where
// there is none.
func (v *view) closeUps(id string) (template.HTML, error) {
	days, err := v.drawnDays()
	if err != nil {
		return "", err
	}
	days = slices.DeleteFunc(days, func(t *timeline) bool { return !t.isCloseUp() })
	if len(days) == 0 {
		return "", nil
	}
	return drawn(func(w io.Writer) error {
		s := &svg{id: id}
		words := s.lanes(days)
		return s.finish(w, "Timeline, larger: "+isolated(v.title()), words)
	})
}

// cooks is when a batch is likely to be on the fire; zero where it is not known.
func (l lane) cooks() (on, off time.Time) {
	for _, s := range likely(l.batch) {
		if !onFire(s) {
			continue
		}
		if on.IsZero() {
			on = s.From
		}
		off = s.To
	}
	return on, off
}

// closerLane shows in one lane all that is drawn again, larger.
func (t *timeline) closerLane() {
	if len(t.closer) == 0 {
		return
	}
	var names []string
	for _, l := range t.closer {
		if name := isolated(t.dish(l.dish.ID)); !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	t.label(pictureEdge, t.y+letterSize, "strong", shorten(list(names), laneRoom, true))
	t.y += lineHeight
	t.paragraph(pictureEdge, laneRoom, "soft", "drawn larger below")
	t.y += markRoom
	var stages []schedule.Stage
	for _, l := range t.closer {
		stages = append(stages, likely(l.batch)...)
	}
	slices.SortStableFunc(stages, func(a, b schedule.Stage) int { return a.From.Compare(b.From) })
	for _, s := range stages {
		t.stageBar(s.Kind, s.From, s.To)
	}
	t.y += barHeight + laneGap
}
