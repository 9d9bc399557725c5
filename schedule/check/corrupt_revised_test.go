package check_test

import (
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plans"
)

// revisedLog is a day of the party with a slow brisket, wrapped late, and sausages added.
const revisedLog = `time,dish,kind,value
07:58,brisket,on,
09:30,brisket,core,95 F
11:40,brisket,core,142 F
11:45,brisket,wrapped,foil
12:30,,dish-added,"{""cut"": ""sausage"", ""weight"": ""4 oz"", ""count"": 6, ""name"": ""Sausages""}"
13:30,brisket,core,170 F
15:10,brisket,core,196 F
`

func stepOf(p *schedule.Plan, kind schedule.StepKind, dish string) *schedule.Step {
	i := slices.IndexFunc(p.Steps, func(s schedule.Step) bool { return s.Kind == kind && s.Dish == dish })
	return &p.Steps[i]
}

// moveStep moves a step and its window, and keeps the steps in order.
func moveStep(p *schedule.Plan, s *schedule.Step, minutes float64) {
	putOff(&s.At, minutes)
	shifted(&s.Window, minutes)
	slices.SortStableFunc(p.Steps, func(a, b schedule.Step) int { return a.At.Compare(b.At) })
}

// revisedCorruptions spoil a revised plan in one place each.
var revisedCorruptions = []corruption{
	{"put-on moved in the past", "revised", "past", func(p *schedule.Plan) { moveStep(p, stepOf(p, schedule.StepPutOn, "brisket"), 7) }},
	{"put-on and its stage moved in the past", "revised", "past", func(p *schedule.Plan) {
		moveStep(p, stepOf(p, schedule.StepPutOn, "brisket"), 7)
		putOff(&loadOf(p, 0).Stages[0].From, 7)
		shifted(&theMilestone(loadOf(p, 0), schedule.MilestoneOn).Window, 7)
	}},
	{"odds of what is thrown away", "revised", "odds", func(p *schedule.Plan) {
		f := schedule.NewFinding(schedule.OffUndone, "", "Do not serve Chickens.", "chickens")
		p.Findings = append(p.Findings, f)
	}},
	{"odds told of what is thrown away", "revised", "odds", func(p *schedule.Plan) {
		p.Findings = append(p.Findings, schedule.NewFinding(schedule.OffUndone, "", "Do not serve Chickens. Odds for 6:00 PM: 92%.", "chickens"))
		for i := range p.Dishes {
			if p.Dishes[i].ID == "chickens" {
				p.Dishes[i].Chance = 0
			}
		}
	}},
	{"done undone", "revised", "past", func(p *schedule.Plan) { stepOf(p, schedule.StepPutOn, "brisket").Done = false }},
	{"done before it is", "revised", "past", func(p *schedule.Plan) { stepOf(p, schedule.StepPutOn, "burgers").Done = true }},
	{"to do yesterday", "revised", "past", func(p *schedule.Plan) {
		s := stepOf(p, schedule.StepTakeOff, "chickens")
		moveStep(p, s, -s.At.Sub(*p.RevisedAt).Minutes()-30)
	}},
	{"caution dropped", "revised", "cautions", func(p *schedule.Plan) {
		p.Cautions = leavingOut(p.Cautions, func(c schedule.Caution) bool { return c.Code == "carbon-monoxide" })
	}},
	{"step under another id", "revised", "steps", func(p *schedule.Plan) {
		stepOf(p, schedule.StepPutOn, "burgers").ID = plans.StepID(p.ID, "ghost", 1, schedule.StepPutOn, 1)
	}},
	{"id of another plan", "revised", "steps", func(p *schedule.Plan) {
		s := stepOf(p, schedule.StepTakeOff, "chickens")
		s.ID = plans.StepID("another plan", s.Dish, s.Batch, s.Kind, 1)
	}},
	{"sausages on top of the burgers", "revised", "room", func(p *schedule.Plan) {
		added, there := &p.Dishes[3].Batches[0], p.Dishes[2].Batches[0].Stages[0]
		s := &added.Stages[0]
		s.From, s.To, s.Zone, s.Phase, s.PhaseTo, s.Direct = there.From, there.To, there.Zone, there.Phase, there.PhaseTo, there.Direct
	}},
	{"burgers over full though the brisket stands in the way", "revised", "room", func(p *schedule.Plan) {
		p.Findings = append(p.Findings, schedule.Finding{Code: "stands-in-the-way", Severity: schedule.Warning, Text: "The brisket stands in the way."})
		b := loadOf(p, 2)
		b.Pieces = append(b.Pieces, b.Pieces...)
	}},
	{"window early after late", "revised", "windows", func(p *schedule.Plan) {
		w := &stepOf(p, schedule.StepTakeOff, "brisket").Window
		w.Early, w.Late = w.Late.Add(time.Minute), w.Early
	}},
	{"paper where the log says foil", "revised", "asked", func(p *schedule.Plan) {
		for i := range loadOf(p, 0).Stages {
			if s := &loadOf(p, 0).Stages[i]; s.Kind == schedule.StageWrapped {
				s.With = schedule.WrapPaper
			}
		}
	}},
	{"shut down while it cooks", "revised", "acts", func(p *schedule.Plan) { moveStep(p, stepOf(p, schedule.StepCloseDown, ""), -15) }},
	{"cut up while it cooks", "revised", "order", func(p *schedule.Plan) { moveStep(p, stepOf(p, schedule.StepSlice, "chickens"), -60) }},
	{"rested before it is off", "revised", "order", func(p *schedule.Plan) { moveStep(p, stepOf(p, schedule.StepRest, "chickens"), -45) }},
	{"expected off after it is served", "revised", "order", func(p *schedule.Plan) {
		b := loadOf(p, 1)
		for _, kind := range []schedule.MilestoneKind{schedule.MilestoneTakeOff, schedule.MilestoneRested} {
			shifted(&theMilestone(b, kind).Window, 90)
		}
		moveStep(p, stepOf(p, schedule.StepTakeOff, "chickens"), 90)
	}},
	{"less time than it is expected to take", "revised", "minutes", func(p *schedule.Plan) {
		for _, kind := range []schedule.MilestoneKind{schedule.MilestoneTakeOff, schedule.MilestoneRested} {
			shifted(&theMilestone(loadOf(p, 1), kind).Window, 45)
		}
	}},
	{"a look at a fire with nothing over it", "revised", "tended", func(p *schedule.Plan) {
		s := *stepOf(p, schedule.StepCheckFire, "")
		s.ID, s.Done, s.Phase, s.At = plans.StepID(p.ID, "", 1, schedule.StepCheckFire, 90), false, len(p.Phases), p.Phases[len(p.Phases)-1].To.Add(20*time.Minute)
		s.Window = plans.FixedWindow(s.At)
		p.Steps = append(p.Steps, s)
	}},
	{"one oven at two heats", "revised", "one-oven", func(p *schedule.Plan) {
		a, b := &loadOf(p, 1).Stages[0], &loadOf(p, 2).Stages[0]
		for _, s := range []*schedule.Stage{a, b} {
			s.Place, s.From, s.To = schedule.PlaceOven, p.ServeAt.Add(-2*time.Hour), p.ServeAt.Add(-time.Hour)
		}
		a.LevelC, b.LevelC = 135, 163
	}},
	{"advice for the past", "revised", "remedies", func(p *schedule.Plan) {
		p.Remedies = append(p.Remedies, schedule.Remedy{Code: "later", Text: "Serve it before now.", Edits: []schedule.Edit{{Path: "log", Value: "{}"}}, ServeAt: p.RevisedAt.Add(-time.Hour)})
	}},
	{"ordered into the oven and planned on the grate", "revised", "orders", func(p *schedule.Plan) {
		s := *stepOf(p, schedule.StepTakeOff, "chickens")
		s.Kind, s.ID, s.GrateC = schedule.StepIndoors, plans.StepID(p.ID, s.Dish, s.Batch, schedule.StepIndoors, 1), 163
		p.Steps = slices.Insert(p.Steps, slices.IndexFunc(p.Steps, func(o schedule.Step) bool { return !o.At.Before(s.At) }), s)
	}},
	{"into the cooler after it is cut up", "revised", "order", func(p *schedule.Plan) {
		s := *stepOf(p, schedule.StepSlice, "brisket")
		s.Kind, s.ID = schedule.StepBox, plans.StepID(p.ID, s.Dish, s.Batch, schedule.StepBox, 1)
		i := slices.IndexFunc(p.Steps, func(o schedule.Step) bool { return o.Kind == schedule.StepSlice && o.Dish == s.Dish })
		p.Steps = slices.Insert(p.Steps, i+1, s)
	}},
	{"fed in a storm", "revised", "storm", func(p *schedule.Plan) {
		p.Log = append(p.Log, schedule.Entry{At: *p.RevisedAt, Kind: schedule.LogWind, Value: "24 mph"})
		for i := range p.Steps {
			if s := &p.Steps[i]; s.Kind == schedule.StepLight || s.Kind == schedule.StepRefuel || s.Kind == schedule.StepChangeFire {
				s.Text = "Light a chimney of coals, and add them."
			}
		}
	}},
	{"undone and promised", "revised", "undone", func(p *schedule.Plan) {
		s := stepOf(p, schedule.StepTakeOff, "chickens")
		s.Done = true
		p.Log = append(p.Log, schedule.Entry{At: s.At, Dish: "chickens", Kind: schedule.LogCore, C: 62}, schedule.Entry{At: s.At, Dish: "chickens", Kind: schedule.LogPulled})
	}},
	{"put away after hours of which nothing is told", "revised", "kept", func(p *schedule.Plan) {
		off, in := p.RevisedAt.Add(-150*time.Minute), p.RevisedAt.Add(-time.Minute)
		p.Log = append(p.Log, schedule.Entry{At: off, Dish: "brisket", Kind: schedule.LogCore, C: 95},
			schedule.Entry{At: off, Dish: "brisket", Kind: schedule.LogPulled}, schedule.Entry{At: in, Dish: "brisket", Kind: schedule.LogToOven, C: 77})
	}},
	{"off for hours, and not asked after", "revised", "kept", func(p *schedule.Plan) {
		p.Log = append(p.Log, schedule.Entry{At: p.RevisedAt.Add(-150 * time.Minute), Dish: "brisket", Kind: schedule.LogPulled})
	}},
	{"chance better than its window", "revised", "chance", func(p *schedule.Plan) { loadOf(p, 2).Chance = 0.999; p.Dishes[2].Chance = 0.999 }},
	{"chickens off and on the table that nobody read", "revised", "shown", func(p *schedule.Plan) {
		p.Log = append(p.Log, schedule.Entry{At: *p.RevisedAt, Dish: "chickens", Kind: schedule.LogPulled})
		loadOf(p, 1).Stages[0].From = p.RevisedAt.Add(-time.Hour)
	}},
	{"the coldest place of chickens forgotten for a warmer one", "revised", "shown", func(p *schedule.Plan) {
		at := func(back float64) time.Time { return p.RevisedAt.Add(-time.Duration(back) * time.Minute) }
		loadOf(p, 1).Stages[0].From = at(60)
		p.Log = append(p.Log, schedule.Entry{At: at(9), Dish: "chickens", Kind: schedule.LogColdest, C: 66},
			schedule.Entry{At: at(4), Dish: "chickens", Kind: schedule.LogCore, C: 80}, schedule.Entry{At: at(1), Dish: "chickens", Kind: schedule.LogPulled})
	}},
	{"chickens taken as done over a fire that was out", "revised", "shown", func(p *schedule.Plan) {
		loadOf(p, 1).Stages[0].From = p.RevisedAt.Add(-time.Hour)
		p.Log = append(p.Log, schedule.Entry{At: p.RevisedAt.Add(-30 * time.Minute), Kind: schedule.LogFireOut})
		s := stepOf(p, schedule.StepTakeOff, "chickens")
		s.Done, s.At = true, *p.RevisedAt
	}},
}
