package logbook

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"example.com/cookday/schedule/unit"
)

// besideHeat may follow what is done to food, and tells nothing more: off the grill.
var besideHeat = []string{"grill", "grate", "smoker", "pit", "heat", "coals", "fire", "again", "safely", "early", "plate", "board", "tray", "for", "good", "to", "from", "off", "on", "over", "indirect", "side", "direct", "lid", "back", "skin", "bone", "fat", "cap", "meat", "up", "down", "middle", "center", "close", "together"}

// valueOf writes the value of a row as the log has it; the sentence asks back, false says
// that the words are none that the kind may have.
func (n *noteReader) valueOf(row *Row, kind Kind) (sentence string, ok bool) {
	if kind == ToOven && (n.waitsInOven(row.dish, row.value) || toWait.MatchString(row.value)) {
		row.kind, row.value = string(Boxed), HeldInOven
		return "", true
	}
	form, _ := kind.Form()
	switch form.Carries {
	case CarriesTemperature, CarriesMaybeTemperature:
		text := bareReading(row.value)
		if text == "" && form.Carries == CarriesTemperature || text != "" && !noteNumber.MatchString(text) {
			return "", false
		}
		if row.value, sentence = n.degrees(kind, row.dish, text); kind == ToOven && sentence == "" {
			row.aside = n.coolOven(row.dish, row.value)
		}
	case CarriesWrap:
		row.value, ok = wrapSaid(row.value)
		return "", ok
	case CarriesInstant:
		return n.servingSaid(row)
	case CarriesPlace:
		row.value, ok = heldSaid(row.value)
		return "", ok
	case CarriesNothing:
		return "", n.nothingMore(row, kind)
	case CarriesSpeed:
		row.value = strings.TrimSpace(strings.TrimPrefix(row.value, "at "))
		if _, bad := fireValue(CarriesSpeed, row.value); bad != "" {
			return "how windy is it? Write it as wind 12 mph, wind 20 km/h or wind calm", false
		}
	case CarriesCount, CarriesAmount, CarriesVents:
		if _, bad := fireValue(form.Carries, row.value); bad != "" {
			return bad, false
		}
	}
	return sentence, true
}

// coolOven says of raw meat that goes into an oven how hot that must be, where it is told cooler;
// empty where it is hot enough, or the meat was read at its minimum.
func (n *noteReader) coolOven(dish, value string) string {
	id, _ := n.dishID(dish)
	k := slices.IndexFunc(n.day.Dishes, func(d Dish) bool { return d.ID == id })
	oven, err := unit.ParseTemperature(value)
	if k < 0 || err != nil || n.day.Dishes[k].RawOvenC-ovenSlackK <= float64(oven) {
		return ""
	}
	d := n.day.Dishes[k]
	for _, e := range slices.Backward(n.log) {
		if e.Dish == d.ID && (e.Kind == Core || e.Kind == Coldest) {
			if e.C >= d.LeastC-ovenSlackK/5 {
				return ""
			}
			break
		}
	}
	return fmt.Sprintf("Below %s inside it is raw, and %s is no oven for raw meat: set it to %s now, and note that: %s to oven %s",
		n.day.Units.Core(unit.Temperature(d.LeastC)), n.day.Units.Grate(oven), n.day.Units.Grate(unit.Temperature(d.RawOvenC)), d.ID, strings.Fields(n.day.Units.Grate(unit.Temperature(d.RawOvenC)))[0])
}

// ovenSlackK is how far below what it should be an oven is passed over (assumption).
const ovenSlackK = 5 / 1.8

// toWait says of what goes into an oven that it waits there.
var toWait = regexp.MustCompile(`^(to |for )?(hold|holding|wait|waiting|keep warm|stay warm|rest|resting)$`)

// nothingMore says that a kind that carries nothing has nothing beside it but words that
// tell no more.
func (n *noteReader) nothingMore(row *Row, kind Kind) bool {
	words := strings.Fields(row.value)
	switch kind {
	case Rain, Refuelled:
		_, bad := kind.remark(row.value)
		return bad == ""
	case LidOpened, LidClosed:
		words = slices.DeleteFunc(words, func(w string) bool { return slices.Contains(besideLid, w) })
	case Counter:
		words = slices.DeleteFunc(words, func(w string) bool {
			return slices.Contains([]string{"under", "foil", "loosely", "covered", "tented", "tent", "resting"}, w) || slices.Contains(besideHeat, w)
		})
	case On, Pulled, Restarted, Stopped, Chilled, Lit:
		words = slices.DeleteFunc(words, func(w string) bool { return slices.Contains(besideHeat, w) })
	}
	row.value = ""
	return len(words) == 0
}

// heldSaid is where a piece is held, in words that all tell of it.
func heldSaid(text string) (string, bool) {
	for _, w := range strings.Fields(text) {
		if !slices.Contains([]string{HeldInCooler, HeldInOven, "in", "into", "with", "towels", "towel", "foil", "wrapped", "warm", "hot", "box", "cool", "and", "up", "big"}, w) {
			return "", false
		}
	}
	return heldText(text)
}

// bareReading is a reading without the words around it.
func bareReading(text string) string {
	words := slices.DeleteFunc(strings.Fields(text), func(w string) bool {
		return slices.Contains([]string{"at", "in", "to", "up", "down", "temp", "temperature", "reads", "reading", "shows", "showing", "says", "hit", "internal", "inside", "core", "probe", "on", "hot", "=", ":", "place", "spot", "part", "set", "sitting", "holding", "steady", "running", "dropped", "fell", "fallen", "rose", "risen", "climbed", "jumped", "stuck", "stalled", "middle", "center", "centre", "hits", "hot,", ","}, w)
	})
	return strings.Join(words, " ")
}

// wrapSaid is what a piece was wrapped in.
func wrapSaid(text string) (string, bool) {
	out := ""
	for _, w := range strings.Fields(text) {
		switch w {
		case "foil", "tin", "crutch", "boat":
			out = wrapFoil
		case "paper", "butcher", "peach":
			out = wrapPaper
		case "none", "bare", "naked":
			out = wrapNone
		case "in", "with", "tightly", "tight", "double", "heavy", "duty", "pink", "brown", "up", "twice", "and", "put", "back", "on", "texas":
		default:
			return "", false
		}
	}
	return out, true
}

// waitsInOven says whether a dish that goes into the oven waits there, done: by the plan,
// or because it was taken off. A heat far above that of the wait is for cooking.
func (n *noteReader) waitsInOven(dish, text string) bool {
	id, ok := n.dishID(dish)
	if !ok {
		return false
	}
	k := slices.IndexFunc(n.day.Dishes, func(d Dish) bool { return d.ID == id })
	if k < 0 || n.day.Dishes[k].OvenC == 0 {
		return false
	}
	waits := n.day.Dishes[k]
	if value, sentence := n.degrees(ToOven, dish, bareReading(text)); value != "" && sentence == "" {
		t, err := unit.ParseTemperature(value)
		if err != nil {
			return false // words that say something else
		}
		if float64(t) > waits.OvenC+farK {
			return false
		}
	}
	for _, e := range n.log {
		if e.Dish == id && (e.Kind == ToOven || e.Kind == Pulled) {
			return true
		}
	}
	return !waits.OvenCooks
}
