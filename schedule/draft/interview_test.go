package draft_test

import (
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/draft"
)

const zone = "America/Chicago"

// wednesday is when the tests ask: an invented noon.
func wednesday(t *testing.T) time.Time {
	t.Helper()
	loc, err := time.LoadLocation(zone)
	if err != nil {
		t.Fatal(err)
	}
	return time.Date(2027, 6, 30, 12, 0, 0, 0, loc)
}

// told answers the questions: by key, or with the default. Dishes come in their order.
func told(t *testing.T, like string, answers map[string]string, dishes ...string) (*draft.Interview, error) {
	t.Helper()
	i, err := draft.New(wednesday(t), zone, like)
	if err != nil {
		t.Fatal(err)
	}
	for range 200 {
		q, open := i.Next()
		if !open {
			return i, nil
		}
		answer := answers[q.Key]
		if q.Key == draft.KeyDish && len(dishes) > 0 {
			answer, dishes = dishes[0], dishes[1:]
		}
		if err := i.Answer(answer); err != nil {
			return i, err
		}
	}
	t.Fatal("the questions do not end")
	return nil, nil
}

// What comes out is a request that is read without a fault and says what was answered.
func TestAnswersBecomeARequest(t *testing.T) {
	for _, c := range []struct {
		like    string
		answers map[string]string
		dishes  []string
		lines   []string
	}{
		{"", nil, []string{"brisket"}, []string{`serve: {date: 2027-07-03, time: "18:00", tz: America/Chicago}`, "grill: kettle 22 in", "oven: {}", "guests: 8 # not asked yet", "  - {cut: brisket} # weigh it, weight: 12 lb; label not read"}},
		{"", map[string]string{"when": "tomorrow 1pm", "oven": "no", "quiet": "11pm to 5:30am", "guests": "6 adults and 2 kids", "frail": "yes", "label": "none"}, []string{"2 chickens, 4.5 lb"},
			[]string{`date: 2027-07-01, time: "13:00"`, "# oven", `quiet: [{from: "23:00", to: "05:30"}]`, "guests: {adults: 6, children: 2, frail: true}", "{name: Chickens, cut: chicken, weight: 4.5 lb, count: 2, prep: []}"}},
		{"", map[string]string{"grill": "box 36 x 18 in", "quiet": "never", "frail": "no", "amount": "3 x 2.5 lb", "label": "solution"}, []string{"baby backs"},
			[]string{"grill: box 36 x 18 in", "quiet: []", "guests: {adults: 8, frail: false} # nobody", "{cut: baby-backs, weight: 2.5 lb, count: 3, prep: [injected]}"}},
		{"", map[string]string{"label": "none", "done": "medium"}, []string{"two ribeyes 1 lb each"}, []string{"{name: Ribeyes, cut: steak, weight: 1 lb, count: 2, target: medium, prep: []}"}},
		{"", map[string]string{"label": "none"}, []string{"two ribeyes 1 lb each"}, []string{"{name: Ribeyes, cut: steak, weight: 1 lb, count: 2, prep: []}"}},
		{"", nil, []string{"2 ribeyes, 1 lb, label none, 140 F"}, []string{"target: 140 F, prep: []"}},
		{"steaks", nil, nil, []string{`time: "19:00"`, "guests: 2 ", "{name: Ribeyes, cut: steak, weight: 1 lb, count: 2} # label not read", "{name: Asparagus, cut: vegetables, weight: 1 oz, count: 12}"}},
		{"", map[string]string{"which": "baby backs"}, []string{"2 racks of ribs"}, []string{"{name: Ribs, cut: baby-backs, count: 2}"}},
		{"", nil, []string{"baby back ribs, 3 racks"}, []string{"cut: baby-backs, count: 3}"}},
		{"", nil, []string{"two ribeyes 1.5 inch thick"}, []string{"{name: Ribeyes, cut: steak, count: 2, thickness: 1.5 inch}"}},
		{"", map[string]string{"amount": "2, 1.5 in"}, []string{"ribeyes"}, []string{"count: 2, thickness: 1.5 in}"}},
		{"", map[string]string{"quiet": "never"}, []string{"brisket"}, []string{"quiet: [] # somebody is up all night"}},
		{"", map[string]string{"when": "Sunday noon", "overnight": "yes"}, []string{"pork butt, 8 lb"}, []string{"overnight: true"}},
		{"", map[string]string{"when": "Sunday noon"}, []string{"pork butt, 8 lb"}, []string{"# overnight: true # then"}},
		{"", map[string]string{"guests": "12 people, two kids, grandma", "oven": "yeah", "quiet": "we sleep 11 to 6"}, []string{"chicken legs 4 lb"},
			[]string{"guests: {adults: 12, children: 2, frail: true}", "oven: {}", `quiet: [{from: "23:00", to: "06:00"}]`}},
		{"", map[string]string{"oven": "dunno", "quiet": "don't know", "frail": "no, all well"}, []string{"chicken wings 4 lb", "2 portobellos", "turkey 14 lb, frozen", "2 ribeyes 1.5 inch medium rare"},
			[]string{"thickness: 1.5 inch", "oven: {}", "frail: false", "count: 18", "{cut: portobellos, count: 2}", "start: frozen"}},
		{"", map[string]string{"frail": "no"}, []string{"brisket"}, []string{"guests: {adults: 8, frail: false} # nobody"}},
		// Where nothing below the published minimum is planned, the answer in brackets is not below it.
		{"", map[string]string{"frail": "yes"}, []string{"2 ribeyes, 1 lb"}, []string{"target: medium}"}},
		{"", map[string]string{"label": "tenderized"}, []string{"2 ribeyes, 1 lb"}, []string{"target: medium, prep: [tenderised]}"}},
	} {
		i, err := told(t, c.like, c.answers, c.dishes...)
		if err != nil {
			t.Errorf("%v %v: %v", c.answers, c.dishes, err)
			continue
		}
		if _, err := schedule.Read([]byte(i.Text())); err != nil {
			t.Errorf("%s\n%v", i.Text(), err)
		}
		for _, line := range c.lines {
			if !strings.Contains(i.Text(), line) {
				t.Errorf("%q is not in\n%s", line, i.Text())
			}
		}
	}
}

// An answer that cannot be taken is refused with what would be right, and asked again.
func TestAnswersThatAreRefused(t *testing.T) {
	for _, c := range []struct{ key, answer, dish, want string }{
		{"when", "soon", "brisket", "Saturday 6:00 PM"},
		{"when", "yesterday 6pm", "brisket", "cannot be read as a day"},
		{"when", "2027-06-01 18:00", "brisket", "is past"},
		{"zone", "Nowhere City", "brisket", "America/Chicago"},
		{"when", "saturday at 11", "brisket", "11 PM or 11 AM"},
		{"guests", "2 chikns", "brisket", "not a number of people"},
		{"grill", "kettle", "brisket", "kettle 22 in"},
		{"grill", "kettle 22 mm", "brisket", "22 mm is not a plausible diameter"},
		{"oven", "perhaps", "brisket", "yes or no"},
		{"quiet", "at night", "brisket", "11pm to 5:30am"},
		{"guests", "some", "brisket", "6 adults and 2 children"},
		{"frail", "some", "brisket", "yes or no"},
		{"dish", "", "elephant", "is not in the catalogue"},
		{"which", "prime", "2 racks of ribs", "st-louis-ribs"},
		{"which", "", "ribs", "needs an answer"},
		{"dish", "", "1", "does not say what it is"},
		{"guests", "8 lbs", "brisket", "not a number of people"},
		{"quiet", "no", "brisket", "two ways"},
		{"grill", "gas grill", "brisket", "is for charcoal"},
		{"dish", "", "brisket, 900 lb", "is not plausible"},
		{"dish", "", "brisket, crunchy", "medium-rare"},
		{"amount", "lots", "brisket", "2 of 4.5 lb"},
		{"label", "organic", "brisket", "solution, tenderized"},
		{"label", "stuffed", "2 chickens", "stuffed bird"},
		{"done", "blue", "2 ribeyes", "medium-rare"},
	} {
		answers := map[string]string{c.key: c.answer}
		i, err := told(t, "", answers, c.dish)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s %q, %s: %v; want %q", c.key, c.answer, c.dish, err, c.want)
			continue
		}
		if q, open := i.Next(); !open || q.Key != c.key {
			t.Errorf("%s %q: %q is asked next", c.key, c.answer, q.Key)
		}
	}
}

func TestDaysInTheCooksWords(t *testing.T) {
	for text, want := range map[string]string{
		"Saturday 18:00": "2027-07-03 18:00", "sat 6pm": "2027-07-03 18:00", "6pm saturday": "2027-07-03 18:00", "Saturday at 6:30 PM": "2027-07-03 18:30",
		"tomorrow noon": "2027-07-01 12:00", "today 13:00": "2027-06-30 13:00", "1pm": "2027-06-30 13:00", "11am": "2027-07-01 11:00", "wednesday 11am": "2027-07-07 11:00",
		"7/4 6pm": "2027-07-04 18:00", "July 4, 6pm": "2027-07-04 18:00", "4 July 2028 18:00": "2028-07-04 18:00", "2027-08-01 18:00": "2027-08-01 18:00", "January 2, 5pm": "2028-01-02 17:00",
		"next sunday 6pm": "2027-07-04 18:00", "saturday at 6": "2027-07-03 18:00", "saturday 7ish pm": "2027-07-03 19:00", "saturday 7ish": "2027-07-03 19:00", "saturday 6:30-ish": "2027-07-03 18:30", "half past five on sunday": "2027-07-04 17:30", "the 19th at 6pm": "2027-07-19 18:00",
	} {
		i, err := draft.New(wednesday(t), zone, "")
		if err != nil {
			t.Fatal(err)
		}
		if err := i.Answer(text); err != nil {
			t.Errorf("%q: %v", text, err)
			continue
		}
		day, at, _ := strings.Cut(want, " ")
		if !strings.Contains(i.Text(), "date: "+day+`, time: "`+at+`"`) {
			t.Errorf("%q is not %s:\n%s", text, want, i.Text())
		}
	}
}

// Every day to begin with is one that Enter alone makes.
func TestLikes(t *testing.T) {
	if len(draft.Likes()) != 5 {
		t.Errorf("there are %v", draft.Likes())
	}
	for _, like := range draft.Likes() {
		if _, err := told(t, like, nil); err != nil {
			t.Errorf("%s: %v", like, err)
		}
	}
	if _, err := draft.New(wednesday(t), zone, "wedding"); err == nil || !strings.Contains(err.Error(), "party") {
		t.Errorf("wedding: %v", err)
	}
}

// FuzzAnswers: whatever is answered, nothing breaks, and what comes out at the end is read.
func FuzzAnswers(f *testing.F) {
	f.Add("Saturday 6pm\n\n\n\n\n\n\nbrisket, 10 lb\n\nno more")
	f.Add("sat 6pm\nUTC\nbox 36 x 18 in\nno\nnever\n6+2\nyes\n12 burgers, \"x\"\n")
	f.Fuzz(func(t *testing.T, text string) {
		i, err := draft.New(wednesday(t), zone, "")
		if err != nil {
			t.Fatal(err)
		}
		for line := range strings.Lines(text) {
			_ = i.Answer(strings.TrimSpace(line)) // refused is fine
		}
		for range 100 {
			if _, open := i.Next(); !open {
				if _, err := schedule.Read([]byte(i.Text())); err != nil {
					t.Fatalf("%s\n%v", i.Text(), err)
				}
				return
			}
			if i.Answer("") != nil && i.Answer("burger") != nil {
				return
			}
		}
	})
}

func TestZonesInTheCooksWords(t *testing.T) {
	for text, want := range map[string]string{"Chicago": "America/Chicago", "New York": "America/New_York", "eastern": "America/New_York", "Central time": "America/Chicago", "PST": "America/Los_Angeles", "Berlin": "Europe/Berlin"} {
		i, err := told(t, "", map[string]string{"zone": text}, "brisket")
		if err != nil || !strings.Contains(i.Text(), want) {
			t.Errorf("%q: %v, want %s", text, err, want)
		}
	}
}

// What a cook answers more than yes or no is heard: an oven without room is none, who is named
// is frail; a group of fields that a message gave is taken; no dish is taken that a plan refuses.
func TestAnswersOfMoreWords(t *testing.T) {
	i, err := told(t, "", map[string]string{
		draft.KeyGrill: "{kind: other, zones: [{name: left, width: 16 in,  depth: 18 in, min: 225 F, max: 550 F, direct: true}]}",
		draft.KeyOven:  "yes but it's full", draft.KeyFrail: "my wife is pregnant",
	}, "8 burgers")
	if err != nil {
		t.Fatal(err)
	}
	r, err := schedule.Read([]byte(i.Text()))
	if err != nil || r.Grill.Kind != "other" || r.Oven != nil || r.Guests == nil || !r.Guests.Frail {
		t.Errorf("%v\n%s", err, i.Text())
	}
	if _, err := told(t, "", nil, "frozen pizza"); err == nil || !strings.Contains(err.Error(), "thaw it first") {
		t.Errorf("frozen pizza: %v", err)
	}
}
