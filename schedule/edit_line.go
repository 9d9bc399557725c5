package schedule

import (
	"encoding/json"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/cookday/schedule/unit"
)

// Line is an edit of a request as a cook writes it: "oven: {}", or of a dish "lies: standing".
// Dish is the name of the dish it is of; empty for none. An edit that takes something out
// says so.
func (e Edit) Line(r Request) (dish, line string) {
	field := e.Path
	if rest, ok := strings.CutPrefix(e.Path, "dishes["); ok {
		index, inner, _ := strings.Cut(rest, "]")
		k, err := strconv.Atoi(index)
		if err != nil {
			return "", ""
		}
		if field = strings.TrimPrefix(inner, "."); k < len(r.Dishes) {
			dish = r.Dishes[k].Name
		}
	}
	var v any
	d := json.NewDecoder(strings.NewReader(e.Value))
	d.UseNumber()
	if err := d.Decode(&v); err != nil {
		return "", ""
	}
	switch {
	case v == nil && field == "":
		return dish, "without the dish"
	case v == nil:
		return dish, "without " + field
	case field == "":
		return dish, "one more dish, {" + inYAML(v, r.Units, false) + "}"
	}
	if group, usual := v.(map[string]any); usual && field == "oven" && fmt.Sprint(group["hold"]) == ovenAsUsual() {
		delete(group, "hold")
	}
	return dish, field + ": " + inYAML(v, r.Units, true)
}

// ovenAsUsual is what an oven is held at where nothing is said, as JSON has it.
func ovenAsUsual() string {
	text, err := defaultOvenHold.MarshalText()
	if err != nil {
		return ""
	}
	return string(text)
}

// inYAML is a value of JSON in one line of YAML, quantities in the cook's units.
func inYAML(v any, u unit.System, braces bool) string {
	switch v := v.(type) {
	case map[string]any:
		var parts []string
		names := make([]string, 0, len(v))
		for name := range v {
			names = append(names, name)
		}
		slices.SortFunc(names, func(a, b string) int { return fieldRank(a) - fieldRank(b) })
		for _, name := range names {
			parts = append(parts, name+": "+inYAML(v[name], u, true))
		}
		if text := strings.Join(parts, ", "); !braces {
			return text
		} else {
			return "{" + text + "}"
		}
	case []any:
		var parts []string
		for _, item := range v {
			parts = append(parts, inYAML(item, u, true))
		}
		return "[" + strings.Join(parts, ", ") + "]"
	case string:
		return textInYAML(v, u)
	}
	return fmt.Sprint(v)
}

// fieldRank is the place of a field among those of a request.
func fieldRank(name string) int {
	return slices.IndexFunc(fields(), func(f Field) bool { return f.Path == name || strings.HasSuffix(f.Path, "."+name) })
}

// textInYAML writes a quantity in the cook's units, and quotes what YAML would read otherwise.
func textInYAML(text string, u unit.System) string {
	if t, err := unit.ParseTemperature(text); err == nil {
		return strings.ReplaceAll(u.Core(t), "°", "")
	}
	if m, err := unit.ParseMass(text); err == nil {
		return u.Mass(m)
	}
	if l, err := unit.ParseLength(text); err == nil {
		return u.Length(l)
	}
	if strings.ContainsAny(text, ":#{}[],\"'") || text == "" {
		return strconv.Quote(text)
	}
	return text
}
