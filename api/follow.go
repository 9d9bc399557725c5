package api

import (
	"context"
	"errors"
	"time"
)

// Notice is one thing that a plan's followers are told outside of a stream: the same
// events under the same ids. It names the plan by its topic, and is the same whenever it
// is told.
type Notice struct {
	ID              string // of the event, as in the stream
	Revision, Place int
	Due             time.Time
	News            *RevisionNews // of a revision, place 0
	Step            *Reminder     // of a step, else
	State           PlanState     // after it
}

// PlanState is a plan as it stands at an event: what is due then, with what a display needs.
type PlanState struct {
	Event   string    `json:"event"`
	Name    string    `json:"name"`
	ServeAt time.Time `json:"serve_at"`
	Due
}

// Follower goes through the events of one plan. It belongs to one goroutine at a time.
type Follower struct {
	Topic string
	Trial bool

	score   *score
	chapter *chapter // where it was left; nil before the first look
	close   func()
}

// Follow begins to follow a plan; ErrNotFound.
func (s *Service) Follow(ctx context.Context, plan string) (*Follower, error) {
	record, err := s.cfg.Store.Plan(ctx, plan)
	if err != nil {
		return nil, err
	}
	f := &Follower{Topic: TopicOf(plan), Trial: record.Trial}
	f.score, f.close = s.scores.open(record)
	return f, nil
}

// Close ends it.
func (f *Follower) Close() { f.close() }

// Rings gets a value after anything was revised or deleted by this process.
func (s *Service) Rings() (heard <-chan struct{}, stop func()) { return s.bell.listen(allPlans) }

// mostNotices are told at once.
const mostNotices = 64

// After is what is due by an instant after an event, at most a few at a time, and when
// there will be more: the instant itself if there is more already, zero if nothing is
// known to come. Place -1 is before all events of the revision.
func (f *Follower) After(ctx context.Context, revision, place int, by time.Time) (list []Notice, next time.Time, err error) {
	newest, err := f.score.look(ctx)
	if err != nil {
		return nil, next, err
	}
	if place, err = f.goTo(ctx, revision, place, newest, by); err != nil {
		return nil, next, err
	}
	for ch := f.chapter; ; place = -1 {
		following, err := f.score.after(ctx, ch)
		if err != nil {
			return nil, next, err
		}
		until := by
		if following != nil {
			until = following.kept
		}
		due, wake := ch.due(place, until)
		for _, e := range due {
			if len(list) == mostNotices {
				return list, by, nil
			}
			list = append(list, f.notice(ch, e))
		}
		if following == nil {
			return list, wake, nil
		}
		ch = following
	}
}

// goTo finds the chapter of an event, most often the one where it was left or the next.
func (f *Follower) goTo(ctx context.Context, revision, place int, newest *chapter, by time.Time) (int, error) {
	var err error
	if f.chapter == nil || f.chapter.Revision > revision {
		f.chapter, err = f.score.find(ctx, eventID{revision, max(place, 0)}, newest)
		if errors.Is(err, errNeverGiven) { // the store was put back to an older state
			f.chapter = newest
			return newest.placeAt(by), nil
		}
	}
	for err == nil && f.chapter.Revision < revision {
		f.chapter, err = f.score.after(ctx, f.chapter)
		if err == nil && f.chapter == nil {
			err = errNeverGiven
		}
	}
	if err != nil {
		return place, err
	}
	return min(place, len(f.chapter.events)-1), nil
}

func (f *Follower) notice(ch *chapter, e event) Notice {
	a := ch.agenda
	n := Notice{ID: e.id.String(), Revision: e.id.revision, Place: e.id.place, Due: e.due}
	n.State = PlanState{Event: n.ID, Name: a.Name, ServeAt: a.ServeAt, Due: a.due(e.due, 0)}
	n.State.Plan = f.Topic
	if e.id.place == 0 {
		n.News = &RevisionNews{f.Topic, a.Revision, a.Feasible, a.ServeAt, a.changeTexts()}
		return n
	}
	r := a.reminder(e.step, e.due)
	r.Plan = f.Topic
	n.Step = &r
	return n
}
