package draft

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/unit"
)

// SchemaFile is the name under which the first line of a request looks for the schema.
const SchemaFile = "cookday.schema.json"

// Text is the request as it stands, with remarks on what else can be said.
func (i *Interview) Text() string {
	var b strings.Builder
	line := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	line("# yaml-language-server: $schema=%s", SchemaFile)
	line("# For an editor that completes and checks: cookday schema request --out %s", SchemaFile)
	line("# Every field there is: cookday help request. Change anything, and plan again.")
	if i.zone == "" {
		line("# missing: the time zone, such as tz: America/Chicago")
	}
	line("serve: {date: %s, time: %q, tz: %s}", i.serve.Format(time.DateOnly), i.serve.Format("15:04"), i.zone)
	line("guests: %s%s", i.guestsField(), i.frailRemark())
	line("grill: %s # or {kind: kettle, diameter: 22 in, fuel: lump, water_pan: true}", grillLine(i.grill))
	if i.oven {
		line("oven: {} # {hold: 200 F} where it does not go lower")
	} else {
		line("# oven: {} # to finish and hold food in")
	}
	if i.quiet != "" {
		line("quiet: %s # %s", i.quiet, quietRemark(i.quiet))
	} else {
		line("# quiet: [{from: \"23:00\", to: \"05:00\"}] # so it is where nothing is said, and the plan may bend it")
	}
	if i.overnight {
		line("overnight: true # the fire may burn through the night, and nobody watches it")
	} else if i.longNight() {
		line("# overnight: true # then the fire may burn through the night, and nobody watches it")
	}
	line("# weather: %s # as forecast for the day", i.usualWeather())
	if i.units != unit.US {
		line("units: %s", i.units)
	}
	line("dishes:")
	for _, d := range i.dishes {
		line("  - {%s}%s", strings.Join(d.fields(), ", "), i.remark(d))
	}
	for _, l := range i.missing() {
		line("%s", l)
	}
	return b.String()
}

func quietRemark(quiet string) string {
	if quiet == noQuiet {
		return "somebody is up all night"
	}
	return "nobody tends a fire then"
}

func (i *Interview) guestsField() string {
	if i.guests.Children == 0 && !i.frailKnown {
		return fmt.Sprint(i.guests.Adults)
	}
	text := fmt.Sprintf("adults: %d", i.guests.Adults)
	if i.guests.Children > 0 {
		text += fmt.Sprintf(", children: %d", i.guests.Children)
	}
	if i.frailKnown {
		text += fmt.Sprintf(", frail: %t", i.guests.Frail)
	}
	return "{" + text + "}"
}

func (i *Interview) frailRemark() string {
	switch {
	case i.guests.Frail:
		return " # frail: somebody is very young, old, pregnant or ill"
	case i.frailKnown:
		return " # nobody very young, old, pregnant or ill"
	}
	with := fmt.Sprintf("{adults: %d, frail: true}", i.guests.Adults)
	if i.guests.Children > 0 {
		with = fmt.Sprintf("{adults: %d, children: %d, frail: true}", i.guests.Adults, i.guests.Children)
	}
	return fmt.Sprintf(" # not asked yet: is anyone very young, old, pregnant or ill? Then %s", with)
}

func (i *Interview) usualWeather() string {
	if i.units == unit.US {
		return "{air: 84 F, night: 66 F, humidity: 55%, wind: 8 mph}"
	}
	return "{air: 29 C, night: 19 C, humidity: 55%, wind: 13 km/h}"
}

// fields are those of a dish in the form of a request.
func (d dish) fields() []string {
	fields := []string{"cut: " + d.cut.Name}
	if _, unknown := cut.One(d.name); d.mass == "" && unknown == "" && d.cut.UsualKg(d.name) != d.cut.Typical { // by this name it weighs something else
		fields[0] = "cut: " + quotedIfOdd(strings.ToLower(d.name))
	} else if d.called() {
		fields = append([]string{"name: " + quotedIfOdd(d.title())}, fields...)
	}
	if d.mass != "" {
		fields = append(fields, "weight: "+d.mass)
	}
	if d.count > 1 || d.count == 1 && d.mass == "" {
		fields = append(fields, fmt.Sprintf("count: %d", d.count))
	}
	if usual, ok := d.cut.DefaultDoneness(); d.done != "" && !(ok && d.done == usual.Name) {
		fields = append(fields, "target: "+d.done)
	}
	if d.thick != "" {
		fields = append(fields, "thickness: "+thickText(d.thick))
	}
	fields = append(fields, d.more...)
	if d.label {
		fields = append(fields, "prep: ["+strings.Join(d.prep, ", ")+"]")
	}
	return fields
}

// thickText is a thickness as YAML reads it.
func thickText(text string) string {
	if strings.HasSuffix(text, `"`) {
		return strings.TrimSpace(strings.TrimSuffix(text, `"`)) + " in"
	}
	return text
}

// called says whether the cook has a name of their own for the cut.
func (d dish) called() bool {
	return !slices.ContainsFunc([]string{d.cut.Name, d.cut.Title, d.cut.Plural}, func(name string) bool {
		return strings.EqualFold(strings.ReplaceAll(name, "-", " "), strings.ReplaceAll(d.name, "-", " "))
	})
}

func (i *Interview) remark(d dish) string {
	var remarks []string
	if d.mass == "" && d.cut.Style != cut.Timed && d.thick == "" {
		remarks = append(remarks, "weigh it, weight: "+i.usualPiece(d.cut))
	}
	if d.hasLabel() && !d.label {
		remarks = append(remarks, "label not read, prep: []")
	}
	if len(remarks) == 0 {
		return ""
	}
	return " # " + strings.Join(remarks, "; ")
}

// grillLine is a grill as a request has it; a group of fields stays one.
func grillLine(text string) string {
	if strings.HasPrefix(text, "{") {
		return text
	}
	return quotedIfOdd(text)
}

// quotedIfOdd puts quotes about a text that YAML could read as something else.
func quotedIfOdd(text string) string {
	plain := func(r rune) bool {
		return r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || strings.ContainsRune(" .-", r)
	}
	if text != "" && strings.IndexFunc(text, func(r rune) bool { return !plain(r) }) < 0 && (text[0] < '0' || text[0] > '9') && text[0] != '-' {
		return text
	}
	return fmt.Sprintf("%q", text)
}
