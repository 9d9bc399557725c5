package schedule

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

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
		if _, err := parseClock(text); err == nil || logClock.MatchString(text) {
			return text, words[k:]
		}
	}
	return "", words
}

// timeLast is a time of day behind "at" at the end of the words, and what is before it.
func timeLast(words []string) (at string, rest []string) {
	for k := max(len(words)-3, 1); k < len(words)-1; k++ {
		text := strings.Join(words[k+1:], " ")
		if _, err := parseClock(text); words[k] == "at" && err == nil {
			return text, words[:k]
		}
	}
	return "", words
}

// sayings are what cooks say for a kind of entry, longest first where one begins another.
var sayings = []struct {
	words string
	kind  EntryKind
	value string
}{
	{"went on", LogOn, ""}, {"put on", LogOn, ""}, {"is on", LogOn, ""}, {"onto the grate", LogOn, ""}, {"onto the grill", LogOn, ""}, {"on the grill", LogOn, ""}, {"on the grate", LogOn, ""},
	{"left bare", LogWrapped, WrapNone}, {"unwrapped", LogWrapped, WrapNone}, {"wrap", LogWrapped, ""},
	{"took off", LogPulled, ""}, {"taken off", LogPulled, ""}, {"came off", LogPulled, ""}, {"off", LogPulled, ""}, {"done", LogPulled, ""},
	{"finished", LogPulled, ""}, {"pull", LogPulled, ""},
	{"in the box", LogBoxed, HeldInCooler}, {"in the cooler", LogBoxed, HeldInCooler}, {"into the cooler", LogBoxed, HeldInCooler}, {"in cooler", LogBoxed, HeldInCooler}, {"to cooler", LogBoxed, HeldInCooler}, {"cooler", LogBoxed, HeldInCooler}, {"box", LogBoxed, HeldInCooler}, {"held", LogBoxed, ""},
	{"on the counter", LogCounter, ""}, {"on counter", LogCounter, ""},
	{"into the oven", LogToOven, ""}, {"to the oven", LogToOven, ""}, {"in the oven", LogToOven, ""}, {"into oven", LogToOven, ""}, {"in oven", LogToOven, ""}, {"to oven", LogToOven, ""},
	{"aside", LogStopped, ""}, {"back on", LogRestarted, ""}, {"back", LogRestarted, ""},
	{"in the fridge", LogChilled, ""}, {"into the fridge", LogChilled, ""}, {"in fridge", LogChilled, ""}, {"fridge", LogChilled, ""}, {"in the refrigerator", LogChilled, ""}, {"on ice", LogChilled, ""},
	{"lit again", LogLit, ""}, {"relit", LogLit, ""}, {"light", LogLit, ""}, {"fire lit", LogLit, ""}, {"fire started", LogLit, ""}, {"started the fire", LogLit, ""}, {"started fire", LogLit, ""}, {"chimney lit", LogLit, ""}, {"coals lit", LogLit, ""},
	{"fire is out", LogFireOut, ""}, {"fire out", LogFireOut, ""}, {"fire dead", LogFireOut, ""}, {"fire died", LogFireOut, ""}, {"fire went out", LogFireOut, ""}, {"went out", LogFireOut, ""}, {"no fire", LogFireOut, ""},
	{"added fuel", LogRefuelled, ""}, {"added coals", LogRefuelled, ""}, {"added charcoal", LogRefuelled, ""}, {"added briquettes", LogRefuelled, ""}, {"more coals", LogRefuelled, ""}, {"more charcoal", LogRefuelled, ""}, {"refueled", LogRefuelled, ""}, {"fuel", LogRefuelled, ""}, {"topped up", LogRefuelled, ""},
	{"cleared ash", LogAshCleared, ""}, {"cleared the ash", LogAshCleared, ""}, {"ash cleared", LogAshCleared, ""}, {"swept", LogAshCleared, ""}, {"ash", LogAshCleared, ""},
	{"lid opened", LogLidOpened, ""}, {"lid open", LogLidOpened, ""}, {"lid off", LogLidOpened, ""}, {"opened lid", LogLidOpened, ""}, {"opened the lid", LogLidOpened, ""}, {"opened", LogLidOpened, ""}, {"peeked", LogLidOpened, ""},
	{"lid closed", LogLidClosed, ""}, {"lid on", LogLidClosed, ""}, {"lid shut", LogLidClosed, ""}, {"closed lid", LogLidClosed, ""}, {"closed the lid", LogLidClosed, ""},
	{"pit temp", LogGrate, ""}, {"grill temp", LogGrate, ""}, {"grate temp", LogGrate, ""}, {"grate at", LogGrate, ""}, {"grate reads", LogGrate, ""}, {"pit", LogGrate, ""}, {"grill", LogGrate, ""}, {"smoker", LogGrate, ""},
	{"lid temp", LogGauge, ""}, {"lid gauge", LogGauge, ""}, {"lid reads", LogGauge, ""}, {"dome", LogGauge, ""}, {"lid", LogGauge, ""}, {"oven temp", LogOven, ""}, {"oven at", LogOven, ""},
	{"surface", LogOuter, ""}, {"outside", LogOuter, ""},
	{"internal temp", LogCore, ""}, {"internal", LogCore, ""}, {"inside", LogCore, ""}, {"core temp", LogCore, ""}, {"temp", LogCore, ""}, {"temperature", LogCore, ""}, {"reads", LogCore, ""},
	{"reading", LogCore, ""}, {"probe", LogCore, ""}, {"probes", LogCore, ""}, {"hit", LogCore, ""}, {"reached", LogCore, ""}, {"at", LogCore, ""},
	{"dinner served", LogServed, ""}, {"dinner", LogServingMoved, ""}, {"serve", LogServingMoved, ""}, {"served", LogServed, ""}, {"on the table", LogServed, ""}, {"everybody ate", LogServed, ""}, {"eating at", LogServingMoved, ""}, {"eating", LogServingMoved, ""}, {"ate", LogServed, ""}, {"eat", LogServingMoved, ""},
	{"rain stopped", LogRain, RainOver}, {"rain over", LogRain, RainOver}, {"stopped raining", LogRain, RainOver}, {"no rain", LogRain, RainOver}, {"raining", LogRain, ""}, {"rains", LogRain, ""}, {"started raining", LogRain, ""}, {"rain", LogRain, ""},
	{"bag empty", LogNoFuel, ""}, {"empty bag", LogNoFuel, ""}, {"no more coals", LogNoFuel, ""}, {"no more charcoal", LogNoFuel, ""}, {"no more fuel", LogNoFuel, ""}, {"no coals left", LogNoFuel, ""}, {"no charcoal left", LogNoFuel, ""}, {"no coals", LogNoFuel, ""}, {"no charcoal", LogNoFuel, ""}, {"no fuel", LogNoFuel, ""}, {"out of coals", LogNoFuel, ""}, {"out of charcoal", LogNoFuel, ""}, {"out of fuel", LogNoFuel, ""}, {"out of briquettes", LogNoFuel, ""},
	{"called off", LogDishCancelled, ""}, {"cancelled", LogDishCancelled, ""}, {"canceled", LogDishCancelled, ""},
}

var (
	noteNumber = regexp.MustCompile(`^[-+]?[0-9]+([.,][0-9]+)?\s*(°?\s*[fc])?$`)
	noteInside = regexp.MustCompile(`^([-+]?[0-9]+(?:[.,][0-9]+)?\s*(?:°?\s*[fc])?) (?:internal|inside|core|in the middle)$`)
	noteCoals  = regexp.MustCompile(`^(?:added |add |poured |put on |laid |dumped |lit )?([0-9]+) (lit |hot |burning |unlit |cold |fresh |new |more )?(?:coals|briquettes|briquets|charcoal)$`)
	noteMoved  = regexp.MustCompile(`^(?:put|moved|went|placed|set) ((?:in|into|to|back|aside) ?.*)$`)
)

// noteKind is the kind of entry that words begin with, and what is left of them. A
// number alone is a core.
func noteKind(words []string, ofDish bool) (EntryKind, []string, bool) {
	said := strings.Join(words, " ")
	if said == "" {
		return "", nil, false
	}
	if m := noteInside.FindStringSubmatch(said); m != nil {
		said = m[1]
	}
	if noteNumber.MatchString(said) {
		return LogCore, strings.Fields(said), true
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
		form, _ := s.kind.form()
		rest := strings.Fields(strings.TrimPrefix(said, s.words))
		if ofDish && !form.OfDish && !s.kind.meals() || form.Carries == CarriesTemperature && len(rest) == 0 {
			continue
		}
		if s.value != "" {
			rest = []string{s.value}
		}
		return s.kind, rest, true
	}
	first, rest, _ := strings.Cut(said, " ")
	if _, ok := EntryKind(first).form(); ok {
		return EntryKind(first), strings.Fields(rest), true
	}
	return "", nil, false
}

// coalsNoted are coals that were counted: lit, unlit, or not said which.
func coalsNoted(said, count, which string) (EntryKind, []string, bool) {
	switch {
	case which == "lit" || which == "hot" || which == "burning" || strings.HasPrefix(said, "lit ") || strings.HasPrefix(said, "poured "):
		return LogLitCoals, []string{count}, true
	case which == "unlit" || which == "cold" || strings.HasPrefix(said, "laid "):
		return LogUnlitCoals, []string{count}, true
	}
	return LogRefuelled, []string{count, "coals"}, true
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
