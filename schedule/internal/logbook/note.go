package logbook

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule/internal/say"
)

// Note reads a few words as one or more rows of the log of a day, at an instant; the
// sentence says what cannot be read, or asks back. Every word is accounted for: what is not
// understood is refused, and never stored as something else.
func (r *Reader) Note(words []string, log []Entry, at time.Time) (rows []Row, sentence string) {
	if len(log) > 0 {
		r.before = log[len(log)-1].At
	}
	n := noteReader{Reader: r, log: log, at: at.In(r.day.Loc), names: map[string][]string{}, read: map[string]reading{}}
	if do := Emergency(words); do != "" {
		return nil, do
	}
	text := strings.Join(words, " ")
	if strings.HasSuffix(strings.TrimSpace(text), "?") {
		return nil, "a note says what was read or done, and that is a question: nothing was noted. What to do now is told by cookday now"
	}
	plain := n.plainWords(text)
	if len(plain) > mostWords {
		return nil, fmt.Sprintf("a note has at most %d words; write what was read or done, one thing a note", mostWords)
	}
	firstAndOther(plain)
	rows, sentence = n.rows(plain, "", splitDepth)
	if rows, sentence = n.ofOnePiece(rows, sentence, plain); sentence != "" {
		return nil, sentence
	}
	if sentence := n.onAlready(rows, plain); sentence != "" {
		return nil, sentence
	}
	n.lowestOfPlaces(rows)
	n.askBack(rows, plain)
	n.notDone(rows)
	rows = slices.DeleteFunc(rows, func(r Row) bool { // what was never on was not taken off
		return Kind(r.kind) == Pulled && n.neverOn(r.dish) && slices.ContainsFunc(rows, func(o Row) bool { return Kind(o.kind) == Counter && o.dish == r.dish })
	})
	rows = slices.CompactFunc(rows, func(a, b Row) bool { return a == b })
	for i := range rows {
		if rows[i].time == "" {
			rows[i].time = n.at.Format(time.RFC3339)
		}
		if rows[i].aside == "" && Kind(rows[i].kind) == Counter && n.neverOn(rows[i].dish) {
			rows[i].aside = "Not on yet, that is raw meat without refrigeration: 2 hr at the most, 1 hr above 90 °F, until it is on the heat. Past that throw it away, and do not cook it. Was it in the refrigerator in between? Then note when, such as: " + rows[i].dish + " in the fridge at 2:10 PM"
		}
	}
	return rows, sentence
}

// onAlready says of a dish that is told to go on now that its line stands in the log: told
// twice it would have gone on twice.
func (n *noteReader) onAlready(rows []Row, words []string) string {
	if slices.Contains(words, "back") || slices.Contains(words, "again") {
		return ""
	}
	for _, r := range rows {
		if Kind(r.kind) != On || r.time != "" || r.value != "" || n.batches(r.dish) > 1 {
			continue
		}
		var on, off time.Time
		for _, e := range n.log {
			switch {
			case e.Dish != r.dish:
			case e.Kind == On:
				on = e.At
			case e.Kind == Pulled || e.Kind == Stopped || e.Kind == ToOven || e.Kind == Boxed || e.Kind == Counter || e.Kind == Chilled:
				off = e.At
			}
		}
		if !on.IsZero() && !on.Before(off) {
			return fmt.Sprintf("that %s is on stands in the log, since %s. Nothing was noted. If that time is wrong, note the right one, %s on at %s",
				r.dish, n.day.Units.Clock(on.In(n.day.Loc)), r.dish, n.day.Units.Clock(on.In(n.day.Loc).Add(-10*time.Minute)))
		}
	}
	return ""
}

// neverOn says whether a log has a dish at no time on the grill.
func (n *noteReader) neverOn(dish string) bool {
	return !slices.ContainsFunc(n.log, func(e Entry) bool { return e.Dish == dish && e.Kind == On })
}

type noteReader struct {
	*Reader
	log   []Entry
	at    time.Time
	words []string // the vocabulary
	names map[string][]string
	read  map[string]reading // of parts of the note
}

// reading is what a part of a note says.
type reading struct {
	rows     []Row
	sentence string
	ok       bool
}

// alike is what a Reader finds, looked for once: a note asks for the same words often.
func (n *noteReader) alike(text string) []string {
	ids, known := n.names[text]
	if !known {
		ids = n.Reader.alike(text)
		n.names[text] = ids
	}
	return ids
}

// splitDepth is how often a note is taken apart: four things in one breath.
const splitDepth = 3

// mostSplit is how long a note may be and is still taken apart.
const mostSplit = 20

// rows are what a note says; of a dish named before it, where it names none itself.
func (n *noteReader) rows(words []string, dish string, depth int) ([]Row, string) {
	if flames.MatchString(strings.Join(words, " ")) {
		return nil, n.answer(words)
	}
	if depth == splitDepth {
		if rows := n.everythingOff(words); rows != nil {
			return rows, ""
		}
		if rows, sentence := n.offForAMoment(words); rows != nil || sentence != "" {
			return rows, sentence
		}
		if rows := n.onePieceRead(words); rows != nil {
			return rows, ""
		}
	}
	if rows, sentence, ok := n.whole(words, dish); ok {
		return rows, sentence
	}
	if rows := n.several(words, dish, depth); rows != nil {
		return rows, ""
	}
	if depth == splitDepth {
		if rows := n.beside(words, dish); rows != nil {
			return rows, ""
		}
	}
	if id := n.dishIn(words); id != "" && n.pieces(id) != 1 && pieceDone.MatchString(strings.Join(words, " ")) {
		one, _ := n.speaksOfOne(words)
		if row, sentence, ok := n.onePiece(words, words); one && ok && sentence == "" {
			return []Row{row}, ""
		}
		if one {
			return nil, onePieceSaid(id) + ". Nothing was noted"
		}
	}
	if sentence := n.answer(words); sentence != "" {
		return nil, sentence
	}
	if sentence := n.needsNoNote(words); sentence != "" {
		return nil, sentence
	}
	_, sentence, _ := n.whole(words, dish)
	return nil, sentence
}

// whole reads words as one thing, with the time that they tell; false where they cannot
// be read so. A sentence beside true asks back.
func (n *noteReader) whole(words []string, dish string) (rows []Row, sentence string, ok bool) {
	key := dish + "\n" + strings.Join(words, "\n")
	said, known := n.read[key]
	if !known {
		said.rows, said.sentence, said.ok = n.readWhole(words, dish)
		n.read[key] = said
	}
	return slices.Clone(said.rows), said.sentence, said.ok
}

func (n *noteReader) readWhole(words []string, dish string) (rows []Row, sentence string, ok bool) {
	first := ""
	if row, sentence, ok := n.guestsSaid(words); ok {
		return []Row{row}, sentence, true
	}
	for _, t := range times(words) {
		row, sentence, ok := n.thing(withoutFillers(t.rest), dish)
		if !ok {
			bare := sentence
			if row, sentence, ok = n.thing(t.rest, dish); sentence == "" && !ok {
				sentence = bare
			}
		}
		if ok && Kind(row.kind) == Served && slices.Contains(words, "still") {
			return nil, n.answer(words), true
		}
		if ok && Kind(row.kind) == On && slices.Contains(words, "still") {
			return nil, "what is still on needs no note. Note what it reads, or when it comes off", true
		}
		if !ok {
			if first == "" {
				first = sentence
			}
			continue
		}
		if sentence != "" {
			return nil, sentence, true
		}
		if t.loose && !n.surelyTime(t.clock, row) {
			continue
		}
		if t.isAgo && t.ago == 0 {
			if Kind(row.kind) == FireOut && !slices.Contains(words, "just") && !slices.Contains(words, "now") {
				row.aside = "Was it out before? Take it back, undo, and note since when, at the earliest: fire out at 3:10"
			}
			return []Row{row}, "", true
		}
		if t.before && Kind(row.kind) == FireOut {
			return nil, "when, at the earliest, may it have gone out? Nothing was noted. Note that time: fire out at 3:10. What you know is only the latest", true
		}
		at, sentence := n.moment(t, row)
		if sentence != "" {
			return nil, sentence, true
		}
		row.time = at.Format(time.RFC3339)
		return []Row{row}, "", true
	}
	if first == "" {
		first = n.unread(words)
	}
	return nil, first, false
}

// surelyTime says of bare digits behind "at" that they are a time: nothing was read with
// them, and they are no heat that meat or, where it goes on, a grate may have.
func (n *noteReader) surelyTime(c clockSaid, row Row) bool {
	form, _ := Kind(row.kind).Form()
	if !form.OfDish || c.hour*100+c.minute < 100 { // at 4
		return true
	}
	digits := c.hour*100 + c.minute
	switch Kind(row.kind) {
	case On, Restarted, ToOven:
		return false
	}
	return c.minute == 0 && digits > 12 || digits > mostMeatF
}

// mostMeatF is hotter than meat is read, °F: what is more is no temperature of it.
const mostMeatF = 215

func (n *noteReader) unread(words []string) string {
	said := strings.Join(words, " ")
	if said == "" {
		return `nothing was said of it: write what was read or done, such as "152", "on", "wrapped" or "off"`
	}
	return firstOfAll(said) + fmt.Sprintf(`%s cannot be read, and nothing was noted; write a dish and what was read or done, such as "brisket 152", "brisket wrapped", "brisket off at 4:30 PM", or of the grill "grate 260", "lit", "fire out 20 min ago", "top vent 1/4"; dishes are %s`,
		say.Quoted(said), say.Listed(n.dishNames(), "and"))
}
