package push

import (
	"encoding/json"
	"fmt"
	"io"
	mathrand "math/rand/v2"
	"net/http"
	"net/http/httptest"
	"strings"
	"sync"
	"testing"
	"time"
)

// ear is what came in of each plan: the ids in the order of their first coming.
type ear struct {
	mu           sync.Mutex
	t            *testing.T
	ids          map[string][]string
	texts        map[string]string
	count, again int
	steps        bool // only steps come this way, no news of revisions
}

func newEar(t *testing.T) *ear {
	return &ear{t: t, ids: map[string][]string{}, texts: map[string]string{}}
}

func (e *ear) hear(topic, id, text string) {
	e.mu.Lock()
	defer e.mu.Unlock()
	e.count++
	if before, known := e.texts[topic+" "+id]; known {
		e.again++
		if before != text {
			e.t.Errorf("%s came as\n%s and as\n%s", id, before, text)
		}
		return
	}
	e.texts[topic+" "+id] = text
	e.ids[topic] = append(e.ids[topic], id)
}

// await waits until everything is there, and looks at the order.
func (e *ear) await(t *testing.T, way string, want map[string][]string) {
	t.Helper()
	missing := func() (list []string) {
		e.mu.Lock()
		defer e.mu.Unlock()
		for topic, ids := range want {
			for _, id := range ids {
				if _, ok := e.texts[topic+" "+id]; !ok && !(e.steps && strings.HasSuffix(id, ".0")) {
					list = append(list, topic+" "+id)
				}
			}
		}
		return list
	}
	for began := time.Now(); len(missing()) > 0 && time.Since(began) < 3*time.Minute; {
		time.Sleep(50 * time.Millisecond)
	}
	if list := missing(); len(list) > 0 {
		t.Errorf("%s: %d events were forgotten, %s among them", way, len(list), list[0])
	}
	e.mu.Lock()
	defer e.mu.Unlock()
	for topic, ids := range e.ids {
		last := [2]int{-1, -1}
		for _, id := range ids {
			var at [2]int
			fmt.Sscanf(id, "%d.%d", &at[0], &at[1])
			if at[0] < last[0] || at[0] == last[0] && at[1] <= last[1] {
				t.Errorf("%s: of %s %s came after %d.%d", way, topic, id, last[0], last[1])
			}
			last = at
		}
	}
}

// receiver takes webhooks: it fails, sleeps, loses its answers, and goes away for a round.
type receiver struct {
	address, secret string
	heard           *ear
	mu              sync.Mutex
	random          *mathrand.Rand
	mood            int // -1: well
	calls, refused  int
}

func newReceiver(t *testing.T, random *mathrand.Rand) *receiver {
	r := &receiver{secret: "a-secret-of-the-terrace", heard: newEar(t), random: mathrand.New(mathrand.NewPCG(random.Uint64(), 0))}
	s := httptest.NewServer(r)
	t.Cleanup(s.Close)
	r.address = s.URL + "/bell"
	return r
}

func (r *receiver) turn(round int) {
	r.mu.Lock()
	defer r.mu.Unlock()
	r.mood = round
}

func (r *receiver) ServeHTTP(w http.ResponseWriter, q *http.Request) {
	body, err := io.ReadAll(q.Body)
	r.mu.Lock()
	r.calls++
	dice, away := r.random.IntN(10), r.mood >= 0 && r.mood%7 == 3
	if r.mood < 0 {
		dice = 9
	}
	if err != nil || away || dice < 2 {
		r.refused++
		r.mu.Unlock()
		w.WriteHeader(http.StatusServiceUnavailable)
		return
	}
	r.mu.Unlock()
	if dice == 2 {
		time.Sleep(200 * time.Millisecond)
	}
	var e struct{ ID, Source string }
	if json.Unmarshal(body, &e) != nil || q.Header.Get(HeaderSignature) != Signature([]byte(r.secret), body) {
		r.heard.t.Errorf("not signed, or no event: %s", body)
	}
	r.heard.hear(strings.TrimPrefix(e.Source, "urn:uuid:"), e.ID, string(body))
	if dice == 3 {
		panic(http.ErrAbortHandler) // it has it, and the sender cannot know
	}
}
