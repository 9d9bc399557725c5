package revise_test

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// minutesBefore a feed is due the plan is asked.
const minutesBefore = 1

// fedWithin are the feeds that a plan orders within so many minutes of now.
func fedWithin(p schedule.Plan, minutes float64) []string {
	var out []string
	for _, s := range p.Steps {
		if in := s.At.Sub(*p.RevisedAt).Minutes(); s.Kind == schedule.StepRefuel && !s.Done && in <= minutes && !strings.HasPrefix(s.Text, "Leave this out") {
			out = append(out, s.Text)
		}
	}
	return out
}

// A feed that is due waits while the grate is above its level or rises to it; of a grate that sinks it gives air and lit
// coals, no unlit ones; at its level it stays.
func TestAFeedThatIsDueGoesByTheGrate(t *testing.T) {
	day := plantest.Day(t, plantest.ReadFile(t, "../../testdata/logs/brisket-alone.yaml"))
	i := 0
	for i < len(day.Steps) && (day.Steps[i].Kind != schedule.StepRefuel || !strings.Contains(day.Steps[i].Text, "unlit")) {
		i++
	}
	if i == len(day.Steps) {
		t.Fatal("the day feeds no unlit coals: it tests nothing")
	}
	due := day.Steps[i].At
	stamp := func(before int) string {
		return due.Add(-time.Duration(before) * time.Minute).Format("2006-01-02T15:04:05Z07:00")
	}
	for _, c := range []struct {
		name, was, is string
		orders        bool
		holds         string
	}{
		{"too hot", "290 F", "310 F", false, ""},
		{"rising to it", "225 F", "268 F", false, ""},
		{"at its level", "276 F", "274 F", true, "unlit"},
		{"sinking", "255 F", "232 F", true, ""},
	} {
		log := "time,dish,kind,value\n" + stamp(300) + ",,vents,\"top 1/3, bottom 1/3\"\n" + stamp(240) + ",brisket,on,\n" + stamp(40) + ",,grate," + c.was + "\n" + stamp(5) + ",,grate," + c.is + "\n"
		p := plantest.Revised(t, day, log, due.Add(-minutesBefore*time.Minute).Format("2006-01-02 15:04"))
		fed := fedWithin(p, 45)
		text := strings.Join(fed, "\n")
		if !c.orders && len(fed) > 0 || c.orders && len(fed) > 1 || c.holds != "" && !strings.Contains(text, c.holds) || c.name == "sinking" && strings.Contains(text, "Add ") {
			t.Errorf("%s: %q", c.name, fed)
		}
	}
}

// A feed and the steps before a sleep that nobody logged stay until people sleep; the hour at which the fire is down is told
// as that of a fed one.
func TestWhatComesBeforeASleepStaysUntilThen(t *testing.T) {
	day := plantest.Day(t, "format: 1\nserve: {date: 2027-11-13, time: \"13:00\", tz: America/New_York}\ngrill: kettle 22 in\novernight: true\noven: {hold: 170 F}\nweather: {air: 52 F, night: 38 F, wind: 5 mph}\ndishes:\n  - {cut: pork-butt, weight: 8 lb, prep: [injected]}\n")
	log := "time,dish,kind,value\n2027-11-12 20:00,,lit,\n2027-11-12 20:20,,lit-coals,12\n2027-11-12 20:20,,unlit-coals,100\n2027-11-12 20:45,pork-butt,on,\n2027-11-12 22:30,,grate,241 F\n"
	sees := func(log, now string) (sleep, fed bool, p schedule.Plan) {
		p = plantest.Revised(t, day, log, now)
		for _, s := range p.Steps {
			sleep = sleep || s.Kind == schedule.StepBeforeSleep && !s.Done
		}
		return sleep, len(fedWithin(p, 30)) > 0, p
	}
	if sleep, fed, p := sees(log, "2027-11-12 22:50"); !sleep || !fed || !slices.ContainsFunc(p.Findings, func(f schedule.Finding) bool { return strings.Contains(f.Text, "no feed is logged") }) {
		t.Errorf("10 min before sleep: before sleep %t, feed %t, %+v", sleep, fed, p.Findings)
	}
	if sleep, fed, _ := sees(log, "2027-11-12 23:30"); sleep || fed {
		t.Errorf("asleep: before sleep %t, feed %t", sleep, fed)
	}
	if _, fed, _ := sees(log+"2027-11-12 22:31,,unlit-coals,30\n", "2027-11-12 22:50"); fed {
		t.Error("fed by logged coals, and told to feed again")
	}
}

// A feed whose hour has passed is not done by that: it is asked for until coals are logged, or the fire lived on for long, and so is a
// look at the grate where nobody read it for two hours.
func TestAMissedFeedIsAskedFor(t *testing.T) {
	day := plantest.Day(t, "format: 1\nserve: {date: 2027-01-16, time: \"18:00\", tz: America/Chicago}\ngrill: kettle 22 in\nweather: {air: 22 F}\noven: yes\ndishes:\n  - {cut: chuck-roast, weight: 6 lb}\n")
	feed := slices.IndexFunc(day.Steps, func(s schedule.Step) bool { return s.Kind == schedule.StepRefuel })
	if feed < 0 {
		t.Fatal("the day is not fed: it tests nothing")
	}
	due := day.Steps[feed].At
	stamp := func(minutes int) string {
		return due.Add(time.Duration(minutes) * time.Minute).Format("2006-01-02T15:04:05Z07:00")
	}
	log := "time,dish,kind,value\n" + stamp(-362) + ",,lit,\n" + stamp(-330) + ",chuck-roast,on,\n" + stamp(-210) + ",,grate,279 F\n" + stamp(-90) + ",,grate,291 F\n" + stamp(-90) + ",chuck-roast,core,118 F\n"
	for _, c := range []struct {
		name, more  string
		after       int
		feeds, look bool
	}{
		{"a quarter of an hour late", "", 15, true, false},
		{"an hour late", "", 60, true, true},
		{"logged", stamp(5) + ",,unlit-coals,40\n", 60, false, true},
		{"refuelled", stamp(5) + ",,refuelled,\n", 20, false, false},
		{"read at its level long after", stamp(70) + ",,grate,272 F\n", 75, false, false},
		{"sunk", stamp(40) + ",,grate,242 F\n", 45, true, false},
	} {
		p := plantest.Revised(t, day, log+c.more, due.Add(time.Duration(c.after)*time.Minute).Format("2006-01-02 15:04"))
		fed := false
		for _, s := range p.Steps {
			fed = fed || s.Kind == schedule.StepRefuel && !s.Done && s.At.Sub(*p.RevisedAt) <= time.Minute
		}
		look := slices.ContainsFunc(p.Steps, func(s schedule.Step) bool {
			return s.Kind == schedule.StepCheckFire && !s.Done && s.At.Equal(*p.RevisedAt)
		})
		if fed != c.feeds || look != c.look {
			t.Errorf("%s: feed %t, look %t", c.name, fed, look)
		}
	}
	counts := []int{}
	for _, after := range []int{1, 60, 120, 180} { // and the later it is, the less is left to burn
		p := plantest.Revised(t, day, log, due.Add(time.Duration(after)*time.Minute).Format("2006-01-02 15:04"))
		for _, text := range fedWithin(p, 1) {
			n, _ := strconv.Atoi(regexp.MustCompile(`\d+`).FindString(text))
			counts = append(counts, n)
		}
	}
	if len(counts) < 3 || !slices.IsSortedFunc(counts, func(a, b int) int { return b - a }) || counts[len(counts)-1] >= counts[0] {
		t.Errorf("a feed that is put off: %v coals", counts)
	}
}
