package export

import (
	"fmt"

	"example.com/cookday/schedule"
)

// legend explains the bars and marks of the days that are drawn, as many in a row as fit.
func (t *timeline) legend(days []*timeline) {
	x := pictureEdge
	key := func(word string, draw func(x, y float64)) {
		room := 24 + size(word, false) + 10
		if x > pictureEdge && x+room-10 > pictureWidth {
			x, t.y = pictureEdge, t.y+lineHeight+2
		}
		draw(x, t.y)
		t.label(x+24, t.y+letterSize-2, "soft", word)
		x += room
	}
	bar := func(class, pattern string) func(x, y float64) {
		return func(x, y float64) {
			pairs := []any{"class", "edge " + class, "x", x, "y", y, "width", 18.0, "height", 14.0}
			if pattern != "" {
				pairs = append(pairs, "fill", t.fill(pattern))
			}
			t.shape("rect", pairs...)
		}
	}
	used, fires, warmed := shown(days)
	for _, k := range []struct {
		kind                 schedule.StageKind
		word, class, pattern string
	}{{schedule.StageBare, "cooking", "bare", ""}, {schedule.StageWrapped, "wrapped", "", "wrapped"},
		{schedule.StageSear, "sear", "", "sear"}, {schedule.StageRest, "rest", "", "rest"}, {schedule.StageHold, "hold", "", "hold"}} {
		if used[k.kind] {
			key(k.word, bar(k.class, k.pattern))
		}
	}
	if warmed {
		key("warmed", bar("", "warm"))
	}
	if fires {
		key("fire ready", bar("fire", ""))
		key("lighting, warming up", bar("", "setup"))
	}
	key("a person is needed", func(x, y float64) { t.mark(x+9, x+9, y+11) })
	key("off: early, likely, late", func(x, y float64) {
		t.shape("path", "class", "spread", "d", fmt.Sprintf("M%s %sv4m0 -2h18m0 -2v4", short(x), short(y+5)))
		t.shape("path", "class", "mark", "d", fmt.Sprintf("M%s %sl3.5 3.5l-3.5 3.5l-3.5 -3.5z", short(x+9), short(y+3.5)))
	})
	t.y += lineHeight + 6
}

// shown is what the pictures of the days have: kinds of stages, fires, dishes warmed.
func shown(days []*timeline) (used map[schedule.StageKind]bool, fires, warmed bool) {
	used = map[schedule.StageKind]bool{}
	for _, t := range days {
		fires = fires || len(t.Phases) > 0
		warmed = warmed || len(t.warmed()) > 0
		for _, d := range t.Dishes {
			for _, b := range d.Batches {
				for _, s := range likely(b) {
					used[s.Kind] = true
				}
			}
		}
	}
	return used, fires, warmed
}
