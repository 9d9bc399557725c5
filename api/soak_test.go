package api_test

import (
	"bufio"
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"net"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"runtime/debug"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"example.com/cookday/api"
	"example.com/cookday/api/store"
)

var (
	soakTime  = flag.Duration("soak", 0, "how long the service is soaked")
	soakEvery = flag.Duration("soakevery", 10*time.Second, "how often its size is taken meanwhile")
)

// soakFile names the file of plans to the process that serves in a soak.
const soakFile = "COOKDAY_SOAK_FILE"

// size is what must not grow while a service runs, taken after a garbage collection.
type size struct {
	RSSKiB, HeapKiB     float64
	Goroutines, Files   float64 // open descriptors
	StoreKiB            float64 // the file of plans and its log
	minute              float64 // since the load began
	calls, plans, fails int     // by then
}

// TestSoakServer is the service of TestSoak, in a process of its own: it says its
// address, and its size whenever it is sent a line.
func TestSoakServer(t *testing.T) {
	file := os.Getenv(soakFile)
	if file == "" {
		t.Skip("started by TestSoak")
	}
	plans, err := store.OpenFile(t.Context(), file)
	if err != nil {
		t.Fatal(err)
	}
	defer plans.Close()
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(t.Context())
	ended := make(chan error, 1)
	go func() { ended <- api.New(api.Config{Store: plans}).Serve(ctx, listener) }()
	fmt.Printf("http://%s\n", listener.Addr())
	for lines := bufio.NewScanner(os.Stdin); lines.Scan(); {
		text, err := json.Marshal(sizeNow(file))
		if err != nil {
			t.Fatal(err)
		}
		fmt.Printf("%s\n", text)
	}
	stop()
	if err := <-ended; err != nil {
		t.Error(err)
	}
}

// sizeNow measures this process; what Linux does not tell stays nought.
func sizeNow(file string) size {
	runtime.GC() // a pool gives its things up at the second collection
	debug.FreeOSMemory()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	s := size{HeapKiB: float64(m.HeapAlloc) / 1024, Goroutines: float64(runtime.NumGoroutine())}
	status, _ := os.ReadFile("/proc/self/status")
	if _, rest, ok := strings.Cut(string(status), "VmRSS:"); ok {
		s.RSSKiB, _ = strconv.ParseFloat(strings.Fields(rest)[0], 64)
	}
	if open, err := os.ReadDir("/proc/self/fd"); err == nil {
		s.Files = float64(len(open))
	}
	for _, suffix := range []string{"", "-wal", "-shm"} {
		if info, err := os.Stat(file + suffix); err == nil {
			s.StoreKiB += float64(info.Size()) / 1024
		}
	}
	return s
}

// server is the process under load, as its tester sees it.
type server struct {
	cmd     *exec.Cmd
	in      io.WriteCloser
	out     *bufio.Scanner
	address string
}

func startSoak(t *testing.T) *server {
	t.Helper()
	s := &server{cmd: exec.Command(os.Args[0], "-test.run", "^TestSoakServer$", "-test.timeout", "0")}
	s.cmd.Env = append(os.Environ(), soakFile+"="+filepath.Join(t.TempDir(), "plans.db"))
	s.cmd.Stderr = os.Stderr
	in, err := s.cmd.StdinPipe()
	if err != nil {
		t.Fatal(err)
	}
	out, err := s.cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := s.cmd.Start(); err != nil {
		t.Fatal(err)
	}
	s.in, s.out = in, bufio.NewScanner(out)
	t.Cleanup(func() { in.Close(); s.cmd.Wait() })
	for s.out.Scan() {
		if strings.HasPrefix(s.out.Text(), "http://") {
			s.address = s.out.Text()
			return s
		}
	}
	t.Fatal("it did not start")
	return nil
}

// size asks for the size of the process.
func (s *server) size(t *testing.T) (now size) {
	t.Helper()
	if _, err := io.WriteString(s.in, "\n"); err != nil || !s.out.Scan() {
		t.Fatalf("the service is gone: %v %v", err, s.out.Err())
	}
	if err := json.Unmarshal(s.out.Bytes(), &now); err != nil {
		t.Fatal(err)
	}
	return now
}

// TestSoak keeps the service busy with everything it can do, for as long as -soak
// says, and fails if memory, goroutines, descriptors or the file of plans grow. Each
// guest deletes its plans when it has a dozen, so that what is kept has a limit.
func TestSoak(t *testing.T) {
	if *soakTime <= 0 {
		t.Skip("not asked for by a flag")
	}
	s := startSoak(t)
	var wg sync.WaitGroup
	h := &household{address: s.address}
	ctx, stop := context.WithTimeout(t.Context(), *soakTime)
	defer stop()
	for i := range soakGuests {
		g := newGuest(h, uint64(i)+1)
		wg.Go(func() { g.live(ctx, t) })
	}
	began := time.Now()
	var sizes []size
	for ctx.Err() == nil {
		select {
		case <-ctx.Done():
		case <-time.After(*soakEvery):
			h.quiet(func() {
				now := s.size(t)
				now.minute = time.Since(began).Minutes()
				now.calls, now.plans, now.fails = h.tally()
				sizes = append(sizes, now)
			})
		}
	}
	wg.Wait()
	judgeSoak(t, sizes)
}

// judgeSoak fits a line through each size over time, without the first fifth, in which
// pools, caches and the file fill up.
func judgeSoak(t *testing.T, sizes []size) {
	t.Helper()
	settled := sizes[len(sizes)/5:]
	if len(settled) < 4 {
		t.Fatalf("only %d samples: soak longer, or sample more often", len(sizes))
	}
	last := settled[len(settled)-1]
	t.Logf("%d samples in %.1f min; %d calls, %d plans made, %d answers that were not as expected", len(sizes), last.minute, last.calls, last.plans, last.fails)
	if last.fails > 0 {
		t.Errorf("%d answers were not as expected", last.fails)
	}
	for _, q := range []struct {
		name string
		of   func(size) float64
		// A rise over the whole run of more than this is growth: what the allocator, the
		// scheduler and the fill of the last page do by themselves (assumptions, from
		// looking at runs of a minute).
		slack float64
	}{
		{"resident memory, KiB", func(s size) float64 { return s.RSSKiB }, 4096},
		{"live heap, KiB", func(s size) float64 { return s.HeapKiB }, 1024},
		{"goroutines", func(s size) float64 { return s.Goroutines }, 2},
		{"descriptors", func(s size) float64 { return s.Files }, 2},
		{"file of plans, KiB", func(s size) float64 { return s.StoreKiB }, 1024},
	} {
		slope := slopeOf(settled, q.of)
		rise := slope * (last.minute - settled[0].minute)
		t.Logf("%-22s start %9.0f  middle %9.0f  end %9.0f  slope %+8.2f a minute", q.name, q.of(sizes[0]), q.of(sizes[len(sizes)/2]), q.of(last), slope)
		if rise > q.slack {
			t.Errorf("%s grows: by %.0f from minute %.1f to %.1f", q.name, rise, settled[0].minute, last.minute)
		}
	}
}

// slopeOf is the slope of the line of least squares, a minute.
func slopeOf(sizes []size, of func(size) float64) float64 {
	var x, y, xx, xy float64
	for _, s := range sizes {
		x, y, xx, xy = x+s.minute, y+of(s), xx+s.minute*s.minute, xy+s.minute*of(s)
	}
	n := float64(len(sizes))
	return (n*xy - x*y) / (n*xx - x*x)
}
