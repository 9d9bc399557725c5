package revise

import (
	"strconv"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/steer"
	"example.com/cookday/schedule/unit"
)

// FireLog is what a log says of its fire, in the words of the steer room: minutes from From.
type FireLog struct {
	From       time.Time
	Events     []steer.Event
	Lit        float64 // minute of the light; NaN-free: below zero if nobody told it
	Poured     float64 // minute at which lit coals were poured, below zero if nobody told it
	PouredLit  float64 // and how many
	LaidUnlit  float64 // and beside how many unlit ones; 0 if nobody told it
	VentsTold  bool
	StartVents steer.Vents // as they stood at the pour; below zero if nobody told it
}

// pourWithin is how long after the light lit coals are those of the pour (assumption).
const pourWithin = 60.0

// ReadFire sorts the entries of a fire. What is no part of a fire is passed over.
func ReadFire(log []schedule.Entry, from time.Time) FireLog {
	f := FireLog{From: from, Lit: -1, Poured: -1, StartVents: steer.Vents{Top: -1, Bottom: -1}}
	burning := false // a reading says that something burns
	for _, e := range log {
		at := e.At.Sub(from).Minutes()
		switch e.Kind {
		case schedule.LogLit:
			if f.Lit < 0 {
				f.Lit = at
			}
			continue
		case schedule.LogLitCoals:
			if n := countOf(e.Value); f.Poured < 0 && n > 0 && (!burning || f.Lit >= 0 && at-f.Lit <= pourWithin) {
				f.Poured, f.PouredLit = at, n
				continue
			}
		case schedule.LogUnlitCoals:
			if f.Poured < 0 && !burning || f.Poured >= 0 && at <= f.Poured {
				f.LaidUnlit += countOf(e.Value)
				continue
			}
		case schedule.LogGrate, schedule.LogGauge:
			burning = true
		}
		if ev, ok := eventOf(e, at); ok {
			f.addEvent(ev, burning)
		}
	}
	return f
}

// addEvent keeps an event, and the vents that stood at the start.
func (f *FireLog) addEvent(e steer.Event, burning bool) {
	if e.Kind == steer.VentsSet {
		f.VentsTold = true
		if early := f.Poured < 0 && !burning || f.Poured >= 0 && e.Minute <= f.Poured; early {
			if e.Top >= 0 {
				f.StartVents.Top = e.Top
			}
			if e.Bottom >= 0 {
				f.StartVents.Bottom = e.Bottom
			}
		}
	}
	f.Events = append(f.Events, e)
}

func countOf(text string) float64 {
	n, err := strconv.Atoi(text)
	if err != nil || n < 0 {
		return 0
	}
	return float64(n)
}

// takenOut is how many coals an entry says were taken out; below 1 a share of all.
func takenOut(text string) float64 {
	if n := countOf(text); n > 0 {
		return n
	}
	share, err := fire.ParseOpening(text)
	if err != nil {
		return 0
	}
	return min(share, allOut)
}

// allOut is the largest share of its coals that a fire loses by hand and still burns (assumption).
const allOut = 0.95

// refuelCoals is what a cook adds without saying how many (assumption).
const refuelCoals = 25

// eventOf is one entry; false for one that is not of the fire, or says nothing.
func eventOf(e schedule.Entry, at float64) (steer.Event, bool) {
	out := steer.Event{Minute: at, C: e.C}
	switch e.Kind {
	case schedule.LogGrate:
		out.Kind = steer.Grate
	case schedule.LogGauge:
		out.Kind = steer.Gauge
	case schedule.LogLidOpened:
		out.Kind = steer.LidOff
	case schedule.LogLidClosed:
		out.Kind = steer.LidOn
	case schedule.LogAshCleared:
		out.Kind = steer.AshCleared
	case schedule.LogFireOut:
		out.Kind = steer.Out
	case schedule.LogRefuelled:
		out.Kind, out.Count = steer.Unlit, refuelCoals
		if n, _, _ := strings.Cut(e.Value, " "); countOf(n) > 0 {
			out.Count = countOf(n)
		}
	case schedule.LogLitCoals:
		out.Kind, out.Count = steer.Lit, countOf(e.Value)
	case schedule.LogUnlitCoals:
		out.Kind, out.Count = steer.Unlit, countOf(e.Value)
	case schedule.LogCoalsOut:
		out.Kind, out.Count = steer.CoalsOut, takenOut(e.Value)
		return out, out.Count > 0
	case schedule.LogVents:
		top, bottom, err := fire.ParseVents(e.Value)
		out.Kind, out.Top, out.Bottom = steer.VentsSet, top, bottom
		return out, err == nil
	case schedule.LogWind:
		wind, err := unit.ParseSpeed(e.Value)
		out.Kind, out.WindMS = steer.Wind, float64(wind)
		return out, err == nil
	default:
		return out, false
	}
	return out, true
}

// SteerOf is an advice as a plan and an answer carry it.
func SteerOf(a steer.Advice, sys unit.System) schedule.Steer {
	t := a.Tell(sys)
	s := schedule.Steer{
		Do: a.Do.String(), Text: t.Do, Expect: t.Expect, Look: t.Look, Why: t.Why, Also: t.Also,
		LookMinutes: a.LookShown(), Reason: a.Why.String(), Reach: a.Reach.String(), Count: a.Count,
	}
	if a.Do != steer.NoAdvice {
		s.From = &schedule.SteerVents{Top: a.From.Top, Bottom: a.From.Bottom}
		s.To = &schedule.SteerVents{Top: a.To.Top, Bottom: a.To.Bottom}
	}
	if a.Figures() {
		now, in15, in30 := rangeOf(a.Now), rangeOf(a.In15), rangeOf(a.In30)
		s.Now, s.In15, s.In30 = &now, &in15, &in30
	} else if a.Do != steer.Move {
		s.To = nil
	}
	for _, r := range a.Remedies {
		s.Remedies = append(s.Remedies, schedule.SteerRemedy{Do: r.Do.String(), Count: r.Count, In45: rangeOf(r.In45), Helps: r.Helps})
	}
	return s
}

func rangeOf(r steer.Range) schedule.SteerRange {
	return schedule.SteerRange{LowC: r.Low, MiddleC: r.Middle, HighC: r.High}
}
