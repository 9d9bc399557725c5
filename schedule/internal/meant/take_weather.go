package meant

import (
	"strconv"
	"strings"

	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

// weatherField takes a figure of the weather that stands at the top of a request: ambient
// temperature, wind_m_s. False for another field.
func (t *taker) weatherField(name string, line int, value *strict.Node) bool {
	field, of := unitOfName(name)
	inner, text := "", ""
	switch word := strings.ReplaceAll(plainWord(field), "temperature", "temp"); {
	case value.Kind != strict.NodeText && value.Kind != strict.NodeNumber:
	case oneOf(word, "air", "airtemp", "ambient", "ambienttemp", "outside", "outsidetemp", "outdoor", "outdoortemp", "outdoors", "tempoutside"):
		inner, text = "air", airHeat(value.Text, of)
	case oneOf(word, "wind", "windspeed"):
		inner, text = "wind", windSpeed(value.Text, of)
	}
	weather := t.out.Get("weather")
	if text == "" || weather != nil && (weather.Kind != strict.NodeObject || weather.Get(inner) != nil) {
		return false
	}
	if weather == nil {
		weather = strict.NewGroup(line)
	}
	weather = weather.With(inner, strict.NewText(text, value.Line))
	if t.out.Get("weather") == nil {
		t.out = t.out.WithAt("weather", line, weather)
	} else {
		t.out = t.out.With("weather", weather)
	}
	return true
}

// airHeat is the heat of the air with its unit; empty where that is not certain. A bare
// number over 45 is one in F, for in C nobody could cook.
func airHeat(text, of string) string {
	number := strings.TrimSpace(text)
	v, err := strconv.ParseFloat(number, 64)
	switch {
	case err == nil && of != "":
		return number + " " + of
	case err == nil && v > 45:
		return number + " F"
	case err == nil:
		return ""
	}
	if _, err := unit.ParseTemperature(text); err != nil {
		return ""
	}
	return text
}

// windSpeed is a speed with its unit; empty where that is not certain.
func windSpeed(text, of string) string {
	number := strings.TrimSpace(text)
	if _, err := strconv.ParseFloat(number, 64); err == nil && of != "" {
		number += " " + of
	}
	if _, err := unit.ParseSpeed(number); err != nil {
		return ""
	}
	return number
}

// renamedIn is a group of the form's with fields by other names in the form's, where their
// values fit as they stand.
func (t *taker) renamedIn(group string, value *strict.Node) *strict.Node {
	out := strict.NewGroup(value.Line)
	for name, v := range value.Fields() {
		field, of := unitOfName(name)
		if of != "" && v.Kind == strict.NodeNumber {
			v = strict.NewText(v.Text+" "+of, v.Line)
		} else {
			field = name
		}
		if m := t.Field(group, field, v); m.As != "" && m.Read != nil && value.Get(m.As) == nil && out.Get(m.As) == nil {
			out = out.WithAt(m.As, value.LineOf(name), m.Read)
			continue
		}
		if of != "" && value.Get(field) == nil {
			name = field
		}
		out = out.WithAt(name, value.LineOf(name), v)
	}
	return out
}
