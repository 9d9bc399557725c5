package export

import (
	"io"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
)

// Timeline draws the day as an SVG picture: a lane for the fire and one for each
// batch along the cook's clock, quiet hours shaded, attended moments marked, soft
// ends where the end is a window, a line where people eat and, if the options give
// it, one for now. The error names an unknown time zone or is that of the writer.
func Timeline(w io.Writer, p schedule.Plan, o Options) error {
	v, err := look(p, o.Now)
	if err != nil {
		return err
	}
	return v.timeline(w, "t-", true)
}

func (v *view) timeline(w io.Writer, id string, alone bool) error {
	s := &svg{id: id, alone: alone}
	title := "Timeline: " + isolated(v.title())
	drawn := v.Feasible && len(v.Phases)+len(v.Dishes) > 0
	if alone {
		s.y = 8
		s.label(pictureEdge, s.y+16, "head", shorten(isolated(v.title()), pictureWidth-30, true))
		s.y += 26
	}
	if !drawn {
		s.paragraph(pictureEdge, pictureWidth-2*pictureEdge, "strong", "This day won't work as planned: there is nothing to draw.")
		s.y += 8
		return s.finish(w, title, "No plan fits this day.")
	}
	if alone {
		s.paragraph(pictureEdge, pictureWidth-2*pictureEdge, "soft", v.apart.Replace("Eat at "+v.eatAt()+". "+v.sure()+"."))
		s.y += 8
	}
	days, err := v.drawnDays()
	if err != nil {
		return err
	}
	if !alone { // a page folds them, see [view.closeUps]
		days = slices.DeleteFunc(days, (*timeline).isCloseUp)
	}
	words := s.lanes(days)
	days[len(days)-1].legend(days)
	return s.finish(w, title, words)
}

// lanes draws the days below each other, and says them in words.
func (s *svg) lanes(days []*timeline) string {
	var words []string
	for _, t := range days {
		t.svg = s
		t.draw()
		words = append(words, t.words())
	}
	return strings.TrimSpace(strings.Join(words, " "))
}

// timeline is the picture of one day.
type timeline struct {
	*view
	*svg
	axis     axis
	from, to time.Time
	end      string // what happens at its last serving, in a word or two
	title    string // instead of the day
	lanes    []lane
	closer   []lane // drawn again below, larger
}

// lane is a batch of a dish.
type lane struct {
	dish  schedule.DishPlan
	batch schedule.Batch
}

// drawnDays are the day and, before it, the day on which dishes are cooked ahead.
func (v *view) drawnDays() ([]*timeline, error) {
	day := &timeline{view: v, end: "eat"}
	if v.Ahead != nil && v.Ahead.Plan == nil {
		day.end = "chill by"
	}
	days := []*timeline{day}
	if b := v.dayBefore(); b != nil {
		before, err := look(*b, v.now)
		if err != nil {
			return nil, err
		}
		days = []*timeline{{view: before, end: "chill by"}, day}
	}
	var all []*timeline
	for _, t := range days {
		t.from, t.to = t.cooking()
		for _, d := range t.Dishes {
			for _, b := range d.Batches {
				t.lanes = append(t.lanes, lane{d, b})
			}
		}
		t.scaled()
		all = append(all, t)
		if larger := t.larger(); larger != nil {
			all = append(all, larger)
		}
	}
	return all, nil
}

func (t *timeline) scaled() {
	t.axis = axis{view: t.view, from: t.from, to: t.to, left: pictureEdge, right: pictureWidth - pictureEdge}
}

// layAhead is how long before its lighting a fire may be laid and still be drawn.
const layAhead = time.Hour

// cooking is the span of fire and stages: what has to be thawed days before would
// squeeze the day to a sliver.
func (v *view) cooking() (from, to time.Time) {
	short := *v
	short.Steps = nil
	from, to = short.extent()
	for _, d := range v.warmed() {
		from, to = earlier(from, *d.From), later(to, d.From.Add(time.Duration(d.Minutes.Late*float64(time.Minute))))
	}
	lit := from
	for _, s := range v.Steps {
		if s.Dish == "" && s.Attended && lit.Sub(s.At) <= layAhead {
			from = earlier(from, s.At)
		}
	}
	return from.Truncate(time.Minute), to.Add(10 * time.Minute)
}

// warmed are the dishes of the day before that warm in the oven beside what is drawn.
func (v *view) warmed() []schedule.AheadDish {
	if v.dayBefore() == nil {
		return nil
	}
	return slices.DeleteFunc(slices.Clone(v.Ahead.Dishes), func(d schedule.AheadDish) bool {
		return d.Place != schedule.PlaceOven || d.From == nil
	})
}

func (t *timeline) draw() {
	lanes := t.svg
	t.svg = &svg{id: lanes.id}
	t.svg.y = lanes.y + t.headRoom()
	top := t.svg.y
	t.fireLane()
	for _, l := range t.lanes {
		t.batchLane(l.dish, l.batch)
	}
	t.closerLane()
	if t.title == "" {
		for _, d := range t.warmed() {
			t.warmLane(d)
		}
	}
	front, bottom := t.svg, t.svg.y
	t.svg = lanes
	t.ground(top, bottom) // what lies behind the lanes comes first
	t.svg.add(front)
	t.svg.y = bottom + 8
}

// headRoom is the height above the lanes: days, quiet hours, changes of the clock, eating
// and now, times.
func (t *timeline) headRoom() float64 {
	rows := 3.0
	if len(t.quietHere()) > 0 {
		rows++
	}
	if len(t.jumps(t.from, t.to)) > 0 {
		rows++
	}
	if t.nowBesideEnd() {
		rows++
	}
	return rows*lineHeight + 8
}

func (t *timeline) quietHere() []schedule.Interval {
	var here []schedule.Interval
	for _, q := range t.Quiet {
		if q.To.After(t.from) && q.From.Before(t.to) {
			here = append(here, q)
		}
	}
	return here
}

// ground draws quiet hours, days, eating, now and times behind the lanes.
func (t *timeline) ground(top, bottom float64) {
	row := t.y
	next := func() float64 { row += lineHeight; return row - 4 }
	t.days(next(), bottom)
	if quiet := t.quietHere(); len(quiet) > 0 {
		y := next()
		for _, q := range quiet {
			from, to := t.axis.x(q.From), t.axis.x(q.To)
			t.shape("rect", "x", from, "y", y-11, "width", to-from, "height", bottom-y+11, "fill", t.fill("quiet"))
			t.fits(from, to, y+1, "quiet", "quiet "+t.clock(q.From)+" to "+t.clock(q.To), "quiet")
		}
	}
	if jumps := t.jumps(t.from, t.to); len(jumps) > 0 {
		y := next()
		for _, j := range jumps {
			x := t.axis.x(j.at)
			t.shape("path", "class", "jump", "d", "M"+short(x)+" "+short(y+3)+"V"+short(bottom))
			t.beside(x, y, "", j.short)
		}
	}
	end := next()
	crossed := []float64{t.axis.x(t.ServeAt)}
	if t.nowHere() {
		crossed = append(crossed, t.axis.x(t.now))
	}
	t.axis.scale(t.svg, top-5, bottom, crossed...)
	if t.nowHere() {
		y := end
		if t.nowBesideEnd() {
			y = next()
		}
		t.line(t.now, y, bottom, "now", "now-word", t.nowText())
	}
	t.line(t.ServeAt, end, bottom, "serve", "", t.endText())
}
