package planner_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
)

// trouble is a day that goes wrong at five in the morning, as its cook noted it.
type trouble struct{ head, dishes, log, now string }

const (
	troubledKettle  = "grill: {kind: kettle, diameter: 26 in}\noven: {hold: 170 F}\nweather: {air: 82 F, night: 62 F, wind: 6 mph}\nguests: {adults: 14, children: 4}\n"
	troubledButt    = "  - {id: butt, name: Pork butt, cut: pork-butt, weight: 8 lb, level: 250 F, prep: []}\n"
	troubledBrisket = "  - {id: brisket, name: Brisket, cut: brisket, weight: 12 lb, level: 250 F, prep: []}\n"
	troubledBirds   = "  - {id: chickens, name: Chickens, cut: chicken-spatchcock, weight: 4.5 lb, count: 2, prep: []}\n"
)

// revised is the answer to it: judged, and free of contradictions.
func (c trouble) revised(t *testing.T) answer {
	t.Helper()
	p := plantest.Plan(t, c.head+troubledKettle+"dishes:\n"+c.dishes)
	q := answer{plantest.Revised(t, p, "time,dish,kind,value\n"+c.log, c.now)}
	plantest.Judge(t, q.Plan)
	q.lacks(t, "unsound")
	return q
}

func served(at string) string {
	return fmt.Sprintf("serve: {date: 2027-07-03, time: %q, tz: America/Chicago}\n", at)
}

// What is thrown away is neither wrapped nor kept from drying, and what is said of a hold
// that was read too cool begins with what to do.
func TestNothingIsDoneForWhatIsThrownAway(t *testing.T) {
	cold := trouble{served("15:00") + "overnight: true\n", troubledBrisket,
		"2027-07-02 21:40,,lit,\n2027-07-02 22:10,brisket,on,\n2027-07-02 22:50,,grate,255 F\n2027-07-03 00:30,brisket,core,118 F\n2027-07-03 00:30,,grate,250 F\n2027-07-03 05:02,,grate,96 F\n2027-07-03 05:03,brisket,core,121 F\n", "2027-07-03 05:05"}.revised(t)
	held := trouble{served("12:00"), troubledBrisket,
		"2027-07-02 08:30,,lit,\n2027-07-02 09:00,brisket,on,\n2027-07-02 13:30,brisket,core,162 F\n2027-07-02 13:40,brisket,wrapped,foil\n2027-07-02 20:10,brisket,core,203 F\n2027-07-02 20:15,brisket,pulled,\n2027-07-02 21:00,brisket,core,172 F\n2027-07-02 21:00,brisket,to-oven,170 F\n2027-07-03 05:00,brisket,outer,138 F\n", "2027-07-03 05:02"}.revised(t)
	for _, q := range []answer{cold, held} {
		q.unserved(t)
		q.lacks(t, schedule.CodeOvenDries)
		if s := q.first(schedule.StepWrap); s.Text != "" {
			t.Errorf("still a wrap: %s", s.Text)
		}
	}
	held.wants(t, "hold-over", "138 °F at 5:00 AM just under its surface", "nobody knows how long")
	if f, _ := plantest.Finding(held.Plan, "hold-over"); !strings.HasPrefix(f.Text, "Do not serve Brisket") {
		t.Errorf("what to do is not first: %s", f.Text)
	}
}

// Air of the outside is that of the hour: 66 F in a night of 62 F may be a probe that fell out.
func TestAProbeOutsideAtNight(t *testing.T) {
	q := trouble{served("14:00") + "overnight: true\n", troubledButt,
		"2027-07-02 21:20,,lit,\n2027-07-02 22:00,butt,on,\n2027-07-03 01:10,butt,core,131 F\n2027-07-03 01:10,,grate,248 F\n2027-07-03 05:00,butt,core,66 F\n2027-07-03 05:01,,grate,244 F\n", "2027-07-03 05:02"}.revised(t)
	q.wants(t, schedule.ReadingUnit, "Was 66 °C (151 °F) meant", "come out into the air")
	chances := map[string]float64{}
	for _, r := range q.Remedies { // what else the reading may be is priced with each of them
		chances[r.Code] = r.Chance
	}
	if !(chances["oven-finish"] > chances["hotter"] && chances["hotter"] > q.Chance.All) {
		t.Errorf("chance %.2f; of the choices %v", q.Chance.All, chances)
	}
}

// A fire that closes in a moment is not fed.
func TestNoFuelForAFireThatIsOver(t *testing.T) {
	q := trouble{served("13:00") + "quiet: []\n", troubledBrisket,
		"2027-07-02 14:40,,lit,\n2027-07-02 15:10,brisket,on,\n2027-07-02 19:20,brisket,core,161 F\n2027-07-02 19:30,brisket,wrapped,foil\n2027-07-02 22:30,brisket,core,184 F\n2027-07-02 22:30,,grate,262 F\n2027-07-03 02:00,brisket,core,204 F\n", "2027-07-03 02:03"}.revised(t)
	if s := q.first(schedule.StepRefuel); s.Text != "" && !strings.HasPrefix(s.Text, "Leave this out") {
		t.Errorf("%s at %v, off at %v", s.Text, s.At, q.first(schedule.StepTakeOff).At)
	}
}

// A wrap that waited for the end of the night goes by the core in the morning; a grate that
// nobody looked at for hours is taken as it is found.
func TestTheMorningTakesTheDayAsItIs(t *testing.T) {
	q := trouble{served("14:00") + "overnight: true\n", troubledButt,
		"2027-07-02 21:20,,lit,\n2027-07-02 22:00,butt,on,\n2027-07-02 22:50,,grate,252 F\n2027-07-02 22:50,butt,core,70 F\n2027-07-03 05:00,,wind,20 mph\n2027-07-03 05:00,,grate,312 F\n2027-07-03 05:02,butt,core,171 F\n", "2027-07-03 05:04"}.revised(t)
	if s := q.first(schedule.StepWrap); !s.At.Equal(*q.RevisedAt) || strings.Contains(s.Text, "will be near") {
		t.Errorf("at 171 °F it is wrapped at %v: %s", s.At, s.Text)
	}
	if f, ok := plantest.Finding(q.Plan, "grate-off-level"); !ok || f.Steer == nil || f.Steer.Do != "move-vents" {
		t.Errorf("a grate at 312 °F: %v", f)
	}
	two := trouble{served("14:00") + "quiet: []\n", troubledBrisket,
		"2027-07-02 18:20,,lit,\n2027-07-02 19:00,brisket,on,\n2027-07-02 23:00,brisket,core,132 F\n2027-07-02 23:00,,grate,250 F\n2027-07-03 05:00,brisket,core,127 F\n2027-07-03 05:03,brisket,core,164 F\n2027-07-03 05:05,,grate,249 F\n", "2027-07-03 05:06"}.revised(t)
	two.lacks(t, "grate-doubted")
	two.wants(t, schedule.ReadingOpen, "164 °F at 5:03 AM", "the probe sits elsewhere")
}

// A plan that rebuilds the fire does not offer that as a choice.
func TestWhatIsPlannedIsNoChoice(t *testing.T) {
	q := trouble{served("15:00") + "quiet: []\n", troubledButt,
		"2027-07-02 22:50,,lit,\n2027-07-02 23:30,butt,on,\n2027-07-03 01:00,,grate,251 F\n2027-07-03 03:00,,grate,240 F\n2027-07-03 03:00,butt,core,143 F\n2027-07-03 04:00,,grate,221 F\n2027-07-03 05:00,,grate,193 F\n2027-07-03 05:00,butt,core,158 F\n", "2027-07-03 05:02"}.revised(t)
	q.wants(t, "fire-died", "The plan assumes you rebuild it now")
	if slices.ContainsFunc(q.Remedies, func(r schedule.Remedy) bool { return r.Code == "rebuild" }) {
		t.Errorf("the plan is offered as a choice: %v", q.Remedies)
	}
}

// A fire that was not ready and not lit, as far as is told, when dinner moved waits with it.
func TestAnUnlitFireMovesWithDinner(t *testing.T) {
	q := trouble{served("18:00"), strings.Replace(troubledBrisket, "12 lb", "10 lb", 1) + troubledBirds,
		"2027-07-03 05:10,,lit,\n2027-07-03 05:45,brisket,on,\n2027-07-03 09:40,brisket,core,158 F\n2027-07-03 09:50,brisket,wrapped,foil\n2027-07-03 14:20,brisket,core,196 F\n2027-07-03 15:10,brisket,core,203 F\n2027-07-03 15:15,brisket,pulled,\n2027-07-03 15:20,brisket,boxed,\n2027-07-03 16:00,,serving-moved,20:00\n", "2027-07-03 16:01"}.revised(t)
	on, light := q.first(schedule.StepPutOn), q.first(schedule.StepLight)
	if light.At.IsZero() || on.At.Sub(light.At).Minutes() > 60 {
		t.Errorf("lit at %v for what goes on at %v", light.At, on.At)
	}
	if s := q.first(schedule.StepRefuel); !s.At.IsZero() && s.At.Before(on.At) {
		t.Errorf("an empty grill is fed: %s at %v", s.Text, s.At)
	}
}

// A piece that is measured and was never told to be on is asked after.
func TestWhenItWentOnIsAsked(t *testing.T) {
	q := trouble{served("16:00") + "overnight: true\n", troubledButt, "2027-07-03 05:00,butt,core,138 F\n2027-07-03 05:00,,grate,240 F\n", "2027-07-03 05:01"}.revised(t)
	q.wants(t, schedule.OnNotTold, "When did Pork butt go on?", "Log it")
}

// A lid that was off for long is time without heat, and the cause of what is read after it.
func TestALidThatWasOffIsNoDeadFire(t *testing.T) {
	q := trouble{served("14:00") + "quiet: []\n", troubledButt,
		"2027-07-02 21:20,,lit,\n2027-07-02 22:00,butt,on,\n2027-07-03 02:30,butt,core,144 F\n2027-07-03 02:30,,grate,251 F\n2027-07-03 03:10,,lid-opened,\n2027-07-03 04:58,,lid-closed,\n2027-07-03 04:58,butt,core,134 F\n2027-07-03 05:00,,grate,150 F\n", "2027-07-03 05:02"}.revised(t)
	q.wants(t, "fire-out", "off from 3:10 AM to 4:58 AM", "1 hr 35 min without heat") // 1 hr 36 min, as times are said
	q.lacks(t, "fire-died", "core-falling", schedule.ReadingOpen, schedule.LowHeat)
}

// A bird that stands still has no stall: it is measured at another place, and is not said to
// be done in ten minutes.
func TestABirdThatStandsStillIsMeasuredElsewhere(t *testing.T) {
	c := trouble{served("18:00"), troubledBirds,
		"2027-07-03 15:50,,lit,\n2027-07-03 16:20,chickens,on,\n2027-07-03 16:35,,grate,360 F\n2027-07-03 17:04,chickens,core,150 F\n2027-07-03 17:20,chickens,core,150 F\n2027-07-03 17:34,chickens,core,151 F\n2027-07-03 17:34,,grate,340 F\n", "2027-07-03 17:35"}
	stands := c.revised(t)
	stands.wants(t, schedule.Plateau, "Measure Chickens at other places", "no stall")
	c.log = strings.NewReplacer("17:04,chickens,core,150", "17:04,chickens,core,110", "17:20,chickens,core,150", "17:20,chickens,core,132").Replace(c.log)
	rises := c.revised(t)
	rises.lacks(t, schedule.Plateau)
	if a, b := plantest.TakeOff(t, stands.Plan, "chickens"), plantest.TakeOff(t, rises.Plan, "chickens"); a.Late.Sub(b.Late).Minutes() < 5 {
		t.Errorf("late edge %v where it stands, %v where it rises", a.Late, b.Late)
	}
}

// What comes off in the night and goes into the oven is looked at before sleep goes on, and on
// waking before anything else.
func TestTheOvenIsLookedAtInTheMiddleOfANight(t *testing.T) {
	p := plantest.Party(t, "../..")
	at := func(clock string) time.Time {
		out, err := time.ParseInLocation("2006-01-02 15:04", clock, p.ServeAt.Location())
		if err != nil {
			t.Fatal(err)
		}
		return out
	}
	log := []schedule.Entry{
		{At: at("2027-07-03 05:55"), Kind: schedule.LogAshCleared},
		{At: at("2027-07-03 05:55"), Dish: "brisket", Kind: schedule.LogBoxed},
		{At: at("2027-07-03 07:31"), Dish: "extra", Kind: schedule.LogDishAdded, Value: `{"cut": "sausage", "weight": "4 oz", "count": 6, "name": "Sausages"}`},
		{At: at("2027-07-03 07:34"), Dish: "chickens", Kind: schedule.LogColdest, C: 176},
		{At: at("2027-07-03 09:17"), Dish: "brisket", Kind: schedule.LogCore},
		{At: at("2027-07-03 09:39"), Kind: schedule.LogLidOpened},
		{At: at("2027-07-03 09:46"), Kind: schedule.LogGrate, C: 5},
	}
	q, err := planner.Revise(t.Context(), p, log, at("2027-07-04 00:24"))
	if err != nil {
		t.Fatal(err)
	}
	plantest.Judge(t, q)
	if looks := plantest.Steps(q, schedule.StepCheckOven); len(looks) == 0 {
		t.Errorf("nobody looks at the oven; off at %v", plantest.TakeOff(t, q, "brisket"))
	}
}
