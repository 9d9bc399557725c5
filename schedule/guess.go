package schedule

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"example.com/cookday/schedule/internal/meant"
	"example.com/cookday/schedule/internal/strict"
)

// GuessOn is the nearest request to a text that [Understand] refuses: all that is certain of it,
// and for each thing that is open the likeliest value, marked on its line. What has no place
// stands at the top behind a #. Now is as for [ReadOn]. False where no guess is one that
// [Understand] takes: where no food is known, or what is asked for must not be cooked so.
//
// What guards who eats is never guessed: somebody who may be frail is; of two foods that a word
// may mean the one with the higher minimum is taken; a food that nobody knows is left out.
func GuessOn(data []byte, now time.Time) (guess []byte, ok bool) {
	g := newGuesser(asWritten(data), now)
	if g == nil || !g.settle() {
		return nil, false
	}
	guess = g.write()
	if _, err := Understand(guess, now); err != nil {
		return nil, false
	}
	return guess, true
}

// guesser fills a request that has faults with likely values until it has none.
type guesser struct {
	now    time.Time
	text   string       // all that was written
	metric bool         // all that has a unit in it is
	tree   *strict.Node // the request as it stands
	dishes []guessedDish
	marks  map[string]string // of fields at the top: what was guessed, and of what
	looked map[string][]meant.GuessedDish
	heard  []string
	redate bool // a date was written that is not that of the request
	unused []string
}

// guessedDish is a dish and what was guessed of it; empty for nothing.
type guessedDish struct {
	node *strict.Node
	mark string
}

// newGuesser is what is certain of a text; nil where it names no food.
func newGuesser(data []byte, now time.Time) *guesser {
	g := &guesser{now: now, text: string(data), metric: allMetric(data), marks: map[string]string{}, looked: map[string][]meant.GuessedDish{}}
	tree, left := looseTree(data, now)
	if tree == nil {
		return nil
	}
	d := g.decoder(&strict.FaultList{})
	taken := d.take(tree)
	g.tree, g.heard = taken.Request, taken.Heard
	if serve := g.tree.Get("serve"); serve != nil && serve.Kind == strict.NodeObject && d.nowhere && !strings.Contains(g.text, "UTC") {
		g.tree = g.tree.With("serve", serve.Without("tz")) // nobody said where it is
	}
	for _, dish := range taken.Dropped {
		g.leave(dish.Text)
	}
	if list := g.tree.Get("dishes"); list != nil {
		g.tree = g.tree.Without("dishes")
		items := []*strict.Node{list}
		if list.Kind == strict.NodeList {
			items = list.Items
		}
		for _, item := range items {
			g.dishes = append(g.dishes, guessedDish{node: item})
		}
	}
	if len(g.dishes)+len(left) > maxDishes {
		return nil
	}
	for _, part := range left {
		if dateWords.MatchString(part.Text) || g.tree.Get("serve") == nil && weekDay.MatchString(part.Text) {
			g.redate = true
		}
		g.place(part.Text)
	}
	return g
}

// decoder reads the request of a guess.
func (g *guesser) decoder(faults *strict.FaultList) decoder {
	d := newDecoderOn(faults, g.now)
	d.nowhere, d.metric = !g.now.IsZero() && d.ownZone() == "", g.metric
	return d
}

// looseTree is a request as far as its text has any shape, and the parts that have no place.
func looseTree(data []byte, now time.Time) (tree *strict.Node, left []*strict.Node) {
	if text, _ := strict.Unreadable(data, strict.MaxRequestBytes); text != "" {
		return nil, nil
	}
	if plain, left := meant.Plain(data, now); plain != nil {
		return plain, left
	}
	tree, faults := strict.ParseDocument(data, strict.MaxRequestBytes)
	if tree != nil && tree.Kind == strict.NodeObject && faults.Len() == 0 {
		return meant.Shaped(tree), nil
	}
	if letter, left := meant.Letter(data, now); letter != nil {
		return letter, left
	}
	return meant.Loosely(data, now)
}

// maxGuesses is how often a request is read again; each time at least one fault is less.
const maxGuesses = 25

// settle guesses until the request has no fault; false where that fails.
func (g *guesser) settle() bool {
	g.wordsToDishes()
	g.minorGuests()
	if g.redate {
		g.guessServe()
	}
	for range maxGuesses {
		faults := g.faults()
		if len(faults) == 0 {
			return true
		}
		done := map[string]bool{} // one guess for a dish or a field, then it is read again
		for _, f := range slices.Backward(faults) {
			at, rest := g.at(f.Path)
			if at == "grill again" {
				at = "grill"
			}
			if done[at] {
				continue
			}
			done[at] = true
			if !g.guessAt(at, rest, f) {
				return false
			}
		}
	}
	return false
}

// request is the tree with its dishes.
func (g *guesser) request() *strict.Node {
	list := strict.NewList(1)
	for _, dish := range g.dishes {
		list.Items = append(list.Items, dish.node)
	}
	return g.tree.With("dishes", list)
}

// faults are those of the request as it stands.
func (g *guesser) faults() []strict.Fault {
	faults := &strict.FaultList{}
	d := g.decoder(faults)
	var r Request
	d.request(&r)(g.request(), "")
	r = raisedForFrail(raisedForPoultry(r.WithDefaults()))
	faults.Adopt(r.faults(nil), d.Decoder)
	return faults.Faults
}

// at is the field at the top, or the dish, that a path leads to, and the rest of the path.
func (g *guesser) at(path string) (at, rest string) {
	for i := range g.dishes {
		if rest, ok := strings.CutPrefix(path, strict.ItemPath("dishes", i)); ok {
			return strict.ItemPath("dishes", i), strings.TrimPrefix(rest, ".")
		}
	}
	for name := range g.tree.Fields() {
		for _, said := range []string{name, strconv.Quote(name)} {
			if rest, ok := strings.CutPrefix(path, said); ok && (rest == "" || rest[0] == '.' || rest[0] == '[') {
				return name, strings.TrimPrefix(rest, ".")
			}
		}
	}
	at, rest, _ = strings.Cut(path, ".")
	return at, rest
}

// guessAt fills one field or dish; false where nothing can be guessed.
func (g *guesser) guessAt(at, rest string, f strict.Fault) bool {
	for i := range g.dishes {
		if at == strict.ItemPath("dishes", i) {
			g.guessDish(i, rest, f)
			return len(g.dishes) > 0
		}
	}
	switch at {
	case "dishes", "":
		return false
	case "serve":
		g.guessServe()
	case "grill":
		g.guessGrill(f.Sentence)
	case "guests":
		g.guessGuests()
	default:
		g.drop(at)
	}
	return true
}

// mark says what was guessed of a field, and what was written for it.
func mark(what, wrote string) string {
	wrote = strings.Join(strings.Fields(wrote), " ")
	if wrote == "" {
		return what + "; nothing was written of it"
	}
	return fmt.Sprintf("%s; you wrote %q", what, wrote)
}
