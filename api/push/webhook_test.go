package push

import (
	"encoding/json"
	"io"
	"net"
	"net/http"
	"net/http/httptest"
	"net/netip"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"example.com/cookday/api"
)

func message() Message {
	at := time.Date(2027, 7, 3, 22, 44, 0, 0, time.UTC)
	r := api.Reminder{Plan: "t", Revision: 2, Step: "s", Kind: "put-on", Text: "Put on Burgers.", At: at}
	return Message{Topic: "3f7f37ab-7a35-5ac1-9b0a-b2a8a1d1ab11", ID: "2.7", At: at, Event: &api.Notice{ID: "2.7", Step: &r}}
}

// The body is an event of CloudEvents 1.0 in its JSON form with the attributes that its
// specification asks for, and the signature is the HMAC-SHA-256 of that body.
func TestWebhookSends(t *testing.T) {
	var body []byte
	var head http.Header
	receiver := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		body, _ = io.ReadAll(r.Body)
		head = r.Header
		w.WriteHeader(http.StatusAccepted)
	}))
	defer receiver.Close()
	h, err := NewWebhook(receiver.URL+"/a-secret-path", []byte("a secret of the terrace"), true, "cookday/v9")
	if err != nil {
		t.Fatal(err)
	}
	if err := h.Send(t.Context(), message()); err != nil {
		t.Fatal(err)
	}
	var e map[string]any
	if err := json.Unmarshal(body, &e); err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]string{"specversion": "1.0", "id": "2.7", "source": "urn:uuid:3f7f37ab-7a35-5ac1-9b0a-b2a8a1d1ab11",
		"type": TypeStep, "subject": "s", "time": "2027-07-03T22:44:00Z", "datacontenttype": "application/json"} {
		if e[name] != want {
			t.Errorf("%s is %v, want %s", name, e[name], want)
		}
	}
	if data := e["data"].(map[string]any); data["text"] != "Put on Burgers." {
		t.Errorf("%v", data)
	}
	if head.Get("Content-Type") != "application/cloudevents+json; charset=utf-8" || head.Get("User-Agent") != "cookday/v9" {
		t.Errorf("%v", head)
	}
	if head.Get(HeaderSignature) != Signature([]byte("a secret of the terrace"), body) || head.Get(HeaderSignature) == Signature([]byte("another"), body) {
		t.Errorf("signature %q", head.Get(HeaderSignature))
	}
	if strings.Contains(h.Name(), "secret") {
		t.Errorf("the name %q holds the path", h.Name())
	}
}

// HMAC-SHA-256 as others work it out: test case 2 of RFC 4231.
func TestSignature(t *testing.T) {
	const want = "5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843"
	if got := Signature([]byte("Jefe"), []byte("what do ya want for nothing?")); got != want {
		t.Errorf("%s, want %s", got, want)
	}
}

// Only success counts; a redirect is not followed, for it may lead anywhere.
func TestWhatReceiversAnswer(t *testing.T) {
	status, asked := 0, 0
	receiver := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		asked++
		w.Header().Set("Location", "/elsewhere")
		w.WriteHeader(status)
	}))
	defer receiver.Close()
	h, err := NewWebhook(receiver.URL, nil, true, "")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		status        int
		sent, refused bool
	}{{200, true, false}, {204, true, false}, {307, false, true}, {400, false, true}, {404, false, true}, {410, false, true}, {408, false, false}, {425, false, false}, {429, false, false}, {500, false, false}, {503, false, false}} {
		status, asked = c.status, 0
		err := h.Send(t.Context(), message())
		if (err == nil) != c.sent || err != nil && h.Refused(err) != c.refused || asked != 1 {
			t.Errorf("%d: %v, refused %v, asked %d times", c.status, err, h.Refused(err), asked)
		}
	}
	receiver.Close()
	if err := h.Send(t.Context(), message()); err == nil || h.Refused(err) || strings.Contains(err.Error(), "http://") {
		t.Errorf("nobody there: %v", err)
	}
}

// Addresses of the house and of this machine are refused after the name was looked up,
// however they are written.
func TestPrivateAddresses(t *testing.T) {
	for _, a := range []string{"127.0.0.1", "10.1.2.3", "172.16.0.1", "172.31.255.255", "192.168.0.1", "169.254.169.254", "100.64.0.1", "0.0.0.0", "0.1.2.3", "224.0.0.1", "255.255.255.255",
		"198.18.0.1", "::1", "::", "fe80::1", "fe80::1%eth0", "fc00::1", "fd12::1", "fec0::1", "ff02::1", "::ffff:127.0.0.1", "::ffff:10.0.0.1", "64:ff9b::10.0.0.1", "::10.0.0.1"} {
		if !private(netip.MustParseAddr(a)) {
			t.Errorf("%s is open", a)
		}
	}
	for _, a := range []string{"192.0.2.1", "203.0.113.9", "172.32.0.1", "100.128.0.1", "2001:db8::1", "64:ff9b::203.0.113.9", "::ffff:203.0.113.9"} {
		if private(netip.MustParseAddr(a)) {
			t.Errorf("%s is private", a)
		}
	}
	asked := false
	receiver := httptest.NewServer(http.HandlerFunc(func(http.ResponseWriter, *http.Request) { asked = true }))
	defer receiver.Close()
	_, port, err := net.SplitHostPort(receiver.Listener.Addr().String())
	if err != nil {
		t.Fatal(err)
	}
	for _, host := range []string{"127.0.0.1", "localhost", "[::ffff:127.0.0.1]", "0x7f.1", "2130706433"} {
		h, err := NewWebhook("http://"+host+":"+port, nil, false, "")
		if err != nil {
			t.Fatal(err)
		}
		if err := h.Send(t.Context(), message()); err == nil || asked {
			t.Errorf("%s: asked %v, %v", host, asked, err)
		}
	}
	for _, bad := range []string{"", "ftp://example.com", "example.com", "http://", "mailto:a@b"} {
		if _, err := NewWebhook(bad, nil, true, ""); err == nil {
			t.Errorf("%q is taken", bad)
		}
	}
}

// A receiver that fails two times in three, and whose answers get lost, still gets every
// event of a day, in order, and the same bytes under the same id.
func TestAReceiverThatFails(t *testing.T) {
	var mu sync.Mutex
	asked, seen := 0, map[string]string{}
	var order []string
	receiver := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		mu.Lock()
		defer mu.Unlock()
		if asked++; asked%3 == 1 {
			w.WriteHeader(http.StatusServiceUnavailable)
			return
		}
		body, _ := io.ReadAll(r.Body)
		var e struct{ ID, Source string }
		json.Unmarshal(body, &e)
		if before, again := seen[e.ID]; again && before != string(body) {
			t.Errorf("%s came as another text", e.ID)
		} else if !again {
			order = append(order, e.ID)
		}
		seen[e.ID] = string(body)
		if asked%3 == 2 {
			panic(http.ErrAbortHandler) // it has it, and the sender cannot know
		}
	}))
	defer receiver.Close()
	h := newHouse(t, onDisk(t))
	hook, err := NewWebhook(receiver.URL, []byte("secret"), true, "")
	if err != nil {
		t.Fatal(err)
	}
	h.ways = []Way{hook}
	h.begin()
	p := h.planned("")
	for at := start; at.Before(p.ServeAt.Add(30 * time.Minute)); at = at.Add(2 * time.Second) {
		h.clock.set(at)
		if at.Second() == 0 {
			time.Sleep(time.Millisecond)
		}
	}
	want := expected(p, p.ServeAt.Add(10*time.Minute))
	h.until("everything", func() bool {
		h.clock.set(h.clock.now().Add(time.Second))
		mu.Lock()
		defer mu.Unlock()
		return len(order) >= len(want)
	})
	h.end()
	if !slices.Equal(order, want) {
		t.Errorf("%v, want %v", order, want)
	}
}
