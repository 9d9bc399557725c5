package meant

import (
	"strconv"
	"strings"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/strict"
)

// dishTimes are the fields of a group that gives foods the times at which they are eaten, or
// handed in: {ribs: 12:30, pork: 13:00}; nil for another group.
func (t *taker) dishTimes(group *strict.Node) map[string]*strict.Node {
	if group.Kind != strict.NodeObject || group.Empty() {
		return nil
	}
	times := map[string]*strict.Node{}
	for name, value := range group.Fields() {
		if !isFoodWord(name) || value.Kind != strict.NodeText || !isClock(value.Text) {
			return nil
		}
		times[name] = value
	}
	return times
}

// isFoodWord says whether a word is a food, or the animal that one is of.
func isFoodWord(name string) bool {
	return knownFood(name) || oneOf(strings.ToLower(strings.TrimSpace(name)), "pork", "beef", "lamb", "chicken", "poultry", "fish")
}

// serveEach gives each dish the time that a group of times has for it; a group of which one
// time belongs to no dish, or to two, stays as it was written.
func (t *taker) serveEach() {
	list := t.out.Get("dishes")
	for _, group := range t.times {
		served, ok := list, list != nil && list.Kind == strict.NodeList
		for name, at := range group.value.Fields() {
			served, ok = serveOne(served, name, at, ok)
		}
		if !ok {
			t.out = t.out.WithAt(group.name, group.line, group.value)
			continue
		}
		list = served
		t.out = t.out.With("dishes", list)
	}
}

func serveOne(list *strict.Node, food string, at *strict.Node, ok bool) (*strict.Node, bool) {
	found := -1
	if !ok {
		return list, false
	}
	for k, dish := range list.Items {
		if dish.Kind != strict.NodeObject || dish.Get("cut") == nil || dish.Get("serve") != nil || !ofFood(dish.Get("cut").Text, food) {
			continue
		}
		if found >= 0 {
			return list, false
		}
		found = k
	}
	if found < 0 {
		return list, false
	}
	items := append([]*strict.Node{}, list.Items...)
	items[found] = items[found].With("serve", strict.NewText(at.Text, at.Line))
	return strict.NewList(list.Line, items...), true
}

// ofFood says whether a cut is what a word names: its kind of meat, a part of its name, or
// one of several foods that go by the word.
func ofFood(name, word string) bool {
	low := strings.ToLower(strings.TrimSpace(word))
	c, unknown := cut.One(name)
	if unknown != "" {
		return false
	}
	if strings.EqualFold(c.Food, low) || strings.Contains(strings.ReplaceAll(c.Name, "-", " "), strings.TrimSuffix(low, "s")) {
		return true
	}
	return SameFood(name, word)
}

// heatOfAll takes the heat of the grate, said once for the day, for every dish that has none
// of its own.
func (t *taker) heatOfAll(list *strict.Node, f loose) bool {
	name, of := unitOfName(f.name)
	word := strings.ReplaceAll(plainWord(name), "temperature", "temp")
	if !oneOf(word, "pit", "pittemp", "smokertemp", "grilltemp", "gratetemp", "cooktemp", "cookingtemp", "chambertemp") || list.Kind != strict.NodeList {
		return false
	}
	field, text := t.whichHeat(word, f.value, of)
	if field != "level" {
		return false
	}
	items := append([]*strict.Node{}, list.Items...)
	for k, dish := range items {
		if dish.Kind != strict.NodeObject {
			return false
		}
		if dish.Get("level") == nil {
			items[k] = dish.With("level", strict.NewText(text, f.line))
		}
	}
	t.say("%s is taken for every dish; one that wants another heat has its own level", strconv.Quote(inWords(f.name, f.value)))
	t.out = t.out.With("dishes", strict.NewList(list.Line, items...))
	return true
}
