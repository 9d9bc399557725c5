package export

import (
	"math"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
)

// alikeMinutes is how far moves may differ and be told as one, and fewAlike how many
// such in a row are told one by one.
const (
	alikeMinutes = 3
	fewAlike     = 3
)

// tellingKinds are the steps that stand for what goes with them where many moved alike.
var tellingKinds = map[schedule.StepKind]bool{
	schedule.StepLight: true, schedule.StepChangeFire: true, schedule.StepPutOn: true, schedule.StepWrap: true,
	schedule.StepTakeOff: true, schedule.StepSear: true, schedule.StepChill: true, schedule.StepServe: true,
}

// changeTexts are the changes of what is to come with their reasons: what was done is in the log. A
// reason that holds for several in a row is said once, and what all moved alike in one breath.
func (v *view) changeTexts() []string {
	steps := map[string]schedule.Step{}
	for _, s := range v.Steps {
		steps[s.ID] = s
	}
	all := slices.DeleteFunc(slices.Clone(v.Changes), func(c schedule.Change) bool { return steps[c.Step].Done })
	var out []string
	why := ""
	for len(all) > 0 {
		n, text := alike(all), sentence(all[0].Text)
		if n > fewAlike {
			text = v.inOneBreath(all[:n], steps)
		} else {
			n = 1
		}
		if all[0].Why != why {
			why = all[0].Why
			text = strings.TrimSpace(text + " " + sentence(why))
		}
		out, all = append(out, text), all[n:]
	}
	return out
}

// alike is how many changes in a row, of one reason, move a step by the same.
func alike(all []schedule.Change) int {
	first := all[0]
	for n, c := range all {
		if c.Minutes == 0 || math.Abs(c.Minutes-first.Minutes) > alikeMinutes || c.Why != first.Why {
			return n
		}
	}
	return len(all)
}

// inOneBreath says by how much steps have moved and when the telling ones are now.
func (v *view) inOneBreath(all []schedule.Change, steps map[string]schedule.Step) string {
	var told []string
	for _, c := range all {
		if s := steps[c.Step]; tellingKinds[c.Kind] {
			name, _, _ := strings.Cut(clean(c.Text), ":")
			if c.Dish == "" {
				name = lower(name)
			}
			told = append(told, name+" "+v.clockBy(s.At, v.now))
		}
	}
	way, by := "later", time.Duration(all[0].Minutes)*time.Minute
	if by < 0 {
		way, by = "earlier", -by
	}
	text := v.sys.About(by) + " " + way
	if len(told) == 0 {
		return text + ", from " + v.clockBy(steps[all[0].Step].At, v.now) + " on."
	}
	return text + ", with what goes with it: " + strings.Join(told, "; ") + "."
}
