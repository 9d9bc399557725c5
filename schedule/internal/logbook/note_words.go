package logbook

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/say"
)

// takeDish takes the name of a dish from the words: from their beginning, their end, or
// from between them where what is left is something that is done to it.
func (n *noteReader) takeDish(words []string) (rest []string, id, sentence string) {
	for k := len(words) - 1; k > 0; k-- {
		ids := n.alike(strings.Join(words[:k], " "))
		if len(ids) == 1 && !isSmall(words[0]) {
			return words[k:], ids[0], ""
		}
		if _, _, known := noteKind(words, false); len(ids) > 1 && !known {
			return nil, "", fmt.Sprintf("%s may be %s: write more of the name", say.Quoted(strings.Join(words[:k], " ")), say.Listed(ids, "or"))
		}
	}
	for size := len(words) - 1; size > 0; size-- {
		for k := 1; k+size <= len(words); k++ {
			name := words[k : k+size]
			ids := n.alike(strings.Join(name, " "))
			if len(ids) != 1 || isSmall(name[0]) {
				continue
			}
			left := slices.Concat(words[:k], words[k+size:])
			if _, _, known := noteKind(left, true); known {
				return left, ids[0], ""
			}
		}
	}
	return words, "", ""
}

// isSmall says of a word that it is never the beginning of a dish: "to" is not tofu.
func isSmall(word string) bool {
	return slices.Contains([]string{"on", "off", "in", "to", "at", "out", "of", "up", "with", "put", "top", "lit", "fire", "back", "into", "took"}, word)
}

// timeFirst is a time of day at the beginning of the words, and what is left.
func timeFirst(words []string) (at string, rest []string) {
	if len(words) > 1 && words[0] == "at" {
		words = words[1:]
	}
	for _, k := range []int{2, 1} {
		if len(words) < k || k == 2 && !strings.HasSuffix(words[1], "m") && !strings.HasSuffix(words[1], "m.") {
			continue
		}
		text := strings.TrimRight(strings.Join(words[:k], " "), ",:")
		if _, err := instant.ParseClock(text); err == nil || logClock.MatchString(text) {
			return text, words[k:]
		}
	}
	return "", words
}

// timeLast is a time of day behind "at" at the end of the words, and what is before it.
func timeLast(words []string) (at string, rest []string) {
	for k := max(len(words)-3, 1); k < len(words)-1; k++ {
		text := strings.Join(words[k+1:], " ")
		if _, err := instant.ParseClock(text); words[k] == "at" && err == nil {
			return text, words[:k]
		}
	}
	return "", words
}

// sayings are what cooks say for a kind of entry, longest first where one begins another.
var sayings = []struct {
	words string
	kind  Kind
	value string
}{
	{"went on", On, ""}, {"put on", On, ""}, {"is on", On, ""}, {"onto the grate", On, ""}, {"onto the grill", On, ""}, {"on the grill", On, ""}, {"on the grate", On, ""},
	{"left bare", Wrapped, wrapNone}, {"unwrapped", Wrapped, wrapNone}, {"wrap", Wrapped, ""},
	{"took off", Pulled, ""}, {"taken off", Pulled, ""}, {"came off", Pulled, ""}, {"off", Pulled, ""}, {"done", Pulled, ""},
	{"finished", Pulled, ""}, {"pull", Pulled, ""},
	{"in the box", Boxed, HeldInCooler}, {"in the cooler", Boxed, HeldInCooler}, {"into the cooler", Boxed, HeldInCooler}, {"in cooler", Boxed, HeldInCooler}, {"to cooler", Boxed, HeldInCooler}, {"cooler", Boxed, HeldInCooler}, {"box", Boxed, HeldInCooler}, {"held", Boxed, ""},
	{"on the counter", Counter, ""}, {"on counter", Counter, ""},
	{"into the oven", ToOven, ""}, {"to the oven", ToOven, ""}, {"in the oven", ToOven, ""}, {"into oven", ToOven, ""}, {"in oven", ToOven, ""}, {"to oven", ToOven, ""},
	{"aside", Stopped, ""}, {"back on", Restarted, ""}, {"back", Restarted, ""},
	{"in the fridge", Chilled, ""}, {"into the fridge", Chilled, ""}, {"in fridge", Chilled, ""}, {"fridge", Chilled, ""}, {"in the refrigerator", Chilled, ""}, {"on ice", Chilled, ""},
	{"lit again", Lit, ""}, {"relit", Lit, ""}, {"light", Lit, ""}, {"fire lit", Lit, ""}, {"fire started", Lit, ""}, {"started the fire", Lit, ""}, {"started fire", Lit, ""}, {"chimney lit", Lit, ""}, {"coals lit", Lit, ""},
	{"fire is out", FireOut, ""}, {"fire out", FireOut, ""}, {"fire dead", FireOut, ""}, {"fire died", FireOut, ""}, {"fire went out", FireOut, ""}, {"went out", FireOut, ""}, {"no fire", FireOut, ""},
	{"added fuel", Refuelled, ""}, {"added coals", Refuelled, ""}, {"added charcoal", Refuelled, ""}, {"added briquettes", Refuelled, ""}, {"more coals", Refuelled, ""}, {"more charcoal", Refuelled, ""}, {"refueled", Refuelled, ""}, {"fuel", Refuelled, ""}, {"topped up", Refuelled, ""},
	{"cleared ash", AshCleared, ""}, {"cleared the ash", AshCleared, ""}, {"ash cleared", AshCleared, ""}, {"swept", AshCleared, ""}, {"ash", AshCleared, ""},
	{"lid opened", LidOpened, ""}, {"lid open", LidOpened, ""}, {"lid off", LidOpened, ""}, {"opened lid", LidOpened, ""}, {"opened the lid", LidOpened, ""}, {"opened", LidOpened, ""}, {"peeked", LidOpened, ""},
	{"lid closed", LidClosed, ""}, {"lid on", LidClosed, ""}, {"lid shut", LidClosed, ""}, {"closed lid", LidClosed, ""}, {"closed the lid", LidClosed, ""},
	{"pit temp", Grate, ""}, {"grill temp", Grate, ""}, {"grate temp", Grate, ""}, {"grate at", Grate, ""}, {"grate reads", Grate, ""}, {"pit", Grate, ""}, {"grill", Grate, ""}, {"smoker", Grate, ""},
	{"lid temp", Gauge, ""}, {"lid gauge", Gauge, ""}, {"lid reads", Gauge, ""}, {"dome", Gauge, ""}, {"lid", Gauge, ""}, {"oven temp", Oven, ""}, {"oven at", Oven, ""},
	{"surface", Outer, ""}, {"outside", Outer, ""},
	{"internal temp", Core, ""}, {"internal", Core, ""}, {"inside", Core, ""}, {"core temp", Core, ""}, {"temp", Core, ""}, {"temperature", Core, ""}, {"reads", Core, ""},
	{"reading", Core, ""}, {"probe", Core, ""}, {"probes", Core, ""}, {"hit", Core, ""}, {"reached", Core, ""}, {"at", Core, ""},
	{"dinner served", Served, ""}, {"dinner", ServingMoved, ""}, {"serve", ServingMoved, ""}, {"served", Served, ""}, {"on the table", Served, ""}, {"everybody ate", Served, ""}, {"eating at", ServingMoved, ""}, {"eating", ServingMoved, ""}, {"ate", Served, ""}, {"eat", ServingMoved, ""},
	{"rain stopped", Rain, RainOver}, {"rain over", Rain, RainOver}, {"stopped raining", Rain, RainOver}, {"no rain", Rain, RainOver}, {"raining", Rain, ""}, {"rains", Rain, ""}, {"started raining", Rain, ""}, {"rain", Rain, ""},
	{"bag empty", NoFuel, ""}, {"empty bag", NoFuel, ""}, {"no more coals", NoFuel, ""}, {"no more charcoal", NoFuel, ""}, {"no more fuel", NoFuel, ""}, {"no coals left", NoFuel, ""}, {"no charcoal left", NoFuel, ""}, {"no coals", NoFuel, ""}, {"no charcoal", NoFuel, ""}, {"no fuel", NoFuel, ""}, {"out of coals", NoFuel, ""}, {"out of charcoal", NoFuel, ""}, {"out of fuel", NoFuel, ""}, {"out of briquettes", NoFuel, ""},
	{"called off", DishCancelled, ""}, {"cancelled", DishCancelled, ""}, {"canceled", DishCancelled, ""},
}

var (
	noteNumber = regexp.MustCompile(`^[-+]?[0-9]+([.,][0-9]+)?\s*(°?\s*[fc])?$`)
	noteInside = regexp.MustCompile(`^([-+]?[0-9]+(?:[.,][0-9]+)?\s*(?:°?\s*[fc])?) (?:internal|inside|core|in the middle)$`)
	noteCoals  = regexp.MustCompile(`^(?:added |add |poured |put on |laid |dumped |lit )?([0-9]+) (lit |hot |burning |unlit |cold |fresh |new |more )?(?:coals|briquettes|briquets|charcoal)$`)
	noteMoved  = regexp.MustCompile(`^(?:put|moved|went|placed|set) ((?:in|into|to|back|aside) ?.*)$`)
)

// noteKind is the kind of entry that words begin with, and what is left of them. A
// number alone is a core.
func noteKind(words []string, ofDish bool) (Kind, []string, bool) {
	said := strings.Join(words, " ")
	if said == "" {
		return "", nil, false
	}
	if m := noteInside.FindStringSubmatch(said); m != nil {
		said = m[1]
	}
	if noteNumber.MatchString(said) {
		return Core, strings.Fields(said), true
	}
	if m := noteCoals.FindStringSubmatch(said); m != nil && !ofDish {
		return coalsNoted(said, m[1], strings.TrimSpace(m[2]))
	}
	if m := noteMoved.FindStringSubmatch(said); m != nil && ofDish {
		said = m[1]
	}
	for _, s := range sayings {
		if said != s.words && !strings.HasPrefix(said, s.words+" ") {
			continue
		}
		form, _ := s.kind.Form()
		rest := strings.Fields(strings.TrimPrefix(said, s.words))
		if ofDish && !form.OfDish && !s.kind.Meals() || form.Carries == CarriesTemperature && len(rest) == 0 {
			continue
		}
		if s.value != "" {
			rest = []string{s.value}
		}
		return s.kind, rest, true
	}
	first, rest, _ := strings.Cut(said, " ")
	if _, ok := Kind(first).Form(); ok {
		return Kind(first), strings.Fields(rest), true
	}
	return "", nil, false
}

// coalsNoted are coals that were counted: lit, unlit, or not said which.
func coalsNoted(said, count, which string) (Kind, []string, bool) {
	switch {
	case which == "lit" || which == "hot" || which == "burning" || strings.HasPrefix(said, "lit ") || strings.HasPrefix(said, "poured "):
		return LitCoals, []string{count}, true
	case which == "unlit" || which == "cold" || strings.HasPrefix(said, "laid "):
		return UnlitCoals, []string{count}, true
	}
	return Refuelled, []string{count, "coals"}, true
}

// needless are things that are done to food and move no clock.
var needless = []string{"flipped", "turned", "rotated", "spritzed", "mopped", "basted", "seasoned", "salted", "sauced", "glazed", "trimmed", "sliced", "rested", "resting"}

// needsNoNote says of what needs none that it does not.
func (n *noteReader) needsNoNote(words []string) string {
	for _, w := range words {
		if slices.Contains(needless, w) {
			return fmt.Sprintf("%s needs no note: the plan goes on as it is. Note what the thermometer shows, and when it goes on, is wrapped and comes off", say.Quoted(strings.Join(words, " ")))
		}
	}
	return ""
}
