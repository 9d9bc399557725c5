package instant

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/rickb777/date"
	"github.com/rickb777/date/clock"
)

// When is a day and a time in a cook's words, as far as they are said.
type When struct {
	Day      *date.Date   // nil: no day is said, or it depends on today and that is not known
	Relative bool         // which day it is depends on when it was said: Saturday, tomorrow
	Time     *clock.Clock // nil: no time of day is said
	Zone     string       // as the zone database calls it; empty: none is said

	Floating bool   // the day is named by the week or from today: Saturday, tomorrow
	Halfless bool   // the time may be of the morning as it is written, as in 6:30
	Stretch  string // from when to when it was said to be; the time is its beginning
	Offset   string // what the clock differs from UTC, as in -05:00
	Place    string // of the zone, where it is no town that is known: only its state or country is
}

// Evening is a time that is said; one that may be of the morning as it is written is taken
// for the evening.
func (w When) Evening() clock.Clock {
	if w.Halfless {
		return *w.Time + 12*clock.Hour
	}
	return *w.Time
}

var (
	timeIn     = regexp.MustCompile(`(?i)[\s,]*(?:\b(?:at|around|about|by)\s+)?\b(\d{1,2}:\d{2}(?::00)?\s*(?:[ap]\.?m\b\.?)?|\d{1,2}\.\d{2}\s*[ap]\.?m\b\.?|\d{1,2}\s*[ap]\.?m\b\.?|noon|midday|12 o'clock noon)\s*(?:sharp|o'clock|uhr|h\b)?(?:,?\s*(?:or so|or thereabouts|prompt(?:ly)?|on the dot|at the latest))?[,.]?\s*`)
	bareHour   = regexp.MustCompile(`(?i)(?:\b(?:at|around|about|by|ca\.?|approx\.?)\s+|~\s*)(\d{1,2})(?:ish)?\b(?:\s*o'clock)?|\b(\d{1,2})\s*o'clock|^\s*(\d{1,2})\s*$|\b(?:(?:sun|mon|tue|wed|thu|fri|sat)[a-z]*\.?|today|tonight|tomorrow|tmrw|christmas|day|eve),?\s+(\d{1,2})\s*$`)
	clockHour  = regexp.MustCompile(`(?i)\b(\d{1,2})(?:\.(\d{2}))?\s*uhr\b|\b(\d{1,2})\s?h(\d{2})?\b`)
	anyDate    = regexp.MustCompile(`\b\d{4}-\d{1,2}-\d{1,2}\b|\b\d{1,2}[/.]\d{1,2}[/.]\d{4}\b`)
	halfLetter = regexp.MustCompile(`(?i)(\d)\s?([ap])([\s,.]|$)`) // 6:30p
	noSeconds  = regexp.MustCompile(`^(\d{1,2}:\d{2}):00`)
	isoTime    = regexp.MustCompile(`^(\d{4}-\d{2}-\d{2})T(\d{2}:\d{2})`)
	fillers    = regexp.MustCompile(`(?i)\b(?:on|this|coming|the|for|sharp|or so|or thereabouts|dinner|lunch|supper|brunch|evening|afternoon|morning|night|eat|eating|time|local|a las|el|um)\b`)
	ofMonth    = regexp.MustCompile(`(?i)(\d(?:st|nd|rd|th)?) of (?:the )?`) // the 12th of December
	ofMorning  = regexp.MustCompile(`(?i)\b(?:morning|breakfast|brunch)\b`)
	partOfDay  = regexp.MustCompile(`(?i)\b(?:tonight|evening|afternoon|night|dinner|supper)\b`)
)

// ParseWhen reads a day, a time and a zone in any order, as far as they are there. Now says
// which day today is; zero where that is not known. The error names what is not understood.
func ParseWhen(text string, now time.Time) (When, error) {
	var w When
	rest := strings.TrimSpace(halfLetter.ReplaceAllString(strings.ReplaceAll(text, "@", " at "), "$1 ${2}m$3"))
	if m := offsetTime.FindStringSubmatch(rest); m != nil {
		w.Offset, w.Zone, rest = m[3], fixedZone(m[3]), m[1]+" "+m[2]
	}
	rest = roughHour.ReplaceAllString(isoTime.ReplaceAllString(rest, "$1 $2"), "$1")
	rest = clockHour.ReplaceAllStringFunc(hoursBehind.ReplaceAllString(rest, "$1:$2"), wholeHour)
	rest, w.Stretch = spokenClock(rest)
	evening := partOfDay.MatchString(rest)
	if at := timeIn.FindStringSubmatchIndex(rest); at != nil {
		said := strings.NewReplacer("midday", "noon", ".", ":", "a.m.", "am", "p.m.", "pm", "a.m", "am", "p.m", "pm").Replace(strings.ToLower(rest[at[2]:at[3]]))
		c, err := ParseClock(noSeconds.ReplaceAllString(strings.TrimSpace(said), "$1"))
		if err != nil {
			return w, err
		}
		w.Halfless = !evening && c.Hours() >= 1 && c.Hours() <= 9 && said[0] != '0' && !strings.HasSuffix(said, "m") && !ofMorning.MatchString(text)
		if evening && c.Hours() >= 1 && c.Hours() <= 9 && said[0] != '0' && !strings.HasSuffix(said, "m") {
			c += 12 * clock.Hour // dinner at 6:30
		}
		w.Time, rest = &c, rest[:at[0]]+" "+rest[at[1]:]
	} else if at := bareHour.FindStringSubmatchIndex(rest); at != nil {
		hour := digits(rest[max(at[2], at[4], at[6], at[8]):max(at[3], at[5], at[7], at[9])])
		if !evening || hour < 1 || hour > 11 {
			if at[8] > 0 { // the day of the week stays
				at[0], at[1] = at[8], at[9]
			}
			noDay := w.readDayAndZone(rest[:at[0]]+" "+rest[at[1]:], text, now) // it may be known all the same
			return w, &HalfDayError{Hour: hour, Text: text, NoDay: noDay != nil && w.Day == nil}
		}
		if at[8] > 0 {
			at[0], at[1] = at[8], at[9]
		}
		c := clock.New(hour+12, 0, 0, 0)
		w.Time, rest = &c, rest[:at[0]]+" "+rest[at[1]:]
	}
	return w, w.readDayAndZone(rest, text, now)
}

// wholeHour is "18 Uhr", "18.30 Uhr" or "18h30" as a clock shows it.
func wholeHour(text string) string {
	m := clockHour.FindStringSubmatch(text)
	minutes := m[2] + m[4]
	if minutes == "" {
		minutes = "00"
	}
	return m[1] + m[3] + ":" + minutes
}

// HalfDayError is a time of day that may be of the morning or of the evening.
type HalfDayError struct {
	Hour  int
	Text  string
	NoDay bool // a day is written and not understood
}

// UnreadError is a text for a day and a time that is not understood, or a part of it.
type UnreadError struct {
	Text  string
	Words string // those of it that are not understood
	Why   string // it cannot be; empty where that is not known
}

// Error says how to write it.
func (e *UnreadError) Error() string {
	return strconv.Quote(e.Text) + " cannot be read as a day and a time; write it as Saturday 6:00 PM or 2027-07-03 18:00"
}

// Error says both.
func (e *HalfDayError) Error() string {
	if e.Hour < 1 || e.Hour > 12 {
		return strconv.Quote(e.Text) + " has no time of day; write a day and a time, such as Saturday 6:00 PM"
	}
	return fmt.Sprintf("%q may be the morning or the evening; write %d PM or %d AM", e.Text, e.Hour, e.Hour)
}

// readDayAndZone reads what is left behind the time: the day, and perhaps a zone.
func (w *When) readDayAndZone(rest, whole string, now time.Time) error {
	words := strings.Fields(strings.Trim(rest, " ,"))
	for zoneFrom := len(words); zoneFrom >= 0 && len(words)-zoneFrom <= 4; zoneFrom-- {
		zone := strings.Trim(strings.Join(words[zoneFrom:], " "), " ,()")
		if zone != "" {
			if w.Zone = ZoneNamed(placeAlone(zone)); w.Zone == "" {
				continue
			}
		}
		day := dayOf(words[:zoneFrom])
		if day != "" && !w.setDay(day, now) {
			continue
		}
		if zone != "" && !KnownTown(placeAlone(zone)) {
			w.Place = placeAlone(zone)
		}
		return nil
	}
	place, zone := placeAtEnd(words)
	w.Zone = zone
	if why := clash(dayOf(withoutTail(words, place)), now); why != "" {
		return &UnreadError{Text: whole, Words: whole, Why: why}
	}
	for from := len(words) - 1; from > 0; from-- { // a day, and words behind it that may be a place
		if day := dayOf(words[:from]); day != "" && !aboutADay(strings.Join(words[from:], " ")) && w.setDay(day, now) {
			return &UnreadError{Text: whole, Words: strings.Trim(strings.Join(words[from:], " "), " ,;:()")}
		}
	}
	rest = strings.Join(withoutTail(words, place), " ")
	if found := anyDate.FindString(rest); found != "" {
		w.Day, w.Relative, _ = readDay(found, w.Time, now)
		rest = strings.Replace(rest, found, " ", 1)
	}
	left := strings.Trim(strings.Join(strings.Fields(rest), " "), " ,;:")
	if left == "" {
		left = whole
	}
	return &UnreadError{Text: whole, Words: left}
}

// dayOf are words that may be a day, without those that make no difference.
func dayOf(words []string) string {
	text := ofMonth.ReplaceAllString(strings.Join(words, " "), "$1 ")
	return strings.Trim(strings.Join(strings.Fields(fillers.ReplaceAllString(text, " ")), " "), " ,")
}

// setDay takes a day; false where the text is none.
func (w *When) setDay(text string, now time.Time) bool {
	d, relative, ok := readDay(text, w.Time, now)
	if ok {
		w.Day, w.Relative = d, relative
		w.Floating = relative && (!strings.ContainsAny(text, "0123456789") || dayAlone.MatchString(text) || numbered.MatchString(text) || numberOn.MatchString(text))
	}
	return ok
}

// withoutTail are words without those of the place at their end.
func withoutTail(words []string, place string) []string {
	if place == "" {
		return words
	}
	words = words[:max(len(words)-len(strings.Fields(place)), 0)]
	for len(words) > 0 && (words[len(words)-1] == "," || strings.EqualFold(words[len(words)-1], "in")) {
		words = words[:len(words)-1]
	}
	return words
}

// placeAlone is a place without the word before it.
func placeAlone(text string) string {
	for _, before := range []string{"in ", "at ", "near "} {
		text = strings.TrimPrefix(text, before)
	}
	return text
}

// dayForms are ways to write a date; those without a year mean the next one.
var dayForms = append(slices.Clone(yearForms),
	time.DateOnly, "1/2/06", "2/1/2006", "Jan 2 2006", "2 Jan 2006",
	"January 2", "Jan 2", "2 January", "2 Jan", "1/2", "2.1.",
)

var (
	ordinal  = regexp.MustCompile(`(?i)(\d)(?:st|nd|rd|th)\b`)
	weekdays = []string{"sunday", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday"}
	leadDay  = regexp.MustCompile(`(?i)^(?:sun|mon|tue|tues|wed|thu|thur|thurs|fri|sat)[a-z]*[,.]?\s+`)
)

// onThatDay says whether a date is on the day of the week that is named beside it, if any is.
func onThatDay(d date.Date, named string) bool {
	return named == "" || strings.HasPrefix(strings.ToLower(d.Weekday().String()), named[:3])
}

// germanDays are days and months by their German names, which are not English ones.
var germanDays = strings.NewReplacer("sonntag", "sunday", "montag", "monday", "dienstag", "tuesday", "mittwoch", "wednesday", "donnerstag", "thursday", "freitag", "friday",
	"samstag", "saturday", "sonnabend", "saturday", "januar ", "january ", "februar ", "february ", "märz", "march", "mai ", "may ", "juni ", "june ", "juli ", "july ", "oktober", "october", "dezember", "december",
	"heute", "today", "morgen", "tomorrow",
	"lunes", "monday", "martes", "tuesday", "miércoles", "wednesday", "miercoles", "wednesday", "jueves", "thursday", "viernes", "friday", "sábado", "saturday", "sabado", "saturday", "domingo", "sunday",
	"de enero", "january", "de febrero", "february", "de marzo", "march", "de abril", "april", "de mayo", "may", "de junio", "june", "de julio", "july", "de agosto", "august", "de septiembre", "september", "de octubre", "october", "de noviembre", "november", "de diciembre", "december")

var dotted = regexp.MustCompile(`(\d)\.(\s+\pL)`)

// inEnglish is a day with German names in English.
func inEnglish(text string) string {
	low := strings.ToLower(text) + " "
	if english := germanDays.Replace(low); english != low {
		return strings.TrimSpace(dotted.ReplaceAllString(english, "$1$2"))
	}
	return dotted.ReplaceAllString(text, "$1$2")
}

// readDay reads a day. Nil, with true, is a day that depends on today where that is not known.
func readDay(text string, c *clock.Clock, now time.Time) (day *date.Date, relative, ok bool) {
	text = inEnglish(text)
	word := strings.TrimSuffix(strings.ToLower(text), ",")
	today := date.NewAt(now)
	ahead := -1
	soon := c == nil || int(c.Hours())*60+int(c.Minutes()) > now.Hour()*60+now.Minute()
	switch word {
	case "today", "tonight":
		ahead = 0
	case "tomorrow", "tmrw", "tmr":
		ahead = 1
	default:
		name := strings.TrimPrefix(word, "next ")
		for n, full := range weekdays {
			if len(name) < 3 || !strings.HasPrefix(full, strings.TrimSuffix(name, ".")) {
				continue
			}
			if ahead = (n - int(now.Weekday()) + 7) % 7; ahead == 0 && !soon {
				ahead = 7
			}
		}
	}
	if ahead >= 0 {
		if now.IsZero() {
			return nil, true, true
		}
		d := today.Add(date.PeriodOfDays(ahead))
		return &d, true, true
	}
	if m := dayAlone.FindStringSubmatch(word); m != nil {
		d := nextDay(digits(m[1]), today)
		return d, true, d != nil || now.IsZero()
	}
	if day, why, found := onNumber(text, now); found {
		return day, true, why == ""
	}
	if d, found := movableFeast(word, today); found {
		if now.IsZero() {
			return nil, true, true
		}
		return &d, true, true
	}
	if feast := feasts[plainFeast(word)]; feast != "" {
		text = feast
	}
	bare := ordinal.ReplaceAllString(leadDay.ReplaceAllString(text, ""), "$1")
	named := strings.ToLower(strings.TrimSpace(leadDay.FindString(text)))
	for _, form := range dayForms {
		t, err := time.Parse(form, bare)
		if err != nil {
			continue
		}
		if t.Year() > 0 {
			d := date.NewAt(t)
			return &d, false, onThatDay(d, named)
		}
		if now.IsZero() {
			return nil, true, true
		}
		d := date.New(now.Year(), t.Month(), t.Day())
		if d.Before(today) {
			d = date.New(now.Year()+1, t.Month(), t.Day())
		}
		return &d, true, onThatDay(d, named)
	}
	return nil, false, false
}
