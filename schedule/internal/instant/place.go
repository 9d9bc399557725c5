package instant

import (
	"regexp"
	"strings"
)

// notOfAPlace are words that no town in front of its state is taken to have: those of days, of
// times, and of meals (common practice, no source). A day is never a town.
var notOfAPlace = regexp.MustCompile(`(?i)^(?:(?:sun|mon|tue|tues|wed|wednes|thu|thur|thurs|fri|sat|satur)(?:days?)?|saterday|satuday|sonntag|montag|dienstag|mittwoch|donnerstag|freitag|samstag|sonnabend|today|tonight|tomorrow|tmrw|tmr|yesterday|` +
	`jan|feb|mar|apr|jun|jul|aug|sep|sept|oct|nov|dec|january|february|march|april|june|july|august|september|october|november|december|` +
	`days?|weeks?|weekends?|fortnight|months?|years?|eve|next|this|coming|following|last|first|second|third|fourth|fifth|early|late|later|mid|` +
	`after|before|in|on|at|by|of|or|and|either|maybe|perhaps|possibly|probably|then|else|not|around|about|between|from|to|till|until|since|so|if|when|` +
	`christmas|xmas|easter|thanksgiving|labor|labour|memorial|mothers?|fathers?|mother's|father's|halloween|holidays?|birthday|anniversary|bowl|` +
	`noon|midday|midnight|morning|afternoon|evening|night|dawn|dusk|sunset|breakfast|brunch|lunch|lunchtime|dinner|supper|teatime|meal|eat|eating|serve|serving|sharp|o'clock|oclock|hours?|minutes?|[ap]\.?m?\.?|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|half|quarter|ish|we|i|my|our|people|guests)$`)

// isTown says whether words can be those of a town: letters, few of them, none of a day or a time.
func isTown(text string) bool {
	words := strings.Fields(strings.ReplaceAll(strings.Trim(text, " ,"), ",", " , "))
	if len(words) == 0 || len(words) > 4 || strings.ContainsAny(text, "0123456789@:;&+/") {
		return false
	}
	for _, word := range words {
		if notOfAPlace.MatchString(strings.Trim(word, ".")) {
			return false
		}
	}
	return true
}

// aboutADay says whether words say something of a day or of a time, and not only of a place.
func aboutADay(text string) bool {
	if strings.ContainsAny(text, "0123456789@") {
		return true
	}
	for _, word := range strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(" ,;()", r) }) {
		if notOfAPlace.MatchString(word) && !placeWord.MatchString(word) {
			return true
		}
	}
	return false
}

// placeWord are words that stand before a place too.
var placeWord = regexp.MustCompile(`(?i)^(?:in|at|by|of|on|my|our|first|second|third)$`)

// placeAtEnd is the longest place with a clock at the end of some words, and its zone.
func placeAtEnd(words []string) (place, zone string) {
	for from := max(len(words)-4, 0); from < len(words); from++ {
		text := placeAlone(strings.Trim(strings.Join(words[from:], " "), " ,()"))
		if text == "" || aboutADay(text) {
			continue
		}
		if zone := ZoneNamed(text); zone != "" {
			return text, zone
		}
	}
	return "", ""
}
