package main

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"example.com/cookday/schedule/draft"
)

// asking is one round of questions.
type asking struct {
	*newDay
	p       *prompt
	i       *draft.Interview
	dishes  []string       // of the flags, that are still to come
	typed   int            // answers
	gone    bool           // nobody answers any more
	refused string         // what was answered last, and could not be read
	taken   []string       // as usual, for nobody answered
	missing []string       // what has nothing usual
	kept    []draft.Answer // what was answered when the answers ended
}

// ask puts the questions that no flag answers. Where the answers end early, the rest is
// taken as usual; what has nothing usual is missing.
func (n *newDay) ask(p *prompt, i *draft.Interview) (kept []draft.Answer, missing []string, err error) {
	a := asking{newDay: n, p: p, i: i, dishes: n.dishes}
	for q, open := i.Next(); open; q, open = i.Next() {
		text, flag, err := a.answer(q)
		if err != nil {
			return nil, nil, err
		}
		if err := i.Answer(text); err != nil {
			if err := a.wrong(q, text, flag, err); err != nil {
				return nil, nil, err
			}
			continue
		}
		if q.Key == draft.KeyWhen && flag == "" && text != "" && !a.gone {
			p.say("That is " + i.When() + ".")
		}
		if a.gone && flag == "" && q.Default != draft.NoMore {
			a.taken = append(a.taken, subject(q)+": "+q.Default+a.refused)
		}
		a.refused = ""
	}
	if len(a.taken) > 0 && len(a.missing) == 0 {
		p.say("\nThe answers ended early. For the rest this was taken: " + strings.Join(a.taken, "; ") + ".")
	}
	return a.kept, a.missing, nil
}

// answer is what a flag or the cook says to a question; no text is what is usual.
func (a *asking) answer(q draft.Question) (text, flag string, err error) {
	switch {
	case q.Key == draft.KeyDish && len(a.dishes) > 0:
		text, a.dishes = a.dishes[0], a.dishes[1:]
		return text, "--dish", nil
	case q.Key == draft.KeyDish && len(a.newDay.dishes) > 0 && q.Default != "":
		return draft.NoMore, "--dish", nil
	case a.given[q.Key] != nil && *a.given[q.Key] != "":
		return *a.given[q.Key], "--" + q.Key, nil
	case a.yes:
		return "", "--yes", nil
	case a.gone:
		return "", "", nil
	}
	question := q.Text
	if q.Number > 0 {
		question = fmt.Sprintf("%d of %d: %s", q.Number, q.Of, q.Text)
	}
	text, err = a.p.ask(question, q.Default)
	if errors.Is(err, io.EOF) {
		a.gone, err = true, nil
		a.kept = a.i.Said()
	} else {
		a.typed++
	}
	return text, "", err
}

// wrong is said of an answer that cannot be taken. By a flag it ends the round, unless
// answers were typed, which are not lost.
func (a *asking) wrong(q draft.Question, text, flag string, err error) error {
	switch {
	case flag == "--yes":
		return usage("%s: %s (%s)", q.Key, err, q.Text)
	case flag != "" && a.typed == 0:
		return usage("%s: %s", flag, err)
	case flag != "":
		if !a.gone {
			a.kept = a.i.Said()
		}
		a.missing, a.gone = append(a.missing, flag+": "+err.Error()), true
		if q.Key != draft.KeyDish {
			*a.given[q.Key] = ""
		}
	case a.gone:
		a.missing = append(a.missing, q.Text)
		a.i.Skip()
	default:
		a.p.say(err.Error())
		a.refused = fmt.Sprintf(", for %q was not understood", text)
	}
	return nil
}

// subject is what a question is about, in a word or two.
func subject(q draft.Question) string {
	if q.Dish != "" {
		return q.Dish + ", " + q.Key
	}
	return q.Key
}

// goOn is the command that asks on from where the answers ended.
func goOn(name string, kept []draft.Answer) string {
	words := []string{"cookday new"}
	if name != "" {
		words = append(words, name)
	}
	for _, answer := range kept {
		words = append(words, "--"+answer.Key+" '"+strings.ReplaceAll(answer.Text, "'", `'\''`)+"'")
	}
	return strings.Join(words, " ")
}
