package export

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"
)

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
	if t.title != "" {
		t.label(pictureEdge, y, "strong", t.title)
		return
	}
	starts := append([]time.Time{t.from}, t.axis.midnights()...)
	for i, day := range starts {
		from, to := t.axis.x(day), t.axis.right
		if i+1 < len(starts) {
			to = t.axis.x(starts[i+1])
		}
		if i > 0 {
			t.shape("path", "class", "midnight", "d", "M"+short(from)+" "+short(y-13)+"V"+short(bottom))
			from += 4
		}
		for _, layout := range t.sys.DayForms() {
			if text := t.at(day).Format(layout); size(text, true) < to-from-6 {
				t.label(from, y, "strong", text)
				break
			}
		}
	}
}

func (t *timeline) endText() string { return t.end + " " + t.clock(t.ServeAt) }
func (t *timeline) nowText() string { return "now " + t.clock(t.now) }

func (t *timeline) nowHere() bool { return !t.now.IsZero() && t.axis.holds(t.now) }

// nowBesideEnd says whether the words of now and of the end would touch on one line.
func (t *timeline) nowBesideEnd() bool {
	if !t.nowHere() {
		return false
	}
	a, b := t.wordAt(t.now, t.nowText()), t.wordAt(t.ServeAt, t.endText())
	return math.Abs(a-b) < (size(t.nowText(), true)+size(t.endText(), true))/2+6
}

// wordAt is the middle of a word over an instant, within the picture.
func (t *timeline) wordAt(at time.Time, text string) float64 {
	half := size(text, true)/2 + 1
	return min(max(t.axis.x(at), half), pictureWidth-half)
}

// line draws what crosses all lanes, with its word at the top.
func (t *timeline) line(at time.Time, y, bottom float64, class, word, text string) {
	x := short(t.axis.x(at))
	t.shape("path", "class", class, "d", "M"+x+" "+short(y+4)+"V"+short(bottom))
	t.label(t.wordAt(at, text), y, word+" strong middle", text)
}

// words says the picture for those who do not see it.
func (t *timeline) words() string {
	var text []string
	if t.title != "" {
		return t.title + "."
	}
	for _, f := range t.Phases {
		text = append(text, fmt.Sprintf("Fire %d: %s", f.Number, t.fire(f)))
	}
	for _, l := range slices.Concat(t.lanes, t.closer) {
		text = append(text, t.batchTitle(l.dish, l.batch)+": "+t.batchTimes(l.batch)+".")
	}
	for _, d := range t.warmed() {
		text = append(text, isolated(t.dish(d.Dish))+", warmed: "+t.warmTimes(d)+".")
	}
	if t.end != "eat" {
		return strings.Join(append(text, capital(t.endText())+"."), " ")
	}
	return strings.Join(append(text, t.apart.Replace("Eat at "+t.eatAt()+".")), " ")
}
