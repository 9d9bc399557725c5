package logbook

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
)

// pieceWords name one piece of a dish of several: smaller butt, other rack, one of the butts.
var pieceNouns = []string{"one", "1", "rack", "piece", "slab", "half", "of"}

// ofOnePiece takes out of lines what was done to one piece alone: a line is of all pieces of
// a dish, and one that comes off would end the dish. What was read of it stays.
func (n *noteReader) ofOnePiece(rows []Row, sentence string, words []string) ([]Row, string) {
	one, id := n.speaksOfOne(words)
	if sentence != "" || !one {
		return rows, sentence
	}
	dish, why := "", Kind("")
	kept := slices.DeleteFunc(slices.Clone(rows), func(r Row) bool {
		form, _ := Kind(r.kind).Form()
		done := form.OfDish && form.Carries != CarriesTemperature && Kind(r.kind) != On && Kind(r.kind) != DishCancelled
		if done = done && n.pieces(r.dish) != 1 && (id == "" || id == r.dish); done {
			dish, why = r.dish, Kind(r.kind)
		}
		return done
	})
	switch {
	case dish == "":
		return rows, ""
	case why == Wrapped || why == Restarted || why == Stopped:
		return nil, allPiecesSaid(dish)
	case len(kept) == 0:
		return nil, onePieceSaid(dish) + ". Nothing was noted"
	}
	kept[len(kept)-1].aside = onePieceSaid(dish)
	return kept, ""
}

// onePieceSaid is what is to be done with one piece that is ahead of the others.
func onePieceSaid(dish string) string {
	return fmt.Sprintf("a line is of all pieces of a dish together: take off the one that is done, keep it hot, and go on by those that are left. Note what the slowest reads, %s coldest 188, and %s off when the last one is off", dish, dish)
}

// pieceSmall are words of what was done to a piece when it was read.
var pieceSmall = []string{"one", "1", "of", "off", "done", "pulled", "took", "taken", "out", "came", "it", "at", "hit", "reached", "is", "so", "and", ",", "finished", "ready", "the", "first", "in", "into", "cooler", "counter", "oven", "resting", "plate", "board"}

// onePieceRead keeps the figure of one piece that is done: one rack 201 off.
func (n *noteReader) onePieceRead(words []string) []Row {
	said := strings.Join(words, " ")
	if one, _ := n.speaksOfOne(words); !one || !pieceDone.MatchString(said) {
		return nil
	}
	bare := slices.DeleteFunc(slices.Clone(words), func(w string) bool { return slices.Contains(pieceSmall, w) })
	rows, sentence, ok := n.whole(bare, "")
	if !ok || sentence != "" || len(rows) != 1 || Kind(rows[0].kind) != Core || n.pieces(rows[0].dish) == 1 {
		return nil
	}
	rows[0].aside = onePieceSaid(rows[0].dish)
	return rows
}

// speaksOfOne says that a note tells of one piece among several, and of which dish, where it
// names one.
func (n *noteReader) speaksOfOne(words []string) (one bool, dish string) {
	if slices.ContainsFunc(words, func(w string) bool { return slices.Contains(ofAll, w) }) {
		return false, ""
	}
	for k, w := range words {
		if k > 0 && (w == "second" || w == "third") && len(n.alike(words[k-1])) == 1 { // butt 2
			return true, n.alike(words[k-1])[0]
		}
		if k+1 == len(words) {
			break
		}
		next := words[k+1]
		ids := n.alike(next)
		named := len(ids) == 1 && !isSmall(next)
		isOne, noun := w == "one" || w == "1", slices.Contains(pieceNouns, strings.TrimSuffix(next, "s"))
		if !isOne && !slices.Contains(otherPieces, placeOf(w)) || !named && (!noun || isOne && (next == "one" || next == "1")) {
			continue
		}
		if named {
			return true, ids[0]
		}
		if next == "of" {
			return true, n.dishIn(words[k+2:])
		}
		return true, ""
	}
	return false, ""
}

var pieceDone = regexp.MustCompile(`\b(done|off|finished|ready|pulled|out|cooler|counter|resting)\b`)

// firstAndOther calls one of two pieces the first, where the other is spoken of.
func firstAndOther(words []string) {
	if !slices.Contains(words, "other") {
		return
	}
	for k, w := range words {
		if w == "one" && (k == 0 || placeOf(words[k-1]) == "") {
			words[k] = "first"
		}
	}
}

// pieces of a dish; 0 where nobody said.
func (n *noteReader) pieces(dish string) int {
	k := slices.IndexFunc(n.named(), func(d Dish) bool { return d.ID == dish })
	if k < 0 {
		return 0
	}
	return n.named()[k].Count
}

// onePiece is told what to do with one piece of a dish.
func (n *noteReader) onePiece(rest, words []string) (Row, string, bool) {
	id := n.dishIn(rest)
	if id == "" {
		return Row{}, "", false
	}
	if slices.ContainsFunc(words, func(w string) bool {
		return strings.HasPrefix(w, "wrap") || w == "foil" || w == "paper" || w == "on" || w == "back"
	}) {
		return Row{}, allPiecesSaid(id), true
	}
	return Row{}, onePieceSaid(id) + ". Nothing was noted", true
}

// allPiecesSaid is for what is done to piece after piece.
func allPiecesSaid(dish string) string {
	return fmt.Sprintf("a line is of all pieces of a dish together. Nothing was noted. Note it when it is so of the last one: %s on, %s wrapped", dish, dish)
}
