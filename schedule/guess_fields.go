package schedule

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/meant"
	"example.com/cookday/schedule/internal/strict"
)

// saidIn is what a field of the request says, as it was written.
func (g *guesser) saidIn(name string) string {
	value := g.tree.Get(name)
	switch {
	case value == nil:
		return ""
	case value.Kind == strict.NodeText || value.Kind == strict.NodeNumber:
		return value.Text
	}
	return strings.Trim(value.Flow(), "{}")
}

var (
	weekDay    = regexp.MustCompile(`(?i)\b(?:next |this )?(?:mon|tues|wednes|thurs|fri|satur|sun)day\b|\btomorrow\b|\btonight\b|\btoday\b`)
	clockSaid  = regexp.MustCompile(`(?i)\b(\d{1,2})(?:[:.](\d{2}))?\s*([ap])\.?\s?m\b|\b(\d{1,2})[:.](\d{2})\b|\b(?:at|around|about|by|for|from)\s+(\d{1,2})(?:[:.](\d{2}))?\b(?:\s*(?:[,.;!?)]|$|o'clock|ish|or\b|on\b))`)
	mealWords  = regexp.MustCompile(`(?i)\b(?:eat(?:ing)?|serv(?:e|ing)|dinner|supper|lunch|ready|kick-?off|meal|feed|dine|food)\b`)
	otherTimes = regexp.MustCompile(`(?i)\b(?:lit|light|start|from|put on|arrive|doors|up|awake|sleep|not before|earlier|earliest|thaw)\b`)
)

// partsOfDay are the usual hours of a part of a day (assumptions).
var partsOfDay = []struct {
	said *regexp.Regexp
	at   string
}{
	{regexp.MustCompile(`(?i)\bbrunch\b`), "11:00"}, {regexp.MustCompile(`(?i)\b(?:lunch|noon|midday)\b`), "12:30"},
	{regexp.MustCompile(`(?i)\b(?:afternoon|arvo)\b`), "15:00"},
}

// guessServe takes the day and the hour that the text names, else the next Saturday and dinner.
func (g *guesser) guessServe() {
	wrote := g.saidIn("serve")
	d := g.decoder(&strict.FaultList{})
	d.lookAhead(g.tree)
	told := meant.Said(g.tree, g.now)
	if wrote == "" {
		wrote = told.Text
	}
	day, dayHow := g.dayOf(d.saw, wrote)
	at, atHow := g.hourOf(d.saw, wrote)
	serve := strict.NewGroup(1).With("date", strict.NewText(day, 1)).With("time", strict.NewText(at, 1))
	switch zone := d.saw.zone; {
	case zone != "" && zone != unreadZone && d.saw.place == "" && !(d.saw.home && zone == "UTC"):
		serve = serve.With("tz", strict.NewText(zone, 1))
	case g.now.IsZero():
		serve = serve.With("tz", strict.NewText("America/Chicago", 1))
		atHow += ", on the clock of Chicago"
	case d.saw.place != "":
		atHow += fmt.Sprintf(", on this machine's clock: the clock of %q is not known", d.saw.place)
	}
	for _, field := range told.Fields { // they are said now
		if field != "serve" {
			g.tree = g.tree.Without(field)
		}
	}
	g.tree = g.tree.WithAt("serve", 1, serve)
	g.marks["serve"] = mark(dayHow+", "+atHow, wrote)
}

// dayOf is the day that a text names, else the next Saturday.
func (g *guesser) dayOf(saw *meantServe, wrote string) (day, how string) {
	if saw.when.Day != nil && !saw.noDay && !g.redate {
		return saw.when.Day.String(), "on " + saw.when.Day.Format("Monday, January 2, 2006")
	}
	texts := []string{wrote, g.text}
	if g.redate { // what was read of the day is not the date that was written
		slices.Reverse(texts)
	}
	for _, text := range texts {
		for _, said := range append(dateWords.FindAllString(text, -1), weekDay.FindAllString(text, -1)...) {
			if w, err := instant.ParseWhen(strings.TrimSpace(said), g.now); err == nil && w.Day != nil {
				return w.Day.String(), "on " + w.Day.Format("Monday, January 2, 2006")
			}
		}
	}
	next := g.now
	if next.IsZero() {
		next = time.Date(2027, 7, 2, 12, 0, 0, 0, time.UTC)
	}
	for next = next.AddDate(0, 0, 1); next.Weekday() != time.Saturday; next = next.AddDate(0, 0, 1) {
	}
	return next.Format("2006-01-02"), "on the next Saturday, " + next.Format("January 2, 2006") + ", for no day is said"
}

const months = `(?:` + meant.MonthNames + `)`

// dateWords are dates of a month, with a year or without.
var dateWords = regexp.MustCompile(`(?i)\b\d{4}-\d{2}-\d{2}\b|\b` + months + `\.? \d{1,2}(?:st|nd|rd|th)?(?:,? \d{4})?\b|\b\d{1,2}(?:st|nd|rd|th)? (?:of )?` + months + `\b(?:,? \d{4})?|\b\d{1,2}/\d{1,2}/\d{4}\b|\b(?:christmas|thanksgiving|new year'?s|labor|memorial|mother'?s|father'?s|boxing)(?: day| eve)?\b`)

// hourOf is the hour that a text names, one without a half of the day in the afternoon or
// evening; else that of the meal that it names, else dinner at six.
func (g *guesser) hourOf(saw *meantServe, wrote string) (at, how string) {
	if saw.when.Time != nil && !saw.noTime {
		at = saw.when.Evening().HhMm()
		return at, "at " + at
	}
	var lines []string
	for _, line := range append([]string{wrote}, strings.FieldsFunc(g.text, func(r rune) bool { return r == '\n' || r == ',' || r == ';' })...) {
		if mealWords.MatchString(line) {
			lines = append([]string{line}, lines...)
		} else if !otherTimes.MatchString(line) {
			lines = append(lines, line)
		}
	}
	for _, line := range append([]string{wrote}, lines...) {
		if at = hourIn(line); at != "" {
			return at, "at " + at
		}
	}
	for _, part := range partsOfDay {
		if part.said.MatchString(wrote) || part.said.MatchString(g.text) {
			return part.at, "at " + part.at + ", for no hour is said"
		}
	}
	return "18:00", "at 18:00, for no hour is said"
}

// hourIn is a time of day in a text; empty for none.
func hourIn(text string) string {
	text = instant.ClockSaid(text)
	if clock, err := instant.ParseClock(strings.TrimSpace(text)); err == nil {
		return clock.HhMm()
	}
	m := clockSaid.FindStringSubmatch(text)
	if m == nil {
		return ""
	}
	hour, _ := strconv.Atoi(m[1] + m[4] + m[6])   // by the pattern
	minute, _ := strconv.Atoi(m[2] + m[5] + m[7]) // likewise; none is 0
	half := strings.ToLower(m[3])
	if half == "p" && hour < 12 || half == "" && hour < 11 {
		hour += 12
	}
	if hour > 23 || minute > 59 {
		return ""
	}
	return fmt.Sprintf("%02d:%02d", hour, minute)
}

// guessGuests takes the people that a text names; else nobody said how many there are.
func (g *guesser) guessGuests() {
	wrote := g.saidIn("guests")
	guests := meant.GuessGuests(wrote, 1)
	g.tree = g.tree.Without("guests")
	if guests == nil {
		g.leave("guests: " + wrote)
		if meant.Frail(wrote) {
			g.setGuests(strict.NewGroup(1).With("adults", strict.NewNumber(usualGuests, 1)).With("frail", strict.NewTruth(true, 1)), wrote)
		}
		return
	}
	g.setGuests(guests, wrote)
}

func (g *guesser) setGuests(guests *strict.Node, wrote string) {
	g.tree = g.tree.WithAt("guests", 1, guests)
	g.marks["guests"] = mark("these people", wrote)
}

// usualGuests eat where nothing says how many (an assumption).
const usualGuests = 6

// minorGuests looks at the whole text for somebody very young, old, pregnant or ill whom the
// guests do not name.
func (g *guesser) minorGuests() {
	if guests := g.tree.Get("guests"); !meant.Frail(g.text) || guests != nil && guests.Kind == strict.NodeObject && guests.Get("frail") != nil {
		return
	}
	guests := g.tree.Get("guests")
	switch {
	case guests == nil:
		guests = strict.NewGroup(1).With("adults", strict.NewNumber(usualGuests, 1))
	case guests.Kind == strict.NodeNumber:
		guests = strict.NewGroup(1).With("adults", guests)
	case guests.Kind == strict.NodeText:
		if guests = meant.GuessGuests(guests.Text, 1); guests == nil {
			return
		}
		if guests.Kind == strict.NodeNumber {
			guests = strict.NewGroup(1).With("adults", guests)
		}
	}
	g.tree = g.tree.WithAt("guests", 1, guests.With("frail", strict.NewTruth(true, 1)))
	g.marks["guests"] = "somebody very young, old, pregnant or ill eats too, by your words; take frail out if not"
}
