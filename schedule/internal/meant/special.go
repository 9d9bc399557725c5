package meant

import (
	"fmt"
	"regexp"
	"strconv"

	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/strict"
)

// meals are fields that are called like a meal: they say when it is, or what there is.
var meals = []string{"dinner", "lunch", "supper", "breakfast", "brunch", "meal", "tea", "party", "bbq", "cookout", "barbecue", "barbie", "eating"}

var saysTime = regexp.MustCompile(`(?i)\d\s*[ap]\.?m\b|\d:\d\d|\bo'clock\b|\bhalf past\b|\bquarter (?:past|to)\b|\bnoon\b|\bmidday\b|^\s*(?:on |this |next )?(?:(?:mon|tues?|wednes|thurs?|fri|satur|sun)day|tomorrow|tonight|today)\b|\bat \d`)

// isMealTime says whether a field that is called like a meal, or that is there for
// something else, holds a time of day.
func isMealTime(name string, value *strict.Node) bool {
	return value.Kind == strict.NodeText && oneOf(plainWord(name), meals...) && saysTime.MatchString(value.Text)
}

var frailWords = regexp.MustCompile(`(?i)\bpregnan|\bexpecting\b|\bbab(?:y|ies)\b|\btoddlers?\b|\binfants?\b|\bnewborn|\bchemo|\bimmun|\btransplant|\bdialysis|\bsick\b|\bill\b|\bfrail\b|\belderly\b|\bgrand(?:ma|pa|mother|father|parents)\b|\bgran(?:ny|dad|s)?\b|\bnana?\b|\boma\b|\bopa\b|\b(?:little|small|tiny) (?:kids?|children|ones?)\b|\b(?:6[5-9]|[789]\d) years\b|\bis (?:6[5-9]|[789]\d)\b|\b(?:6[5-9]|[789]\d)[- ]year`)

// special are the fields that a plan has no place for but something to say of.
func (d Day) special(group, name string, value *strict.Node) strict.Meaning {
	if group != "" && group != "guests" {
		return strict.Meaning{}
	}
	word := plainWord(name)
	yes, known := value.Says()
	switch {
	case oneOf(word, "notes", "note", "comment", "comments", "remarks", "who", "health", "special", "info", "remark", "other", "extra", "details", "about", "dietary", "diet") && frailWords.MatchString(value.Text):
		return d.frail("somebody who is very young, old, pregnant or ill makes the rules of safety stricter")
	case group == "" && oneOf(word, "frail", "elderly", "pregnant", "pregnancy", "babies", "baby", "toddlers", "seniors", "old"):
		if known && !yes {
			return strict.Meaning{Sentence: "write guests: {adults: " + d.adults() + ", frail: false}"}
		}
		return d.frail("")
	case group == "" && d.Heads != "" && value.Kind == strict.NodeNumber && oneOf(word, "adults", "adult", "grownups", "people", "kids", "kid", "children", "child"):
		line := "guests: {adults: " + d.Heads + "}"
		return strict.Meaning{Sentence: "adults and children are said within guests: write " + line, Old: name, New: line, Whole: true}
	case oneOf(word, "allergies", "allergy", "allergic", "allergens", "intolerances", "dietary", "diet", "vegetarians", "vegetarian", "vegans", "vegan"):
		return strict.Meaning{Sentence: "the plan knows nothing of allergies or diets, and nothing here keeps foods apart: write it behind a # to see it, and use boards, tongs and a part of the grate of their own"}
	case group == "" && oneOf(word, "start", "starttime", "begin", "startat", "startcooking", "begincooking", "from") && value.Kind == strict.NodeText:
		if _, err := instant.ParseClock(value.Text); err != nil {
			return strict.Meaning{Sentence: "the plan counts back from when people eat, which is serve, and says when to start: leave it out; a fire that may burn through the night is overnight: true"}
		}
		line := "earliest: " + fmt.Sprintf("%q", value.Text)
		return strict.Meaning{Sentence: "the plan counts back from when people eat, which is serve, and says when to start; so that nothing is done before, write " + line, Old: name, New: line, Whole: true}
	case group == "" && oneOf(word, "leftovers", "leftover", "drinks", "dessert", "desserts", "sauces", "music", "budget", "shopping", "decoration", "games", "salads", "salad"):
		return strict.Meaning{Sentence: "the plan does nothing with it: leave it out, or write it behind a #", Old: name, Whole: true}
	case group == "" && value.Kind == strict.NodeObject && holdsFields(value):
		return strict.Meaning{Sentence: "there is no such group; write its fields at the left margin, each on a line of its own", Instead: []string{"serve", "grill", "dishes"}}
	}
	return strict.Meaning{}
}

// holdsFields says whether a group has fields that belong to the top of a request.
func holdsFields(group *strict.Node) bool {
	for name := range group.Fields() {
		if _, ok := guessOf("", name); ok || oneOf(name, "serve", "grill", "guests", "dishes", "oven") {
			return true
		}
	}
	return false
}

// adults is how many eat, as guests has it from "adults: " on.
func (d Day) adults() string {
	if d.Heads != "" {
		return d.Heads
	}
	if d.Eaters > 0 {
		return fmt.Sprint(d.Eaters)
	}
	return "how many"
}

func (d Day) frail(why string) strict.Meaning {
	m := strict.Meaning{Sentence: "write guests: {adults: " + d.adults() + ", frail: true}"}
	if why != "" {
		m.Sentence += "; " + why
	}
	return m
}

// Eaters is how many people eat, children too, as far as a request says; 0 for nothing.
func Eaters(request *strict.Node) int {
	for name, value := range request.Fields() {
		if !isGuests(name) {
			continue
		}
		if value.Kind == strict.NodeText {
			c, _, ok := new(taker).inText(value.Text)
			if !ok {
				continue
			}
			return c.adults + c.kids
		}
		if value.Kind == strict.NodeNumber {
			n, _ := strconv.Atoi(value.Text) // what is no whole number is refused elsewhere
			return n
		}
		all := 0
		for _, n := range value.Fields() {
			k, _ := strconv.Atoi(n.Text)
			all += k
		}
		return all
	}
	return 0
}

// Heads is how many adults and children the guests of a request are, as "4, children: 2";
// empty where they are not told apart.
func Heads(request *strict.Node) string {
	guests := request.Get("guests")
	if guests != nil && guests.Kind == strict.NodeText {
		guests = guestsIn(guests)
	}
	if guests == nil {
		return headsAtTop(request)
	}
	if guests.Kind != strict.NodeObject || guests.Get("adults") == nil {
		return ""
	}
	for _, name := range []string{"children", "kids"} {
		if kids := guests.Get(name); kids != nil {
			return guests.Get("adults").Text + ", children: " + kids.Text
		}
	}
	return ""
}

// headsAtTop are adults and children that are said beside each other where guests should be.
func headsAtTop(request *strict.Node) string {
	heads := func(names ...string) string {
		for name, value := range request.Fields() {
			if oneOf(plainWord(name), names...) && value.Kind == strict.NodeNumber {
				return value.Text
			}
		}
		return ""
	}
	adults, kids := heads("adults", "adult", "grownups", "people"), heads("kids", "kid", "children", "child")
	if adults == "" || kids == "" {
		return ""
	}
	return adults + ", children: " + kids
}
