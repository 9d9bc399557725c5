package planner

import (
	"context"
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/steer"
	"example.com/cookday/schedule/planner/internal/assemble"
	"example.com/cookday/schedule/planner/internal/revise"
)

// Fire answers what to do about a fire that burns, without any plan: which vent to move how far, or to leave it alone,
// what to expect and when to look again. The answer depends on the inquiry and nothing else.
func Fire(ctx context.Context, q schedule.FireInquiry) (schedule.Steer, error) {
	if err := ctx.Err(); err != nil {
		return schedule.Steer{}, err
	}
	want := steer.Want{LevelC: float64(q.Want), SteerBottom: q.SteerBottom || q.Grill == "smoker", NoFood: q.NoFood}
	if text := outsideSteering(q); text != "" {
		s := revise.SteerOf(steer.Advice{Do: steer.NoAdvice, Want: want, Outside: outsideKind(q)}, q.Units)
		s.Why, s.Taken = text, q.Taken
		return s, nil
	}
	begin, events, now := firstOf(q)
	for _, e := range q.Log { // the level that the cook set last counts, unless the question names another
		if e.Kind == schedule.LogLevel && q.Want == 0 {
			want.LevelC = e.C
		}
	}
	f := steer.Follow(begin, events, now)
	s := revise.SteerOf(f.Advise(want), q.Units)
	s.Taken = q.Taken
	if q.Grill == "drum" && f.Looks() < knownLooks {
		s.Also = append(s.Also, littleKnownDrum)
	}
	if q.Own != nil {
		s.GrillCooks = q.Own.Cooks
	}
	return s, nil
}

// Of drums there are five reports, and the fire told nothing but vents is 65 °F off on them (fire/control_rows_test.go prints
// them): readings have to say what this one does.
const (
	knownLooks      = 2
	littleKnownDrum = "Little is known of drums: by their vents alone five of them were foretold 65 °F off. Two readings at the grate, with the vents logged, tell more."
)

// Levels between which vents are advised on, with the lid on.
const (
	coolestSteered = (180.0 - 32) / 1.8
	hottestSteered = (450.0 - 32) / 1.8
)

// outsideSteering says why there is no advice but practice's, empty where there is.
func outsideSteering(q schedule.FireInquiry) string {
	level := float64(q.Want)
	vents := q.Top >= 0 || q.Bottom >= 0 || slices.ContainsFunc(q.Log, func(e schedule.Entry) bool { return e.Kind == schedule.LogVents })
	switch {
	case q.Grill == "ceramic":
		return "Why: a ceramic cooker's shell stores heat for hours. What its vents do is not known here. Come up slowly from below: once too hot, it stays so for an hour and more with its vents shut."
	case level > hottestSteered:
		return "Why: above 450 °F, and with the lid off, vents steer nothing. Take probes out of the grill."
	case level < coolestSteered:
		return "Why: below 180 °F no charcoal fire is held by its vents."
	case !vents:
		return "Why: nobody said how the vents stand. Say so, and more can be said."
	}
	return ""
}

// outsideKind is what vents do not steer; nothing where only their setting is not known.
func outsideKind(q schedule.FireInquiry) steer.Outside {
	switch {
	case q.Grill == "ceramic":
		return steer.Ceramic
	case float64(q.Want) > hottestSteered:
		return steer.TooHotToSteer
	}
	return steer.Steered
}

// fireGrill is the grill of an inquiry.
func fireGrill(q schedule.FireInquiry) fire.Grill {
	g := fire.Grill{Kind: fire.Kettle, DiameterM: float64(q.Diameter), Fuel: fire.Fuel(q.Fuel), WaterPan: q.WaterPan}
	g.Deep = q.Grill == "smoker" || q.Grill == "drum" // by its size a kettle: its coals are counted as for one
	return g
}

// A fire of which nobody said how many coals it has is the usual one for its level, give or take a factor.
const (
	litUnsure     = 0.35
	usualHours    = 5
	young         = 75 // minutes since the light until which a fire is followed from there; later it is met as it is
	usualVent     = 0.25
	lateUnlitLeft = 60 // briquettes of a 22.5 in kettle, of a fire that is met in mid cook
)

// firstOf is how the fire began, what its log says in minutes, and the minute it is now.
func firstOf(q schedule.FireInquiry) (steer.Begin, []steer.Event, float64) {
	g := fireGrill(q)
	w := fire.Weather{AirC: float64(*q.Weather.Air), WindMS: float64(q.Weather.Wind)}
	layout := fire.Fire{Layout: fire.Layout(q.Layout), LevelC: float64(q.Want)}
	b := steer.Begin{Seed: steer.Seed(""), Grill: g, Own: assemble.RecordOf(q.Own), Layout: layout.Layout, Weather: func(float64) fire.Weather { return w }}
	b.Lit, b.Unlit = usualCoals(g, layout, w)
	b.LitUnsure = litUnsure
	from := time.Time{}
	if len(q.Log) > 0 {
		from = q.Log[0].At
	}
	log := revise.ReadFire(q.Log, from)
	now := 0.0
	if n := len(q.Log); n > 0 {
		now = q.Log[n-1].At.Sub(from).Minutes()
	}
	pourAfter := float64(g.PourMinutes(layout))
	switch {
	case log.Poured >= 0:
		b.PourMinute, b.Lit, b.LitUnsure = log.Poured, log.PouredLit, 0
	case log.Lit >= 0:
		b.PourMinute = log.Lit + pourAfter
	case q.SinceLit >= 0 && (q.SinceLit.Minutes() <= young || q.Lit > 0) && len(q.Log) == 0:
		b.PourMinute = math.Min(now, now-q.SinceLit.Minutes()+pourAfter)
	default:
		b.MidCook, b.Unlit = true, math.Min(b.Unlit, lateUnlitLeft)
	}
	toldCoals(&b, q, log)
	b.Top, b.Bottom, b.VentsUnsure = startVents(q, log)
	events := log.Events
	if q.Shows != nil {
		e := steer.Event{Minute: now, Kind: steer.Grate, C: float64(*q.Shows)}
		if q.AtLid {
			e.Kind = steer.Gauge
		}
		events = append(slices.Clone(events), e)
	}
	return b, events, math.Max(now, b.PourMinute)
}

// toldCoals are those that the cook counted.
func toldCoals(b *steer.Begin, q schedule.FireInquiry, log revise.FireLog) {
	if q.Lit > 0 && log.Poured < 0 {
		b.Lit, b.LitUnsure = float64(q.Lit), 0
	}
	if q.Unlit >= 0 {
		b.Unlit = float64(q.Unlit)
	} else if log.LaidUnlit > 0 {
		b.Unlit = log.LaidUnlit
	}
}

// usualCoals are what a plan would light and lay for this level.
func usualCoals(g fire.Grill, f fire.Fire, w fire.Weather) (lit, unlit float64) {
	burn := g.Plan(f, fire.Need{First: true, Slices: []fire.Slice{{Minutes: usualHours * 60, Weather: w}}})
	lit = g.Pieces(burn.Light)
	return lit, max(g.Pieces(burn.Lay)-lit, 0)
}

// startVents are those of the start: as the log has them, else as they stand now.
func startVents(q schedule.FireInquiry, log revise.FireLog) (top, bottom float64, unsure bool) {
	pick := func(logged, said float64) float64 {
		switch {
		case logged >= 0:
			return logged
		case said >= 0 && !log.VentsTold:
			return said
		}
		unsure = true
		return usualVent
	}
	top = pick(log.StartVents.Top, q.Top)
	bottom = pick(log.StartVents.Bottom, q.Bottom)
	return top, bottom, unsure
}
