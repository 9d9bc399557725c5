package logbook

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"
)

// pieceWords name one piece of a dish of several: smaller butt, other rack, one of the butts.
var pieceNouns = []string{"one", "1", "rack", "piece", "slab", "half", "of"}

// ofOnePiece says of lines that one piece alone came off: the others of its dish go on. What
// was done to one piece otherwise cannot be said, for a line is of all pieces of a dish. What
// was read of it stays.
func (n *noteReader) ofOnePiece(rows []Row, sentence string, words []string) ([]Row, string) {
	one, id := n.speaksOfOne(words)
	if sentence != "" || !one {
		return rows, sentence
	}
	piece := pieceOf(words)
	var kept []Row
	for _, r := range rows {
		form, _ := Kind(r.kind).Form()
		done := form.OfDish && form.Carries != CarriesTemperature && Kind(r.kind) != On && Kind(r.kind) != DishCancelled
		if !done || n.pieces(r.dish) == 1 || id != "" && id != r.dish {
			kept = append(kept, r)
			continue
		}
		switch Kind(r.kind) {
		case Wrapped, Restarted, Stopped:
			return nil, allPiecesSaid(r.dish)
		case Pulled:
			r.value = piece
		case Boxed, Counter:
			if !n.isOff(r.dish, piece, kept) {
				kept = append(kept, Row{dish: r.dish, kind: string(Pulled), value: piece, time: r.time})
			}
		default:
			return nil, onePieceSaid(r.dish) + ". Nothing was noted"
		}
		kept = append(kept, r)
	}
	return kept, ""
}

// isOff says whether a piece of a dish came off, by the rows of a note or by the log.
func (n *noteReader) isOff(dish, piece string, rows []Row) bool {
	return slices.ContainsFunc(rows, func(r Row) bool { return r.dish == dish && Kind(r.kind) == Pulled }) ||
		slices.ContainsFunc(n.log, func(e Entry) bool { return e.Dish == dish && e.Kind == Pulled && e.Value == piece })
}

// pieceOf is the word for the one piece that a note tells of.
func pieceOf(words []string) string {
	for _, w := range words {
		if piece := placeOf(w); piece != "left" && piece != "last" && slices.Contains(otherPieces, piece) {
			return piece
		}
	}
	return OnePiece
}

// onePieceSaid is what is to be noted of one piece that is ahead of the others.
func onePieceSaid(dish string) string {
	return fmt.Sprintf("is one of them off? Note it: one %s off. The others go on; note what the slowest of them reads, and %s off when the last one is off", dish, dish)
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
	if !pieceTaken.MatchString(said) {
		rows[0].aside = onePieceSaid(rows[0].dish)
		return rows
	}
	rows = append(rows, Row{dish: rows[0].dish, kind: string(Pulled), value: pieceOf(words)})
	for _, to := range []struct{ word, kind, value string }{{"cooler", string(Boxed), HeldInCooler}, {"oven", string(Boxed), HeldInOven}, {"counter", string(Counter), ""}} {
		if slices.Contains(words, to.word) {
			rows = append(rows, Row{dish: rows[0].dish, kind: to.kind, value: to.value})
		}
	}
	return rows
}

// speaksOfOne says that a note tells of one piece among several, and of which dish, where it
// names one.
func (n *noteReader) speaksOfOne(words []string) (one bool, dish string) {
	if slices.ContainsFunc(words, func(w string) bool { return slices.Contains(ofAll, w) }) {
		return false, ""
	}
	for k, w := range words {
		if k > 0 && slices.Contains([]string{"first", "second", "third", "1", "2", "3"}, w) && len(n.alike(words[k-1])) == 1 && !isSmall(words[k-1]) { // butt 2
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

// pieceTaken are words that a piece left the fire, pieceDone those that it may have.
var pieceTaken = regexp.MustCompile(`\b(off|pulled|took|taken|out|cooler|counter|resting)\b`)

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
	id := cmp.Or(n.dishIn(rest), n.dishIn(words))
	if id == "" || slices.ContainsFunc(words, func(w string) bool { return w == "cooler" || w == "oven" || w == "counter" }) {
		return Row{}, "", false
	}
	if slices.ContainsFunc(words, func(w string) bool {
		return strings.HasPrefix(w, "wrap") || w == "foil" || w == "paper" || w == "on" || w == "back"
	}) {
		return Row{}, allPiecesSaid(id), true
	}
	more := slices.ContainsFunc(words, func(w string) bool {
		ofDish := len(n.alike(w)) == 1 && n.alike(w)[0] == id
		return !ofDish && placeOf(w) == "" && !slices.Contains(pieceSmall, w) && !slices.Contains(besideHeat, w) && !slices.Contains(pieceNouns, strings.TrimSuffix(w, "s"))
	})
	if said := strings.Join(words, " "); !more && pieceOff.MatchString(said) {
		return Row{dish: id, kind: string(Pulled), value: pieceOf(words)}, "", true
	}
	return Row{}, onePieceSaid(id) + ". Nothing was noted", true
}

var pieceOff = regexp.MustCompile(`\b(off|pulled|took|taken)\b`)

// allPiecesSaid is for what is done to piece after piece.
func allPiecesSaid(dish string) string {
	return fmt.Sprintf("a line is of all pieces of a dish together, or of one that comes off. Nothing was noted. Note it when it is so of the last one: %s on, %s wrapped; or piece by piece: one %s off", dish, dish, dish)
}
