package schedule

import (
	"time"

	"example.com/cookday/schedule/internal/meant"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

// Limits that keep a request within what one person and one grate can mean.
const (
	maxDishes  = 40
	maxPieces  = 500 // of one dish
	maxQuiet   = 10
	maxHours   = 168 // a week by the hour
	maxZones   = 12
	maxChoices = 10 // words in a list of ways

	maxHeard    = 100 // sentences
	maxMeasured = 200 // readings of one dish; more are a log
)

// decoder reads the parts of a request.
type decoder struct {
	*strict.Decoder
	now     time.Time // on the cook's clock; zero where that is not known
	saw     *meantServe
	heard   *[]string  // what a cook has to see of how words were read
	nowhere bool       // the machine does not say where it is: its own clock is taken, and said
	metric  bool       // all that has a unit is metric
	pinned  bool       // a day that is another one tomorrow is not taken
	day     *meant.Day // what is known of the day from the start; never nil

	taught map[string]string // lines that would be right, by their paths; before those of the reference
}

func newDecoder(faults *strict.FaultList) decoder { return newDecoderOn(faults, time.Time{}) }

// newDecoderOn is a decoder on a day.
func newDecoderOn(faults *strict.FaultList, now time.Time) decoder {
	d := decoder{Decoder: strict.NewDecoder(faults), now: now, saw: new(meantServe), heard: new([]string), day: &meant.Day{}, taught: map[string]string{}}
	d.seeServe("", "")
	d.Teach = d.rightLine
	d.Meant = func(within, name string, value *strict.Node) strict.Meaning { return d.day.Field(within, name, value) }
	d.Value = func(within, name string, value *strict.Node) strict.Meaning { return d.day.Value(within, name, value) }
	d.Understood = func(within, name string, value *strict.Node) *strict.Node {
		return d.day.Understood(within, name, value)
	}
	return d
}

func (d decoder) request(r *Request) strict.Reader {
	return strict.Named("request", func(n *strict.Node, path string) {
		n = d.flat(n, path)
		d.lookAhead(n)
		d.Object(n, path,
			strict.Optional("format", d.format(&r.Format)),
			strict.Optional("id", d.Text(&r.ID)),
			strict.Optional("name", d.Text(&r.Name)),
			strict.Required("serve", d.serve(&r.Serve)),
			strict.Optional("guests", strict.Pointed(&r.Guests, func(g *Guests) strict.Reader { return strict.OrText(d.Decoder, d.guests(g)) })),
			strict.Required("grill", d.grill(&r.Grill)),
			strict.Optional("oven", d.oven(&r.Oven)),
			strict.Optional("box", strict.Pointed(&r.Box, d.box)),
			strict.Optional("weather", strict.OrText(d.Decoder, d.weather(&r.Weather))),
			strict.Optional("quiet", strict.OrText(d.Decoder, d.quietHours(&r.Quiet))),
			strict.Optional("overnight", d.Boolean(&r.Overnight)),
			strict.Optional("layout", d.word(&r.Layout, layoutNames()...)),
			strict.Optional("confidence", strict.NotZero(d.Decoder, &r.Confidence, d.share(&r.Confidence))),
			strict.Optional("units", d.system(&r.Units)),
			strict.Optional("earliest", strict.Pointed(&r.Earliest, d.clock)),
			strict.Optional("lit", strict.Pointed(&r.Lit, d.clock)),
			strict.Required("dishes", d.dishList(&r.Dishes)),
			strict.Optional("heard", strict.List(d.Decoder, &r.Heard, maxHeard, func(to *string) strict.Reader { return d.Text(to) })),
		)
	})
}

// share reads 0.9 or 90%.
func (d decoder) share(to *float64) strict.Reader {
	return func(n *strict.Node, path string) {
		if n.Kind != strict.NodeText {
			d.Number(to, "0.9")(n, path)
			return
		}
		var f unit.Fraction
		strict.Quantity(d.Decoder, &f, unit.ParseFraction)(n, path)
		*to = float64(f)
	}
}

// system reads us or metric.
func (d decoder) system(to *unit.System) strict.Reader {
	read := strict.Quantity(d.Decoder, to, unit.ParseSystem)
	return func(n *strict.Node, path string) {
		if n.Probed() { // none of its words is tried
			var word string
			d.word(&word, string(unit.US), string(unit.Metric))(n, path)
			return
		}
		read(n, path)
	}
}

// format refuses a written 0, which stands for a field left out.
func (d decoder) format(to *int) strict.Reader {
	return func(n *strict.Node, path string) {
		known := d.Faults.Len()
		if d.Whole(to, "1")(n, path); *to == 0 && d.Faults.Len() == known && !n.Broken() {
			d.Faults.AddLine(path, n.Line, "%s is not known; this program reads format %d", n.Text, knownFormat)
		}
	}
}

// guests reads 24 or {adults: 20, children: 8, frail: true}.
func (d decoder) guests(g *Guests) strict.Reader {
	return func(n *strict.Node, path string) {
		if n.Kind != strict.NodeObject {
			d.Whole(&g.Adults, "24 or {adults: 20, children: 8}")(n, path)
			return
		}
		d.Object(n, path,
			strict.Optional("adults", strict.OrText(d.Decoder, d.Whole(&g.Adults, "20"))),
			strict.Optional("children", strict.OrText(d.Decoder, d.Whole(&g.Children, "8"))),
			strict.Optional("frail", func(n *strict.Node, path string) {
				d.Boolean(&g.Frail)(n, path)
				g.NoneFrail = !g.Frail
			}),
		)
	}
}

// oven reads yes, no, the temperature that it holds, or {hold: 170 F}.
func (d decoder) oven(o **Oven) strict.Reader {
	group := func(n *strict.Node, path string) {
		oven := new(Oven)
		d.Object(n, path,
			strict.Optional("hold", strict.NotZero(d.Decoder, &oven.Hold, d.temperature(&oven.Hold))),
			strict.Optional("stays_on", d.Boolean(&oven.StaysOn)),
		)
		*o = oven
	}
	return func(n *strict.Node, path string) {
		if yes, said := n.Says(); said && !n.Probed() {
			if yes {
				*o = new(Oven)
			}
			return
		}
		n.TakesTruth()
		if n.Kind == strict.NodeText && !n.Probed() && n.LikeNumber() {
			n = strict.NewGroup(n.Line).With("hold", n)
		}
		strict.OrText(d.Decoder, group)(n, path)
	}
}

// box reads usual, or {kind: good, logged: {after: 6h, core: 160 F}}.
func (d decoder) box(b *Box) strict.Reader {
	return func(n *strict.Node, path string) {
		if n.Kind != strict.NodeObject {
			d.word(&b.Kind, boxKinds...)(n, path)
			return
		}
		d.Object(n, path,
			strict.Required("kind", d.word(&b.Kind, boxKinds...)),
			strict.Optional("logged", strict.Pointed(&b.Logged, d.boxHold)),
		)
	}
}

func (d decoder) boxHold(h *BoxHold) strict.Reader {
	return func(n *strict.Node, path string) {
		d.Object(n, path,
			strict.Required("after", d.duration(&h.After)),
			strict.Required("core", d.temperature(&h.Core)),
		)
	}
}

func (d decoder) weather(w *Weather) strict.Reader {
	return func(n *strict.Node, path string) {
		d.Object(n, path,
			strict.Optional("air", strict.Pointed(&w.Air, d.temperature)),
			strict.Optional("night", strict.Pointed(&w.Night, d.temperature)),
			strict.Optional("humidity", strict.Pointed(&w.Humidity, func(f *unit.Fraction) strict.Reader { return strict.Quantity(d.Decoder, f, unit.ParseFraction) })),
			strict.Optional("wind", strict.Quantity(d.Decoder, &w.Wind, unit.ParseSpeed)),
			strict.Optional("rain", d.Boolean(&w.Rain)),
			strict.Optional("sheltered", d.Boolean(&w.Sheltered)),
			strict.Optional("altitude", strict.Quantity(d.Decoder, &w.Altitude, unit.ParseLength)),
			strict.Optional("hours", strict.List(d.Decoder, &w.Hours, maxHours, d.weatherFrom)),
		)
	}
}

func (d decoder) weatherFrom(w *WeatherFrom) strict.Reader {
	return func(n *strict.Node, path string) {
		d.Object(n, path,
			strict.Required("from", d.clock(&w.From)),
			strict.Optional("air", strict.Pointed(&w.Air, d.temperature)),
			strict.Optional("wind", strict.Pointed(&w.Wind, func(s *unit.Speed) strict.Reader { return strict.Quantity(d.Decoder, s, unit.ParseSpeed) })),
			strict.Optional("rain", strict.Pointed(&w.Rain, d.Boolean)),
		)
	}
}

func (d decoder) temperature(t *unit.Temperature) strict.Reader {
	return strict.Quantity(d.Decoder, t, unit.ParseTemperature)
}

func (d decoder) duration(to *unit.Duration) strict.Reader {
	return strict.Quantity(d.Decoder, to, func(text string) (unit.Duration, error) {
		v, err := unit.ParseDuration(text)
		return unit.Duration(v), err
	})
}
