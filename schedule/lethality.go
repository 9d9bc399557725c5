package schedule

import (
	"fmt"
	"math"
	"time"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/internal/safety"
)

// keptHot lengthens ways by the time that a published minimum wants to be held, as
// for injected and tenderised meat: it stays on the fire for it. A target well above
// the minimum has held it long before.
func (it *item) keptHot(ways []way) []way {
	m := it.holdMinutes()
	if m == 0 {
		return ways
	}
	for i := range ways {
		w := &ways[i]
		last := &w.first
		if w.stages() > 1 {
			last = &w.second
		}
		*last = last.plus(pace{m, m, m, m})
		if w.inOven.planned > 0 {
			w.inOven = w.inOven.plus(pace{m, m, m, m})
		}
	}
	return ways
}

// heldMarginK is from how far above the minimum the rise itself takes longer than
// the hold: 15 s is the longest that is then asked.
const heldMarginK = 5

// holdMinutes is how long the core stays at its minimum before it comes off.
func (it *item) holdMinutes() float64 {
	if it.verdict.MarginK >= heldMarginK {
		return 0
	}
	return it.verdict.Minimum.HoldSeconds / 60
}

// holdSentence says so at the take-off.
func (it *item) holdSentence(d *day) string {
	switch m := it.holdMinutes(); {
	case m == 0:
		return ""
	case m < 1:
		return fmt.Sprintf(" It has been there for %.0f s by then.", m*60)
	default:
		return fmt.Sprintf(" It has been at %s or more for %s by then.", d.core(it.verdict.Minimum.CoreC), spokenSpan(m))
	}
}

// spokenSpan is a limit that may not be rounded, "4 min".
func spokenSpan(m float64) string { return fmt.Sprintf("%.0f min", math.Ceil(m)) }

// finalFault refuses a peak after carry-over for food that must have its minimum on
// the fire: what a rest adds is no part of it.
func (it *item) finalFault() []Fault {
	switch it.category {
	case safety.Poultry, safety.Ground, safety.GroundPoultry, safety.Sausage, safety.Leftovers:
	default:
		if !it.prep.Stuffed && !it.prep.Injected && !it.prep.Tenderised {
			return nil
		}
	}
	if !it.final {
		return nil
	}
	return []Fault{{Path: it.path("target"), Sentence: "final counts on heat that comes after the fire, and " + inText(it.cut) + " has its minimum on the fire; give the core temperature itself"}}
}

// lethality is what the predicted core temperature of a cook and its rest adds up
// to against the published table of its food. It is information: it changes nothing.
func (d *day) lethality(p *placed) *Lethality {
	if p.way.state == nil || p.way.direct || p.way.sear || p.way.believed != nil || p.it.prep.Stuffed || p.it.cut.Style == cut.Timed {
		return nil
	}
	table, ok := safety.LethalityTableFor(p.it.category, p.it.cut.Composition.Fat*100)
	if !ok {
		return nil
	}
	l, err := table.Integrate(d.coreHistory(p))
	if err != nil {
		return nil
	}
	out := &Lethality{
		Product: string(table.Product), Source: table.Source, FatPct: table.FatPct, TableLog: table.LogReduction,
		Fraction: math.Min(l.Fraction, 1), Reached: l.Reached,
	}
	if l.Reached {
		at := d.at(p.on - l.ReachedMinute)
		out.At = &at
	}
	out.Text = d.lethalityText(p, out)
	return out
}

func (d *day) lethalityText(p *placed, l *Lethality) string {
	rule := fmt.Sprintf("Information, no permission: the published minimum of %s", d.core(p.it.verdict.Minimum.CoreC))
	if rest := p.it.verdict.Minimum.RestMinutes; rest > 0 {
		rule += " with its rest of " + spokenSpan(rest)
	}
	if !l.Reached {
		return fmt.Sprintf("As predicted the core adds up to %.0f %% of the published time and temperature table for %s. %s stands.", math.Floor(l.Fraction*100), l.Product, rule)
	}
	return fmt.Sprintf("As predicted the core has added up to the whole of the published time and temperature table for %s by about %s. %s stands.",
		l.Product, localClock(quarterDown(*l.At).Add(quarter)), rule)
}

// coreHistory is the predicted core temperature from the put-on through the least
// rest, at the expected pace, in minutes from the put-on.
func (d *day) coreHistory(p *placed) []safety.Sample {
	model, s := d.modelCook(p)
	pace := p.way.total().expected / p.way.modelDone
	samples := []safety.Sample{{Minute: 0, C: p.startC()}}
	for _, q := range model.Points {
		if m := q.AtS / 60 * pace; m > samples[len(samples)-1].Minute {
			samples = append(samples, safety.Sample{Minute: m, C: q.CoreC})
		}
	}
	off := math.Max(p.way.total().expected, samples[len(samples)-1].Minute)
	samples = append(samples, safety.Sample{Minute: off, C: p.way.pullC})
	s.Change(heat.Tented(roomC))
	for m := 1.0; m <= p.it.restMinutes(); m++ {
		s.RunFor(60)
		samples = append(samples, safety.Sample{Minute: off + m, C: heat.ProbeCoreC(p.way.pullC, s.CoreC())})
	}
	return samples
}

// Lethality compares the predicted core temperature of a cook and its rest with a
// published table of times and temperatures. It never stands for the minimum.
type Lethality struct {
	Product  string     `json:"product"`            // that the table was published for
	Source   string     `json:"source"`             // key of the publication
	FatPct   float64    `json:"fat_pct,omitempty"`  // of the table's column; poultry only
	TableLog float64    `json:"table_log,omitzero"` // decades of the whole table; 0 where it prints none
	Fraction float64    `json:"fraction"`           // of the table's reduction, 1 at the most
	Reached  bool       `json:"reached"`            // the whole of it
	At       *time.Time `json:"at,omitempty"`       // when
	Text     string     `json:"text"`
}
