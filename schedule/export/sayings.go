package export

import (
	"fmt"
	"strings"

	"example.com/cookday/schedule"
)

// holdLines says the chosen hold of each dish in full, and the others that would do by
// name and limit.
func (v *view) holdLines() []string {
	var lines []string
	for _, d := range v.Dishes {
		if v.unfit(d.ID) {
			continue
		}
		for _, h := range d.Holds {
			limit := ""
			if h.LimitMinutes > 0 && !h.Until.IsZero() {
				limit = "if it is done early, it keeps until " + v.clockBy(h.Until, v.ServeAt)
			}
			text := v.dish(d.ID) + ", " + phrase(h.Method)
			switch {
			case h.Chosen:
				text = strings.TrimSpace(text + ": " + sentence(h.Text) + " " + sentence(limit))
			case limit != "":
				text = "Or: " + text + "; " + limit + "."
			default:
				text = "Or: " + text + "."
			}
			lines = append(lines, text)
		}
	}
	return lines
}

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
	return text
}

// remedy says what to change, what it costs and what the day is like then.
func (v *view) remedy(r schedule.Remedy) string {
	text := sentence(r.Text)
	if r.Price != "" {
		text += " " + sentence(r.Price)
	}
	var then []string
	if r.LightAt != nil && (v.Revision == 0 || r.LightAt.After(v.now)) { // a fire that was lit is no news
		then = append(then, "light at "+v.clockBy(*r.LightAt, v.ServeAt))
	}
	if !r.ServeAt.IsZero() {
		then = append(then, "eat at "+v.clockBy(r.ServeAt, v.ServeAt))
	}
	if r.Chance > 0 {
		then = append(then, percent(r.Chance)+" sure")
	}
	if len(then) > 0 {
		text += " Then: " + strings.Join(then, ", ") + "."
	}
	if r.Write != "" {
		text += " In the request: " + clean(r.Write) + "."
	}
	return text
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
	lines = append(lines, v.fuelBefore()...)
	if v.Fuel != nil {
		lines = append(lines, fuelText(v.Fuel))
	}
	if tools := v.tools(); tools != "" {
		lines = append(lines, "Have ready: "+tools+".")
	}
	return lines
}

// fuelText says what to buy; smoking wood is added where the planner's words leave it out.
func fuelText(f *schedule.Fuel) string {
	text := sentence(f.Text)
	if n := f.Chunks; n > 0 && !strings.Contains(text, "chunk") {
		text += fmt.Sprintf(" Chunks of smoking wood: %d.", n)
	}
	return text
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
	text := fmt.Sprintf("%s, %s at the grate", capital(clean(f.Band))+" band", v.grate(f.LevelC))
	if f.Band == "low" && f.GaugeC > 0 && v.grate(f.GaugeC) != v.grate(f.LevelC) {
		text += ", the lid gauge near " + v.grate(f.GaugeC)
	}
	if f.Layout != "" && f.Layout != otherLayout {
		text += "; coals: " + layoutWords(clean(f.Layout))
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
