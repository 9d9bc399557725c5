package meant

import (
	"regexp"
	"strconv"
	"strings"
)

// Line is the dish in one line of a request; empty where no food is named.
func (s Spoken) Line() string {
	if s.Node == nil {
		return ""
	}
	return s.Node.Flow()
}

// Certain says whether all of the words were understood, and in one way.
func (s Spoken) Certain() bool { return s.Node != nil && s.Unclear == "" && len(s.Left) == 0 }

// Told is what a cook has to see of how the words were read.
func (s Spoken) Told() (told []string) {
	for _, words := range s.Unused {
		told = append(told, notUsed(words))
	}
	return append(told, s.Heard...)
}

func notUsed(words string) string { return "the plan does nothing with " + strconv.Quote(words) }

// Lead is a sentence that names what is open and ends in the line to write.
func (s Spoken) Lead() string {
	var open []string
	if s.Unclear != "" {
		open = append(open, s.Unclear)
	}
	for _, words := range s.Left {
		open = append(open, notUnderstood(words))
	}
	switch {
	case s.Node == nil:
		return strings.Join(open, "; ")
	case len(open) == 0:
		return "write " + s.Line()
	case strings.HasSuffix(open[len(open)-1], "write which"):
		return strings.Join(open, "; ") + ": " + s.Line()
	}
	return strings.Join(open, "; ") + "; without that it is " + s.Line()
}

var severalWays = regexp.MustCompile(`(?i)\b(?:\d+|half|some|one|two|three|four|the rest)\b[^,]*?\b(?:rare|medium|well|done)\b`)

// notUnderstood names words, and says where they belong if that is known.
func notUnderstood(words string) string {
	said := strconv.Quote(words)
	switch {
	case severalWays.MatchString(words):
		return said + ": what differs in how done it is, is two dishes, each with its own count and target"
	case forPeople.MatchString(words):
		return said + " is not understood; how many eat is said once, as guests: " + forPeople.FindStringSubmatch(words)[1]
	case isTemperature(words):
		return said + " may be the heat at the grate, level: 250 F, or how hot it is inside when done, target: 203 F; write which"
	}
	return said + " is not understood; leave it out, or write it behind a #"
}

var forPeople = regexp.MustCompile(`(?i)^for (?:about )?(\d+)(?: people| persons| guests)?$`)

func isTemperature(words string) bool {
	return regexp.MustCompile(`(?i)\b(?:start )?at \d{3}\b`).MatchString(words)
}
