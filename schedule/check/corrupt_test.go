package check_test

import (
	"math"
	"slices"
	"strings"
	"time"

	"github.com/rickb777/date/clock"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/unit"
)

func putOff(t *time.Time, minutes float64) {
	*t = t.Add(time.Duration(minutes * float64(time.Minute)))
}

// shifted moves a window as a whole.
func shifted(w *schedule.Window, minutes float64) {
	putOff(&w.Early, minutes)
	putOff(&w.Expected, minutes)
	putOff(&w.Late, minutes)
}

func loadOf(p *schedule.Plan, dish int) *schedule.Batch { return &p.Dishes[dish].Batches[0] }

func theStep(p *schedule.Plan, kind schedule.StepKind) *schedule.Step {
	i := slices.IndexFunc(p.Steps, func(s schedule.Step) bool { return s.Kind == kind })
	return &p.Steps[i]
}

func lastOf(p *schedule.Plan, kind schedule.StepKind) *schedule.Step {
	last := -1
	for i, s := range p.Steps {
		if s.Kind == kind && (last < 0 || s.At.After(p.Steps[last].At)) {
			last = i
		}
	}
	return &p.Steps[last]
}

func theMilestone(b *schedule.Batch, kind schedule.MilestoneKind) *schedule.Milestone {
	i := slices.IndexFunc(b.Milestones, func(m schedule.Milestone) bool { return m.Kind == kind })
	return &b.Milestones[i]
}

func leavingOut[T any](all []T, drop func(T) bool) []T { return slices.DeleteFunc(all, drop) }

// corruption spoils one of the invented days in one place.
type corruption struct {
	name, party, rule string
	spoil             func(*schedule.Plan)
}

// corruptions spoil one of the invented days each.
var corruptions = []corruption{
	{"an empty fire is looked after", "shoulder", "tended", func(p *schedule.Plan) {
		for i := range p.Steps {
			if _, text, ok := strings.Cut(p.Steps[i].Text, " still on? Then "); ok {
				p.Steps[i].Text = text
			}
		}
	}},
	{"batches numbered against the order in which they go on", "burgers", "stages", func(p *schedule.Plan) {
		i := slices.IndexFunc(p.Dishes, func(d schedule.DishPlan) bool { return len(d.Batches) > 1 })
		all := p.Dishes[i].Batches
		all[0].Stages, all[len(all)-1].Stages = all[len(all)-1].Stages, all[0].Stages
	}},
	{"another format", "burgers", "format", func(p *schedule.Plan) { p.Format = 2 }},
	{"id that is no UUID", "burgers", "format", func(p *schedule.Plan) { p.ID = "plan-1" }},
	{"another time zone", "burgers", "format", func(p *schedule.Plan) { p.TZ = "Europe/Paris" }},
	{"request changed afterwards", "burgers", "provenance", func(p *schedule.Plan) { p.Request.Name = "Another day" }},
	{"hash of another request", "burgers", "provenance", func(p *schedule.Plan) { p.Provenance.RequestHash = "0" }},
	{"amount that is no number", "burgers", "finite", func(p *schedule.Plan) { p.Fuel.MassKg = math.NaN() }},
	{"negative minutes", "burgers", "finite", func(p *schedule.Plan) { theStep(p, schedule.StepPutOn).Minutes = -3 }},
	{"instant without the zone's offset", "burgers", "instants", func(p *schedule.Plan) { p.Steps[0].At = p.Steps[0].At.UTC() }},
	{"instant not set", "burgers", "instants", func(p *schedule.Plan) { p.Phases[0].To = time.Time{} }},
	{"early after late", "burgers", "windows", func(p *schedule.Plan) {
		w := &theStep(p, schedule.StepTakeOff).Window
		w.Early, w.Late = w.Late, w.Early
	}},
	{"stage minutes out of order", "burgers", "windows", func(p *schedule.Plan) { loadOf(p, 0).Stages[0].Minutes.Early = 99 }},
	{"served later than asked", "burgers", "serving", func(p *schedule.Plan) { putOff(&p.ServeAt, 30) }},
	{"dish served later than asked", "travel", "serving", func(p *schedule.Plan) { putOff(&p.Dishes[0].ServeAt, 30) }},
	{"steps of a day that cannot be done", "too much", "infeasible", func(p *schedule.Plan) { p.Steps = []schedule.Step{{ID: "a", Kind: schedule.StepServe, Text: "Serve."}} }},
	{"no reason for a day that cannot be done", "too much", "infeasible", func(p *schedule.Plan) { p.Findings = nil }},
	{"feasible without steps", "burgers", "infeasible", func(p *schedule.Plan) { p.Steps = nil }},
	{"proven and not", "burgers", "solution", func(p *schedule.Plan) { p.Solution.Proven = !p.Solution.Proven }},
	{"objective that is not its parts", "burgers", "solution", func(p *schedule.Plan) { p.Solution.Objective++ }},
	{"bound above the objective", "burgers", "solution", func(p *schedule.Plan) { p.Solution.Bound = p.Solution.Objective + 1 }},
	{"finding of an unknown dish", "terrace", "findings", func(p *schedule.Plan) { p.Findings[0].Dishes = []string{"ghost"} }},
	{"finding of an unknown severity", "terrace", "findings", func(p *schedule.Plan) { p.Findings[0].Severity = "fatal" }},
	{"remedy without a change", "burgers", "remedies", func(p *schedule.Plan) {
		p.Remedies = []schedule.Remedy{{Code: "a", Text: "Serve later.", ServeAt: p.ServeAt}}
	}},
	{"no caution of carbon monoxide", "burgers", "cautions", func(p *schedule.Plan) {
		p.Cautions = leavingOut(p.Cautions, func(c schedule.Caution) bool { return c.Code == "carbon-monoxide" })
	}},
	{"caution by hearsay", "burgers", "cautions", func(p *schedule.Plan) { p.Cautions[0].Source = "hearsay" }},
	{"no caution of the unwatched fire", "overnight", "cautions", func(p *schedule.Plan) {
		p.Cautions = leavingOut(p.Cautions, func(c schedule.Caution) bool { return c.Code == "fire-unattended" })
	}},
	{"burgers below the published minimum", "burgers", "target", func(p *schedule.Plan) { p.Dishes[0].TargetC = 65 }},
	{"another target than asked", "overnight", "target", func(p *schedule.Plan) { p.Dishes[0].TargetC -= 3 }},
	{"minimum that is not the published one", "burgers", "target", func(p *schedule.Plan) { p.Dishes[0].MinimumC = 60 }},
	{"a burger too few", "burgers", "pieces", func(p *schedule.Plan) { b := loadOf(p, 0); b.Pieces = b.Pieces[1:] }},
	{"a lighter burger", "burgers", "pieces", func(p *schedule.Plan) { loadOf(p, 0).Pieces[0].MassKg /= 2 }},
	{"pieces that cover less", "burgers", "pieces", func(p *schedule.Plan) {
		for i := range loadOf(p, 0).Pieces {
			loadOf(p, 0).Pieces[i].AreaM2 /= 2
		}
	}},
	{"fire ready too soon", "burgers", "phases", func(p *schedule.Plan) { putOff(&p.Phases[0].SetupFrom, 10); *p.LightAt = p.Phases[0].SetupFrom }},
	{"change of fire in no time", "overnight", "phases", func(p *schedule.Plan) { putOff(&p.Phases[0].To, 15) }},
	{"phases in the wrong order", "overnight", "phases", func(p *schedule.Plan) { slices.Reverse(p.Phases) }},
	{"zone larger than the grate", "burgers", "zones", func(p *schedule.Plan) { p.Phases[0].Zones[0].AreaM2 *= 2 }},
	{"zone of another heat", "burgers", "zones", func(p *schedule.Plan) { p.Phases[0].Zones[0].LevelC += 20 }},
	{"layout that cannot hold the level", "burgers", "zones", func(p *schedule.Plan) { p.Phases[0].LevelC = 315 }},
	{"less laid than burns", "overnight", "fuel", func(p *schedule.Plan) { p.Phases[1].Burn.LayKg /= 2 }},
	{"nothing added to what is only lit", "overnight", "fuel", func(p *schedule.Plan) {
		b := p.Phases[0].Burn
		b.Lay, b.LayKg, b.Refuels = b.Light, b.LightKg, nil
	}},
	{"less bought than burns", "overnight", "fuel", func(p *schedule.Plan) { p.Phases[0].Burn.BuyKg = p.Phases[0].Burn.MassKg / 2 }},
	{"fuel that is not the sum", "overnight", "fuel", func(p *schedule.Plan) { p.Fuel.MassKg /= 2 }},
	{"fire that goes out at night", "overnight", "untended", func(p *schedule.Plan) { p.Phases[0].Burn.LastsMinutes = 120 }},
	{"gap between the stages", "overnight", "stages", func(p *schedule.Plan) { putOff(&loadOf(p, 0).Stages[1].From, 20) }},
	{"still cooking when served", "overnight", "stages", func(p *schedule.Plan) { putOff(&loadOf(p, 1).Stages[0].To, 10) }},
	{"rest before the heat", "overnight", "stages", func(p *schedule.Plan) { slices.Reverse(loadOf(p, 0).Stages) }},
	{"zone that the fire has not", "burgers", "place", func(p *schedule.Plan) { loadOf(p, 0).Stages[0].Zone = "indirect" }},
	{"cooking before the fire is ready", "burgers", "place", func(p *schedule.Plan) { putOff(&p.Phases[0].From, 5) }},
	{"rider at the faster fire's level", "overnight", "place", func(p *schedule.Plan) { loadOf(p, 0).Stages[1].LevelC = p.Phases[1].LevelC }},
	{"wrong phase", "overnight", "place", func(p *schedule.Plan) { loadOf(p, 1).Stages[0].Phase = 1 }},
	{"bird on a gentle fire whose skin stays soft", "terrace", "birds", func(p *schedule.Plan) {
		loadOf(p, 1).Stages[0].LevelC = 149
		p.Steps = slices.DeleteFunc(p.Steps, func(s schedule.Step) bool { return s.Kind == schedule.StepSear && s.Dish == p.Dishes[1].ID })
	}},
	{"bird in the low band", "terrace", "birds", func(p *schedule.Plan) { loadOf(p, 1).Stages[0].LevelC = 121 }},
	{"paper where foil was asked", "terrace", "asked", func(p *schedule.Plan) { loadOf(p, 0).Stages[1].With = schedule.WrapPaper }},
	{"wrapped too cold", "terrace", "asked", func(p *schedule.Plan) { loadOf(p, 0).Stages[0].CoreC = 55 }},
	{"another level than asked", "overnight", "asked", func(p *schedule.Plan) { loadOf(p, 0).Stages[0].LevelC += 14 }},
	{"seared though nobody asked", "burgers", "asked", func(p *schedule.Plan) { loadOf(p, 0).Stages[0].Kind = schedule.StageSear }},
	{"no sear where one was asked", "sear", "asked", func(p *schedule.Plan) {
		b := loadOf(p, 0)
		b.Stages = leavingOut(b.Stages, func(s schedule.Stage) bool { return s.Kind == schedule.StageSear })
	}},
	{"sear that nobody asked for any more", "sear", "asked", func(p *schedule.Plan) { p.Request.Dishes[0].Finish = "" }},
	{"oven without an oven", "burgers", "oven", func(p *schedule.Plan) { s := &loadOf(p, 0).Stages[0]; s.Place, s.Phase, s.PhaseTo = "oven", 0, 0 }},
	{"two loads of burgers at once", "burgers", "room", func(p *schedule.Plan) {
		b := p.Dishes[0].Batches
		b[0].Stages[0].From, b[0].Stages[0].To = b[1].Stages[0].From, b[1].Stages[0].To
	}},
	{"rider where the next fire is full", "overnight", "room", func(p *schedule.Plan) {
		b := loadOf(p, 1)
		for range 3 {
			b.Pieces = append(b.Pieces, b.Pieces...)
		}
	}},
	{"piece outside the grate", "burgers", "spots", func(p *schedule.Plan) { loadOf(p, 0).Pieces[0].Spots[0].XM = 0.4 }},
	{"piece on another", "burgers", "spots", func(p *schedule.Plan) { b := loadOf(p, 0); b.Pieces[0].Spots[0] = b.Pieces[1].Spots[0] }},
	{"piece without a place", "burgers", "spots", func(p *schedule.Plan) {
		loadOf(p, 0).Pieces[0].Spots = nil
		p.Findings = nil
	}},
	{"piece drawn smaller than it is", "burgers", "spots", func(p *schedule.Plan) { loadOf(p, 0).Pieces[0].Spots[0].LengthM /= 2 }},
	{"more than goes there", "two levels", "room", func(p *schedule.Plan) {
		for k := range loadOf(p, 0).Pieces {
			loadOf(p, 0).Pieces[k].Grate = 1
			loadOf(p, 1).Pieces[k].Grate = 1
		}
	}},
	{"tight and not said", "long brisket", "room", func(p *schedule.Plan) { p.Findings = nil }},
	{"standing where nobody asked for it", "raised", "pieces", func(p *schedule.Plan) { loadOf(p, 0).Pieces[0].Lies = "standing" }},
	{"flat where it is longer than the grate", "long brisket", "pieces", func(p *schedule.Plan) { loadOf(p, 0).Pieces[0].Lies = "" }},
	{"a grate that is not there", "two levels", "levels", func(p *schedule.Plan) { loadOf(p, 0).Pieces[0].Grate = 3 }},
	{"no grate of two", "two levels", "levels", func(p *schedule.Plan) { loadOf(p, 0).Pieces[0].Grate = 0 }},
	{"too thick for the raised grate", "raised", "levels", func(p *schedule.Plan) { // so thick that no lid closes over it
		p.Request.Dishes[0].Thickness = unit.FromInches(3.2)
		loadOf(p, 0).Pieces[0].Grate = 2
	}},
	{"raw over what comes off sooner", "two levels", "levels", func(p *schedule.Plan) {
		for k := range loadOf(p, 0).Pieces {
			loadOf(p, 0).Pieces[k].Grate = 2
		}
		for k := range loadOf(p, 1).Pieces {
			loadOf(p, 1).Pieces[k].Grate = 1
		}
		putOff(&p.Dishes[1].Batches[0].Stages[0].From, -240)
		for k := range p.Dishes[1].Batches[0].Stages {
			putOff(&p.Dishes[1].Batches[0].Stages[k].To, -240)
		}
	}},
	{"a third grate of two", "two levels", "zones", func(p *schedule.Plan) {
		p.Phases[0].Zones[0].Grates = append(p.Phases[0].Zones[0].Grates, p.Phases[0].Zones[0].Grates[0])
	}},
	{"rest cut short", "overnight", "rest", func(p *schedule.Plan) { putOff(&loadOf(p, 0).Stages[2].To, -20) }},
	{"off the heat too late to rest", "overnight", "rest", func(p *schedule.Plan) {
		b := loadOf(p, 0)
		b.Stages[1].To = p.ServeAt.Add(-5 * time.Minute) // the rest's own span stays
	}},
	{"no rest", "overnight", "rest", func(p *schedule.Plan) { b := loadOf(p, 1); b.Stages = b.Stages[:1] }},
	{"hold longer than its rule", "overnight", "hold", func(p *schedule.Plan) {
		for i := range p.Dishes[0].Holds {
			p.Dishes[0].Holds[i].LimitMinutes = 40
		}
	}},
	{"stands off the heat for long before its sear", "sear", "seared", func(p *schedule.Plan) {
		s := theStep(p, schedule.StepTakeOff)
		s.At = theStep(p, schedule.StepSear).At.Add(-40 * time.Minute)
		s.Window.Expected = s.At
	}},
	{"hold longer than the published clock", "sear", "hold", func(p *schedule.Plan) {
		for i := range p.Dishes[0].Holds {
			p.Dishes[0].Holds[i].LimitMinutes = 3000
		}
	}},
	{"hold that the request does not allow", "terrace", "hold", func(p *schedule.Plan) { p.Dishes[0].Holds[0].Method = schedule.HoldCounter }},
	{"less time over the heat than it takes", "burgers", "minutes", func(p *schedule.Plan) { putOff(&loadOf(p, 0).Stages[0].From, 6) }},
	{"take-off window of another cook", "overnight", "milestones", func(p *schedule.Plan) { shifted(&theMilestone(loadOf(p, 0), schedule.MilestoneTakeOff).Window, -60) }},
	{"milestone missing", "overnight", "milestones", func(p *schedule.Plan) { b := loadOf(p, 0); b.Milestones = b.Milestones[1:] }},
	{"wrap after the take-off", "overnight", "milestones", func(p *schedule.Plan) { shifted(&theMilestone(loadOf(p, 0), schedule.MilestoneWrap).Window, 600) }},
	{"curve that runs backward", "overnight", "curve", func(p *schedule.Plan) { slices.Reverse(loadOf(p, 0).Curve) }},
	{"curve of slow cooks above the likely one", "overnight", "curve", func(p *schedule.Plan) {
		for i := range loadOf(p, 0).Curve {
			loadOf(p, 0).Curve[i].LowC = loadOf(p, 0).Curve[i].CoreC + 4
		}
	}},
	{"curve of fast cooks below the likely one", "overnight", "curve", func(p *schedule.Plan) {
		for i := range loadOf(p, 0).Curve {
			loadOf(p, 0).Curve[i].HighC = loadOf(p, 0).Curve[i].CoreC - 4
		}
	}},
	{"chance better than the window", "overnight", "chance", func(p *schedule.Plan) { loadOf(p, 0).Chance = 0.99 }},
	{"all likelier than one", "overnight", "chance", func(p *schedule.Plan) { p.Chance.All = 0.99 }},
	{"before the earliest instant", "travel", "earliest", func(p *schedule.Plan) { putOff(&theStep(p, schedule.StepLayFire).At, -600) }},
	{"put on before the dish's earliest instant", "burgers", "earliest", func(p *schedule.Plan) {
		p.Request.Dishes[0].Earliest = &schedule.Clock{Time: clock.New(12, 55, 0, 0)}
	}},
	{"lit in quiet hours", "overnight", "quiet", func(p *schedule.Plan) { putOff(&theStep(p, schedule.StepLight).At, 360) }},
	{"wrapped in quiet hours", "overnight", "quiet", func(p *schedule.Plan) {
		b := loadOf(p, 0)
		putOff(&b.Stages[0].To, -90)
		putOff(&b.Stages[1].From, -90)
	}},
	{"quiet hours not listed", "overnight", "quiet", func(p *schedule.Plan) { p.Quiet = nil }},
	{"take-off likely in quiet hours", "overnight", "quiet-chance", func(p *schedule.Plan) {
		for i := range loadOf(p, 0).Stages[:2] {
			m := &loadOf(p, 0).Stages[i].Minutes
			m.Early, m.Expected, m.Late = m.Early/2.6, m.Expected/2.6, m.Late/2.6
		}
	}},
	{"two things at once", "burgers", "hands", func(p *schedule.Plan) {
		for i := range p.Steps {
			if p.Steps[i].Kind == schedule.StepPutOn {
				p.Steps[i].Minutes = 30
			}
		}
	}},
	{"steps in the wrong order", "burgers", "steps", func(p *schedule.Plan) { slices.Reverse(p.Steps) }},
	{"one id twice", "burgers", "steps", func(p *schedule.Plan) { p.Steps[1].ID = p.Steps[0].ID }},
	{"step of no kind", "burgers", "steps", func(p *schedule.Plan) { p.Steps[0].Kind = "dance" }},
	{"step without words", "burgers", "steps", func(p *schedule.Plan) { p.Steps[0].Text = " " }},
	{"step with a slip in its words", "burgers", "steps", func(p *schedule.Plan) { p.Steps[0].Text = "Light NaN briquettes." }},
	{"step of an unknown dish", "burgers", "steps", func(p *schedule.Plan) { theStep(p, schedule.StepPutOn).Dish = "ghost" }},
	{"step of an unknown batch", "burgers", "steps", func(p *schedule.Plan) { theStep(p, schedule.StepPutOn).Batch = 9 }},
	{"wrap that needs nobody", "overnight", "steps", func(p *schedule.Plan) { theStep(p, schedule.StepWrap).Attended = false }},
	{"done in a first plan", "burgers", "steps", func(p *schedule.Plan) { p.Steps[0].Done = true }},
	{"nobody serves", "burgers", "acts", func(p *schedule.Plan) {
		p.Steps = leavingOut(p.Steps, func(s schedule.Step) bool { return s.Kind == schedule.StepServe })
	}},
	{"nobody wraps", "overnight", "acts", func(p *schedule.Plan) {
		p.Steps = leavingOut(p.Steps, func(s schedule.Step) bool { return s.Kind == schedule.StepWrap })
	}},
	{"nobody adds fuel", "overnight", "acts", func(p *schedule.Plan) {
		p.Steps = leavingOut(p.Steps, func(s schedule.Step) bool { return s.Kind == schedule.StepRefuel })
	}},
	{"nobody lights the coals that are added", "thaw", "acts", func(p *schedule.Plan) {
		p.Steps = leavingOut(p.Steps, func(s schedule.Step) bool { return s.Kind == schedule.StepLight && s.At.After(p.Phases[0].From) })
	}},
	{"lit anew while it burns", "supper and lunch", "phases", func(p *schedule.Plan) { p.Phases[0].To = p.Phases[1].From }},
	{"lit anew too late", "supper and lunch", "phases", func(p *schedule.Plan) { putOff(&p.Phases[1].SetupFrom, 20) }},
	{"changed from a fire that is out", "supper and lunch", "acts", func(p *schedule.Plan) { p.Phases[1].Relit = false }},
	{"nobody shuts the first fire", "supper and lunch", "acts", func(p *schedule.Plan) {
		p.Steps = leavingOut(p.Steps, func(s schedule.Step) bool { return s.Kind == schedule.StepCloseDown && s.Phase == 1 })
	}},
	{"other dishes than asked", "burgers", "dishes", func(p *schedule.Plan) { p.Dishes = p.Dishes[:1] }},
	{"request that is refused", "burgers", "request", func(p *schedule.Plan) { p.Request.Grill.Diameter = unit.Length(0.01) }},
}
