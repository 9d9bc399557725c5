package meant

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/strict"
)

// Some are parts of the guests for whom a dish may be.
type Some struct{ Kids, Meatless int }

const fewWords = `(\d{1,2}|an?|one|two|three|four|five|six|seven|eight|nine|ten)`

var (
	meatlessIn  = regexp.MustCompile(`(?i)\b` + fewWords + `\s+(?:(?:of|are|is|is a|who|whom|which|them|us|adults|people|guests)\s+)*(?:vegetarians?|vegans?|veggies?|meatless)\b|\b` + fewWords + `\s+(?:of (?:them|us|whom)\s+)?(?:do(?:es)? not|don'?t|doesn'?t|won'?t) eat meat`)
	forKids     = regexp.MustCompile(`(?i)[\s,(]+for (?:the |our |all the |my )?(?:kids|children|little ones|boys|girls)\)?\s*$`)
	forMeatless = regexp.MustCompile(`(?i)[\s,(]+for (?:the |our |all the )?(?:\d+ |two |three |four )?(?:vegetarians?|vegans?|veggies?|meatless)\)?\s*$`)
)

// SomeOf are the children, and who eats no meat, as far as a request counts them.
func SomeOf(request *strict.Node) (some Some) {
	for name, value := range request.Fields() {
		word := plainWord(name)
		switch {
		case isGuests(name) && value.Kind == strict.NodeText:
			c, _, _ := new(taker).inText(value.Text)
			some.Kids += c.kids
			if m := meatlessIn.FindStringSubmatch(value.Text); m != nil {
				some.Meatless += cut.Speak(m[1] + m[2]).Count
			}
		case isGuests(name) && value.Kind == strict.NodeObject:
			inner := SomeOf(value)
			some.Kids, some.Meatless = some.Kids+inner.Kids, some.Meatless+inner.Meatless
		case oneOf(word, "kids", "children", "kid") && isCount(value):
			some.Kids += countOf(value)
		case oneOf(word, "vegetarians", "vegetarian", "vegans", "vegan", "veggies") && isCount(value):
			some.Meatless += countOf(value)
		}
	}
	return some
}

// forSome takes for whom a dish is out of its text; eaters is how many those are, 0 where it is
// for everybody or they were not counted.
func (d Day) forSome(text string) (rest string, eaters int, who string) {
	switch {
	case d.Some.Kids > 0 && forKids.MatchString(text):
		return forKids.ReplaceAllString(text, ""), d.Some.Kids, "children"
	case d.Some.Meatless > 0 && forMeatless.MatchString(text):
		return forMeatless.ReplaceAllString(text, ""), d.Some.Meatless, "who eat no meat"
	}
	return text, 0, ""
}

// childEats is what a child eats of what an adult does, as amounts have it.
const childEats = 0.5

// fedFor gives a dish without an amount as many pieces as some of the guests want.
func fedFor(dish *strict.Node, eaters int, who string) (*strict.Node, string) {
	food := dish.Get("cut")
	if food == nil || dish.Get("count") != nil || dish.Get("weight") != nil || dish.Get("weights") != nil {
		return dish, ""
	}
	c, unknown := cut.One(food.Text)
	if unknown != "" || !c.Quick() {
		return dish, ""
	}
	share := float64(eaters)
	if who == "children" {
		share *= childEats
	}
	n := max(int(math.Ceil(share*c.ServingKg/c.UsualKg(food.Text)-1e-9)), eaters)
	said := fmt.Sprintf("%s: %d, for the %s; write count: for more", food.Text, n, strings.TrimSpace(strconv.Itoa(eaters)+" "+who))
	return dish.With("count", strict.NewNumber(n, dish.Line)), said
}

// meatless says whether a dish is what is cooked for those who eat no meat (an assumption).
func meatless(dish *strict.Node) bool {
	food := dish.Get("cut")
	if food == nil || food.Kind != strict.NodeText {
		return false
	}
	c, unknown := cut.One(food.Text)
	return unknown == "" && (oneOf(c.Name, "veggie-burger", "tofu") || meatlessName.MatchString(food.Text))
}

var meatlessName = regexp.MustCompile(`(?i)\b(?:portobello|mushroom burgers?)\b`)

// seatMeatless gives dishes without an amount that are cooked for those who eat no meat as many
// pieces as they want.
func (t *taker) seatMeatless() {
	if t.Some.Meatless == 0 || t.Some.Meatless >= t.Eaters {
		return
	}
	for k, dish := range t.dishes {
		if dish.Kind != strict.NodeObject || !meatless(dish) {
			continue
		}
		fed, said := fedFor(dish, t.Some.Meatless, "who eat no meat")
		if t.dishes[k] = fed; said != "" {
			t.say("%s", said)
		}
	}
}
