package assemble

import (
	"fmt"
	"math"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/day"
)

// lethality is what the predicted core temperature of a cook and its rest adds up
// to against the published table of its food. It is information: it changes nothing.
func (d *Assembler) lethality(p *arrange.Placed) *schedule.Lethality {
	if p.Way.State == nil || p.Way.Direct || p.Way.Sear || p.Way.Believed != nil || p.It.Prep.Stuffed || p.It.Cut.Style == cut.Timed {
		return nil
	}
	table, ok := safety.LethalityTableFor(p.It.Category, p.It.Cut.Composition.Fat*100)
	if !ok {
		return nil
	}
	l, err := table.Integrate(d.coreHistory(p))
	if err != nil {
		return nil
	}
	out := &schedule.Lethality{
		Product: string(table.Product), Source: table.Source, FatPct: table.FatPct, TableLog: table.LogReduction,
		Fraction: math.Min(l.Fraction, 1), Reached: l.Reached,
	}
	if l.Reached {
		at := d.At(p.On - l.ReachedMinute)
		out.At = &at
	}
	out.Text = d.lethalityText(p, out)
	return out
}

func (d *Assembler) lethalityText(p *arrange.Placed, l *schedule.Lethality) string {
	rule := fmt.Sprintf("For information only: %s minimum of %s", p.It.Verdict.Minimum.Whose(), d.Core(p.It.Verdict.Minimum.CoreC))
	if rest := p.It.Verdict.Minimum.RestMinutes; rest > 0 {
		rule += " with its rest of " + day.SpokenSpan(rest)
	}
	if !l.Reached {
		return fmt.Sprintf("As predicted the core adds up to %.0f%% of the published time and temperature table for %s. %s stands.", math.Floor(l.Fraction*100), l.Product, rule)
	}
	return fmt.Sprintf("As predicted the core has added up to the whole of the published time and temperature table for %s by about %s. %s stands.",
		l.Product, say.LocalClock(d.Req.Units, instant.QuarterDown(*l.At).Add(instant.Quarter)), rule)
}

// coreHistory is the predicted core temperature from the put-on through the least
// rest, at the expected pace, in minutes from the put-on.
func (d *Assembler) coreHistory(p *arrange.Placed) []safety.Sample {
	model, s := d.ModelCook(p)
	pace := p.Way.Total().Expected / p.Way.ModelDone
	samples := []safety.Sample{{Minute: 0, C: startC(p)}}
	for _, q := range model.Points {
		if m := q.AtS / 60 * pace; m > samples[len(samples)-1].Minute {
			samples = append(samples, safety.Sample{Minute: m, C: q.CoreC})
		}
	}
	off := math.Max(p.Way.Total().Expected, samples[len(samples)-1].Minute)
	samples = append(samples, safety.Sample{Minute: off, C: p.Way.PullC})
	s.Change(heat.Tented(day.RoomC))
	for m := 1.0; m <= p.It.RestMinutes(); m++ {
		s.RunFor(60)
		samples = append(samples, safety.Sample{Minute: off + m, C: heat.ProbeCoreC(p.Way.PullC, s.CoreC())})
	}
	return samples
}
