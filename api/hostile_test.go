package api

import (
	"bytes"
	"context"
	"flag"
	"fmt"
	"io"
	"math/rand/v2"
	"net"
	"net/http"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"
)

var hostileCalls = flag.Int("hostile", 300, "hostile requests to send")

// hostile makes requests that nobody means well with, by a fixed seed.
type hostile struct {
	*rand.Rand
	party []byte
	ids   []string
}

// bodies are the roots from which broken ones grow.
func (h *hostile) body() []byte {
	roots := [][]byte{h.party, []byte(burgers), []byte("time,dish,kind,value\r\n04:15,brisket,core,150 F\r\n"), []byte(`{"cut": "brisket", "weight": "12 lb"}`)}
	b := slices.Clone(roots[h.IntN(len(roots))])
	switch h.IntN(9) {
	case 0: // as it is
	case 1:
		for range 1 + h.IntN(20) {
			b[h.IntN(len(b))] = byte(h.IntN(256))
		}
	case 2:
		b = b[:h.IntN(len(b))]
	case 3:
		b = bytes.Repeat([]byte(h.pick("[", "{\"a\":", "- ", "? ", "&a [*a, ", "((")), 1+h.IntN(50_000))
	case 4:
		b = bytes.ReplaceAll(b, []byte("12"), []byte(h.pick("1e400", "-1", "99999999999999999999999", "NaN", "0x1p-2", strings.Repeat("9", 5000))))
	case 5:
		b = bytes.ReplaceAll(b, []byte("brisket"), []byte(h.pick("=cmd|' /C calc'!A0", "\u202e\u0000", strings.Repeat("b", 70_000), "../../etc", "<script>")))
	case 6:
		b = append(b, b...)
	case 7:
		b = bytes.Repeat([]byte{byte(h.IntN(256))}, h.IntN(1<<21))
	case 8:
		b = append([]byte(h.pick("\xef\xbb\xbf", "\xff\xfe", "%YAML 1.1\n---\n", "!!python/object:x ", "\x1f\x8b\x08")), b...)
	}
	return b
}

func (h *hostile) pick(list ...string) string { return list[h.IntN(len(list))] }

func (h *hostile) target() string {
	id := h.pick(h.ids...)
	target := h.pick("/v1/plans", "/v1/plans/"+id, "/v1/plans/"+id+".ics", "/v1/plans/"+id+".%00", "/v1/plans/"+id+"/readings", "/v1/plans/"+id+"/due", "/v1/plans/"+id+"/now",
		"/v1/plans/"+id+"/stream", "/v1/forecasts", "/v1/cuts", "/v1/layouts", "/healthz", "/", "//", "/v1/../v1/plans/"+id, "/v1/plans/%2e%2e%2f"+id, "/v1/plans/'%20OR%201=1--")
	return target + h.pick("", "", "?", "?revision=-0", "?revision=1e9", "?at=2027-07-03T18:00:00Z&within=PT9999H", "?within=P1Y", "?cut=brisket&weight=12lb&grate=9999999F",
		"?cut=brisket&weight=1e300kg", "?cut="+strings.Repeat("%41", 3000), "?%zz=1", "?a;b=1", "?last_event_id=-1", "?format=csv&cut=ribs&weight=0lb", "?probability=0.5,0.5,nan&cut=brisket")
}

func (h *hostile) method() string {
	return h.pick("POST", "POST", "POST", "GET", "GET", "GET", "DELETE", "PUT", "PATCH", "HEAD", "OPTIONS", "TRACE", "BREW")
}

// write sends one request as bytes: no client library would send all of these.
func (h *hostile) write(w io.Writer) {
	body := h.body()
	length := h.pick(fmt.Sprint(len(body)), fmt.Sprint(len(body)), fmt.Sprint(len(body)), "0", "99999999999", "-1", "1")
	fmt.Fprintf(w, "%s %s HTTP/1.1\r\nHost: x\r\nContent-Length: %s\r\nConnection: close\r\n", h.method(), h.target(), length)
	for range h.IntN(6) {
		fmt.Fprintf(w, "%s: %s\r\n", h.pick("Accept", "Accept-Encoding", "If-Match", "If-None-Match", "Last-Event-ID", "X-Request-Id", "Authorization", "Content-Encoding", "Range", "Expect", "X-Forwarded-For", "Transfer-Encoding"),
			h.pick("*/*", "gzip", "text/calendar;q=0.000001,*/*;q=junk", strings.Repeat(",", 5000), "W/\"\"", "\"", "\x01", strings.Repeat("a/b;q=1,", 2000), "chunked", "100-continue", "bytes=0-0", "Bearer \xff"))
	}
	fmt.Fprintf(w, "Content-Type: %s\r\n\r\n", h.pick("application/json", "application/yaml", "application/json", "application/yaml", "text/csv", "application/json; charset=utf-8", "multipart/form-data; boundary=x", "application/json; charset=\"", strings.Repeat("x", 300)))
	w.Write(body)
}

// aim sends a broken body where a right one would be welcome, so that it gets past the
// headers.
func (h *hostile) aim(w io.Writer) {
	body, id := h.body(), h.ids[0]
	target := h.pick("/v1/plans application/yaml", "/v1/plans application/json", "/v1/plans/"+id+"/readings text/csv", "/v1/plans/"+id+"/readings application/json", "/v1/forecasts application/json")
	path, kind, _ := strings.Cut(target, " ")
	fmt.Fprintf(w, "POST %s HTTP/1.1\r\nHost: x\r\nContent-Length: %d\r\nContent-Type: %s\r\nConnection: close\r\n\r\n", path, len(body), kind)
	w.Write(body)
}

// TestHostileRequests: no answer says that the service failed, nothing panics,
// memory and goroutines return to where they were.
func TestHostileRequests(t *testing.T) {
	cfg, _ := testConfig()
	cfg.Clock, cfg.Heartbeat = time.Now, 50*time.Millisecond
	s := New(cfg)
	attacker := &hostile{Rand: rand.New(rand.NewPCG(1, 2)), party: party(t), ids: []string{testID, "x", strings.Repeat("0", 36), "0%30"}}
	planned(t, s.Handler(), attacker.party, asYAML...)
	before := runtime.NumGoroutine()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	served := make(chan error)
	go func() { served <- s.Serve(ctx, l) }()
	codes := map[string]int{}
	var heaps []uint64 // after each tenth
	victim, err := cfg.Store.Newest(ctx, testID)
	if err != nil {
		t.Fatal(err)
	}
	for i := range *hostileCalls {
		codes[attacker.attack(t, l.Addr().String(), i)]++
		tenth := (i+1)%max(*hostileCalls/10, 1) == 0
		if i%20 == 0 || tenth { // what is planned is kept, as it should be; it is not what is measured
			forget(cfg.Store.(*mapStore), victim)
		}
		if tenth {
			heaps = append(heaps, heap()>>10)
		}
	}
	http.DefaultClient.CloseIdleConnections()
	cancel()
	if err := <-served; err != nil {
		t.Error(err)
	}
	t.Logf("answers: %v; heap after each tenth in KiB: %v", codes, heaps)
	for code, n := range codes {
		if strings.HasPrefix(code, "5") && code != "501" && code != "505" { // net/http says these by itself
			t.Errorf("%d answers of %s", n, code)
		}
	}
	// Calls that their clients gave up may still be at work when it is measured; what
	// stays would be in every later figure, so the least of the second half counts.
	if half := len(heaps) / 2; slices.Min(heaps[half:]) > slices.Max(heaps[:half])+1<<10 {
		t.Errorf("the heap grows: %v KiB", heaps)
	}
	for wait := 0; runtime.NumGoroutine() > before && wait < 100; wait++ {
		time.Sleep(20 * time.Millisecond)
	}
	if after := runtime.NumGoroutine(); after > before {
		t.Errorf("%d goroutines before, %d after", before, after)
	}
}

// forget leaves nothing but the one plan in a store, as it was.
func forget(m *mapStore, victim Revision) {
	m.mu.Lock()
	defer m.mu.Unlock()
	clear(m.revisions)
	clear(m.readings)
	m.revisions[testID] = []Revision{victim}
}

func heap() uint64 {
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return m.HeapAlloc
}

// attack sends one request, now and then slowly or in halves, and returns the status.
func (h *hostile) attack(t *testing.T, address string, i int) string {
	conn, err := net.Dial("tcp", address)
	if err != nil {
		t.Fatal(err)
	}
	defer conn.Close()
	conn.SetDeadline(time.Now().Add(time.Second))
	var b bytes.Buffer
	if i%2 == 0 {
		h.aim(&b)
	} else {
		h.write(&b)
	}
	if i%25 == 0 { // a slow client that gives up
		conn.Write(b.Bytes()[:min(b.Len(), 100)])
		time.Sleep(20 * time.Millisecond)
		return "gave up"
	}
	go conn.Write(b.Bytes()) // ends with the connection
	head := make([]byte, 12)
	if _, err := io.ReadFull(conn, head); err != nil {
		return "nothing" // it waits for a body that is never sent, or has closed the connection
	}
	io.Copy(io.Discard, conn)
	return string(head[9:])
}
