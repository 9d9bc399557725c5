package planner_test

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"runtime/debug"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/check"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
)

// drawRoughLog is a log as nobody should keep one: entries of any kind about any
// dish at any time, twice, out of order, contradicting each other.
func drawRoughLog(rt *rapid.T, p schedule.Plan, now time.Time) []schedule.Entry {
	values := map[schedule.EntryKind][]string{
		schedule.LogWrapped:      {"", schedule.WrapFoil, schedule.WrapPaper, schedule.WrapNone},
		schedule.LogServingMoved: {p.ServeAt.Add(2 * time.Hour).Format(time.RFC3339), p.ServeAt.Add(-time.Hour).Format(time.RFC3339)},
		schedule.LogVents:        {"", "top 1/4, bottom 1/2", "top 1/16", "bottom 0", "top 1, bottom 1"},
		schedule.LogLitCoals:     {"", "12", "1000"},
		schedule.LogUnlitCoals:   {"", "30"},
		schedule.LogWind:         {"", "0 m/s", "12 m/s"},
		schedule.LogDishAdded:    {`{"cut": "sausage", "weight": "4 oz", "count": 6, "name": "Sausages"}`, `{"cut": "burger", "weight": "6 oz"}`},
	}
	var log []schedule.Entry
	var ids []string
	for _, d := range p.Dishes {
		ids = append(ids, d.ID)
	}
	at := p.Steps[0].At
	for range rapid.IntRange(1, 25).Draw(rt, "entries") {
		at = at.Add(time.Duration(rapid.IntRange(-20, 120).Draw(rt, "later")) * time.Minute)
		if at.After(now) {
			at = now
		}
		form := rapid.SampledFrom(schedule.EntryForms()).Draw(rt, "kind")
		e := schedule.Entry{At: at, Kind: form.Kind}
		if form.OfDish {
			e.Dish = rapid.SampledFrom(ids).Draw(rt, "dish")
		}
		switch form.Carries {
		case schedule.CarriesTemperature, schedule.CarriesMaybeTemperature:
			e.C = rapid.Float64Range(-5, 260).Draw(rt, "temperature")
		}
		if on := plantest.FirstAt(p, schedule.StepPutOn, e.Dish).Add(-5 * time.Minute); e.Kind == schedule.LogOn && e.At.Before(on) {
			continue // on long before its fire: what a plan makes of that is not settled
		}
		if all := values[e.Kind]; all != nil {
			e.Value = rapid.SampledFrom(all).Draw(rt, "value")
		}
		if e.Kind == schedule.LogDishAdded {
			e.Dish = rapid.SampledFrom([]string{"extra", "more"}).Draw(rt, "id")
		}
		log = append(log, e)
		if rapid.IntRange(0, 9).Draw(rt, "twice") == 0 {
			log = append(log, e)
		}
	}
	return log
}

// Whatever the log says, there is a plan or an error that says what is wrong: never
// a panic, a step moved in the past or a caution dropped, and every plan passes Check.
// Lines in another order, and each written twice, change no byte of it.
func TestRoughLogs(t *testing.T) {
	setFlag(t, "rapid.checks", fmt.Sprint(roughChecks()))
	if flag.Lookup("rapid.seed").Value.String() == "0" {
		setFlag(t, "rapid.seed", "20270703")
	}
	p := plantest.Party(t, "../..")
	count := 0
	rapid.Check(t, func(rt *rapid.T) {
		now := p.Phases[0].From.Add(time.Duration(rapid.IntRange(-300, 3000).Draw(rt, "now")) * time.Minute)
		log := drawRoughLog(rt, p, now)
		count++
		for _, fault := range roughFaults(t.Context(), p, log, now, *parties > 200 || count%5 == 0) { // one that stopped here would hide the next
			t.Errorf("log %d, at %s: %s, of\n%s", count, now.Format(time.RFC3339), fault, asWritten(log))
		}
	})
	t.Logf("%d logs", count)
}

// roughFaults is what is wrong with what a log comes to an hour before now, and then now; and,
// if asked, whether that is something else than the log at once comes to, with its lines turned
// round and each of them twice.
func roughFaults(ctx context.Context, p schedule.Plan, log []schedule.Entry, now time.Time, turned bool) (faults []string) {
	defer func() {
		if r := recover(); r != nil {
			faults = append(faults, fmt.Sprintf("panic: %v %s", r, debug.Stack()))
		}
	}()
	before := slices.DeleteFunc(slices.Clone(log), func(e schedule.Entry) bool { return e.At.After(now.Add(-time.Hour)) })
	q, err := planner.Revise(ctx, p, before, now.Add(-time.Hour))
	if err != nil {
		return unsaid(err)
	}
	faults = unsound(q)
	next, err := planner.Revise(ctx, q, log, now)
	if err != nil {
		return append(faults, unsaid(err)...)
	}
	if turned {
		faults = append(faults, orderFaults(ctx, p, log, next)...)
	}
	return append(append(faults, lostOfThePast(q, next)...), unsound(next)...)
}

// orderFaults is whether a log at once, with its lines turned round and each of them twice,
// comes to something else than a revision.
func orderFaults(ctx context.Context, p schedule.Plan, log []schedule.Entry, want schedule.Plan) []string {
	turned := slices.Concat(log, log)
	slices.Reverse(turned)
	got, err := planner.Revise(ctx, p, turned, *want.RevisedAt)
	if err != nil {
		return []string{"an error with its lines turned round: " + err.Error()}
	}
	a, errA := json.Marshal(want)
	b, errB := json.Marshal(got)
	if errA != nil || errB != nil || !bytes.Equal(a, b) {
		return []string{fmt.Sprintf("other bytes with its lines twice and turned round: %v %v", errA, errB)}
	}
	return nil
}

// unsound is what the judge says of a revision, and its orders that do not go together.
func unsound(q schedule.Plan) (faults []string) {
	for _, f := range check.Plan(q) {
		faults = append(faults, fmt.Sprintf("unsound at %s: %s", q.RevisedAt.Format("15:04"), f))
	}
	for _, two := range plantest.Contradictions(q) {
		faults = append(faults, fmt.Sprintf("two orders at %s: %s", q.RevisedAt.Format("15:04"), two))
	}
	return faults
}

// unsaid is an error that does not say what of the log would be right.
func unsaid(err error) []string {
	var bad *schedule.InputError
	if errors.As(err, &bad) && len(bad.Faults) > 0 && strings.TrimSpace(bad.Faults[0].Sentence) != "" {
		return nil
	}
	return []string{"error: " + err.Error()}
}

// asWritten is a log line by line, as it was drawn.
func asWritten(log []schedule.Entry) string {
	var b strings.Builder
	for _, e := range log {
		fmt.Fprintf(&b, "%s,%s,%s,%v,%s\n", e.At.Format(time.RFC3339), e.Dish, e.Kind, e.C, e.Value)
	}
	return b.String()
}

// roughChecks are few in the gate and many where more are asked for.
func roughChecks() int {
	if testing.Short() {
		return 10
	}
	return max(*parties/10, 50)
}

// Logs that drew a fault once, each of a kind and as short as it gets.
func TestLogsThatDrewFaults(t *testing.T) {
	p := plantest.Party(t, "../..")
	for _, c := range []struct{ name, log, now string }{
		{"a meal before the only dish that was read was on", "06:13,chickens,coldest,32 F\n06:26,burgers,dish-cancelled,\n06:44,,served,\n", "03 06:46"},
		{"served once more, and on in between", "07:24,,served,\n08:29,brisket,on,\n10:23,,served,\n", "03 15:24"},
		{"served long before it was to go on, and nothing since", "09:44,chickens,coldest,24 F\n10:20,,served,\n", "05 06:22"},
		{"off ten minutes after it went on, and read raw", "06:56,brisket,counter,\n06:56,brisket,core,38.4 C\n", "03 06:56"},
		{"a fire that went out three minutes after it was lit", "07:53,,lit,\n07:56,,fire-out,\n", "05 08:46"},
		{"a fire that was never there, an hour after dinner", "06:41,,fire-out,\n", "03 19:58"},
		{"a fire that went out in the morning, and dinner is past", "10:44,,fire-out,\n", "03 19:12"},
		{"served, and what is left stands too long", "07:21,,served,\n10:28,brisket,counter,\n", "03 13:16"},
		{"a meal ten hours before it was to be", "08:02,,served,\n", "03 17:54"},
		{"on the counter, and wrapped an hour later", "09:58,brisket,counter,\n11:16,brisket,wrapped,foil\n", "05 02:24"},
		{"all that is left of the menu is eaten before the next fire", "06:06,burgers,dish-cancelled,\n06:10,chickens,dish-cancelled,\n07:26,,served,\n", "04 13:22"},
		{"still frozen, and the rest waits in the oven all night", "07:57,brisket,core,32 F\n", "04 03:45"},
		{"off four hours before the first look", "08:24,brisket,pulled,\n", "03 11:50"},
		{"lit, a cold gauge, and dinner in the small hours", "06:26,,lit,\n07:06,,gauge,33 F\n", "04 09:49"},
		{"to go on this very minute over a dead fire", "09:13,,fire-out,\n", "03 17:32"},
		{"no coals, in a storm", "05:50,,wind,12 m/s\n07:12,,gauge,32 F\n07:59,,no-fuel,\n", "03 20:41"},
		{"a feed that nobody logged, and a night since", "14:08,,gauge,35 F\n", "04 05:52"},
		{"a feed of a fire that was over, and a dish added after it", "05:34,,serving-moved,17:00\n06:29,,dish-added,\"{\"\"cut\"\": \"\"burger\"\", \"\"weight\"\": \"\"6 oz\"\"}\"\n", "03 22:28"},
		{"a cold grate, read two hours before, and looks since", "09:25,,grate,28 F\n", "03 11:47"},
		{"one dish thrown away, the other measured first", "06:09,burgers,dish-cancelled,\n07:12,brisket,chilled,\n08:44,,grate,32 F\n", "03 23:22"},
		{"a fire that went out before it was ready, and the next made of it all the same", "06:25,,fire-out,\n10:07,brisket,boxed,\n", "03 16:04"},
		{"cut up for a meal that is put off once more", "07:03,,gauge,33 F\n10:58,brisket,counter,\n11:05,chickens,counter,\n", "04 05:26"},
		{"called off before a late fire, and wrapped by the hour", "06:19,brisket,dish-cancelled,\n07:17,,lit,\n", "03 11:53"},
		{"all but what was added came off hours after dinner", "06:08,,dish-added,\"{\"\"cut\"\": \"\"sausage\"\", \"\"weight\"\": \"\"4 oz\"\"}\"\n11:16,,lit,\n", "04 00:55"},
		{"what was to be carried indoors stays on the fire, and its feed is over", "07:56,,lit,\n08:54,,no-fuel,\n09:02,,grate,23 F\n", "03 21:03"},
		{"served after a move of the hour, before it went on by that", "06:15,,serving-moved,20:00\n08:28,,served,\n", "04 03:06"},
		{"frozen on a cold fire, and eight hours past dinner", "07:09,brisket,core,32 F\n07:20,,level,32 F\n", "04 03:03"},
		{"left out for an hour, and then on after all", "13:55,,serving-moved,17:00\n13:56,,lit,\n13:57,,level,32 F\n", "04 00:57"},
	} {
		now, err := time.ParseInLocation("2006-01-02 15:04", "2027-07-"+c.now, p.ServeAt.Location())
		if err != nil {
			t.Fatal(err)
		}
		log, err := schedule.ReadLog([]byte("time,dish,kind,value\n"+strings.TrimSuffix("2027-07-03 "+strings.ReplaceAll(c.log, "\n", "\n2027-07-03 "), "2027-07-03 ")), p)
		if err != nil {
			t.Fatal(err)
		}
		for _, fault := range roughFaults(t.Context(), p, log, now, true) {
			t.Errorf("%s: %s", c.name, fault)
		}
	}
}

// A dish that was added and that no fire of the grill cooks, beside a gauge that reads cold.
func TestAddedDishThatNoFireCooks(t *testing.T) {
	p := plantest.Plan(t, `serve: {date: 2027-07-03, time: "18:00", tz: America/Chicago}
guests: 4
grill: {kind: other, zones: [{name: back, width: 0.58 m, depth: 0.3 m, min: 120 C, max: 200 C, direct: false}]}
dishes: [{cut: pork-loin, weight: 4 lb}]
`)
	at := p.Phases[0].From.Add(-time.Hour)
	for _, fault := range roughFaults(t.Context(), p, []schedule.Entry{
		{At: at, Kind: schedule.LogGauge, C: 0.5}, {At: at, Kind: schedule.LogDishAdded, Dish: "extra", Value: `{"cut": "burger", "weight": "6 oz"}`},
	}, at, true) {
		t.Error(fault)
	}
}
