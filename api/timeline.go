package api

import (
	"fmt"
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

// chapter is a revision and its events.
type chapter struct {
	agenda
	events []event
}

// chapters lists the events of all revisions, the first one first. A step counts as
// told once it was due under an earlier revision; it comes again if a later one
// moved it back into the future.
func chapters(agendas []agenda) []chapter {
	told := map[string]time.Time{} // id of a step, the instant it was told for
	list := make([]chapter, len(agendas))
	for i, a := range agendas {
		list[i] = chapter{a, a.events(told)}
		if i+1 < len(agendas) {
			for _, e := range list[i].events {
				if e.id.place > 0 && !e.due.After(agendas[i+1].kept) {
					told[e.step.ID] = e.step.At
				}
			}
		}
	}
	return list
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

// reader goes through the events for one client.
type reader struct {
	sent map[string]time.Time // step, the instant it was sent for
	at   eventID              // the last one sent
}

// resume takes up after an event that the client has. An id from the future, which
// no stream of this plan has given, fails.
func resume(list []chapter, after eventID) (*reader, error) {
	r := &reader{sent: map[string]time.Time{}, at: after}
	last := len(list) - 1
	if after.revision > last || after.place >= len(list[after.revision].events) {
		return nil, fmt.Errorf("%q is not an id that this stream has given", after)
	}
	for i := 0; i <= after.revision; i++ {
		for _, e := range list[i].events {
			passed := e.id.place <= after.place
			if i < after.revision {
				passed = !e.due.After(list[i+1].kept)
			}
			if passed && e.id.place > 0 {
				r.sent[e.step.ID] = e.step.At
			}
		}
	}
	return r, nil
}

// fresh begins at an instant: what was due by then is not sent.
func fresh(list []chapter, now time.Time) *reader {
	newest := list[len(list)-1]
	after := newest.events[0].id
	for _, e := range newest.events {
		if !e.due.After(now) {
			after = e.id
		}
	}
	r, _ := resume(list, after) // it is an id of the list
	return r
}

// next is what is due by now and was not sent yet, in order, and the instant at
// which more will be; zero if nothing is to come.
func (r *reader) next(list []chapter, now time.Time) (due []event, wake time.Time) {
	for i := r.at.revision; i < len(list); i++ {
		until := now
		if i+1 < len(list) {
			until = list[i+1].kept
		}
		for _, e := range list[i].events {
			if i == r.at.revision && e.id.place <= r.at.place {
				continue
			}
			if e.id.place > 0 && e.due.After(until) {
				if i == len(list)-1 {
					return due, e.due
				}
				break
			}
			if at, was := r.sent[e.step.ID]; e.id.place > 0 && was && at.Equal(e.step.At) {
				continue
			}
			due = append(due, e)
		}
	}
	return due, time.Time{}
}

// passed notes that the client has an event.
func (r *reader) passed(e event) {
	r.at = e.id
	if e.id.place > 0 {
		r.sent[e.step.ID] = e.step.At
	}
}
