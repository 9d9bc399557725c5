package export

import (
	"fmt"
	"io"
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
	if alone {
		s.y = 8
		s.label(10, s.y+16, "head", shorten(isolated(v.title()), pictureWidth-30, true))
		s.y += 26
		s.paragraph(10, pictureWidth-20, "soft", v.apart.Replace("Eat at "+v.eatAt()+". "+v.sure()+"."))
	}
	if !v.Feasible || len(v.Phases)+len(v.Dishes) == 0 {
		s.paragraph(10, pictureWidth-20, "strong", "This day won't work as planned: there is nothing to draw.")
		s.y += 8
		return s.finish(w, title, "No plan fits this day.")
	}
	t := &timeline{view: v, svg: s}
	t.from, t.to = v.cooking()
	t.axis = axis{view: v, from: t.from, to: t.to, left: 12, right: pictureWidth - 12}
	t.draw()
	return s.finish(w, title, t.words())
}

type timeline struct {
	*view
	*svg
	axis     axis
	from, to time.Time
}

// cooking is the span of fire and stages: what has to be thawed days before would
// squeeze the day to a sliver.
func (v *view) cooking() (from, to time.Time) {
	short := *v
	short.Steps = nil
	from, to = short.extent()
	return from.Truncate(time.Minute), to.Add(10 * time.Minute)
}

func (t *timeline) draw() {
	lanes := t.svg
	t.svg = &svg{id: lanes.id}
	t.svg.y = lanes.y + t.headRoom()
	top := t.svg.y
	t.fireLane()
	for _, d := range t.Dishes {
		for _, b := range d.Batches {
			t.batchLane(d, b)
		}
	}
	front, bottom := t.svg, t.svg.y
	t.svg = lanes
	t.ground(top, bottom) // what lies behind the lanes comes first
	t.svg.add(front)
	t.svg.y = bottom
	t.lines(top)
	t.legend()
}

// headRoom is the height above the lanes: days, quiet hours, changes of the clock, times.
func (t *timeline) headRoom() float64 {
	rows := 2.0
	if len(t.quietHere()) > 0 {
		rows++
	}
	if len(t.jumps(t.from, t.to)) > 0 {
		rows++
	}
	return rows*lineHeight + 6
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

// ground draws quiet hours, days and times behind the lanes.
func (t *timeline) ground(top, bottom float64) {
	row := t.y
	next := func() float64 { row += lineHeight; return row - 3 }
	t.days(next(), bottom)
	if quiet := t.quietHere(); len(quiet) > 0 {
		y := next()
		for _, q := range quiet {
			from, to := t.axis.x(q.From), t.axis.x(q.To)
			t.shape("rect", "x", from, "y", y-9, "width", to-from, "height", bottom-y+9, "fill", t.fill("quiet"))
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
	t.axis.scale(t.svg, top-4, bottom)
}

// fits writes the first of the texts that fits between two places.
func (t *timeline) fits(from, to, y float64, class string, texts ...string) {
	for _, text := range texts {
		if size(text, false) < to-from-4 {
			t.label((from+to)/2, y, class+" middle", text)
			return
		}
	}
}

// beside writes a text to the right of a line, or to its left near the edge.
func (t *timeline) beside(x, y float64, class, text string) {
	if x+4+size(text, false) < pictureWidth {
		t.label(x+4, y, class, text)
		return
	}
	t.label(x-4, y, class+" right", text)
}

func (t *timeline) days(y, bottom float64) {
	starts := append([]time.Time{t.from}, t.axis.midnights()...)
	for i, day := range starts {
		from, to := t.axis.x(day), t.axis.right
		if i+1 < len(starts) {
			to = t.axis.x(starts[i+1])
		}
		if i > 0 {
			t.shape("path", "class", "midnight", "d", "M"+short(from)+" "+short(y-11)+"V"+short(bottom))
		}
		for _, layout := range t.sys.DayForms() {
			if text := t.at(day).Format(layout); size(text, true) < to-from-6 {
				t.label(from+4, y, "strong", text)
				break
			}
		}
	}
}

// lines draws what crosses all lanes: eating and now.
func (t *timeline) lines(top float64) {
	line := func(at time.Time, class, word, text string) {
		x := t.axis.x(at)
		t.shape("path", "class", class, "d", "M"+short(x)+" "+short(top)+"V"+short(t.y+4))
		half := size(text, true)/2 + 1
		t.label(min(max(x, half), pictureWidth-half), t.y+lineHeight, word+" strong middle", text)
	}
	line(t.ServeAt, "serve", "", "eat "+t.clock(t.ServeAt))
	if !t.now.IsZero() && t.axis.holds(t.now) {
		text := "now " + t.clock(t.now)
		apart := t.axis.x(t.ServeAt) - t.axis.x(t.now)
		if apart < 0 {
			apart = -apart
		}
		if apart < 100 { // both words on one line would touch
			t.y += lineHeight
		}
		line(t.now, "now", "now-word", text)
	}
	t.y += lineHeight + 8
}

// words says the picture for those who do not see it.
func (t *timeline) words() string {
	var text []string
	for _, f := range t.Phases {
		text = append(text, fmt.Sprintf("Fire %d: %s", f.Number, t.fire(f)))
	}
	for _, d := range t.Dishes {
		for _, b := range d.Batches {
			text = append(text, t.batchTitle(d, b)+": "+t.batchTimes(b)+".")
		}
	}
	return strings.Join(append(text, t.apart.Replace("Eat at "+t.eatAt()+".")), " ")
}
