package schedule_test

import (
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
)

// Requests as people write them (invented) that are refused for one thing or more: each has a
// guess that is read, says what it must, and marks what it made up.
func TestAGuessIsReadAndMarked(t *testing.T) {
	now := time.Date(2026, 12, 2, 16, 0, 0, 0, time.UTC)
	for _, c := range []struct{ written, guess, not string }{
		{"Thursday 5 pm\n12 people\ngas grill, 4 burners\nbaby back ribs, 3 racks\n", "kind: other|direct: true|# guessed:|cut: baby-backs|count: 3", "frail"},
		{"pig roast on friday\n2 pork butts @ 7 lb\neat at 4.45\nkettle\n6 people", `time: "16:45"|kettle 22 in|# guessed:|count: 2`, `"16:00"`},
		{"wings 40\nfor 7 in the evening\n5 guests\nkettle 22 in", `time: "19:00"|2026-12-05|for no day is said`, ""},
		{"date: saturday\nsupper: 6\npeople: 8\ncooker: big offset smoker\nmenu:\n  - 5x racks of ribs\n", "count: 5|cut: baby-backs|guessed|max: 325 F", "kettle"},
		{"saturday 6 pm\n8 people\nopen fire with a grid, no lid\n10 lamb chops", "kind: other|direct: true|without a lid", "kettle"},
		{"food: prime rib roast\nsize: 6 lb\ndone: medium rare\nwhen: saturday 5pm\ngrill: kettle 22 in\nguests: 6, one of them pregnant", "frail: true|cut: rib-roast-bone-in", "target: medium-rare"},
		{"saturday 6 pm\nkettle 22 in\n7 people, a toddler too\nduck eggs\n4 steaks, rare please sir", "frail: true|count: 4", "duck"},
		{"saturday 1 pm\n8 people\nkettle 22 in\n4 gnome fillets\n6 brats", "# not used: 4 gnome fillets|count: 6", "cut: gnome"},
		{"on saturday, lunch 12:00 - burgers (8) for 6 people\ndinner 6pm - brisket 10 lb for 8\nold kettle", `serve: "12:00"|time: "18:00"|guests: 8`, ""},
	} {
		if _, err := schedule.Understand([]byte(c.written), now); err == nil {
			t.Errorf("%s\nis read as it is; it must be refused to be guessed", c.written)
		}
		guess, ok := schedule.GuessOn([]byte(c.written), now)
		if !ok {
			t.Errorf("%s\nhas no guess", c.written)
			continue
		}
		for _, want := range strings.Split(c.guess, "|") {
			if !strings.Contains(string(guess), want) {
				t.Errorf("%s\n%s\nwant %q", c.written, guess, want)
			}
		}
		plain, _, _ := strings.Cut(string(guess), "\nheard:")
		if c.not != "" && strings.Contains(fields(plain), c.not) {
			t.Errorf("%s\n%s\nmust not have %q", c.written, guess, c.not)
		}
		r, err := schedule.Understand(guess, now)
		if err != nil {
			t.Errorf("%s\n%v", guess, err)
		}
		if told := strings.Join(r.Heard, " "); strings.Contains(plain, "# guessed") && !strings.Contains(told, "guessed") || strings.Contains(plain, "# not used") && !strings.Contains(told, "not used") {
			t.Errorf("%s\nthe sheet says only %q", guess, told)
		}
	}
}

// fields are the lines of a request without its remarks.
func fields(text string) string {
	var out []string
	for _, line := range strings.Split(text, "\n") {
		line, _, _ = strings.Cut(line, "# ")
		out = append(out, line)
	}
	return strings.Join(out, "\n")
}

// Where no food is known, or what is asked for must not be cooked so, there is no guess; and
// what makes a rule stricter stays.
func TestNothingDangerousIsGuessed(t *testing.T) {
	now := time.Date(2026, 12, 2, 16, 0, 0, 0, time.UTC)
	const day = "saturday 6 pm\n8 people\nkettle\n"
	for _, written := range []string{day + "5 gnomes\n", "hello there", day + "a stuffed chicken, 4 lb\n", day + "turkey tartare\n"} {
		if guess, ok := schedule.GuessOn([]byte(written), now); ok {
			t.Errorf("%s\nguessed:\n%s", written, guess)
		}
	}
	for _, c := range []struct{ written, has string }{
		{day + "pork loin 4 lb, injected with apple juice by me\n", "injected"},
		{day + "8 turkey burgers of my aunt\n", "Turkey|turkey"},
		{day + "10 burgers for the lads\nmy grandma comes too\n", "frail: true"},
	} {
		guess, ok := schedule.GuessOn([]byte(c.written), now)
		found := false
		for _, has := range strings.Split(c.has, "|") {
			found = found || strings.Contains(string(guess), has)
		}
		if !ok || !found {
			t.Errorf("%s\nguessed %v:\n%s\nwant %q", c.written, ok, guess, c.has)
		}
	}
}

// Food that is called small is nobody who is.
func TestBabyBacksAreNobody(t *testing.T) {
	guess, ok := schedule.GuessOn([]byte("sunday 5 pm\n8 people\npellet grill\n4x racks of baby back ribs\nbaby potatoes 12\n"), time.Date(2026, 12, 2, 16, 0, 0, 0, time.UTC))
	if !ok || strings.Contains(string(guess), "frail") || !strings.Contains(string(guess), "count: 4") {
		t.Errorf("%v\n%s", ok, guess)
	}
}

// A date that is written beside the weekday of another year is kept: the guess was the next Saturday.
func TestAGuessKeepsTheDateThatIsWritten(t *testing.T) {
	now := time.Date(2026, 12, 2, 12, 0, 0, 0, time.UTC)
	guess, ok := schedule.GuessOn([]byte("Dad turns 70 on Saturday 20 December. We're 18 people and want to eat at 4pm.\nI bought a 14 lb brisket.\nkettle\n"), now)
	if !ok || !strings.Contains(string(guess), "2026-12-20") {
		t.Errorf("%v\n%s", ok, guess)
	}
}
