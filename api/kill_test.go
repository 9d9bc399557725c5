package api_test

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"math/rand/v2"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"example.com/cookday/api/store"
	"example.com/cookday/schedule"
)

var killRounds = flag.Int("kill", 10, "how often the service is killed")

// binary builds the program as a user would.
func binary(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "cookday")
	build := exec.Command("go", "build", "-o", path, "example.com/cookday/cmd/cookday")
	if out, err := build.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	return path
}

// start runs the program on a free port and returns its address.
func start(t *testing.T, program, file string, flags ...string) (*exec.Cmd, string) {
	t.Helper()
	cmd := exec.Command(program, append([]string{"listen", "--address", "127.0.0.1:0", "--store", file, "--log", "none"}, flags...)...)
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	var faults bytes.Buffer
	cmd.Stderr = &faults
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	line, err := bufio.NewReader(out).ReadString('\n')
	_, rest, found := strings.Cut(line, "listening on ")
	if err != nil || !found {
		cmd.Process.Kill()
		cmd.Wait()
		t.Fatalf("it did not start: %q %s", line, faults.String())
	}
	address, _, _ := strings.Cut(rest, ",")
	return cmd, address
}

// acknowledged is what the service has said yes to: revisions by plan, and how many
// readings each plan had then.
type acknowledged struct {
	mu    sync.Mutex
	plans map[string]*kept
}

type kept struct {
	revisions map[int][]byte
	readings  int
}

func (a *acknowledged) note(t *testing.T, body []byte) (p schedule.Plan) {
	if err := json.Unmarshal(body, &p); err != nil {
		t.Errorf("an answer was cut: %v", err)
		return p
	}
	a.mu.Lock()
	defer a.mu.Unlock()
	if a.plans[p.ID] == nil {
		a.plans[p.ID] = &kept{revisions: map[int][]byte{}}
	}
	k := a.plans[p.ID]
	k.revisions[p.Revision] = body
	k.readings = max(k.readings, len(p.Log))
	return p
}

// count is how many revisions were acknowledged.
func (a *acknowledged) count() (n int) {
	a.mu.Lock()
	defer a.mu.Unlock()
	for _, k := range a.plans {
		n += len(k.revisions)
	}
	return n
}

const burger = `{"format": 1, "serve": {"date": "2027-07-03", "time": "18:00", "tz": "America/Chicago"},
 "grill": {"kind": "kettle", "diameter": "22 in"}, "dishes": [{"cut": "burger", "weight": "6 oz", "count": 4}]}`

// work plans and revises until the service is gone.
func (a *acknowledged) work(ctx context.Context, t *testing.T, address string) {
	post := func(path, body string) ([]byte, bool) {
		r, err := http.NewRequestWithContext(ctx, http.MethodPost, address+path, strings.NewReader(body))
		if err != nil {
			t.Error(err)
			return nil, false
		}
		r.Header.Set("Content-Type", "application/json")
		answer, err := http.DefaultClient.Do(r)
		if err != nil {
			return nil, false
		}
		defer answer.Body.Close()
		text, err := io.ReadAll(answer.Body)
		if err != nil || answer.StatusCode == http.StatusServiceUnavailable {
			return nil, false
		}
		if answer.StatusCode >= 300 {
			t.Errorf("%s: %d %s", path, answer.StatusCode, text)
			return nil, false
		}
		return text, true
	}
	for ctx.Err() == nil {
		text, ok := post("/v1/plans?trial=true", burger)
		if !ok {
			return
		}
		p := a.note(t, text)
		for i := range 5 {
			at := p.ServeAt.Add(time.Duration(i-40) * time.Minute)
			text, ok := post("/v1/plans/"+p.ID+"/readings?at="+at.UTC().Format("2006-01-02T15:04:05Z"),
				fmt.Sprintf(`[{"time": %q, "kind": "grate", "value": "%d F"}]`, at.Format(time.RFC3339), 370+i))
			if !ok {
				return
			}
			a.note(t, text)
		}
	}
}

// TestKilledServiceLosesNothing kills the service at random moments under load: what
// it has acknowledged must be in the file, whole, and nothing by half.
func TestKilledServiceLosesNothing(t *testing.T) {
	if testing.Short() {
		t.Skip("builds the program")
	}
	program := binary(t)
	file := filepath.Join(t.TempDir(), "plans.db")
	known := &acknowledged{plans: map[string]*kept{}}
	random := rand.New(rand.NewPCG(uint64(time.Now().UnixNano()), 0)) // the moments must differ from run to run
	for round := range *killRounds {
		before := known.count()
		cmd, address := start(t, program, file)
		ctx, cancel := context.WithCancel(context.Background())
		var wg sync.WaitGroup
		for range 4 {
			wg.Go(func() { known.work(ctx, t, address) })
		}
		for began := time.Now(); round%2 == 0 && known.count() == before && time.Since(began) < time.Minute; {
			time.Sleep(time.Millisecond) // every other round there is something to lose
		}
		time.Sleep(time.Duration(random.IntN(400)) * time.Millisecond)
		if err := cmd.Process.Signal(os.Kill); err != nil {
			t.Fatal(err)
		}
		cmd.Wait() // "signal: killed" is what is wanted
		cancel()
		wg.Wait()
		http.DefaultClient.CloseIdleConnections()
	}
	revisions := known.check(t, file)
	t.Logf("%d rounds, %d plans and %d revisions acknowledged, all there", *killRounds, len(known.plans), revisions)
	if revisions < *killRounds/2 {
		t.Errorf("only %d revisions in %d rounds: there was no load", revisions, *killRounds)
	}
}

// check opens the file and looks for everything that was acknowledged.
func (a *acknowledged) check(t *testing.T, file string) (revisions int) {
	t.Helper()
	ctx := context.Background()
	f, err := store.OpenFile(ctx, file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	for id, k := range a.plans {
		history, err := f.History(ctx, id, -1, 1000)
		if err != nil {
			t.Errorf("plan %s: %v", id, err)
			continue
		}
		readings, err := f.Readings(ctx, id)
		if err != nil || len(readings) < k.readings {
			t.Errorf("plan %s: %d readings of %d, %v", id, len(readings), k.readings, err)
		}
		for n, text := range k.revisions {
			if n >= len(history) || !bytes.Equal(history[n].JSON, text) {
				t.Errorf("plan %s: revision %d is lost or was changed", id, n)
				continue
			}
			revisions++
		}
		// A revision and the readings it came from are there both or not at all.
		var last schedule.Plan
		if err := json.Unmarshal(history[len(history)-1].JSON, &last); err != nil || len(last.Log) != len(readings) || last.Revision != len(history)-1 {
			t.Errorf("plan %s: half a revision: %v, %d in its log, %d readings", id, err, len(last.Log), len(readings))
		}
	}
	return revisions
}
