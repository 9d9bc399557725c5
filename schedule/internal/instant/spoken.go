package instant

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

const hourWords = `one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve`

var (
	halfPast    = regexp.MustCompile(`(?i)\b(half past|half|quarter past|quarter to) (` + hourWords + `|\d{1,2})\b(?:\s*(?:(?:in the )?(?:afternoon|evening)|at night|p\.?m\b\.?))?`)
	spokenHour  = regexp.MustCompile(`(?i)\b(` + hourWords + `)[\s-]+(?:(thirty|fifteen|forty[\s-]five)\s*)?(?:(o'clock)|([ap])\.?\s?m\b\.?|(in the morning|in the afternoon|in the evening|at night))?`)
	roughHour   = regexp.MustCompile(`(?i)\b(\d{1,2}(?::\d\d)?)\s?-?ish\b`)
	atWord      = regexp.MustCompile(`(?i)\b(at|by|around) (` + hourWords + `)\b`)
	partBehind  = regexp.MustCompile(`(?i)\b(\d{1,2})(:\d{2})?\s*(?:o'clock\s*)?(in the morning|in the afternoon|in the evening|at night)\b`)
	clockRange  = regexp.MustCompile(`(?i)\b(?:between\s+)?(\d{1,2})((?::\d\d)?)\s*([ap]\.?m\b\.?)?\s*(?:-|–|\bto\b|\band\b|\btill\b|\buntil\b)\s*(\d{1,2})((?::\d\d)?)\s*([ap])\.?m\b\.?`)
	hoursBehind = regexp.MustCompile(`(?i)\b(\d{1,2}):?(\d{2})\s?(?:h|hrs|hours)\b`)
	offsetTime  = regexp.MustCompile(`^(\d{4}-\d{2}-\d{2})[T ](\d{2}:\d{2})(?::\d{2}(?:\.\d+)?)?\s?(Z|[+-]\d{2}:?\d{2})$`)
)

var minuteWords = map[string]string{"": ":00", "thirty": ":30", "fifteen": ":15", "fortyfive": ":45"}

// spokenClock is a text with the times of day that are said in words, or as a stretch, as a
// clock shows them. Of a stretch the beginning is taken; stretch is how that was said.
func spokenClock(text string) (plain, stretch string) {
	text = clockRange.ReplaceAllStringFunc(text, func(s string) string {
		m := clockRange.FindStringSubmatch(s)
		from, to := digits(m[1]), digits(m[4])
		half := strings.ToLower(m[6])
		switch {
		case m[3] != "":
			half = strings.ToLower(m[3][:1])
		case from > to && from != 12: // 11-1pm
			half = map[string]string{"a": "p", "p": "a"}[half]
		}
		stretch = strings.TrimSpace(s)
		return m[1] + m[2] + " " + half + "m"
	})
	text = halfPast.ReplaceAllStringFunc(text, func(s string) string { // nobody eats from a grill at half past six in the morning
		m := halfPast.FindStringSubmatch(s)
		hour := digits(hourAt(m[2]))
		switch strings.ToLower(m[1]) {
		case "half past", "half":
			return fmt.Sprintf("%d:30 pm", hour)
		case "quarter past":
			return fmt.Sprintf("%d:15 pm", hour)
		}
		return fmt.Sprintf("%d:45 pm", (hour+10)%12+1)
	})
	text = spokenHour.ReplaceAllStringFunc(text, func(s string) string {
		m := spokenHour.FindStringSubmatch(s)
		tail := strings.ToLower(m[3] + m[5])
		if m[4] != "" {
			tail = strings.ToLower(m[4]) + "m"
		}
		if tail == "" && m[2] == "" {
			return s
		}
		minutes := minuteWords[strings.NewReplacer(" ", "", "-", "").Replace(strings.ToLower(m[2]))]
		if m[2] == "" && tail != "" {
			minutes = ""
		}
		return hourAt(m[1]) + minutes + " " + tail
	})
	text = atWord.ReplaceAllStringFunc(text, func(s string) string { return strings.Fields(s)[0] + " " + hourAt(s) })
	text = partBehind.ReplaceAllStringFunc(text, func(s string) string {
		m := partBehind.FindStringSubmatch(s)
		half := " pm"
		if hour := digits(m[1]); strings.EqualFold(m[3], "in the morning") || hour == 12 && strings.EqualFold(m[3], "at night") {
			half = " am"
		}
		return m[1] + m[2] + half
	})
	return text, stretch
}

// hours are those that are said in words.
var hours = strings.Split(hourWords, "|")

// hourAt is the hour at the end of a text, in digits.
func hourAt(text string) string {
	words := strings.Fields(strings.ToLower(text))
	last := words[len(words)-1]
	for k, h := range hours {
		if h == last {
			return strconv.Itoa(k + 1)
		}
	}
	return last
}

// fixedZone is the zone whose clock is always so far from that of UTC; empty where the zone
// database has none.
func fixedZone(offset string) string {
	if offset == "Z" || strings.Trim(offset, "+-0:") == "" {
		return "UTC"
	}
	if !strings.HasSuffix(offset, "00") || digits(offset[1:3]) > 14 {
		return ""
	}
	sign := map[byte]string{'-': "+", '+': "-"}[offset[0]] // the database counts to the west
	return "Etc/GMT" + sign + strconv.Itoa(digits(offset[1:3]))
}

var (
	dayWords  = regexp.MustCompile(`(?i)\b(?:today|tonight|tomorrow|(?:this |next )?(?:mon|tues|wednes|thurs|fri|satur|sun)day|\d{4}-\d{2}-\d{2})\b`)
	timeWords = regexp.MustCompile(`(?i)\b(?:at )?(?:\d{1,2}(?::\d{2})?\s*[ap]\.?m\b\.?|\d{1,2}:\d{2}|noon)`)
)

// WhenWithin is the one day and the one time of day that a sentence names; empty where it
// names more or less.
func WhenWithin(sentence string) string {
	plain, _ := spokenClock(sentence)
	days, times := dayWords.FindAllString(plain, 2), timeWords.FindAllString(plain, 2)
	if len(days) != 1 || len(times) != 1 {
		return ""
	}
	return days[0] + " " + times[0]
}

// ClockSaid is a sentence with its times of day as a clock shows them.
func ClockSaid(sentence string) string {
	plain, _ := spokenClock(sentence)
	return plain
}

// PartsWithin are the days and the times of day that a sentence names, and what is left of it.
func PartsWithin(sentence string) (days, times []string, rest string) {
	plain, _ := spokenClock(sentence)
	days, times = dayWords.FindAllString(plain, -1), timeWords.FindAllString(plain, -1)
	return days, times, strings.Join(strings.Fields(timeWords.ReplaceAllString(dayWords.ReplaceAllString(plain, " "), " ")), " ")
}
