package check_test

import (
	"slices"
	"strings"
	"time"

	"github.com/rickb777/date/clock"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/unit"
)

// untold takes a sentence out of what is seen to before people sleep beside a fire.
func untold(sentence string) func(*schedule.Plan) {
	return func(p *schedule.Plan) {
		s := theStep(p, schedule.StepBeforeSleep)
		sentence := unit.System(p.Units).Own(sentence)
		if !strings.Contains(s.Text, sentence) {
			panic("nobody is told " + sentence)
		}
		s.Text = strings.Replace(s.Text, sentence, "", 1)
	}
}

// nightCorruptions spoil how the night is spent. In the brisket for noon the fire burns
// unwatched from 23:00 to 05:00.
var nightCorruptions = []corruption{
	{"nothing said of the night", "noon", "night", func(p *schedule.Plan) { p.Night = nil }},
	{"a fire in the night, and the plan says a day", "noon", "night", func(p *schedule.Plan) { p.Night.Way = schedule.NightDay }},
	{"a night by the fire that has none", "burgers", "night", func(p *schedule.Plan) { p.Night.Way = schedule.NightFire }},
	{"a night of its own making", "burgers", "night", func(p *schedule.Plan) { p.Night.Quiet[0].From = clock.New(23, 30, 0, 0) }},
	{"an early start that is none", "burgers", "night", func(p *schedule.Plan) { p.Night.Way = schedule.NightEarly }},
	{"awake in quiet hours", "burgers", "night", func(p *schedule.Plan) { p.Night.Way = schedule.NightAwake }},
	{"no way to spend a night", "burgers", "night", func(p *schedule.Plan) { p.Night.Way = "dancing" }},
	{"an oven that holds nothing overnight", "burgers", "night", func(p *schedule.Plan) { p.Night.Way = schedule.NightOven }},
	{"quiet hours that nobody asked for", "overnight", "night", func(p *schedule.Plan) { p.Night.Quiet[0].To = clock.New(4, 0, 0, 0) }},
	{"an unwatched fire that no finding tells of", "noon", "night", func(p *schedule.Plan) {
		p.Findings = leavingOut(p.Findings, func(f schedule.Finding) bool { return f.Code == schedule.CodeNightFire })
	}},

	// What is seen to before sleep, one thing a row.
	{"not 10 ft clear", "noon", "unwatched", untold("10 ft (3 m) clear all round: nothing that burns, no wall, no window.")},
	{"nothing of the wind", "noon", "unwatched", untold("Wind under 10 mph (16 km/h) in the forecast, all night.")},
	{"nothing of a burn ban", "noon", "unwatched", untold("No burn ban.")},
	{"no alarms on the grate", "noon", "unwatched", untold("Grate alarms at 200 and 325 °F (93 and 163 °C).")},
	{"no alarm on the core", "noon", "unwatched", untold("A core alarm in the meat.")},
	{"no carbon monoxide alarm", "noon", "unwatched", untold("A carbon monoxide alarm works in the house.")},
	{"vents touched at the last moment", "noon", "unwatched", untold("No vent was moved in the last 30 min.")},
	{"nothing seen to before sleep", "noon", "unwatched", func(p *schedule.Plan) {
		p.Steps = leavingOut(p.Steps, func(s schedule.Step) bool { return s.Kind == schedule.StepBeforeSleep })
	}},
	{"seen to an hour before sleep", "noon", "unwatched", func(p *schedule.Plan) { putOff(&theStep(p, schedule.StepBeforeSleep).At, -60) }},
	{"vents set just before sleep", "noon", "unwatched", func(p *schedule.Plan) {
		theStep(p, schedule.StepSetVents).At = p.Quiet[0].From.Add(-10 * time.Minute)
	}},
	{"fed forty minutes before sleep", "noon", "unwatched", func(p *schedule.Plan) {
		s := *theStep(p, schedule.StepSetVents)
		s.Kind, s.At = schedule.StepRefuel, p.Quiet[0].From.Add(-40*time.Minute)
		p.Steps = append(p.Steps, s)
	}},
	{"put on twenty minutes before sleep", "noon", "unwatched", func(p *schedule.Plan) {
		theStep(p, schedule.StepPutOn).At = p.Quiet[0].From.Add(-20 * time.Minute)
	}},
	{"nobody looks on waking", "noon", "unwatched", func(p *schedule.Plan) {
		p.Steps = leavingOut(p.Steps, func(s schedule.Step) bool { return s.Kind == schedule.StepWaking })
	}},
	{"the core first on waking", "noon", "unwatched", func(p *schedule.Plan) {
		theStep(p, schedule.StepWaking).Text = "Read the core first, then the grate."
	}},
	{"something else first on waking", "noon", "unwatched", func(p *schedule.Plan) {
		i := slices.IndexFunc(p.Steps, func(s schedule.Step) bool { return s.Kind == schedule.StepWaking })
		other := p.Steps[i]
		other.Kind = schedule.StepLook
		p.Steps = slices.Insert(p.Steps, i, other)
	}},
	{"an unwatched fire at 325 F", "noon", "unwatched", func(p *schedule.Plan) { p.Phases[0].LevelC = unit.FToC(325) }},
	{"an unwatched fire in 12 mph of wind", "noon", "unwatched", func(p *schedule.Plan) { p.Request.Weather.Wind = 12 * 0.44704 }},
	{"wind from midnight on", "noon", "unwatched", func(p *schedule.Plan) {
		wind := unit.Speed(12 * 0.44704)
		on := p.Request.Serve.Date
		p.Request.Weather.Hours = []schedule.WeatherFrom{{From: schedule.Clock{Date: &on, Time: clock.New(0, 0, 0, 0)}, Wind: &wind}}
	}},

	// What is done before the day.
	{"thawed too late in the refrigerator", "thaw", "thaw", func(p *schedule.Plan) {
		s := theStep(p, schedule.StepThaw)
		s.Text = "Turkey: " + safety.ThawInRefrigerator(safety.Poultry, 12*0.45359237).Sentence
	}},
	{"water that nobody changes", "thaw", "thaw", func(p *schedule.Plan) {
		s := theStep(p, schedule.StepThaw)
		s.Text = strings.Replace(s.Text, "Change the water every 30 min, then cook it at once.", "", 1)
	}},
	{"in cold water overnight", "thaw", "thaw", func(p *schedule.Plan) {
		from := clock.New(6, 0, 0, 0)
		p.Request.Quiet = []schedule.Quiet{{From: from, To: clock.New(8, 0, 0, 0)}}
	}},
	{"finished in cold water too late", "thaw in both", "thaw", func(p *schedule.Plan) { putOff(&lastOf(p, schedule.StepThaw).At, 120) }},
	{"laid to thaw for a part, and never finished", "thaw in both", "thaw", func(p *schedule.Plan) {
		lastOf(p, schedule.StepThaw).Kind = schedule.StepTakeOut
	}},
	{"laid to thaw later, and no longer in the water", "thaw in both", "thaw", func(p *schedule.Plan) { putOff(&theStep(p, schedule.StepThaw).At, 12*60) }},
	{"thawed in water long before it cooks", "thaw", "thaw", func(p *schedule.Plan) { putOff(&theStep(p, schedule.StepThaw).At, -180) }},
	{"chilled while somebody sleeps", "ahead", "chilling", func(p *schedule.Plan) { putOff(&p.Ahead.ChillAt, 150) }},
	{"in the refrigerator in the evening, off in the afternoon", "ahead", "chilling", func(p *schedule.Plan) {
		theStep(p.Ahead.Plan, schedule.StepChill).At = theStep(p.Ahead.Plan, schedule.StepTakeOff).At.Add(125 * time.Minute)
	}},
	{"never in the refrigerator", "ahead", "chilling", func(p *schedule.Plan) {
		theStep(p.Ahead.Plan, schedule.StepChill).Kind = schedule.StepRest
	}},
	{"cut up three hours after it is off", "ahead", "chilling", func(p *schedule.Plan) {
		theStep(p.Ahead.Plan, schedule.StepSlice).At = theStep(p.Ahead.Plan, schedule.StepTakeOff).At.Add(3 * time.Hour)
	}},
}
