package export

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
)

// Steps that a cook does in one go are one entry of a sheet: so close behind the first of
// them the rest is told with it (assumption).
const inOneGo = 5 * time.Minute

// merged are steps as entries, what is done in one go in one of them: the turns with the
// putting on, what becomes of a piece with the taking off, the knife with the knife.
func (v *view) merged(steps []schedule.Step) []entry {
	var out []entry
	gone := map[string]bool{}
	for i, s := range steps {
		if gone[s.ID] {
			continue
		}
		e := v.entry(s)
		with := v.inOneGo(s, steps[i+1:])
		for _, other := range with {
			gone[other.ID] = true
		}
		e.also = with
		e.more = v.moreText(s, with)
		out = append(out, e)
	}
	return out
}

// inOneGo are the later steps that are told with a step.
func (v *view) inOneGo(s schedule.Step, later []schedule.Step) []schedule.Step {
	var out []schedule.Step
	turns := s.Kind == schedule.StepPutOn || s.Kind == schedule.StepFlip
	for _, o := range later {
		soon := !o.At.After(s.At.Add(inOneGo))
		passed := !v.now.IsZero() && s.At.Before(v.now) && !o.At.Before(v.now)
		if o.Done != s.Done || passed || !soon && (!turns || o.Kind != schedule.StepFlip) {
			continue
		}
		mine := o.Dish == s.Dish && s.Dish != "" && o.Batch == s.Batch
		switch {
		case mine && turns && o.Kind == schedule.StepFlip && (soon || slices.ContainsFunc(out, isFlip) || isFlip(s)) && v.sameTurn(s, o, out):
			out = append(out, o)
		case mine && s.Kind == schedule.StepTakeOff && afterOff(o.Kind) && soon:
			out = append(out, o)
		case sameWork(s, o) && v.at(o.At).Equal(v.at(s.At)):
			out = append(out, o)
		}
	}
	return out
}

func isFlip(s schedule.Step) bool { return s.Kind == schedule.StepFlip }

// sameTurn says whether a turn is like those before it, and not one with words of its own.
func (v *view) sameTurn(s, o schedule.Step, before []schedule.Step) bool {
	if isFlip(s) {
		return o.Text == s.Text
	}
	i := slices.IndexFunc(before, isFlip)
	return v.isPlainTurn(o) && (i < 0 || before[i].Text == o.Text)
}

// isPlainTurn says whether a step says no more than to turn.
func (v *view) isPlainTurn(s schedule.Step) bool {
	return strings.HasSuffix(sentence(s.Text), " turn.")
}

// afterOff says what becomes of a piece as it comes off.
func afterOff(kind schedule.StepKind) bool {
	switch kind {
	case schedule.StepRest, schedule.StepBox, schedule.StepToOven, schedule.StepHold:
		return true
	}
	return false
}

// sameWork says whether two steps are the same work on several dishes.
func sameWork(a, b schedule.Step) bool {
	return a.Kind == b.Kind && (a.Kind == schedule.StepSlice || a.Kind == schedule.StepTakeOut)
}

// moreText is what the steps told with another add to its text.
func (v *view) moreText(s schedule.Step, with []schedule.Step) string {
	var parts []string
	var flips []schedule.Step
	for _, o := range with {
		if isFlip(o) && v.isPlainTurn(o) {
			flips = append(flips, o)
			continue
		}
		text := v.entry(o).text
		if o.Dish == s.Dish && o.Batch == s.Batch {
			text = v.unnamed(text, s)
		}
		parts = append(parts, text)
	}
	if len(flips) > 0 {
		parts = append(parts, v.turnText(s, flips))
	}
	return strings.Join(parts, " ")
}

// unnamed is the text of a step without the label that the one before it has had.
func (v *view) unnamed(text string, s schedule.Step) string {
	label, _, labeled := strings.Cut(v.entry(s).text, ": ")
	if rest, ok := strings.CutPrefix(text, label+": "); labeled && ok {
		return capital(rest)
	}
	return text
}

// turnText says when to turn: at a time, or how often.
func (v *view) turnText(s schedule.Step, flips []schedule.Step) string {
	if len(flips) == 1 && !isFlip(s) {
		return "Turn at " + v.clock(flips[0].At) + "."
	}
	first, n := s.At, len(flips)
	every := math.Round(flips[n-1].At.Sub(first).Minutes() / float64(n))
	return fmt.Sprintf("Turn every %s.", v.sys.About(time.Duration(math.Max(every, 1))*time.Minute))
}
