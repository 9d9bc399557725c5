package schedule

import (
	"regexp"
	"strconv"
	"strings"

	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/strict"
)

// write is the guess as a request: what is not used first, then each field on a line of its own,
// with what was guessed of it behind a #. What is guessed the sheet of the plan says too.
func (g *guesser) write() []byte {
	w := writer{}
	var heard []string
	for _, said := range g.unused {
		if g.repeats(said) {
			continue
		}
		w.out.WriteString(behindHash("not used: " + said))
		heard = append(heard, "not used: "+said)
	}
	for name, value := range g.tree.Fields() {
		if name == "heard" {
			continue
		}
		w.out.WriteString(lineOf(name, value) + remark(g.marks[name]) + "\n")
		if m := g.marks[name]; m != "" {
			heard = append(heard, name+", guessed: "+m)
		}
	}
	w.out.WriteString("dishes:\n")
	for _, dish := range g.dishes {
		w.out.WriteString("  - " + dish.node.Flow() + remark(dish.mark) + "\n")
		if dish.mark != "" {
			heard = append(heard, "a dish, guessed: "+dish.mark)
		}
	}
	for _, said := range g.heard {
		heard = append(heard, askedFor.ReplaceAllString(said, ""))
	}
	if len(heard) > maxHeard {
		heard = heard[:maxHeard]
	}
	if len(heard) > 0 {
		list := strict.NewList(1)
		for _, said := range heard {
			list.Items = append(list.Items, strict.NewText(said, 1))
		}
		w.out.WriteString("heard: " + list.Flow() + "\n")
	}
	return []byte(w.out.String())
}

var smallWords = regexp.MustCompile(`(?i)\b(?:on|at|next|this|the|is|by|around|about|want|to|eat|ready|food|dinner|lunch|supper|kick-?off|serve|evening|afternoon|night|time|date|day|when)\b|[\s,.!?=:]+`)

// repeats says whether words only say the day or the hour that the request has.
func (g *guesser) repeats(said string) bool {
	serve := g.tree.Get("serve")
	if serve == nil || serve.Kind != strict.NodeObject {
		return false
	}
	if at := clockSaid.FindString(said); at != "" && hourIn(at) == serve.Get("time").Text {
		said = strings.Replace(said, at, " ", 1)
	}
	if day := weekDay.FindString(said); day != "" {
		if w, err := instant.ParseWhen(day, g.now); err == nil && w.Day != nil && w.Day.String() == serve.Get("date").Text {
			said = strings.Replace(said, day, " ", 1)
		}
	}
	for _, m := range g.marks {
		if strings.Contains(m, strconv.Quote(said)) {
			return true
		}
	}
	return smallWords.ReplaceAllString(said, "") == ""
}

// lineOf is a field at the left margin in one line.
func lineOf(name string, value *strict.Node) string {
	one := writer{}
	one.field(name, value)
	return strings.TrimRight(one.out.String(), "\n")
}

// remark is what was guessed, behind a #; empty for nothing.
func remark(mark string) string {
	if mark == "" {
		return ""
	}
	return "  # guessed: " + strings.ReplaceAll(mark, "\n", " ")
}
