package logbook

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/unit"
)

// needless are things that are done to food and move no clock.
var needless = []string{"flipped", "flip", "turned", "rotated", "spritzed", "mopped", "basted", "seasoned", "salted", "sauced", "glazed", "trimmed", "sliced", "rested", "resting", "rubbed", "brushed", "injected", "brined", "tented", "carved",
	"sprayed", "sauce", "glaze", "spritz", "mop", "baste", "spray", "shuffled", "peppered", "oiled", "marinated", "spun"}

// needsNoNote says of what needs none that it does not.
func (n *noteReader) needsNoNote(words []string) string {
	for _, w := range words {
		if slices.Contains(needless, w) && !slices.ContainsFunc(words, noteNumber.MatchString) {
			return fmt.Sprintf("%s needs no note: the plan goes on as it is. Note what the thermometer shows, and when it goes on, is wrapped and comes off", say.Quoted(strings.Join(words, " ")))
		}
	}
	return ""
}

var flames = regexp.MustCompile(`\b(flare ?-?ups?|flaring|flared?|flames|grease fire|caught fire|burning up|(?:is|are|ribs|meat|food|chicken|it|everything|grill) on fire)\b`)

// anAnswer is what is said of a cook that no line of a log has: what to do, and what to note
// in its place. DISH stands for the dish that was named, or for the first; #165 for the
// figure of the note, or such a one.
type anAnswer struct {
	said     *regexp.Regexp
	do, note string
	beside   string // in place of do, where a figure was noted beside it; empty for do
}

// answers are taken in their order: the first that fits.
var answers = []anAnswer{
	{flames, "Flames: lid on, all vents shut, stand back, never water; no look for 15 min",
		"Then note what you did: both vents shut, DISH aside if it is off, fire out if it went out", ""},
	{regexp.MustCompile(`\b(frozen|not thawed|unthawed|isn't thawed|ice (in|inside)|icy|full of ice)\b`),
		"Leave it on, with the grate at 325 °F or more; never off to thaw. Giblets come out when they are loose. Measure the coldest place before it comes off", "Note what it reads there: DISH coldest #165", ""},
	{regexp.MustCompile(`\bleft ?overs?\b`),
		"Into the refrigerator, in shallow pans, within 2 hours of the fire, 1 hour above 90 °F outside. What stood longer is thrown away", "Note what went in: DISH in the fridge", ""},
	{regexp.MustCompile(`\bpower (cut|is out|out|went|failed|failure|outage)\b|\bno (power|electricity)\b|\bblackout\b`),
		"Then an oven does not hold and a refrigerator stays shut. Measure what waits in the oven, just under its surface, now", "Note what you read: DISH surface #150", ""},
	{regexp.MustCompile(`\b(stirred|raked|shook|shuffled|spread|moved|pushed) (the |up |my )*(coals?|charcoal|fire)\b`),
		"Coals that were moved need no note. Ash that fell does: cleared ash", "In 15 min note what the grate reads: grate #250", ""},
	{regexp.MustCompile(`\b(off by|reads? (too |\d+ )?(degrees )?(high|low)|reading (too )?(high|low)|out of calibration|needs calibrating)\b`),
		"A probe that is off: note the true figures from now on, what it shows put right. What it read before stands in the log: undo takes the last note back", "Note DISH 152, or grate 250", ""},
	{regexp.MustCompile(`\bstill (on|at) (the )?table\b`), "Since when is it on the table?", "Note that, it is what counts: served at 6:30 PM", ""},
	{regexp.MustCompile(`\b(not|isn't|isnt|aren't|arent) (quite |very |that |really )*(soft|tender|crisp)\b|\b(still |too |bit |a little )+(hard|crunchy|tough)\b|\bneeds? (another|a few more|some more|\d+ more)\b`),
		"Not done: leave it on, and look again", "Note it when it comes off: DISH off", ""},
	{regexp.MustCompile(`\b(put|added|threw|add|dropped) (on |in )?\d+ more( on| in)?$`), "More of what?", "Note added 20 lit coals, or added 20 unlit coals", ""},
	{regexp.MustCompile(`\boven (is )?(back )?on\b|\b(turned|switched) (the )?oven (back )?on\b`), "What does a thermometer in it read?", "Note that, not what it is set to: oven #170", ""},
	{regexp.MustCompile(`\b(wet|damp|soaked|soggy|moist) (coals?|charcoal|briquettes)\b|\b(coals?|charcoal|briquettes|bag)( is| are| was| were| got| all| pretty| really| a bit| getting)* (wet|damp|soaked|soggy|moist)\b`),
		"Wet coals smoke and hold no heat. Light dry ones in a chimney, 20 min, and add them when they are gray; food goes on once the smoke is thin", "Note what you add, and what the grate reads: added 30 lit coals, grate #225", ""},
	{regexp.MustCompile(`\bpans?\b.*\b(refill(ed)?|filled|topped|full|added|poured)\b|\b(refill(ed)?|filled|topped( up)?|more water|added water|poured water)\b.*\b(pans?|water)\b|\bwater (added|in|refilled)\b`),
		"A filled water pan needs no note. It takes heat at first: leave the vents for 20 min", "Then note what the grate reads: grate #250", ""},
	{regexp.MustCompile(`\bpans?\b.*\b(dry|empty|boiled|evaporated|out|low|burn(ed|t|ing)?)\b|\b(dry|empty) (water |drip )?pan\b|\bno (more )?water\b|\bout of water\b|\bwater('s| is| has| was| all)* (gone|out|evaporated|boiled)\b`),
		"A dry pan lets the grate run hotter. Fill it with hot water, slowly, and none on the coals: steam burns. With hot fat in it leave it dry. Then leave the vents for 20 min", "Note what the grate reads: grate #250", ""},
	{regexp.MustCompile(`\b(foil|paper|wrap|wrapping|wrapper)\b.*\b(torn|tore|tears?|ripped|rip|open(ed)?|leak(s|ed|ing)?|holes?|burst|split|fell off|came (off|loose|undone))\b|\b(tore|ripped|torn|hole in|holes in|poked) .*\b(foil|paper|wrap|wrapping)\b`),
		"Wrap it again, in a second sheet, over a pan and away from the fire: hot juice runs out. Until then it cooks slower", "Then note: DISH wrapped foil. If you leave it open: DISH unwrapped", ""},
	{regexp.MustCompile(`\b(snake|ring|fuse)\b.*\b(broke|broken|gap|collapsed|fell|slid|apart|interrupted|stopped|went out|out|burned past|skipped|hole)\b|\b(gap|hole|break) in (the )?(snake|ring|fuse|coals)\b|\bcoals? (don't|dont|do not|no longer|aren't|arent) touch\b`),
		"Push the pieces together till they touch, the lit ones against the unlit: that needs no note. Read the grate in 20 min", "Note what it reads: grate #240. If it has gone out, note when: fire out at 3:10; and what you pour: added 10 lit coals", ""},
	{regexp.MustCompile(`\b(probe|thermometer|thermo|tip|sensor)\b.*\b(in|on|against|into|hit|hitting|touch(ing|ed|es)?|near|through|by|was at)\b.* ?\b(fat|bones?|pan|foil|grate|gristle|air|cavity|surface|outside|wrong (place|spot|butt|rack|piece|one|dish))\b|\bwrong (reading|number|figure|temp|place|spot)\b|\b(probe|thermometer) (was |is )?(in )?(the )?wrong\b|\bnot (in|deep) (far |deep )?enough\b`),
		"What it read does not count then. Take it back: undo takes the last note back; put a # before an older one. Measure again in the middle, clear of fat and bone", "Note the new one: DISH 152", ""},
	{regexp.MustCompile(`\b(stall(ed|ing|s)?|plateau(ed)?)\b|\b(hasn't|hasnt|has not|not) (moved|budged|moving|budging|changed)\b`), "A stall needs no note: it is expected", "Note what it reads, such as DISH #158", ""},
	{regexp.MustCompile(`\b(will|going to|about to|soon|shortly|planning|plan to|almost time|in (a |the next )?(\d+|few|couple of|half an|an|an? quarter of an) (min|minutes|mins|hours?|hrs?))\b`),
		"A note tells what was read or done", "Note it once it is done: DISH on, DISH off", ""},
	{regexp.MustCompile(`\b(on|back|over) (at|in) \d{3}\b`), "Is that the heat of the grate, or a time?", "Note DISH on, and grate 250; with a time: DISH on at 2:25 PM", ""},
	{regexp.MustCompile(`\b(off|pulled|out) \d{3}\b`), "Is that what it read, or a time?", "Note DISH off at #203; with a time: DISH off at 2:03 PM", ""},
	{regexp.MustCompile(`\b(raw|uncooked|forgot|forgotten|left|sat|lay|sitting)\b.*\b(counter|fridge|refrigerator|sun|car|table|out|overnight|all (night|morning|day|afternoon))\b|\bout of (the )?(fridge|refrigerator)\b`),
		"Raw, and out of the refrigerator for over 2 hr, or 1 hr above 90 °F: throw it away, and do not cook it. Heat does not mend that", "Less, or not sure? Note since when: DISH on the counter since 1:00 PM", ""},
	{regexp.MustCompile(`\b(under ?-?cooked|under ?-?done|raw|pink|bloody|not (quite |nearly )?(done|cooked|ready)|isn't (done|cooked|ready)|cold in the middle|needs longer|needs more time)\b`),
		"Do not eat it yet. Put it back over heat, or into an oven at 325 °F, and measure its coldest place", "Note what you do and read: DISH back on, DISH to oven 325, DISH coldest #150",
		"Its color is no sign: only what its coldest place reads counts. Until that has its figure leave it on, or put it back over heat"},
	{regexp.MustCompile(`\b(oven (is |was |went |got |has |have )?(turned |switched |shut )?(itself )?(off|out|dead|broken?|cold)|oven (switched|shut|cut|turned) (itself )?off|(switched|turned|shut) (the )?oven off|no oven)\b`),
		"Then the oven does not hold. Measure what is in it, just under its surface, now; below 140 °F a warm oven does not mend it", "Note what you read: DISH surface #150, and with a thermometer in the oven: oven 120", ""},
	{regexp.MustCompile(`\b(too|not|isn't|isnt|never) (\w+ )?(cool|cold|low|weak|hot|enough)( enough)? (for|to) (the |a )?sear(ing)?\b`),
		"Take off what has its figure; it waits off the heat for the sear. Heap what burns, or light a chimney: pour it when it is gray, 20 min", "Note what you do and read: DISH off, added 60 lit coals, grate #400", ""},
	{regexp.MustCompile(`\b(grate|grill|smoker|pit|fire|coals)('s| is| are|'re| was| were)? ?(stone |ice )?cold\b`),
		"A cold grate has been without fire for an hour or so", "Note what it reads, such as grate #90: that tells how long. If you know when the fire went out, note that: fire out at 3:10", ""},
	{regexp.MustCompile(`\b(fire|coals|grill|smoker|grate|temp|temperature|heat|pit|it)('s| is| are|'re)? ?(really |very |way |still |nearly |almost |getting |running )*(dying|dying down|dropping|falling|low|weak|struggling|fading|going out|nearly out|almost out|going|going strong|out of control|cooling|cool|hot|too hot|climbing|rising|racing|spiking|spiked|high|steady|stable|good|stuck)\b|\b(running|too) (hot|cold|low)\b|\b(can't|cant|cannot|won't|wont|doesn't|doesnt|couldn't) (keep|hold|get|stay|go)\b.*\b(temp|temperature|it|heat|up|over|above|under|below)\b|\b\d+ (and )?(dropping|falling|rising|climbing)\b|\b\d+ (degrees )?(hot|cold|over|under|low|high)\b`),
		"How warm is it at the grate?", "Note what it reads: grate #210. If the fire is out: fire out, with the time, such as fire out 20 min ago", ""},
	{regexp.MustCompile(`\b(coals?|charcoal|briquettes|bag|fuel)\b.*\b(almost|nearly|running) (gone|out|empty|low)\b|\b(almost|nearly|running) (out|low) (of|on) (coals?|charcoal|briquettes|fuel)\b|\blast (bag|of the bag)\b`),
		"In the grill? Add coals now, lit ones if the grate sinks. In the bag? Note it when none is left", "Note added 20 lit coals, grate #225, or bag empty", ""},
	{regexp.MustCompile(`\b(half|most|some|many|lots?|third|quarter) (of )?(the |my |all )?(lit )?(coals?|charcoal|briquettes)( is| are| has| have| were)? (burned|burnt|gone|dead|out|ash|used)\b`),
		"How warm is it at the grate?", "Note what it reads, and what you add: grate #230, added 20 lit coals. If the fire is out, note when: fire out at 3:10", ""},
	{regexp.MustCompile(`\b(fire|coals|flames?)\b.*\b(out|dead|died|gone|cold)\b`),
		"When, at the earliest, may it have gone out?", "Note that time: fire out at 3:10, or fire out 2 hours ago; if it was just now: fire out", ""},
	{regexp.MustCompile(`\b(knocked|tipped|fell) .*over\b`),
		"Coals outside the grill: keep everybody back, leave what burns, and call the fire service", "Then note: fire out, and DISH aside", ""},
	{regexp.MustCompile(`\b(wood|chunks?|chips|hickory|oak|apple|cherry|mesquite|pecan|smoke|smoky)\b`), "Smoking wood needs no note", "Note coals that you add: added 20 coals", ""},
	{regexp.MustCompile(`\b(indirect|direct|cool(er)? side|hot(ter)? side|other side|upper rack|top rack)\b|\b(over|beside|off|above|from|off of|next to|near|away from) (the )?(hot |lit )?(coals|fire|charcoal)\b`),
		"Where it lies needs no note", "If it went on just now: DISH on. If it is off the grill: DISH off", ""},
	{regexp.MustCompile(`\b(coals|charcoal|chimney)( are| is|s)? (all )?(ready|grey|gray|white|glowing|good|lit|started|going)\b|\b(lit|lighting|light|started|starting) (the |a |an |another |new |up |\d+ )*(chimney|coals|briquettes|charcoal)\b`), "Coals in a chimney do not count yet", "Note the coals when they go in: added 30 lit coals, or added a chimney of coals; and lit, when the fire is lit", ""},
	{regexp.MustCompile(`\b(bends?|bent|bending|bend test|crack(s|ed|ing)?|look(s|ing)? \w+|looks? like|tender|probes? (like|tender)|like butter|bark|nice color|smell(s|ing)?|cooked|done|finished|ready|run clear|pop-?up|crispy|jiggl(y|es))\b`),
		"Is it off the grill? Then note: DISH off", "Still on? Note what its middle reads, such as DISH #165, if you measure", ""},
	{regexp.MustCompile(`\b(probe|thermometer|thermo|battery)\b.*\b(lost|broke|broken|died|dead|fell|came out|out|error|err|empty|blank|gone|ate|melted|burnt|burned|off|slipped|nothing|hhh|lll|unplugged|disconnected|weird|wrong|works?|working|low)\b|\b(lost|broke|dropped|no|ate|melted|unplugged) (\w+ )?(probe|thermometer)\b`),
		"A lost or broken probe needs no note: without readings the plan goes by its forecast. What it showed when it was out does not count: undo takes the last note back", "Measure with another thermometer when you can, and note what it reads: DISH 152", ""},
	{regexp.MustCompile(`\b(probe|thermometer|thermo|gauge|dial)\b`),
		"What does it read, and where is it?", "Note DISH #152 of meat, grate 250 of the air at the grate, lid 300 of the gauge in the lid", ""},
	{regexp.MustCompile(`\b(dog|cat|dropped|fell|floor|ground|stolen|burnt|burned|ruined|spoiled|charred)\b`),
		"Will it still be eaten? Then it needs no note", "If not, note: DISH called off", ""},
	{regexp.MustCompile(`\b(windy|wind|winds|gusty|gusts?|blowing|breezy|breeze)\b`), "How windy is it?", "Note it as wind #12 mph, wind 20 km/h or wind calm", ""},
	{regexp.MustCompile(`\b(guests?|people|everyone|company|they|late|delayed|hungry|running behind|running late|more minutes)\b`), "When do people eat?", "Note it with its time, such as dinner 7 PM, or dinner 1 hour later", ""},
	{regexp.MustCompile(`\b(chimneys?|coals?|charcoal|briquettes|unlit|handfuls?)\b`), "How many, and do they burn?", "Note the coals when they go in: added 30 lit coals, added 20 unlit coals, or added a chimney of coals; took out 20 coals; and lit, when the fire is lit", ""},
	{regexp.MustCompile(`\b(lid|door|handle|hinge|wheel|leg)\b.*\b(stuck|jammed|broke|broken|won't|wont)\b`), "That needs no note: the day goes by what the grate reads", "Note it: grate #250; and how the vents stand: top vent 1/4", ""},
	{regexp.MustCompile(`\bstuck\b`), "A stall needs no note: it is expected", "Note what it reads, such as DISH #158", ""},
	{regexp.MustCompile(`\b(snow(ing|s)?|hail(ing)?|sleet)\b`), "Snow and hail take heat as rain does", "Note it as: raining; and when it is over: rain stopped", ""},
	{regexp.MustCompile(`\b(undo|scratch|take (it|that) back|mistake|oops|delete|wrong)\b`), "To take back the last line: undo, and nothing else in the note", "Then note it as it was", ""},
}

// answeredWords are the words that answers look for.
var answeredWords = func() string {
	var all strings.Builder
	for _, a := range answers {
		all.WriteString(a.said.String())
	}
	return all.String()
}()

// answer says what to do and to note in place of what cannot be noted; empty where nothing is
// known of it.
func (n *noteReader) answer(words []string) string {
	said := strings.Join(words, " ")
	if unknownWhen.MatchString(said) && n.coldGrate() {
		return "that the fire is out stands in the log already: the day reckons by what the grate read when it died. Nothing was noted. When it burns again note: relit"
	}
	if vent := ventAnswer(said); vent != "" && !flames.MatchString(said) {
		return vent
	}
	a, ok := answerOf(said)
	if !ok {
		return ""
	}
	text := a.do + end(a.do) + "Nothing was noted. " + a.note
	if n.day.Units == unit.Metric {
		text = strings.Replace(text, "wind #12 mph, wind 20 km/h", "wind #20 km/h, wind 12 mph", 1)
	}
	return n.inWords(words, text)
}

var unknownWhen = regexp.MustCompile(`\b(fire|coals)\b.*\b(out|dead|died)\b.*\b(know|idea|sure|when)\b`)

// deadGrateC is colder than the grate over any fire that burns, degC (safety: half a clock's speed below 200 °F; assumption).
const deadGrateC = 70

// coldGrate says that the last reading of the grate was of a dead fire.
func (n *noteReader) coldGrate() bool {
	cold := false
	for _, e := range n.log {
		if e.Kind == Grate {
			cold = e.C < deadGrateC
		}
	}
	return cold
}

// besideFigure is what is said where a figure was noted and the rest of the note answered.
func (a anAnswer) besideFigure() string {
	if a.beside != "" {
		return a.beside
	}
	return a.do
}

// end stands behind a sentence: a question has its own.
func end(sentence string) string {
	if strings.HasSuffix(sentence, "?") {
		return " "
	}
	return ". "
}

func answerOf(said string) (anAnswer, bool) {
	k := slices.IndexFunc(answers, func(a anAnswer) bool { return a.said.MatchString(said) })
	if k < 0 {
		return anAnswer{}, false
	}
	return answers[k], true
}

// aboutFigure says of a figure that it is not what was read.
var aboutFigure = regexp.MustCompile(`\b(over|above|under|below|keep|not|no|than|degrees? (off|hot|cold)|hot|ago|hours?|min|minutes)\b`)

var sampleFigure = regexp.MustCompile(`#(\d+)`)

// inWords is a text about the dish and the figure of a note.
func (n *noteReader) inWords(words []string, text string) string {
	figure := "$1"
	for _, w := range words {
		if noteNumber.MatchString(w) && len(w) > 1 && !aboutFigure.MatchString(strings.Join(words, " ")) {
			figure = w
		}
	}
	return strings.ReplaceAll(sampleFigure.ReplaceAllString(text, figure), "DISH", n.dishMeant(words))
}

// dishMeant is the dish that words name, or the first of the day.
func (n *noteReader) dishMeant(words []string) string {
	for _, w := range words {
		if ids := n.alike(w); len(ids) == 1 && !isSmall(w) {
			return ids[0]
		}
	}
	if len(n.day.Dishes) > 0 {
		return n.day.Dishes[0].ID
	}
	return "brisket"
}
