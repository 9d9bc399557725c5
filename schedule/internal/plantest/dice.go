package plantest

import (
	"fmt"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
)

// dice turn the bytes of a fuzzer into choices, a byte each; when they run out,
// the first choice is taken. So short inputs are simple days, and a changed byte
// changes one thing.
type dice struct{ left []byte }

// roll is a number from 0 to n-1.
func (d *dice) roll(n int) int {
	if len(d.left) == 0 {
		return 0
	}
	b := d.left[0]
	d.left = d.left[1:]
	return int(b) % n
}

func (d *dice) pick(of ...string) string { return of[d.roll(len(of))] }

// between is one of 32 steps from least to most; the two ends are among them.
func (d *dice) between(least, most float64) float64 {
	const steps = 31
	n := d.roll(steps + 1)
	if n == steps {
		return most // to the last bit
	}
	return least + (most-least)*float64(n)/steps
}

// step is a while between two notes of a log: none at all to some hours.
func (d *dice) step() time.Duration {
	return []time.Duration{0, time.Minute, 5 * time.Minute, 17 * time.Minute, time.Hour, 3 * time.Hour}[d.roll(6)]
}

func (d *dice) clock() string { return fmt.Sprintf("%02d:%02d", d.roll(24), 5*d.roll(12)) }

// FuzzedRequest writes a request of few dishes that passes the decoder. It reaches
// to the ends of what is allowed: the ranges are those of validate and of the
// catalogue; none of them is a check value.
func FuzzedRequest(data []byte) string {
	d := &dice{data}
	var s strings.Builder
	dates := []string{"2027-07-03", "2027-12-24", "2027-03-14", "2027-11-07", "2028-02-29", "2027-03-28", "2027-10-31", "1970-01-02", "2200-12-31"}
	fmt.Fprintf(&s, "format: 1\nserve: {date: %s, time: %q, tz: %s}\n", d.pick(dates...), d.clock(),
		d.pick("America/Chicago", "Europe/Berlin", "Asia/Kathmandu", "Pacific/Apia", "Australia/Lord_Howe", "UTC"))
	switch d.roll(4) {
	case 0:
		fmt.Fprintf(&s, "grill: {kind: kettle, diameter: %.6f m, fuel: %s, gauge_offset: %.0f F, water_pan: %v}\n",
			d.between(0.2541, 1.0159), d.pick("briquettes", "lump"), d.between(-200, 200), d.roll(2) == 1)
	case 1:
		fmt.Fprintf(&s, "grill: {kind: kettle, diameter: 22 in}\n")
	case 2:
		fmt.Fprintf(&s, "grill: {kind: box, width: %.6f m, depth: %.6f m, fuel: %s}\n", d.between(0.2033, 1.5239), d.between(0.2033, 1.5239), d.pick("briquettes", "lump"))
	case 3:
		s.WriteString("grill:\n  kind: other\n  zones:\n")
		for i := range 1 + d.roll(3) {
			least := d.between(66, 480)
			fmt.Fprintf(&s, "    - {name: z%d, width: %.4f m, depth: %.4f m, min: %.1f C, max: %.1f C, direct: %v}\n",
				i, d.between(0.077, 1.5), d.between(0.077, 1.5), least, d.between(least, 482), d.roll(2) == 1)
		}
	}
	oven := d.roll(2) == 1
	if oven {
		fmt.Fprintf(&s, "oven: {hold: %.0f F}\n", d.between(130, 250))
	}
	s.WriteString(d.weather())
	s.WriteString(d.quiet())
	fmt.Fprintf(&s, "confidence: %s\nunits: %s\n", d.pick("0.9", "0.5", "0.99", "0.7"), d.pick("us", "metric"))
	s.WriteString(d.pick("", "", "guests: 1\n", "guests: {adults: 0, children: 3}\n", "", "guests: {adults: 9000, frail: true}\n"))
	s.WriteString("dishes:\n")
	for range 1 + d.roll(3) {
		s.WriteString(d.dish(oven))
	}
	s.WriteString(d.pick("", "", "", "layout: ring\n", "layout: banked\n", "layout: two-zone\n", "layout: spread\n", "layout: heap\n"))
	return s.String()
}

// quiet hours are none, a night, or any two stretches.
func (d *dice) quiet() string {
	switch d.roll(4) {
	case 0, 1:
		return ""
	case 2:
		return "quiet: [{from: \"23:00\", to: \"05:30\"}]\n"
	}
	var all []string
	for range 2 {
		if from, to := d.clock(), d.clock(); from != to {
			all = append(all, fmt.Sprintf("{from: %q, to: %q}", from, to))
		}
	}
	return "quiet: [" + strings.Join(all, ", ") + "]\n"
}

func (d *dice) weather() string {
	if d.roll(3) < 2 {
		return ""
	}
	w := fmt.Sprintf("weather: {air: %.1f C, night: %.1f C, humidity: %.0f %%, wind: %.1f m/s, rain: %v, sheltered: %v, altitude: %.0f m",
		d.between(-40, 50), d.between(-40, 50), d.between(0, 100), d.between(0, 30), d.roll(2) == 1, d.roll(2) == 1, d.between(-430, 6000))
	if d.roll(3) == 1 {
		w += fmt.Sprintf(", hours: [{from: %q, air: %.0f C, rain: true}]", d.clock(), d.between(-40, 50))
	}
	return w + "}\n"
}

// dish is one line of a menu; what its cut does not allow is left out.
func (d *dice) dish(oven bool) string {
	all := cut.All()
	c := all[d.roll(len(all))]
	mass := func() string { return fmt.Sprintf("%.9f kg", d.between(c.MinPieceKg, c.MaxPieceKg)*(1-1e-9)+1e-9) }
	s := fmt.Sprintf("  - {cut: %s", c.Name)
	switch {
	case d.roll(4) == 1:
		s += fmt.Sprintf(", weights: [%s, %s]", mass(), mass())
	default:
		s += fmt.Sprintf(", weight: %s, count: %d", mass(), 1+d.roll(2+10*d.roll(2)))
		if d.roll(5) == 1 {
			t, _, long := c.Dimensions(c.Typical, 0)
			s += fmt.Sprintf(", thickness: %.6f m", d.between(t/3.9, max(t, min(3.9*t, long)*0.99)))
		}
	}
	if d.roll(3) < 2 { // most dishes ask for nothing special
		return s + "}\n"
	}
	if len(c.Doneness) > 0 {
		most := c.Doneness[len(c.Doneness)-1]
		s += []string{"", "", ", target: " + most.Name, ", target: " + c.Doneness[0].Name, fmt.Sprintf(", target: %.1f C", d.between(38, 99.9)),
			fmt.Sprintf(", target: {final: %.1f C}", d.between(38, 99.9))}[d.roll(6)]
	}
	if c.WrapAllowed {
		s += d.pick("", "", ", wrap: none", ", wrap: {with: paper, from: 160 F}", ", wrap: {with: foil, after: 4h}", ", wrap: {with: foil, after: 0m}", ", wrap: {with: foil, from: 101 F}")
	}
	if c.Style == cut.Roast || c.Style == cut.Bird || c.Style == cut.Small {
		s += d.pick("", "", "", "", ", finish: sear")
	}
	s += d.pick("", "", ", start: frozen", ", start: 28 F", ", start: 90 F")
	s += d.pick("", "", "", ", zone: direct", ", zone: indirect")
	s += []string{"", "", "", fmt.Sprintf(", level: %.0f F", d.between(150, 900))}[d.roll(4)]
	s += d.pick("", "", "", ", rest: 45m", ", rest: 0m", ", rest: 24h")
	s += d.pick("", "", ", hold: [none]", ", hold: [tent, counter]", ", hold: [insulated-box]", ", hold: [grill]")
	if oven && !strings.Contains(s, "hold:") {
		s += d.pick("", ", hold: [oven]")
	}
	s += d.pick("", "", "", "", ", prep: [injected]", ", prep: [stuffed]", ", prep: [brined, tenderised, rolled]")
	s += d.pick("", "", "", "", ", travel: 30m", ", travel: 24h", ", ready: day-before")
	if d.roll(6) == 1 {
		s += fmt.Sprintf(", serve: %q", d.clock())
	}
	return s + "}\n"
}

// FuzzedLog writes a log of a plan: each row some minutes after the one before, with
// values that a cook might note and some that none would.
func FuzzedLog(data []byte, p schedule.Plan) string {
	d := &dice{data}
	at := p.Steps[0].At.Add(-10 * time.Minute)
	forms := schedule.EntryForms()
	var s strings.Builder
	s.WriteString("time,dish,kind,value\n")
	for len(d.left) > 0 {
		at = at.Add(d.step())
		form := forms[d.roll(len(forms))]
		kind := form.Kind
		dish := ""
		if form.OfDish {
			dish = p.Dishes[d.roll(len(p.Dishes))].ID
		}
		value := ""
		switch form.Carries {
		case schedule.CarriesTemperature, schedule.CarriesMaybeTemperature:
			value = fmt.Sprintf("%.1f C", d.between(-20, 300))
			if kind == schedule.LogCore || kind == schedule.LogOuter {
				value = fmt.Sprintf("%.1f C", d.between(0, 105))
			}
		case schedule.CarriesWrap:
			value = d.pick("", schedule.WrapFoil, schedule.WrapPaper, schedule.WrapNone)
		case schedule.CarriesVents:
			value = d.pick(`"top 1/4, bottom 1/2"`, "top 25 %", "both shut", "bottom an eighth")
		case schedule.CarriesCount:
			value = fmt.Sprint(1 + d.roll(60))
		case schedule.CarriesSpeed:
			value = d.pick("calm", "12 mph", "9 km/h")
		case schedule.CarriesInstant:
			value = d.pick(d.clock(), at.Add(4*time.Hour).Format("2006-01-02 15:04"))
		case schedule.CarriesDish:
			value = d.pick(`"{""cut"":""burger"",""weight"":""6 oz"",""name"":""More""}"`, `"{""cut"":""corn"",""id"":""corn"",""count"":3}"`, `"{""cut"":""brisket"",""weight"":""12 lb""}"`)
			dish = d.pick("", p.Dishes[0].ID, "more")
		}
		fmt.Fprintf(&s, "%s,%s,%s,%s\n", at.Format("2006-01-02T15:04:05Z07:00"), dish, kind, value)
	}
	return s.String()
}
