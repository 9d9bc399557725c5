package logbook

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/cookday/schedule/internal/say"
)

// thing reads words that tell no time as one row; false where they cannot be read.
func (n *noteReader) thing(words []string, dish string) (row Row, sentence string, ok bool) {
	words = withoutPurpose(words)
	if len(words) > 1 && slices.Contains(coldestWords, words[0]) && slices.Contains(pieceNouns, words[1]) { // coldest one 158
		words = slices.Concat(words[:1], words[2:])
	}
	if value, ok := ventWords(words); ok {
		row = Row{kind: string(Vents), value: strings.Join(value, " ")}
		if slices.ContainsFunc(words, func(w string) bool {
			return slices.Contains([]string{"stuck", "jammed", "rusted", "seized", "frozen"}, w)
		}) {
			row.aside = "Steer by the other vent"
		}
		_, bad := fireValue(CarriesVents, row.value)
		return row, "", bad == ""
	}
	if row, sentence, ok := n.rangeRead(words, dish); ok {
		return row, sentence, true
	}
	words, all := withoutAll(words)
	if len(words) > 1 && slices.Contains([]string{"push", "pushed", "delay", "delayed", "move", "moved"}, words[0]) && words[1] == "dinner" {
		words = slices.Concat([]string{words[1], words[0]}, words[2:])
	}
	if row, sentence, ok := n.placeRead(words, dish); ok {
		return row, sentence, true
	}
	if rest, whole, is := n.counted(words); is && whole {
		words, all = rest, true
	} else if is && slices.Contains(words, "1") {
		return n.onePiece(rest, words)
	} else if is {
		return row, allPiecesSaid(n.dishIn(rest)), true
	}
	if row, sentence, ok := n.coalsSaid(words); ok {
		return row, sentence, true
	}
	if row, sentence, ok := n.airAlone(words); ok && len(n.day.Dishes) != 1 {
		return row, sentence, true
	}
	left, id, sentence := n.takeDish(words)
	if sentence != "" {
		return row, sentence, true
	}
	if id == "" {
		id = dish
	}
	kind, value, ok := noteKind(left, id != "")
	if !ok && dish != "" { // of the grill, though a dish was named before
		id = ""
		kind, value, ok = noteKind(left, false)
	}
	if !ok {
		if row, sentence, ok := n.airRead(words); ok {
			return row, sentence, true
		}
		return row, "", false
	}
	if kind == Lit && slices.ContainsFunc(words, func(w string) bool { return strings.HasPrefix(w, "chimney") }) && n.burns() {
		return row, "a chimney beside a fire that burns does not count yet. Nothing was noted. Note the coals when they go in: added a chimney of coals; if the fire was out: relit", true
	}
	if all && (kind == LidOpened || kind == LidClosed) {
		return row, "the lid, or the vents? Nothing was noted. Note lid opened, or both vents open; lid closed, or both vents shut", true
	}
	if kind == Pulled && slices.ContainsFunc(words, func(w string) bool { return w == "coals" || w == "fire" }) {
		return row, n.inWords([]string{id}, "off the grill, or only off the coals? Nothing was noted. Off the grill: DISH off. Beside the coals needs no note"), true
	}
	form, _ := kind.Form()
	if id == "" && kind == Outer {
		id = n.onlyHeld()
	}
	if id == "" && (kind == Coldest || form.OfDish && len(n.day.DayBefore) > 0) {
		id = n.onlyOn()
	}
	if id == "" && form.OfDish && len(n.named()) != 1 {
		if sentence := n.tooHotForMeat(strings.Join(value, " ")); sentence != "" && kind == Core {
			return row, sentence, true
		}
		return row, fmt.Sprintf("of which dish is that? Say which dish, each in a note of its own: %s", say.Listed(n.dishNames(), "or")), false
	}
	row = Row{dish: id, kind: string(kind), value: strings.Join(value, " ")}
	sentence, ok = n.valueOf(&row, kind)
	if !ok {
		if air, asks, ok := n.airRead(words); ok && !form.OfDish {
			return air, asks, true
		}
		return row, sentence, false
	}
	if kind == On && all && row.value == "" && n.batches(id) > 1 {
		row.value = AllBatches
	}
	return row, sentence, true
}

// onlyHeld is the dish that came off the fire, where it is one: a surface is read of what waits.
func (n *noteReader) onlyHeld() string {
	var held []string
	for _, e := range n.log {
		if slices.Contains([]Kind{Pulled, Boxed, Counter, ToOven}, e.Kind) && !slices.Contains(held, e.Dish) {
			held = append(held, e.Dish)
		}
	}
	if len(held) != 1 {
		return ""
	}
	return held[0]
}

// onlyOn is the dish on the fire, where by the log it is one, and nothing else was ever on: a cold
// place that is told without a name is of that, for a warning is not lost over a name.
func (n *noteReader) onlyOn() string {
	on := ""
	for _, e := range n.log {
		switch {
		case e.Dish == "":
		case on != "" && e.Dish != on, !slices.Contains([]Kind{On, Core, Coldest, Wrapped}, e.Kind):
			return ""
		default:
			on = e.Dish
		}
	}
	return on
}

// ofAll are words by which all pieces of a dish are meant.
var ofAll = []string{"both", "all", "everything"}

// withoutAll drops such a word; all says that there was one.
func withoutAll(words []string) (rest []string, all bool) {
	rest = slices.DeleteFunc(slices.Clone(words), func(w string) bool { return slices.Contains(ofAll, w) })
	return rest, len(rest) < len(words)
}

// counted takes how many pieces of a dish are meant: 2 butts on, put 8 thighs on; whole says
// that it has no more.
func (n *noteReader) counted(words []string) (rest []string, whole, is bool) {
	k := slices.IndexFunc(words, noteNumber.MatchString)
	if len(words) < 3 || k < 0 || k+1 >= len(words) || slices.ContainsFunc(words[k+1:], noteNumber.MatchString) {
		return words, false, false
	}
	count, err := strconv.Atoi(words[k])
	_, id, _ := n.takeDish(append(slices.Clone(words[k+1:]), "on"))
	if err != nil || id == "" || count > mostPieces {
		return words, false, false
	}
	return slices.Delete(slices.Clone(words), k, k+1), n.pieces(id) == count, true
}

// mostPieces of a dish are counted by a cook: a larger number was read.
const mostPieces = 24

// batches is in how many loads of the grate a dish goes on.
func (n *noteReader) batches(dish string) int {
	id, ok := n.dishID(dish)
	for _, d := range n.day.Dishes {
		if ok && d.ID == id {
			return d.Batches
		}
	}
	return 1
}

// fillers are words that tell nothing.
var fillers = []string{
	"the", "my", "i", "we", "just", "now", "is", "are", "was", "were", "has", "have", "had", "been", "some", "its", "it's", "it", "im", "i'm", "we've", "i've", "am", "be", "being", "degrees", "degree", "deg", "about", "a", "an",
	"please", "ok", "okay", "so", "well", "finally", "already", "um", "uh", "currently", "got", "get", "gets", "getting", "this", "that", "that's", "our", "only", "right", "them", "they", "there", "here", "all's", "yes", "yep",
	"guys", "note", "r", "kitchen", "been", "we're", "hey", "hi", "quick", "update", "looks", "now,", "sometime", "later,", "log", "then", "today", "too", "really", "nicely", "yet", "still", "again?", ",", "of", "exactly", "around", "roughly", "approx", "maybe", "like", "fahrenheit's", "read", "alarm", "beep", "beeping", "beeps",
}

func withoutFillers(words []string) []string {
	return slices.DeleteFunc(slices.Clone(words), func(w string) bool { return slices.Contains(fillers, w) })
}
