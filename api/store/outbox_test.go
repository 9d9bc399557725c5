package store

import (
	"errors"
	"fmt"
	"slices"
	"testing"
	"time"

	"example.com/cookday/api"
)

// The tests of the outbox are part of the suite that every store passes.

var noon = time.Date(2027, 7, 3, 12, 0, 0, 0, time.UTC)

func lease(owner string, at time.Time) api.Lease {
	return api.Lease{Owner: owner, Now: at, Until: at.Add(15 * time.Second)}
}

// over is a lease that ends as it is put back.
func over(owner string, at time.Time) api.Lease {
	return api.Lease{Owner: owner, Now: at, Until: at}
}

func take(t *testing.T, s api.Store, l api.Lease) (plans []string, list []api.Mark) {
	t.Helper()
	list, err := s.TakeMarks(ctx, "bell", l, 10)
	must(t, err)
	for _, m := range list {
		plans = append(plans, m.Plan)
	}
	slices.Sort(plans)
	return plans, list
}

func marksFollowPlans(t *testing.T, s api.Store) {
	must(t, s.Create(ctx, record("old"), revision(0)))
	past := record("past")
	past.Serve = noon.Add(-48 * time.Hour)
	must(t, s.Create(ctx, past, revision(0)))
	must(t, s.OpenWay(ctx, "bell", noon))
	must(t, s.OpenWay(ctx, "bell", noon.Add(time.Hour)))
	must(t, s.Create(ctx, record("new"), revision(0)))
	plans, list := take(t, s, lease("me", noon))
	if !slices.Equal(plans, []string{"new", "old"}) {
		t.Fatalf("%v", plans)
	}
	for _, m := range list {
		from := time.Time{}
		if m.Plan == "old" {
			from = noon
		}
		if m.Way != "bell" || m.Topic != api.TopicOf(m.Plan) || m.Revision != 0 || m.Place != -1 || !m.From.Equal(from) || m.Tries != 0 {
			t.Errorf("%+v", m)
		}
		m.Next, m.Place = noon.Add(time.Hour), 3
		must(t, s.PutMark(ctx, m, over("me", noon)))
	}
	if plans, _ := take(t, s, lease("me", noon.Add(59*time.Minute))); plans != nil {
		t.Errorf("before it is time: %v", plans)
	}
	must(t, s.Append(ctx, "old", nil, revision(1), facts))
	plans, list = take(t, s, lease("me", noon.Add(time.Minute)))
	if !slices.Equal(plans, []string{"old"}) || list[0].Place != 3 {
		t.Fatalf("after a change: %v %+v", plans, list)
	}
	list[0].Next = time.Time{} // nothing is to come
	must(t, s.PutMark(ctx, list[0], over("me", noon.Add(time.Minute))))
	if plans, _ = take(t, s, lease("me", noon.Add(2*time.Hour))); !slices.Equal(plans, []string{"new"}) {
		t.Errorf("when it is time: %v", plans)
	}
}

func changesAreNotMissed(t *testing.T, s api.Store) {
	must(t, s.OpenWay(ctx, "bell", noon))
	must(t, s.Create(ctx, record("a"), revision(0)))
	_, list := take(t, s, lease("me", noon))
	must(t, s.Append(ctx, "a", nil, revision(1), facts)) // while it is told
	must(t, s.PutMark(ctx, list[0], over("me", noon)))
	plans, list := take(t, s, lease("me", noon))
	if len(plans) != 1 {
		t.Fatal("the change is forgotten")
	}
	must(t, s.Delete(ctx, "a"))
	must(t, s.PutMark(ctx, list[0], over("me", noon)))
	plans, list = take(t, s, lease("me", noon))
	if !slices.Equal(plans, []string{""}) || list[0].Topic != api.TopicOf("a") {
		t.Fatalf("the end is forgotten: %v", plans)
	}
	must(t, s.DropMark(ctx, "bell", list[0].Topic))
	if plans, _ := take(t, s, lease("me", noon.Add(time.Hour))); plans != nil {
		t.Errorf("the mark stayed: %v", plans)
	}
	if err := s.DropMark(ctx, "bell", list[0].Topic); !errors.Is(err, api.ErrNotFound) {
		t.Errorf("dropped twice: %v", err)
	}
	must(t, s.Create(ctx, record("a"), revision(0)))
	if plans, list := take(t, s, lease("me", noon)); len(plans) != 1 || list[0].Place != -1 || list[0].Plan != "a" {
		t.Errorf("made again: %+v", list)
	}
	if err := s.DropMark(ctx, "bell", api.TopicOf("a")); !errors.Is(err, api.ErrNotFound) {
		t.Errorf("the mark of a plan that is there was dropped: %v", err)
	}
}

func leasesHold(t *testing.T, s api.Store) {
	must(t, s.OpenWay(ctx, "bell", noon))
	must(t, s.Create(ctx, record("a"), revision(0)))
	_, list := take(t, s, lease("me", noon))
	if plans, _ := take(t, s, lease("you", noon.Add(14*time.Second))); plans != nil {
		t.Error("two have it")
	}
	list[0].Next = noon
	must(t, s.PutMark(ctx, list[0], lease("me", noon.Add(10*time.Second)))) // goes on
	if plans, _ := take(t, s, lease("you", noon.Add(20*time.Second))); plans != nil {
		t.Error("two have it after a while")
	}
	if plans, _ := take(t, s, lease("you", noon.Add(26*time.Second))); len(plans) != 1 {
		t.Error("a lease that is over holds")
	}
	if err := s.PutMark(ctx, list[0], over("me", noon)); !errors.Is(err, api.ErrConflict) {
		t.Errorf("put by one who has it no more: %v", err)
	}
	// The clock was a day ahead when it was leased, and is right now.
	if plans, _ := take(t, s, lease("me", noon.Add(24*time.Hour))); len(plans) != 1 {
		t.Error("tomorrow")
	}
	if plans, _ := take(t, s, lease("you", noon)); len(plans) != 1 {
		t.Error("a lease of a wrong clock holds")
	}
}

func triesAgain(t *testing.T, s api.Store) {
	must(t, s.OpenWay(ctx, "bell", noon))
	must(t, s.Create(ctx, record("a"), revision(0)))
	_, list := take(t, s, lease("me", noon))
	m := list[0]
	m.Tries, m.Since, m.Retry, m.Next, m.Fault = 2, noon, noon.Add(4*time.Second), noon, "no answer"
	must(t, s.PutMark(ctx, m, over("me", noon)))
	if n, err := s.Waiting(ctx); err != nil || n["bell"] != 1 {
		t.Errorf("waiting: %v %v", n, err)
	}
	if plans, _ := take(t, s, lease("me", noon.Add(3*time.Second))); plans != nil {
		t.Error("tried too soon")
	}
	must(t, s.Append(ctx, "a", nil, revision(1), facts))
	if plans, _ := take(t, s, lease("me", noon.Add(3*time.Second))); plans != nil {
		t.Error("a change makes nobody better who does not answer")
	}
	_, list = take(t, s, lease("me", noon.Add(4*time.Second)))
	if len(list) != 1 || list[0].Tries != 2 || list[0].Fault != "no answer" || !list[0].Since.Equal(noon) {
		t.Fatalf("%+v", list)
	}
	m = list[0]
	m.Retry = noon.Add(48 * time.Hour) // by a clock that was wrong
	m.Next = noon
	must(t, s.PutMark(ctx, m, over("me", noon)))
	if plans, _ := take(t, s, lease("me", noon.Add(5*time.Second))); len(plans) != 1 {
		t.Error("it waits for a clock that was wrong")
	}
}

func buriesTheDead(t *testing.T, s api.Store) {
	must(t, s.OpenWay(ctx, "bell", noon))
	must(t, s.Create(ctx, record("a"), revision(0)))
	_, list := take(t, s, lease("me", noon))
	for i := range api.MostDead + 2 {
		d := api.DeadLetter{Way: "bell", Topic: list[0].Topic, Event: fmt.Sprintf("0.%d", i), Due: noon, Buried: noon.Add(time.Hour), Tries: 5, Fault: "410 Gone"}
		must(t, s.PutMark(ctx, list[0], lease("me", noon), d))
	}
	dead, err := s.DeadLetters(ctx, 5000)
	if err != nil || len(dead) != api.MostDead || dead[0].Event != fmt.Sprintf("0.%d", api.MostDead+1) || dead[0].Fault != "410 Gone" || !dead[0].Buried.Equal(noon.Add(time.Hour)) {
		t.Errorf("%d dead, %v", len(dead), err)
	}
	if dead, err := s.DeadLetters(ctx, 2); err != nil || len(dead) != 2 {
		t.Errorf("%d dead of 2, %v", len(dead), err)
	}
}
