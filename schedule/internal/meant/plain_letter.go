package meant

import (
	"regexp"
	"strings"
	"time"

	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/strict"
)

// Letter is a request in a text that is no document of any form: a letter, a message, notes with
// a heading here and there. As [Plain], but lines may begin with a name and a colon.
func Letter(data []byte, now time.Time) (request *strict.Node, left []*strict.Node) {
	if len(strings.TrimSpace(string(data))) == 0 {
		return nil, nil
	}
	lines, fields := 0, 0
	for _, line := range strings.Split(string(data), "\n") {
		if strings.TrimSpace(line) != "" {
			lines++
		}
		if fieldLine.MatchString(line) {
			fields++
		}
	}
	if 2*fields > lines || len(data) > maxPlain || strings.ContainsAny(strings.TrimSpace(string(data))[:1], "{[") || strings.Contains(string(data), "\x00") || logHead.Match(data) {
		return nil, nil
	}
	n := note{now: now, letter: true, form: strict.NewGroup(1)}
	for _, part := range splitNote(string(data)) {
		n.line = part.Line
		if strings.HasPrefix(part.Text, "{") {
			if dish := inForm(part.Text, n.line); dish != nil {
				n.dishes = append(n.dishes, dish)
				continue
			}
		}
		if name, value, ok := strings.Cut(part.Text, ": "); ok && fieldLine.MatchString(part.Text) {
			n.named(strings.TrimSpace(name), strings.TrimSpace(value))
			continue
		}
		n.hear(part.Text)
	}
	return n.request(), n.left
}

// inForm is a group or a list of the form in one line; nil for another text.
func inForm(text string, line int) *strict.Node {
	if !strings.HasPrefix(text, "{") && !strings.HasPrefix(text, "[") {
		return nil
	}
	tree, faults := strict.ParseDocument([]byte(strings.Repeat("\n", max(line-1, 0))+"x: "+text), strict.MaxRequestBytes)
	if tree == nil || faults.Len() > 0 || tree.Kind != strict.NodeObject {
		return nil
	}
	return tree.Get("x")
}

// named takes a line with a name of its own: "Place: Albuquerque".
func (n *note) named(name, value string) {
	g, known := guessOf("", name)
	word := plainWord(name)
	if form := inForm(value, n.line); isForm(name) && form != nil { // a line as a message gave it
		n.form = n.form.WithAt(word, n.line, form)
		return
	}
	if kind, more, ok := strings.Cut(value, ", "); ok && timesIn.MatchString(more) && (grillWithin.MatchString(name) || word == "cooker") {
		n.hear(more)
		value = kind
	}
	switch {
	case oneOf(word, "subject", "re", "betreff", "from", "to", "title"):
		n.add(&n.others, name+" "+value)
	case isZone(name):
		n.add(&n.places, value)
	case word == "grill", known && strings.HasPrefix(g.right, "grill:"), oneOf(word, "cooker", "smoker", "bbq", "barbecue"):
		n.add(&n.grill, value)
	case isGuests(name):
		n.add(&n.guests, value)
	case knownFood(name):
		n.add(&n.dishes, name+", "+value)
	default:
		n.hear(value)
	}
}

const (
	// MonthNames are those of a month and their short forms, for a pattern without regard to case.
	MonthNames = `jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?`
	foodTimes  = `(?:(?:we |let's |to )?(?:eat(?:ing)?|food|dinner|lunch|supper|meal|serve|serving|ready)\s+(?:is\s+|it\s+)?)?`
)

var (
	daysIn       = regexp.MustCompile(`(?i)\b(?:on |this |for )*(?:(?:next )?(?:mon|tues|wednes|thurs|fri|satur|sun)day|tomorrow|tonight|today|(?:on |this )(?:sat|sun|fri|thu|wed|tue|mon)|sat(?:$|[?,])|(?:thanksgiving|christmas|new year'?s|labor|memorial|mother'?s|father'?s)(?: day| eve)?)(?:,? (?:the )?\d{1,2}(?:st|nd|rd|th)?(?: of)?(?: (?:` + MonthNames + `))?\b|,? (?:` + MonthNames + `)\.? \d{1,2}(?:st|nd|rd|th)?)?(?:,? 20\d\d\b)?|\b(?:on |the )*(?:\d{1,2}(?:st|nd|rd|th)(?: (?:of )?(?:` + MonthNames + `))?|(?:` + MonthNames + `)\.? \d{1,2}(?:st|nd|rd|th)?|\d{1,2} (?:` + MonthNames + `))\b(?:,? 20\d\d\b)?`)
	timesIn      = regexp.MustCompile(`(?i)\b` + foodTimes + `(?:at |around |about |by |@ ?)*(?:\d{1,2}(?::\d{2})?\s?(?:[ap]\.?m\b\.?|o'clock|h\b)|\d{1,2}:\d{2}|noon\b|midday\b|half (?:past )?(?:` + strings.Join(hourNames, "|") + `)\b)(?: (?:in the (?:afternoon|evening|morning)|sharp))?|\b(?:at|around|about) \d{1,2}(?:$|[,!?;]|\.(?:\s|$)| (?:or so|at|in|on)\b)`)
	eatWord      = regexp.MustCompile(`(?i)^(?:(?:we |let's |to )?(?:eat(?:ing)?|food|dinner|lunch|supper|meal|serve|serving|ready)\s+(?:is\s+|it\s+)?)`)
	placeIn1     = regexp.MustCompile(`(?i)(?:\b(?:at|in|near|to) )?(?:\b(?:our|my) (?:place|house|home|yard|backyard) )?\b(?:we(?:'re| are|re) )?(?:in|near) (\pL[\pL.' ]+?(?:, ?\pL[\pL ]+)?)\s*$`)
	crowdIn      = regexp.MustCompile(`(?i)\b(?:(?:about|around|for|feeding|its|it's|there (?:are|will be)|we(?:'re| are)|party of) )*(?:\d{1,3}(?: ?(?:-|–|to) ?\d{1,3})? (?:of us|people|ppl|guests|adults|plates|persons|grown-?ups|eaters)(?:(?:,? (?:and|plus|with) |, )\d{1,2} (?:\pL+ )?(?:kids|children|teens|teenagers|toddlers)(?: under \d+)?)?)|\b(?:party of|somos|we are|we're|there are) \d{1,3}\b|\bfor \d{1,3}(?:[,.]|$)`)
	crowdSaid    = regexp.MustCompile(`(?i)\b(?:party of|somos|we are|we're|there are|for) (\d{1,3})\b`)
	otherHead    = regexp.MustCompile(`(?i)\b(?:ppl|plates)\b`)
	onlyGrilling = regexp.MustCompile(`(?i)^(?:bbq|barbecue|barbie|braai|grill(?:ing)?)$`)
	timedStep    = regexp.MustCompile(`^(\d{1,2}:\d{2})\s+(\pL.*)$`)
	stillFrozen  = regexp.MustCompile(`(?i)^(?:the )?(\pL+?)(?:s)?(?: (?:is|are)|'s|'re) (?:(?:still|all|both|currently) )*(?:frozen|in the freezer)(?: solid| hard)?(?: (?:right )?now| at the moment| today)?$`)
	allOfIt      = regexp.MustCompile(`(?i)^(?:it|they|that|everything|all|meat)$`)
	roughWord    = regexp.MustCompile(`(?i)^(?:at |around |about |by )+(\d{1,2}:\d{2})`)
	aBarbecue    = regexp.MustCompile(`(?i)^(?:bbq|barbecue|barbie|braai|cookout|party)(?:[\s,]+|$)`)
	notEarlier   = regexp.MustCompile(`(?i)\b(?:not before|no earlier than|at the earliest|earliest)\b`)
	someVeggies  = regexp.MustCompile(`(?i)^(?:\d+|one|two|three|four|some|a few) (?:veggies|vegetarians|vegans)\b(?: (?:are )?coming| too| among (?:us|them))*$`)
	byThen       = regexp.MustCompile(`(?i)\b(?:need(?:s|ed)?|sliced|carved|not before|at the earliest|earliest|doors|arrive|get up|wake)\b`)
	restSaid     = regexp.MustCompile(`(?i)^(?:then |and |let (?:it|them) )?rest(?:ed|ing|s)?(?: it| them| time)?(?: for| of|:)?(?: about| at least)? (\d{1,3} ?(?:min(?:ute)?s?|h(?:ou)?rs?|h))$`)
	pitSaid      = regexp.MustCompile(`(?i)^(?:(?:i |we )?(?:run|hold|keep|set|cook(?:ed|ing)?|smok(?:e|ed|ing))(?: (?:the|my|our|it|them|all|everything))?(?: (?:pit|grill|smoker|cooker|fire|grate))?|pit|(?:pit|grate|cooking|grill) temp(?:erature)?)(?: (?:at|to|around|about|of|is))* (\d{3})\s*(?:°|degrees |deg )?\s*([FC]?)$`)
	airSaid      = regexp.MustCompile(`(?i)^(?:the )?(?:outside|outdoor|ambient|air|weather|forecast)(?: temp(?:erature)?)?(?: is| says| of| will be|:)?(?: about| around| ca\.?)? (\d{2,3})\s*(?:°|degrees )?\s*([FC])\b.{0,12}$`)
	onGrill      = regexp.MustCompile(`(?i)\s*\bon (?:the|my|our|a) ((?:\pL+ )?(?:kettle|smoker|kamado|bbq|barbecue|offset))\b`)
)

var hourNames = []string{"one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}

// apart takes a sentence apart in which day, time, place, guests and food stand beside each
// other; false where something in it is not understood, and then nothing is taken.
func (n *note) apart(part string) bool {
	try, rest := *n, instant.ClockSaid(part)
	if m := onGrill.FindStringSubmatch(rest); m != nil {
		try.add(&try.grill, m[1])
		rest = strings.Replace(rest, m[0], " ", 1)
	}
	for _, take := range []struct {
		what *regexp.Regexp
		to   *[]*strict.Node
		says func(string) string
	}{
		{crowdIn, &try.guests, peopleIn},
		{daysIn, &try.when, func(s string) string { return strings.Trim(s, " ?,") }},
		{timesIn, &try.when, func(s string) string { return roughWord.ReplaceAllString(eatWord.ReplaceAllString(s, ""), "$1") }},
	} {
		if m := take.what.FindString(rest); m != "" {
			try.add(take.to, take.says(strings.Trim(m, " ,.")))
			rest = strings.Replace(rest, m, " ", 1)
		}
	}
	rest = strings.Join(strings.Fields(rest), " ")
	if m := placeIn1.FindStringSubmatch(rest); m != nil && placeNamed(m[1]) != "" {
		try.add(&try.places, placeNamed(m[1]))
		rest = strings.TrimSpace(strings.TrimSuffix(rest, m[0]))
	}
	rest = strings.Trim(intro.ReplaceAllString(strings.Trim(rest, " ,.!?:;"), ""), " ,.!?:;")
	if m := aBarbecue.FindString(rest); m != "" {
		try.add(&try.others, strings.Trim(m, " ,"))
		rest = strings.Trim(strings.TrimPrefix(rest, m), " ,")
	}
	switch {
	case rest != "" && !knownWithin(rest) && placeNamed(rest) != "":
		try.add(&try.places, placeNamed(rest))
	case !strings.Contains(rest, ",") && grillWithin.MatchString(rest) && len(try.grill) == 0 && !knownWithin(rest) && !onlyGrilling.MatchString(rest):
		try.add(&try.grill, rest)
	case needsWords.MatchString(rest) && Dish(rest, 0, 0).Node == nil, vegetarians.MatchString(rest) && !knownWithin(rest):
		try.add(&try.others, rest)
	case rest == "" || len(strings.Fields(rest)) < 4 && !digits.MatchString(rest) && !knownWithin(rest):
		if rest != "" {
			try.add(&try.others, rest)
		}
	case try.areDishes(rest):
	case try.inPieces(rest):
	default:
		return false
	}
	*n = try
	return true
}

// placeNamed is a place with a clock as it is written there, though in small letters.
func placeNamed(text string) string {
	if place := placeIn(text); place != "" {
		return place
	}
	words := strings.Fields(text)
	for k, word := range words {
		words[k] = strings.ToUpper(word[:1]) + word[1:]
	}
	if place := strings.Join(words, " "); instant.ZoneNamed(place) != "" {
		return place
	}
	return ""
}

// peopleIn is how many come, in words that are read of guests.
func peopleIn(said string) string {
	said = otherHead.ReplaceAllString(strings.Trim(said, " ,."), "people")
	if m := crowdSaid.FindStringSubmatch(said); m != nil && !adultNoun.MatchString(strings.Replace(said, m[0], "", 1)) {
		return m[1] + " people"
	}
	return leadCrowd.ReplaceAllString(said, "")
}

var leadCrowd = regexp.MustCompile(`(?i)^(?:(?:for|feeding|its|it's|there are|there will be|we're|we are|party of)\s+)+`)

// aside takes a part that says something of a dish, or of a step, and is none itself.
func (n *note) aside(part string) bool {
	if m := stillFrozen.FindStringSubmatch(part); m != nil && n.frozen(m[1]) {
		return true
	}
	if m := timedStep.FindStringSubmatch(part); m != nil && n.letter { // the plan says when; what is put on is a dish
		food := strings.Replace(strings.Replace(m[2], " on (", " (", 1), " off (", " (", 1)
		if one := Dish(food, 0, 0); one.Node != nil {
			n.add(&n.dishes, food)
			part = m[1] + " for " + food
		}
		n.add(&n.others, part)
		return true
	}
	if m := timesIn.FindString(part); m != "" && notEarlier.MatchString(part) && n.form.Get("earliest") == nil {
		if w, err := instant.ParseWhen(eatWord.ReplaceAllString(strings.Trim(m, " ,."), ""), n.now); err == nil && w.Time != nil {
			n.form = n.form.WithAt("earliest", n.line, strict.NewText(w.Time.HhMm(), n.line))
			n.add(&n.others, part+" (read as: nothing is done before "+w.Time.HhMm()+")")
			return true
		}
	}
	if m := restSaid.FindStringSubmatch(part); m != nil && n.form.Get("rest") == nil {
		n.form = n.form.WithAt("rest", n.line, strict.NewText(strings.TrimSpace(m[1]), n.line))
		return true
	}
	if m := pitSaid.FindStringSubmatch(part); m != nil && n.form.Get("pit temp") == nil {
		n.form = n.form.WithAt("pit temp", n.line, strict.NewText(m[1]+" "+heatUnit(strings.ToUpper(m[2]), m[1]), n.line))
		return true
	}
	if m := airSaid.FindStringSubmatch(part); m != nil && n.form.Get("weather") == nil {
		n.form = n.form.WithAt("weather", n.line, strict.NewGroup(n.line).With("air", strict.NewText(m[1]+" "+heatUnit(strings.ToUpper(m[2]), m[1]), n.line)))
		return true
	}
	if byThen.MatchString(part) && len(n.when) > 0 && timesIn.MatchString(part) {
		n.add(&n.left, part)
		return true
	}
	if someVeggies.MatchString(part) || vegetarians.MatchString(part) && !knownWithin(part) && len(strings.Fields(part)) < 6 && !adultNoun.MatchString(part) {
		n.add(&n.others, part)
		return true
	}
	if said := peopleIn(part); said != part && crowdIn.MatchString(part) && n.isGuests(said) && len(strings.Fields(part)) < 4 {
		n.add(&n.guests, said)
		return true
	}
	return false
}

// frozen has the dishes that a word names, or all that were named, go on from the freezer; false where
// there is none.
func (n *note) frozen(word string) (found bool) {
	for _, dish := range n.dishes {
		if dish.Kind == strict.NodeText && (allOfIt.MatchString(word) || strings.Contains(strings.ToLower(dish.Text), strings.ToLower(word))) {
			if !frozenSaid.MatchString(dish.Text) {
				dish.Text += ", frozen"
			}
			found = true
		}
	}
	return found
}

var frozenSaid = regexp.MustCompile(`(?i)\b(?:frozen|freezer)\b`)

// oneDay are the parts that say when, without a day that is said twice.
func (n *note) oneDay() (when []*strict.Node) {
	seen := map[string]bool{}
	for _, part := range n.when {
		w, err := instant.ParseWhen(part.Text, n.now)
		if err == nil && w.Day != nil && w.Time == nil && seen[w.Day.String()] {
			continue
		}
		if err == nil && w.Day != nil {
			seen[w.Day.String()] = true
		}
		when = append(when, part)
	}
	return when
}

var (
	inBrackets = regexp.MustCompile(`\([^()]*\)`)
	weightList = regexp.MustCompile(`(?i)` + oneWeight + `(?:\s*(?:,|&|and|,\s*and)\s*` + oneWeight + `)+`)
	hide       = strings.NewReplacer(",", "\x01", "&", "\x02", "and", "\x03", "+", "\x04")
	show       = strings.NewReplacer("\x01", ",", "\x02", "&", "\x03", "and", "\x04", "+")
)

// splitDishes are the dishes of a text; what stands in brackets, or is a list of weights, is of one.
func splitDishes(text string) []string {
	text = inBrackets.ReplaceAllStringFunc(text, hide.Replace)
	text = weightList.ReplaceAllStringFunc(text, func(s string) string {
		if m := severalWeights.FindStringSubmatch("x " + s); m == nil {
			return s
		}
		return hide.Replace(s)
	})
	texts := betweenDishes.Split(text, -1)
	for k := range texts {
		texts[k] = show.Replace(texts[k])
	}
	return texts
}
