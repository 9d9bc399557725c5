package api

import (
	"net/http"
	"net/http/httptest"
	"testing"
)

// A revision and the end of a feed may ring as one: who reads by the feed hears of neither
// but the end.
func TestRevisionAndRevocationAtOnce(t *testing.T) {
	cfg, clock, _, p := burgersUnderWay(t)
	s := New(cfg)
	record, err := cfg.Store.Plan(t.Context(), p.ID)
	if err != nil {
		t.Fatal(err)
	}
	sc, done := s.scores.open(record)
	defer done()
	newest, err := sc.look(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	c := &call{w: &answerWriter{ResponseWriter: httptest.NewRecorder()}}
	st := &stream{service: s, c: c, shown: record.Feed, feed: true, score: sc, chapter: newest, control: http.NewResponseController(c.w)}
	clock.set("2027-07-03T17:20:00-05:00")
	ask(t, s.Handler(), http.MethodPost, "/v1/plans/"+p.ID+"/readings", []byte(entry("17:19:00", "grate", "370 F")), asJSON...)
	if err := st.look(t.Context()); err != nil {
		t.Errorf("revised: %v", err)
	}
	ask(t, s.Handler(), http.MethodDelete, "/v1/plans/"+p.ID+"/feed", nil)
	if err := st.look(t.Context()); err == nil {
		t.Error("the feed was revoked, and its stream goes on")
	}
}
