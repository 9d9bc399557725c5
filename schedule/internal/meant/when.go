package meant

import (
	"regexp"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/strict"
)

// When is when people eat, as the form has it.
type When struct {
	Node  *strict.Node // a group of date, time and tz; nil where that is not certain
	Heard []string     // what a cook has to see of how it was read
}

var zoneNames = []string{"timezone", "tz", "zone", "location", "where", "place", "city", "town", "village", "near", "nearby", "state", "country", "venue", "area", "region", "ort", "stadt"}

// isZone says whether a field says where the clock is.
func isZone(name string) bool { return oneOf(plainWord(name), zoneNames...) }

var grillWithin = regexp.MustCompile(`(?i)\b(?:oil drum|oil barrel|steel drum|half (?:an? )?(?:barrel|drum)|grill|kettle|smoker|barbecue|barbie|bbq|kamado|kugelgrill|braai)\b`)

// otherTimes are fields that hold a time of day and are not of the meal.
var otherTimes = []string{"start", "starttime", "begin", "startat", "startcooking", "begincooking", "from", "light", "lightat", "lit", "puton", "quiet", "sleep", "earliest", "guestsarrive", "arrival", "arrive", "doors"}

// Told is what the fields of a request say of the time when people eat.
type Told struct {
	Text   string   // of the day and the time, under whichever names
	Zone   string   // of the clock
	Fields []string // those that say when; others may hold times of something else
}

// Said is what the fields of a request say of the time when people eat. A date that stands
// by itself, under whatever name, is the day; what only looks like a time counts where those
// that are called like one leave something open.
func Said(request *strict.Node, now time.Time) (told Told) {
	var said, maybe, zones, dates []string
	var byName, others []string
	for name, value := range request.Fields() {
		if value.Kind == strict.NodeText && isDay(value.Text) {
			dates = append(dates, value.Text)
		}
		switch {
		case name == "serve" && value.Kind == strict.NodeObject:
			for inner, v := range value.Fields() {
				if isZone(inner) {
					zones = append(zones, v.Text)
				} else {
					said = append(said, timeOf(inner, v))
				}
			}
			byName = append(byName, name)
		case isZone(name) && !grillWithin.MatchString(value.Text):
			zones = append(zones, value.Text)
		case isZone(name): // a grill stands there
		case saysWhen(name, value, now) && calledWhen(name, value):
			said, byName = append(said, timeOf(name, value)), append(byName, name)
		case saysWhen(name, value, now) && !otherThan.MatchString(name):
			maybe, others = append(maybe, timeOf(name, value)), append(others, name)
		}
	}
	if !wholeSaid(strings.Join(said, " "), now) {
		said, byName = append(said, maybe...), append(byName, others...)
	}
	if len(dates) == 1 && len(said) > 0 && !slices.Contains(said, dates[0]) { // a day of the party's under whatever name
		said = append(said, dates[0])
	}
	text := strings.Join(said, " ")
	if day := arrivalDay(request, now); day != "" && text != "" {
		if w, err := instant.ParseWhen(text, now); err == nil && w.Day == nil && !w.Relative {
			text = day + " " + text
		}
	}
	return Told{Text: text, Zone: strings.Join(zones, " "), Fields: byName}
}

// otherThan are words of fields that hold times of something else than the meal.
var otherThan = regexp.MustCompile(`(?i)\b(?:before|after|away|arrives?|arriving|arrival|until|till|from|not|can'?t|cannot|don'?t|busy|out|pick ?up|awake|wake|up|work|back|leave|home)\b`)

// calledWhen says whether a field is called like one of when people eat, or named by a day.
func calledWhen(name string, value *strict.Node) bool {
	g, ok := guessOf("", name)
	return plainWord(name) == "serve" || ok && strings.HasPrefix(g.right, "serve:") || isMealTime(name, value) || isDayField(name, value)
}

// wholeSaid says whether a text says both a day and a time.
func wholeSaid(text string, now time.Time) bool {
	if text == "" {
		return false
	}
	w, err := instant.ParseWhen(text, now)
	return err == nil && (w.Day != nil || w.Relative) && w.Time != nil
}

// arrivalDay is the day on which guests arrive, as it is said; empty where it is not.
func arrivalDay(request *strict.Node, now time.Time) string {
	for name, value := range request.Fields() {
		if !oneOf(plainWord(name), "guestsarrive", "arrival", "arrive", "doors", "guestscome", "peoplearrive", "party", "everyonearrives") || value.Kind != strict.NodeText {
			continue
		}
		if w, err := instant.ParseWhen(value.Text, now); err == nil && w.Day != nil {
			return w.Day.String()
		}
	}
	return ""
}

// saysWhen says whether a field is one of when people eat: by its name, or because it holds
// a day or a time and is nothing else.
func saysWhen(name string, value *strict.Node, now time.Time) bool {
	word := plainWord(name)
	if value.Kind != strict.NodeText && value.Kind != strict.NodeNumber {
		return word == "serve" && value.Kind == strict.NodeObject && !fullServe(value)
	}
	g, ok := guessOf("", name)
	switch {
	case word == "serve", ok && strings.HasPrefix(g.right, "serve:"), isMealTime(name, value), isDayField(name, value):
		return true
	case ok, isForm(name), oneOf(word, otherTimes...), sleepName.MatchString(name), earliestName.MatchString(name), knownFood(name), value.Kind != strict.NodeText, ofDish(word):
		return ok && g.right != "" && value.Kind == strict.NodeText && strings.HasPrefix(g.right, "dishes") && wholeWhen(value.Text, now)
	}
	return wholeWhen(value.Text, now)
}

var (
	dayName   = regexp.MustCompile(`^(?:today|tonight|tomorrow|(?:mon|tues|wednes|thurs|fri|satur|sun)day)$`)
	dayMeal   = regexp.MustCompile(`(?i)^((?:(?:this|next) )?(?:mon|tues|wednes|thurs|fri|satur|sun)day)[ _-]?(lunch|dinner|supper|brunch|meal)$`)
	notThen   = regexp.MustCompile(`(?i)^\s*(?:no|nope|not (?:tonight|today|then))\b[\s,;:]*(?:but )?`)
	sleepName = regexp.MustCompile(`(?i)\b(?:sleep|asleep|sleeping|bed|bedtime)\b`)
	dayWithin = regexp.MustCompile(`(?i)\b(?:today|tonight|tomorrow|(?:mon|tues|wednes|thurs|fri|satur|sun)day)\b`)
	daySaid   = regexp.MustCompile(`(?i)\b(?:today|tonight|tomorrow|(?:mon|tues|wednes|thurs|fri|satur|sun)day)\b|\d\s*(?:[ap]\.?m\b|:\d\d|o'clock)|^\s*(?:at )?\d{1,2}\s*$`)
)

// isDayField says whether a field is named by a day and says when people eat on it, or that
// it is another day.
func isDayField(name string, value *strict.Node) bool {
	return (dayName.MatchString(plainWord(name)) || dayMeal.MatchString(strings.TrimSpace(name))) && (value.Kind == strict.NodeText || value.Kind == strict.NodeNumber) && daySaid.MatchString(value.Text)
}

// fullServe says whether a group says when people eat as the form has it.
func fullServe(group *strict.Node) bool {
	day, at := group.Get("date"), group.Get("time")
	if day == nil || at == nil {
		return false
	}
	_, noDay := instant.ParseDate(day.Text)
	_, noTime := instant.ParseClock(at.Text)
	for name := range group.Fields() {
		if !oneOf(name, "date", "time", "tz") {
			return false
		}
	}
	return noDay == nil && noTime == nil
}

// formServe says whether a group has the fields that say when people eat, and no others.
func formServe(group *strict.Node) bool {
	for name := range group.Fields() {
		if !oneOf(name, "date", "time", "tz") {
			return false
		}
	}
	return group.Get("date") != nil && group.Get("time") != nil
}

// mendedServe is a group of when people eat with what is written otherwise in the form's words.
func (t *taker) mendedServe(group *strict.Node) *strict.Node {
	day, at := group.Get("date"), group.Get("time")
	if _, err := instant.ParseDate(day.Text); err != nil {
		group = group.With("date", strict.NewText(t.When.Node.Get("date").Text, day.Line))
		t.heard = append(t.heard, t.When.Heard...)
	}
	if _, err := instant.ParseClock(at.Text); err != nil {
		group = group.With("time", strict.NewText(t.When.Node.Get("time").Text, at.Line))
	}
	return group
}

// wholeWhen says whether a text is a day or a time and nothing else.
func wholeWhen(text string, now time.Time) bool {
	w, err := instant.ParseWhen(text, now)
	return err == nil && (w.Time != nil || w.Day != nil || w.Relative) && len(text) < 60
}

// isDay says whether a text is a date that is the same whenever it is read.
func isDay(text string) bool {
	w, err := instant.ParseWhen(text, time.Time{})
	return err == nil && w.Day != nil && !w.Relative
}

var (
	militaryTime = regexp.MustCompile(`^\s*([01]\d|2[0-3])([0-5]\d)\s*$`)
	bareNumber   = regexp.MustCompile(`^\s*\d{1,2}\s*$`)
)

// timeOf is what a field says of a time: a bare hour is one of the evening only if it says
// so, and 1800 is a time and no year.
func timeOf(name string, value *strict.Node) string {
	text := militaryTime.ReplaceAllString(value.Text, "$1:$2")
	word := plainWord(name)
	if bareNumber.MatchString(text) && !oneOf(word, "day", "date", "datum") {
		text = "at " + strings.TrimSpace(text)
	}
	if rest := notThen.ReplaceAllString(text, ""); dayName.MatchString(word) && dayWithin.MatchString(rest) { // tonight: no, friday
		text = rest
	}
	if m := dayMeal.FindStringSubmatch(strings.TrimSpace(name)); m != nil && !dayWithin.MatchString(text) {
		text = m[1] + " " + text
		word = m[2]
	}
	if dayName.MatchString(word) && !dayWithin.MatchString(text) { // friday: 6pm
		text = word + " " + text
	}
	if oneOf(word, "dinner", "supper", "dinnertime") {
		text = "evening " + text
	}
	return text
}
