package logbook

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"example.com/cookday/schedule/internal/say"
)

// needless are things that are done to food and move no clock.
var needless = []string{"flipped", "flip", "turned", "rotated", "spritzed", "mopped", "basted", "seasoned", "salted", "sauced", "glazed", "trimmed", "sliced", "rested", "resting", "rubbed", "brushed", "injected", "brined", "tented", "carved"}

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

// answers are what is said of a cook that no line of a log has, and what to note in its
// place. DISH stands for the dish that was named, or for the first.
var answers = []struct {
	said *regexp.Regexp
	text string
}{
	{flames,
		"Flames: lid on, all vents shut, stand back, never water; no look for 15 min. Nothing was noted. Then note what you did: both vents shut, DISH aside if it is off, fire out if it went out"},
	{regexp.MustCompile(`\b(on|back|over) (at|in) \d{3}\b`), "Is that the heat of the grate, or a time? Nothing was noted. Note DISH on, and grate 250; with a time: DISH on at 2:25 PM"},
	{regexp.MustCompile(`\b(under ?-?cooked|under ?-?done|raw|pink|bloody|not (quite )?(done|cooked|ready)|isn't (done|cooked|ready)|cold in the middle|needs longer|needs more time)\b`),
		"Do not eat it yet. Put it back over heat, or into an oven at 325 °F, and measure its coldest place. Nothing was noted. Note what you do and read: DISH back on, DISH to oven 325, DISH coldest 150"},
	{regexp.MustCompile(`\b(oven (is |was |went |got )?(turned |switched )?(itself )?(off|out|dead|broken?|cold)|oven (switched|shut|cut) (itself )?off|(switched|turned) (the )?oven off|no oven)\b`),
		"Then the oven does not hold. Measure what is in it, just under its surface, now; below 140 °F a warm oven does not mend it. Nothing was noted: note what you read: DISH surface 150, and with a thermometer in the oven: oven 120"},
	{regexp.MustCompile(`\b(grate|grill|smoker|pit|fire|coals)('s| is| are|'re| was| were)? ?(stone |ice )?cold\b`),
		"A cold grate has been without fire for an hour or so. Nothing was noted. Note what it reads, such as grate 90: that tells how long. If you know when the fire went out, note that: fire out at 3:10"},
	{regexp.MustCompile(`\b(fire|coals|grill|smoker|grate|temp|temperature|heat|pit|it)('s| is| are|'re)? ?(really |very |way |still |nearly |almost |getting |running )*(dying|dying down|dropping|falling|low|weak|struggling|fading|going out|nearly out|almost out|going|going strong|out of control|cooling|cool|hot|too hot|climbing|rising|racing|spiking|spiked|high|steady|stable|good|stuck)\b|\b(running|too) (hot|cold|low)\b|\bcan't keep (the )?temp\b`),
		"How warm is it at the grate? Nothing was noted: note what it reads, such as grate 210. If the fire is out: fire out, with the time, such as fire out 20 min ago"},
	{regexp.MustCompile(`\b(fire|coals|flames?)\b.*\b(out|dead|died|gone|cold)\b`),
		"When, at the earliest, may it have gone out? Nothing was noted. Note that time: fire out at 3:10, or fire out 2 hours ago; if it was just now: fire out"},
	{regexp.MustCompile(`\b(knocked|tipped|fell) .*over\b`),
		"Coals outside the grill: keep everybody back, leave what burns, and call the fire service. Nothing was noted. Then note: fire out, and DISH aside"},
	{regexp.MustCompile(`\b(wood|chunks?|chips|hickory|oak|apple|cherry|mesquite|pecan|smoke)\b`), "Smoking wood needs no note. Note coals that you add: added 20 coals"},
	{regexp.MustCompile(`\b(indirect|direct|cool(er)? side|hot side|upper rack|top rack)\b`), "Where it lies needs no note. If it went on just now: DISH on"},
	{regexp.MustCompile(`\b(coals|charcoal|chimney) (are |is )?(ready|grey|gray|white|glowing|good|lit)\b`), "Note the coals when they go in: added 30 lit coals, or added a chimney of coals; and lit, when the fire is lit"},
	{regexp.MustCompile(`\b(bends?|bending|bend test|crack(s|ed|ing)?|look(s|ing)? \w+|looks? like|tender|probes? (like|tender)|like butter|bark|nice color|smell(s|ing)?|cooked|done|finished|ready|run clear|pop-?up|crispy)\b`),
		"Is it off the grill? Then note: DISH off. Still on? Nothing was noted; note what its middle reads, such as DISH 165, if you measure"},
	{regexp.MustCompile(`\b(probe|thermometer|thermo)\b`),
		"A lost or broken probe needs no note: without readings the plan goes by its forecast. Measure with another thermometer when you can, and note what it reads: DISH 152"},
	{regexp.MustCompile(`\b(dog|cat|dropped|fell|floor|ground|stolen|burnt|burned|ruined|spoiled|charred)\b`),
		"Will it still be eaten? Then it needs no note. If not, note: DISH called off"},
	{regexp.MustCompile(`\b(windy|wind|gusty|gusts?|blowing|breezy|breeze)\b`), "How windy is it? Note it as wind 12 mph, wind 20 km/h or wind calm"},
	{regexp.MustCompile(`\b(guests?|people|everyone|company|they|late|delayed|hungry|running behind|running late)\b`), "When do people eat? Note it with its time, such as dinner 7 PM, or dinner 1 hour later"},
	{regexp.MustCompile(`\b(chimneys?|coals|charcoal|briquettes)\b`), "Note the coals when they go in: added 30 lit coals, or added a chimney of coals; and lit, when the fire is lit"},
	{regexp.MustCompile(`\b(stall(ed|ing)?|stuck)\b`), "A stall needs no note: it is expected. Note what it reads, such as DISH 158"},
}

// answer says what to note in place of what cannot be noted; empty where nothing is known
// of it.
func (n *noteReader) answer(words []string) string {
	said := strings.Join(words, " ")
	for _, a := range answers {
		if a.said.MatchString(said) {
			return strings.ReplaceAll(a.text, "DISH", n.dishMeant(words))
		}
	}
	return ""
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
