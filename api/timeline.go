package api

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"time"

	"example.com/cookday/schedule"
)

// The events of a plan's stream follow from its revisions and nothing else, so that
// a stream can be taken up again after any restart, of client or service. Each
// revision has a list of events: the news of the revision itself, then its steps by
// the instant they are due. The id of an event is its revision and its place there.

// eventID is where a client is in the stream.
type eventID struct{ revision, place int }

func (id eventID) String() string { return fmt.Sprintf("%d.%d", id.revision, id.place) }

func parseEventID(text string) (eventID, error) {
	r, p, _ := strings.Cut(text, ".")
	revision, err := strconv.ParseUint(r, 10, 31)
	place, err2 := strconv.ParseUint(p, 10, 31)
	if err != nil || err2 != nil {
		return eventID{}, fmt.Errorf("%.40q is not an id of this stream, such as 0.12", text)
	}
	return eventID{int(revision), int(place)}, nil
}

// event is one of the list; place 0 is the news of the revision.
type event struct {
	id   eventID
	due  time.Time
	step schedule.Step
}

// chapter is a revision and its events. It is not changed once others can see it, but
// for next, which its score guards.
type chapter struct {
	*agenda
	events []event
	told   map[string]time.Time // before it: id of a step, the instant it was told for
	next   *chapter             // nil for the last that is known
}

// firstChapter is that of the first revision.
func firstChapter(a *agenda) *chapter { return newChapter(a, map[string]time.Time{}) }

func newChapter(a *agenda, told map[string]time.Time) *chapter {
	return &chapter{agenda: a, events: a.events(told), told: told}
}

// then is the chapter after one. A step counts as told once it was due under an earlier
// revision; it comes again if a later one moved it back into the future.
func (ch *chapter) then(a *agenda) *chapter {
	told := maps.Clone(ch.told)
	for _, e := range ch.events {
		if e.id.place > 0 && !e.due.After(a.kept) {
			told[e.step.ID] = e.step.At
		}
	}
	return newChapter(a, told)
}

func (a *agenda) events(told map[string]time.Time) []event {
	list := []event{{id: eventID{a.Revision, 0}, due: a.kept}}
	var steps []event
	for _, s := range a.Steps {
		if _, was := told[s.ID]; s.Done || was && !s.At.After(a.kept) {
			continue
		}
		due := s.At
		if due.Before(a.kept) {
			due = a.kept // overdue before anybody knew
		}
		steps = append(steps, event{due: due, step: s})
	}
	slices.SortStableFunc(steps, func(x, y event) int { return x.due.Compare(y.due) })
	for i := range steps {
		steps[i].id = eventID{a.Revision, i + 1}
	}
	return append(list, steps...)
}

// due are the events after a place that are due by an instant, and the instant at which
// the next one will be; zero if there is none.
func (ch *chapter) due(after int, by time.Time) (list []event, wake time.Time) {
	for _, e := range ch.events[after+1:] {
		if e.id.place > 0 && e.due.After(by) {
			return list, e.due
		}
		list = append(list, e)
	}
	return list, time.Time{}
}

// placeAt is where a stream begins that wants nothing of the past.
func (ch *chapter) placeAt(now time.Time) int {
	place := 0
	for _, e := range ch.events {
		if !e.due.After(now) {
			place = e.id.place
		}
	}
	return place
}
