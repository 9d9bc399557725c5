package revise

import (
	"fmt"
	"math"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/steer"
	"example.com/cookday/schedule/planner/internal/assemble"
	"example.com/cookday/schedule/planner/internal/spread"
	"example.com/cookday/schedule/unit"
)

// ownOf is a record as a request carries it, to three digits.
func ownOf(r *steer.Record, pace spread.Lean) *schedule.OwnGrill {
	if r == nil || r.Cooks == 0 {
		return nil
	}
	own := &schedule.OwnGrill{Cooks: r.Cooks}
	for _, name := range steer.FigureNames() {
		if f, ok := r.Figures[name]; ok {
			own.Figures = append(own.Figures, schedule.OwnFigure{Name: name, Times: round3(f.Middle), Spread: round3(f.Spread)})
		}
	}
	if pace.SD < spread.BetweenCooks {
		own.Figures = append(own.Figures, schedule.OwnFigure{Name: schedule.OwnPace, Times: round3(math.Exp(pace.Mean)), Spread: round3(pace.SD)})
	}
	return own
}

func round3(x float64) float64 { return math.Round(x*1000) / 1000 }

// Lesson is what the fires of a finished day teach of its grill.
func (v *Revision) Lesson() schedule.GrillLesson {
	own, taught := assemble.RecordOf(v.day.Req.Grill.Own), false
	if v.day.Grill.BurnsCharcoal() {
		for k := range min(v.phases, len(v.first.Phases)) {
			if v.first.Phases[k].LidOff {
				continue
			}
			begin, log, until := v.fireOf(k)
			begin.Own = own
			if r, ok := steer.Follow(begin, log.Events, until).Learned(); ok {
				if taught {
					r.Cooks-- // one cook, of two fires
				}
				own, taught = &r, true
			}
		}
	}
	pace, paced := v.lessonPace(LeanOf(v.day.Req.Grill.Own))
	if paced {
		own = withPace(own, taught)
	}
	return LessonOf(v.day.Grill, own, pace, taught || paced, v.day.Req.Units)
}

// fireOf is the fire of phase k until the next one.
func (v *Revision) fireOf(k int) (steer.Begin, FireLog, float64) {
	w := *v
	w.phases = k + 1
	if k+1 < len(v.first.Phases) {
		w.now = v.first.Phases[k+1].SetupFrom.Add(v.lateOf(k + 1))
	}
	w.log = nil
	for _, e := range v.log {
		if e.At.Before(w.now) {
			w.log = append(w.log, e)
		}
	}
	begin, log := w.fireBegan(k)
	return begin, log, math.Max(w.now.Sub(log.From).Minutes(), begin.PourMinute)
}

// vagueK is the width of a range of the grate from which on it tells a cook nothing, K (100 °F; judgment).
const vagueK = 100 / 1.8

// lessonLevels are those that cooks hold, degF.
var lessonLevels = []float64{225, 250, 275}

// LessonOf puts a record into words: what it rests on, and the vents that hold common levels.
func LessonOf(g fire.Grill, own *steer.Record, pace spread.Lean, taught bool, sys unit.System) schedule.GrillLesson {
	out := schedule.GrillLesson{Own: ownOf(own, pace), Taught: taught}
	switch {
	case taught:
		out.Text = fmt.Sprintf("Learned. The record rests on %s on this grill: put it into the request, as own under grill.", say.Plural(own.Cooks, "cook"))
		if words := PaceWords(pace); words != "" {
			out.Text += " " + words
		}
	case out.Own != nil:
		out.Text = "This cook added nothing: a fire teaches that was read at the grate six times or more, with its vents moved twice; a piece whose on and off were logged. The record is as it was."
	default:
		out.Text = "Nothing learned yet: a fire teaches that was read at the grate six times or more, with its vents moved twice, and both logged; and a piece whose on and off were logged."
	}
	if out.Own == nil || !g.BurnsCharcoal() {
		return out
	}
	for _, f := range lessonLevels {
		s := steer.Start{Grill: g, Own: own, Layout: fire.Banked, Weather: fire.Weather{AirC: unit.FToC(70)}, LevelC: unit.FToC(f), SteerBottom: g.SteersBottom()}
		v, r := s.Vents()
		text := fmt.Sprintf("%s: begin with top vent %s, bottom vent %s", sys.Grate(unit.Temperature(s.LevelC)), fire.MarkWords(v.Top), fire.MarkWords(v.Bottom))
		if r.High-r.Low > vagueK {
			out.Holds = append(out.Holds, text+"; where that settles is not known yet.")
			continue
		}
		out.Holds = append(out.Holds, fmt.Sprintf("%s; by the record that gives %s to %s.", text, sys.Grate(unit.Temperature(r.Low)), sys.Grate(unit.Temperature(r.High))))
	}
	return out
}
