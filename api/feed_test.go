package api

import (
	"encoding/json"
	"net/http"
	"strings"
	"testing"
	"time"
)

// A feed shows, and does nothing else.
func TestFeedMayOnlyRead(t *testing.T) {
	cfg, _ := testConfig()
	s := New(cfg)
	h := s.Handler()
	a := ask(t, h, http.MethodPost, "/v1/plans", []byte(burgers), asJSON...)
	base, feed := a.Header.Get("Location"), linkTarget.FindStringSubmatch(a.Header.Get("Link"))[1]
	for suffix, want := range map[string]int{"": 200, ".html": 200, ".ics": 200, ".svg": 200, ".txt": 200, ".json": 404, ".csv": 404, ".pdf": 404, ".svg?picture=grate": 200, "?revision=0": 400, "/readings": 404, "/feed": 404} {
		if got := ask(t, h, http.MethodGet, feed+suffix, nil); got.StatusCode != want {
			t.Errorf("GET feed%s: %d, want %d", suffix, got.StatusCode, want)
		}
	}
	for _, method := range []string{http.MethodDelete, http.MethodPut, http.MethodPost, http.MethodPatch} {
		if got := ask(t, h, method, feed, []byte(burgers), asJSON...); got.StatusCode != http.StatusMethodNotAllowed {
			t.Errorf("%s feed: %d", method, got.StatusCode)
		}
	}
	id := strings.TrimPrefix(feed, "/v1/feeds/")
	for _, target := range []string{"/v1/plans/" + id, "/v1/plans/" + id + ".ics"} {
		if got := ask(t, h, http.MethodGet, target, nil); got.StatusCode != http.StatusNotFound {
			t.Errorf("the feed's id is the owner's: %d", got.StatusCode)
		}
	}
	owner := ask(t, h, http.MethodGet, base+".ics", nil)
	guest := ask(t, h, http.MethodGet, feed+".ics", nil)
	if strings.Contains(string(guest.body), strings.TrimPrefix(base, "/v1/plans/")) {
		t.Error("the feed's calendar tells the owner's address")
	}
	if n := strings.Count(string(guest.body), "BEGIN:VEVENT"); n == 0 || n != strings.Count(string(owner.body), "BEGIN:VEVENT") {
		t.Errorf("%d events", n)
	}
	var now feedAddress
	made := ask(t, h, http.MethodPost, base+"/feed", nil)
	if err := json.Unmarshal(made.body, &now); err != nil || made.StatusCode != http.StatusCreated || now.Path == feed {
		t.Errorf("another feed: %d %s", made.StatusCode, made.body)
	}
	for path, want := range map[string]int{feed + ".ics": 404, now.Path + ".ics": 200} {
		if got := ask(t, h, http.MethodGet, path, nil); got.StatusCode != want {
			t.Errorf("%s: %d, want %d", path, got.StatusCode, want)
		}
	}
	ended := make(chan string)
	go func() { ended <- streamOf(t, h, now.Path+"/stream") }()
	for s.taken() == 0 {
		time.Sleep(time.Millisecond)
	}
	if got := ask(t, h, http.MethodDelete, base+"/feed", nil); got.StatusCode != http.StatusNoContent {
		t.Errorf("revoked: %d", got.StatusCode)
	}
	if text := <-ended; !strings.Contains(text, "event: deleted") {
		t.Errorf("a stream outlives its feed: %s", text)
	}
	if got := ask(t, h, http.MethodGet, base+"/feed", nil); !strings.Contains(string(got.body), `"feed":""`) {
		t.Errorf("%s", got.body)
	}
	if got := ask(t, h, http.MethodGet, base, nil); got.StatusCode != http.StatusOK {
		t.Errorf("the plan went with its feed: %d", got.StatusCode)
	}
}
