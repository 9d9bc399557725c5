package draft

import (
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/meant"
	"example.com/cookday/schedule/unit"
)

// about is one question of the day.
type about struct {
	key   string
	text  func(*Interview) string
	usual func(*Interview) string
	take  func(*Interview, string) error
}

// aboutTheDay are the questions of the day in their order.
var aboutTheDay = []about{
	{KeyWhen, said("When do people eat? A day and a time"), (*Interview).usualWhen, (*Interview).takeWhen},
	{KeyZone, said("In which time zone? By the name that the machine has for it, such as America/Chicago"), func(i *Interview) string { return i.zone }, (*Interview).takeZone},
	{KeyGrill, said("Which grill, how large? Such as: kettle 22 in, or box 36 x 18 in"), (*Interview).usualGrill, (*Interview).takeGrill},
	{KeyOven, said("Is there a kitchen oven to finish or hold food in?"), said("yes"), (*Interview).takeOven},
	{KeyQuiet, said("Between which times does everybody sleep, so that nobody tends a fire? Or: never"), (*Interview).usualQuiet, (*Interview).takeQuiet},
	{KeyGuests, said("How many people eat? Such as: 8, or 6 adults and 2 children"), func(i *Interview) string { return guestsText(i.like.guests) }, (*Interview).takeGuests},
	{KeyFrail, said("Is anyone of them very young, old, pregnant or ill?"), (*Interview).usualFrail, (*Interview).takeFrail},
}

func said(text string) func(*Interview) string { return func(*Interview) string { return text } }

func (i *Interview) takeZone(text string) error {
	if place := schedule.ZoneNamed(text); place != "" {
		text = place
	}
	loc, err := time.LoadLocation(text)
	if err != nil || text == "Local" || !strings.Contains(text, "/") && text != "UTC" {
		return fmt.Errorf("%q is no time zone; write a name such as America/Chicago or Europe/Berlin", text)
	}
	i.zone = text
	i.serve = time.Date(i.serve.Year(), i.serve.Month(), i.serve.Day(), i.serve.Hour(), i.serve.Minute(), 0, 0, loc)
	_, err = schedule.Read([]byte(i.Text()))
	return faultAt(err, "serve")
}

func (i *Interview) usualGrill() string {
	if i.units == unit.US {
		return "kettle 22 in"
	}
	return "kettle 57 cm"
}

func (i *Interview) takeGrill(text string) error {
	before := i.grill
	i.grill = strings.Join(strings.Fields(text), " ")
	_, err := schedule.Read([]byte(i.Text()))
	if err = faultAt(err, "grill"); err != nil {
		i.grill = before
	}
	return err
}

func (i *Interview) takeOven(text string) (err error) {
	if ovenTaken.MatchString(text) { // an oven that has no room is none
		i.oven = false
		return nil
	}
	i.oven, err = yesOrNo(text)
	return err
}

var (
	ovenTaken = regexp.MustCompile(`(?i)\b(?:but|full|broken|busy|taken|in use|occupied|dead|doesn'?t work|not working)\b`)
	frailSaid = regexp.MustCompile(`(?i)\bpregnan|\bexpecting\b|\bbab(?:y|ies)\b|\btoddlers?\b|\binfants?\b|\bnewborn|\bgrand(?:ma|pa|mother|father|parents)\b|\bgran(?:ny|dad)?\b|\belderly\b|\bchemo|\btransplant|\b(?:6[5-9]|[789]\d)\b|\b(?:[1-4]) years? old\b`)
)

const notKnown = "not known"

func (i *Interview) takeFrail(text string) (err error) {
	if i.frailKnown = !saysNotKnown(text); i.frailKnown {
		if frailSaid.MatchString(text) && !saysNo.MatchString(text) { // a baby; grandma is 90
			i.guests.Frail = true
			return nil
		}
		i.guests.Frail, err = yesOrNo(text)
	}
	return err
}

func saysNotKnown(text string) bool {
	switch strings.ReplaceAll(strings.ToLower(strings.Trim(text, " .!")), "’", "'") {
	case notKnown, "unknown", "not asked", "maybe", "don't know", "dont know", "dunno", "no idea", "not sure", "?":
		return true
	}
	return false
}

var (
	saysYes = regexp.MustCompile(`(?i)^(?:y|yes|yeah|yep|yup|sure|ok|okay|true|ja|of course)\b`)
	saysNo  = regexp.MustCompile(`(?i)^(?:n|no|nope|nah|none|never|false|nobody|nein)\b`)
)

// yesOrNo reads an answer by how it begins: "yes, grandma is 84".
func yesOrNo(text string) (bool, error) {
	switch {
	case saysYes.MatchString(text):
		return true, nil
	case saysNo.MatchString(text):
		return false, nil
	}
	return false, fmt.Errorf("%q: answer yes or no", text)
}

// usualQuiet says the usual hours of sleep; taken, the request says nothing of them.
func (i *Interview) usualQuiet() string {
	q := schedule.UsualQuiet()[0]
	return "usually " + i.units.Clock(onClock(q.From)) + " to " + i.units.Clock(onClock(q.To))
}

// noQuiet is what a request says where somebody is up at every hour.
const noQuiet = "[]"

func (i *Interview) takeQuiet(text string) error {
	i.quietSaid = text
	text = strings.ToLower(text)
	if text == strings.ToLower(i.usualQuiet()) {
		i.quiet = ""
		return nil
	}
	switch text {
	case "never", "never: somebody is up all night", "somebody is up all night":
		i.quiet = noQuiet
		return nil
	case "no", "none", "nobody", "yes":
		return fmt.Errorf("%q can be read two ways: write never if somebody is up all night, or two times between which everybody sleeps, such as 11pm to 5am", text)
	}
	said, until, ok := meant.Quiet(text)
	if !ok {
		return errors.New("write two times, such as 23:00 to 05:30 or 11pm to 5:30am, or never")
	}
	from, err := schedule.ParseTimeOfDay(said)
	if err != nil {
		return err
	}
	to, err := schedule.ParseTimeOfDay(until)
	if err != nil {
		return err
	}
	if from == to {
		return errors.New("the two times are the same; write never if somebody is up all night")
	}
	i.quiet = fmt.Sprintf("[{from: %q, to: %q}]", from.HhMm(), to.HhMm())
	return nil
}

var twoNumbers = regexp.MustCompile(`(?i)^(\d+)\s*\+\s*(\d+)(?:\s*(?:kids?|children))?$`)

// takeGuests reads 8, "6 adults and 2 children", "12 people, two kids, grandma", as a request
// does; "6 + 2" are adults and children.
func (i *Interview) takeGuests(text string) error {
	if m := twoNumbers.FindStringSubmatch(text); m != nil {
		text = m[1] + " adults and " + m[2] + " children"
	}
	adults, children, frail, ok := meant.Guests(text)
	if !ok || adults+children == 0 || adults > 10_000 || children > 10_000 {
		return fmt.Errorf("%q is not a number of people; write 8, or 6 adults and 2 children. Dishes are asked for later", text)
	}
	i.guests = schedule.Guests{Adults: adults, Children: children, Frail: frail || i.guests.Frail}
	i.frailKnown = i.frailKnown || frail
	return nil
}

// usualFrail is yes where the guests were said to be so.
func (i *Interview) usualFrail() string {
	if i.guests.Frail {
		return "yes"
	}
	return notKnown
}

// Answer is what was answered to a question, as a flag or a person says it.
type Answer struct{ Key, Text string }

// Said are the answers so far.
func (i *Interview) Said() (all []Answer) {
	yesNo := map[bool]string{true: "yes", false: "no"}
	frail := notKnown
	if i.frailKnown {
		frail = yesNo[i.guests.Frail]
	}
	quiet := i.quietSaid
	if quiet == "" {
		quiet = i.usualQuiet()
	}
	for k, text := range []string{i.serve.Format("2006-01-02 15:04"), i.zone, i.grill, yesNo[i.oven], quiet, guestsText(i.guests), frail} {
		if k < i.asked {
			all = append(all, Answer{aboutTheDay[k].key, text})
		}
	}
	for _, d := range i.dishes {
		all = append(all, Answer{KeyDish, d.said()})
	}
	if i.open != nil {
		all = append(all, Answer{KeyDish, i.open.said()})
	}
	return all
}

func guestsText(g schedule.Guests) string {
	if g.Children == 0 {
		return strconv.Itoa(g.Adults)
	}
	return fmt.Sprintf("%d adults and %d children", g.Adults, g.Children)
}
