package schedule

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"time"

	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/logbook"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

// FireInquiry asks what to do about a fire that burns, without any plan. Below zero stands for what nobody said.
type FireInquiry struct {
	Want        unit.Temperature  // level of the grate
	Shows       *unit.Temperature // what the thermometer shows now
	AtLid       bool              // it is the gauge in the lid
	Top, Bottom float64           // openings, shares
	SinceLit    time.Duration     // how long ago the fire was lit
	Lit, Unlit  int               // coals poured lit, and laid beside them
	Layout      string            // banked if empty
	Grill       string            // kettle if empty; smoker, drum, ceramic
	Diameter    unit.Length
	Fuel        string
	Weather     Weather
	WaterPan    bool
	NoFood      bool
	SteerBottom bool        // the cook steers by the bottom vent
	Units       unit.System // of the sentences
	Log         []Entry     // of the fire, from ReadFireLog
	Own         *OwnGrill   // what cooks taught of the grill; nil for nothing
	Taken       []string    // what was taken for what is left out
}

// What is taken for what an inquiry about a fire leaves out.
const (
	usualDiameterIn = 22
	usualAirF       = 70
)

var fireFields = map[string]func(q *FireInquiry, text string) error{
	"want": func(q *FireInquiry, t string) error { return q.Want.UnmarshalText([]byte(t)) },
	"shows": func(q *FireInquiry, t string) error {
		q.Shows = new(unit.Temperature)
		return q.Shows.UnmarshalText([]byte(t))
	},
	"at":        readPlace,
	"top":       func(q *FireInquiry, t string) (err error) { q.Top, err = fire.ParseOpening(t); return err },
	"bottom":    func(q *FireInquiry, t string) (err error) { q.Bottom, err = fire.ParseOpening(t); return err },
	"since-lit": func(q *FireInquiry, t string) (err error) { q.SinceLit, err = unit.ParseDuration(t); return err },
	"lit":       func(q *FireInquiry, t string) (err error) { q.Lit, err = coals(t); return err },
	"unlit":     func(q *FireInquiry, t string) (err error) { q.Unlit, err = coals(t); return err },
	"layout":    oneOfWords(func(q *FireInquiry) *string { return &q.Layout }, "banked", "ring", "two-zone", "spread"),
	"grill":     readFireGrill,
	"diameter":  func(q *FireInquiry, t string) error { return q.Diameter.UnmarshalText([]byte(t)) },
	"fuel":      oneOfWords(func(q *FireInquiry) *string { return &q.Fuel }, FuelBriquettes, FuelLump),
	"air": func(q *FireInquiry, t string) error {
		q.Weather.Air = new(unit.Temperature)
		return q.Weather.Air.UnmarshalText([]byte(t))
	},
	"wind":      func(q *FireInquiry, t string) error { return q.Weather.Wind.UnmarshalText([]byte(t)) },
	"water-pan": func(q *FireInquiry, t string) (err error) { q.WaterPan, err = strconv.ParseBool(t); return err },
	"no-food":   func(q *FireInquiry, t string) (err error) { q.NoFood, err = strconv.ParseBool(t); return err },
	"steer": func(q *FireInquiry, t string) error {
		if t != "top" && t != "bottom" {
			return fmt.Errorf("%q is no vent; write top or bottom", t)
		}
		q.SteerBottom = t == "bottom"
		return nil
	},
	"units": func(q *FireInquiry, t string) error { return q.Units.UnmarshalText([]byte(t)) },
}

func readPlace(q *FireInquiry, text string) error {
	if text != "grate" && text != "lid" {
		return fmt.Errorf("%q is no place of a thermometer; write grate or lid", text)
	}
	q.AtLid = text == "lid"
	return nil
}

func coals(text string) (int, error) {
	n, err := strconv.Atoi(strings.TrimSpace(text))
	if err != nil || n < 0 || n > logbook.MostCoals {
		return 0, fmt.Errorf("%q is no number of coals; write how many, 0 to %d", text, logbook.MostCoals)
	}
	return n, nil
}

func oneOfWords(field func(*FireInquiry) *string, words ...string) func(*FireInquiry, string) error {
	return func(q *FireInquiry, text string) error {
		word := strings.ReplaceAll(strings.ToLower(strings.TrimSpace(text)), " ", "-")
		if !slices.Contains(words, word) {
			return fmt.Errorf("%q is not known; write %s", text, strings.Join(words, ", "))
		}
		*field(q) = word
		return nil
	}
}

// FireFields lists the names that [ReadFireInquiry] knows, sorted.
func FireFields() []string { return slices.Sorted(maps.Keys(fireFields)) }

// ReadFireInquiry reads an inquiry from named texts: want "250 F", shows "315 F", at "lid", top "1/2", bottom "1/4",
// since-lit "90m". All faults come as one *[InputError]. A log of the fire may come beside them, nil for none.
func ReadFireInquiry(fields map[string]string, log []Entry) (FireInquiry, error) {
	q := FireInquiry{Top: -1, Bottom: -1, SinceLit: -1, Lit: -1, Unlit: -1, Log: log}
	var faults strict.FaultList
	for _, name := range slices.Sorted(maps.Keys(fields)) {
		read, ok := fireFields[name]
		if !ok {
			faults.Add(name, "is not a field of a fire; there are %s", strings.Join(FireFields(), ", "))
			continue
		}
		if err := read(&q, fields[name]); err != nil {
			faults.Add(name, "%s", err.Error())
		}
	}
	if _, said := fields["want"]; !said {
		faults.Add("want", "is missing; say what the grate should have, such as 250 F")
	}
	if q.Shows == nil && fields["shows"] == "" && len(log) == 0 {
		faults.Add("shows", "is missing; say what your thermometer shows, such as 315 F, or hand in a log")
	}
	q.within(&faults)
	if faults.Len() == 0 {
		q.take(fields)
	}
	return q, inputError(&faults)
}

// within refuses what no fire has.
func (q *FireInquiry) within(faults *strict.FaultList) {
	if q.Shows != nil && (float64(*q.Shows) < logbook.ColdestReadingC || float64(*q.Shows) > logbook.HottestReadingC) {
		faults.Add("shows", "is no temperature of a grill; write it as 315 F or 157 C")
	}
	if q.SinceLit != -1 && (q.SinceLit < 0 || q.SinceLit > 48*time.Hour) {
		faults.Add("since-lit", "is no age of a fire; write it as 90m or 2h30m, 48h at most")
	}
	if d := q.Diameter.Inches(); q.Diameter != 0 && (d < 10 || d > 40) {
		faults.Add("diameter", "must lie between 10 in and 40 in")
	}
	if q.Weather.Wind < 0 || q.Weather.Wind > logbook.Stormiest {
		faults.Add("wind", "is no wind; write it as 12 mph")
	}
	if a := q.Weather.Air; a != nil && (*a < -40 || *a > 50) {
		faults.Add("air", "must lie between -40 F and 122 F")
	}
}

// take fills in what was left out, and says what was taken.
func (q *FireInquiry) take(fields map[string]string) {
	took := func(name, words string, do func()) {
		if _, said := fields[name]; !said {
			do()
			q.Taken = append(q.Taken, words)
		}
	}
	if q.Units == "" {
		q.Units = defaultUnits
	}
	took("grill", "a kettle", func() { q.Grill = "kettle" })
	if q.Diameter == 0 { // nor said with the grill
		took("diameter", "22 in", func() { q.Diameter = unit.FromInches(usualDiameterIn) })
	}
	took("fuel", "briquettes", func() { q.Fuel = FuelBriquettes })
	took("layout", "banked coals", func() { q.Layout = "banked" })
	took("air", "air of "+q.Units.Grate(unit.FromFahrenheit(usualAirF)), func() { a := unit.FromFahrenheit(usualAirF); q.Weather.Air = &a })
	took("wind", "no wind", func() {})
	if len(q.Log) == 0 {
		took("at", "a thermometer at the grate", func() {})
	}
	took("no-food", "food on the grate", func() {})
}
