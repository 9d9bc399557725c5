package export

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
)

// holdLines says of each dish how it waits and for how long that is good, and the other ways
// that would do. The one clock of it, until when it is good, is in the steps. What to do is in the steps; where none says it, it is told here.
func (v *view) holdLines() []string {
	var lines []string
	for _, d := range v.Dishes {
		if v.unfit(d.ID) || len(d.Holds) == 0 {
			continue
		}
		var chosen, others []string
		for _, h := range d.Holds {
			good := v.goodFor(h)
			if h.Chosen {
				chosen = append(chosen, v.chosenHold(d.ID, h, good))
				continue
			}
			others = append(others, phrase(h.Method)+strings.TrimSuffix(", "+good, ", "))
		}
		text := v.dish(d.ID) + ": " + strings.Join(chosen, " ")
		if len(others) > 0 {
			text = strings.TrimSpace(text) + " Or " + strings.Join(others, ", or ") + "."
		}
		lines = append(lines, text)
	}
	return lines
}

// goodFor is how long a way of waiting is good from the take-off, never said longer: in whole
// quarters of an hour, below half an hour in fives.
func (v *view) goodFor(h schedule.HoldAdvice) string {
	step := 15.0
	if h.LimitMinutes < 30 {
		step = 5
	}
	if m := math.Floor(h.LimitMinutes/step) * step; m > 0 {
		return v.sys.About(time.Duration(m) * time.Minute)
	}
	return ""
}

func (v *view) chosenHold(dish string, h schedule.HoldAdvice, good string) string {
	text := phrase(h.Method)
	told := slices.ContainsFunc(v.Steps, func(s schedule.Step) bool {
		switch s.Kind {
		case schedule.StepBox, schedule.StepToOven, schedule.StepHold:
			return s.Dish == dish
		}
		return false
	})
	if !told {
		how, _ := strings.CutPrefix(sentence(h.Text), v.dish(dish)+": ")
		return strings.TrimSpace(phrase(h.Method) + ": " + lower(how))
	}
	if good != "" {
		text += ", good for about " + good + " from the take-off"
	}
	return strings.TrimSpace(text + ".")
}

// otherWays is the heading of what would help a day that can be had.
const otherWays = "Other ways to do it"

// finding names the dishes it is about where its text does not.
func (v *view) finding(f schedule.Finding) string {
	text := sentence(f.Text)
	var missing []string
	for _, id := range f.Dishes {
		if !strings.Contains(strings.ToLower(text), strings.ToLower(v.dish(id))) {
			missing = append(missing, id)
		}
	}
	if len(missing) > 0 {
		text = v.dishNames(f.Dishes) + ": " + text
	}
	if k := slices.IndexFunc(v.Remedies, func(r schedule.Remedy) bool { return r.For == f.Code }); v.Revision == 0 && v.Feasible && f.Code == schedule.CodeHoldShort && k >= 0 {
		first, _, _ := strings.Cut(sentence(v.Remedies[k].Text), ". ")
		text += " What helps: " + lower(strings.TrimSuffix(first, ".")) + "."
	}
	return text
}

// remedy says what to change, what it costs and what the day is like then.
func (v *view) remedy(r schedule.Remedy) string {
	text := sentence(r.Text)
	text += v.price(r)
	var then []string
	if r.LightAt != nil && (v.Revision == 0 || r.LightAt.After(v.now)) { // a fire that was lit is no news
		then = append(then, "light "+v.clockBy(*r.LightAt, v.ServeAt))
	}
	if at := v.clockBy(r.ServeAt, v.ServeAt); !r.ServeAt.IsZero() && (v.Revision == 0 || !strings.Contains(text, at)) { // its price may have said it
		then = append(then, "eat "+at)
	}
	if r.Chance > 0 {
		sure := percent(r.Chance) + " sure"
		if v.Revision == 0 && r.Chance < schedule.BadBet {
			sure += ": a bad bet"
		}
		then = append(then, sure)
	}
	if len(then) > 0 {
		text += " " + capital(strings.Join(then, ", ")) + "."
	}
	return text
}

// price is what a change costs; of a day under way, what comes of it.
func (v *view) price(r schedule.Remedy) string {
	switch {
	case r.Price == "":
		return ""
	case v.Revision > 0:
		return " " + sentence(r.Price)
	}
	return " Cost: " + strings.TrimSuffix(clean(r.Price), ".") + "."
}

// shoppingList says food, fuel and tools, a line each.
func (v *view) shoppingList() []string {
	var lines []string
	for _, m := range v.menuItems() {
		line := m.Name
		if m.Portion != "" {
			line += ": " + m.Portion
		}
		lines = append(lines, line)
	}
	if both := v.fuelOfBoth(); both != nil {
		lines = append(lines, both...)
	} else if v.Fuel != nil {
		lines = append(lines, sentence(v.Fuel.Text))
		if wood := chunksText(v.Fuel.Chunks); wood != "" && !strings.Contains(v.Fuel.Text, "chunk") {
			lines = append(lines, wood)
		}
	}
	if tools := v.tools(); tools != "" {
		lines = append(lines, "Have ready: "+tools+".")
	}
	return lines
}

// chunksText is how much smoking wood to buy.
func chunksText(chunks int) string {
	switch chunks {
	case 0:
		return ""
	case 1:
		return "1 chunk of smoking wood"
	}
	return fmt.Sprintf("%d chunks of smoking wood", chunks)
}

// howTo says how to lay a fire and set its vents, where no step does.
func (v *view) howTo(f schedule.Phase) string {
	build, vents := sentence(f.Build), sentence(f.Vents)
	buildWords, ventWords := clean(f.Build), strings.ToLower(strings.TrimRight(clean(f.Vents), "."))
	for _, s := range v.Steps {
		if s.Phase != 0 && s.Phase != f.Number {
			continue
		}
		if s.Kind == schedule.StepChangeFire && s.Phase == f.Number || strings.Contains(s.Text, buildWords) {
			build = ""
		}
		if strings.Contains(strings.ToLower(s.Text), ventWords) {
			vents = ""
		}
	}
	return strings.TrimSpace(build + " " + vents)
}

// fire says band, level, layout and times of a phase in a sentence. The gauge is
// named in the low band only: elsewhere it says too little (common practice, no source).
func (v *view) fire(f schedule.Phase) string {
	text := fmt.Sprintf("%s, %s at the grate", capital(clean(f.Band)), v.grate(f.LevelC))
	if f.Band == "low" && f.GaugeC > 0 && v.grate(f.GaugeC) != v.grate(f.LevelC) {
		text += " (lid gauge about " + v.grate(f.GaugeC) + ")"
	}
	if f.Layout != "" && f.Layout != otherLayout {
		text += "; coals " + layoutWords(clean(f.Layout))
	}
	text += "; " + v.span(f.From, f.To)
	if v.sameDay(f.From, f.To) && !v.sameDay(f.To, v.ServeAt) {
		text += v.at(f.To).Format(" Mon")
	}
	return text + "."
}

// otherLayout is that of a grill that is described by its zones: there are no coals to lay.
const otherLayout = "other"

// closing goes under every sheet.
const closing = "Times are predictions: the thermometer decides, and local rules on food and fire come first."
