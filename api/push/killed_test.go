package push

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
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"example.com/cookday/api"
	"example.com/cookday/api/store"
	"example.com/cookday/api/store/testdb"
	"example.com/cookday/schedule"
)

var (
	kills         = flag.Int("kill", 0, "how often the service is killed while it pushes; 0 leaves it out")
	brokerKills   = flag.Int("broker-kill", 20, "how often the broker is")
	databaseKills = flag.Int("database-kill", 10, "how often the server of the database is, if one is named")
	broker        = flag.String("mosquitto", "", "a broker to start: the path of mosquitto")
)

// past is a day that is over: of a trial all steps are due at once.
const past = `{"format": 1, "serve": {"date": "2026-07-04", "time": "18:00", "tz": "America/Chicago"},
 "grill": {"kind": "kettle", "diameter": "22 in"}, "dishes": [{"name": "Burgers", "cut": "burger", "weight": "6 oz", "count": 4}]}`

// program is the service as a user would start it.
type program struct {
	path  string
	flags []string
	cmd   *exec.Cmd
	at    string
}

func (p *program) start(t *testing.T) {
	t.Helper()
	p.cmd = exec.Command(p.path, p.flags...)
	out, err := p.cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	var faults bytes.Buffer
	p.cmd.Stderr = &faults
	if err := p.cmd.Start(); err != nil {
		t.Fatal(err)
	}
	line, err := bufio.NewReader(out).ReadString('\n')
	_, rest, found := strings.Cut(line, "listening on ")
	if err != nil || !found {
		t.Fatalf("it did not start: %q %s", line, faults.String())
	}
	p.at, _, _ = strings.Cut(rest, ",")
}

func (p *program) kill() {
	p.cmd.Process.Kill()
	p.cmd.Wait()
	p.cmd = nil
}

// acknowledged is what callers were told: the plans and their newest revisions.
type acknowledged struct {
	mu    sync.Mutex
	plans map[string]schedule.Plan // as first answered
	last  map[string]int
}

func (a *acknowledged) count() (n int) {
	a.mu.Lock()
	defer a.mu.Unlock()
	for _, r := range a.last {
		n += r + 1
	}
	return n
}

func (a *acknowledged) note(text []byte) (p schedule.Plan, ok bool) {
	if json.Unmarshal(text, &p) != nil {
		return p, false
	}
	a.mu.Lock()
	defer a.mu.Unlock()
	if p.Revision == 0 {
		a.plans[p.ID] = p
	}
	a.last[p.ID] = max(a.last[p.ID], p.Revision)
	return p, true
}

// work plans and revises until the service is gone.
func (a *acknowledged) work(ctx context.Context, at string) {
	post := func(path, body string) (schedule.Plan, bool) {
		r, err := http.NewRequestWithContext(ctx, http.MethodPost, at+path, strings.NewReader(body))
		if err != nil {
			return schedule.Plan{}, false
		}
		r.Header.Set("Content-Type", "application/json")
		answer, err := http.DefaultClient.Do(r)
		if err != nil {
			return schedule.Plan{}, false
		}
		defer answer.Body.Close()
		text, err := io.ReadAll(answer.Body)
		if err != nil || answer.StatusCode >= 300 {
			return schedule.Plan{}, false
		}
		return a.note(text)
	}
	for ctx.Err() == nil {
		p, ok := post("/v1/plans?trial=true", past)
		for i := 0; i < 3 && ok; i++ {
			seen := p.ServeAt.Add(time.Duration(i-40) * time.Minute)
			p, ok = post("/v1/plans/"+p.ID+"/readings?at="+seen.UTC().Format("2006-01-02T15:04:05Z"),
				fmt.Sprintf(`[{"time": %q, "kind": "grate", "value": "%d F"}]`, seen.Format(time.RFC3339), 370+i))
		}
		if !ok {
			return
		}
	}
}

// TestNothingIsForgotten kills the service and the broker again and again while plans are
// made and revised, with a receiver that fails, sleeps and goes away: what was acknowledged
// is told by both ways, in order, and what comes twice is the same. With a database there
// are two processes, which are killed in turns, and so is its server.
func TestNothingIsForgotten(t *testing.T) {
	if *kills == 0 {
		t.Skip("takes minutes, and a broker: .ci/full.d/push.sh")
	}
	dir := t.TempDir()
	random := rand.New(rand.NewPCG(uint64(time.Now().UnixNano()), 0)) // the moments must differ from run to run
	receiver := newReceiver(t, random)
	m := newMosquitto(t, dir)
	m.start(t)
	heard := m.listen(t)
	built := filepath.Join(dir, "cookday")
	if out, err := exec.Command("go", "build", "-o", built, "example.com/cookday/cmd/cookday").CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	name, services := filepath.Join(dir, "plans.db"), make([]*program, 1)
	if testdb.Named() { // two processes on one database
		testdb.Mortal(t)
		name, services = testdb.Schema(t), make([]*program, 2)
	}
	for i := range services {
		services[i] = &program{path: built, flags: append([]string{"listen", "--address", "127.0.0.1:0", "--store", name, "--log", "none", "--push-trials", "--drain", "0s",
			"--webhook", receiver.address, "--webhook-secret-file", written(t, dir, "secret", receiver.secret), "--webhook-private"}, m.flags...)}
	}
	a := &acknowledged{plans: map[string]schedule.Plan{}, last: map[string]int{}}
	serverKills := 0
	for round := range *kills {
		before := a.count()
		ctx, cancel := context.WithCancel(context.Background())
		var wg sync.WaitGroup
		for _, p := range services {
			if p.cmd == nil {
				p.start(t)
			}
			wg.Go(func() { a.work(ctx, p.at) })
		}
		for began := time.Now(); round%2 == 0 && a.count() == before && time.Since(began) < time.Minute; {
			time.Sleep(time.Millisecond) // every other round there is something to forget
		}
		time.Sleep(time.Duration(random.IntN(600)) * time.Millisecond)
		if m.kills < *brokerKills && round**brokerKills/(*kills) >= m.kills {
			m.restart(t)
			time.Sleep(time.Duration(random.IntN(1200)) * time.Millisecond)
		}
		if testdb.Named() && serverKills < *databaseKills && round**databaseKills/(*kills) >= serverKills {
			serverKills++
			testdb.Kill(t, time.Duration(random.IntN(1500))*time.Millisecond)
		}
		receiver.turn(round)
		services[round%len(services)].kill()
		cancel()
		wg.Wait()
		http.DefaultClient.CloseIdleConnections()
	}
	receiver.turn(-1) // well from now on
	for _, p := range services {
		if p.cmd == nil {
			p.start(t)
		}
		defer p.kill()
	}
	began := time.Now()
	want := a.events(t, name)
	receiver.heard.await(t, "webhook", want)
	heard.await(t, "broker", want)
	plans, events := 0, 0
	for _, ids := range want {
		plans, events = plans+1, events+len(ids)
	}
	t.Logf("%d processes, %d kills of them, %d of the broker, %d of the database; %d plans, %d events: all told by both ways, in order, %v after the end", len(services), *kills, m.kills, serverKills, plans, events, time.Since(began).Round(100*time.Millisecond))
	t.Logf("webhook: %d calls, %d turned away, %d came twice; broker: %d messages, %d twice", receiver.calls, receiver.refused, receiver.heard.again, heard.count, heard.again)
	if events < 10**kills {
		t.Error("there was next to nothing to forget")
	}
	if left, err := exec.Command(built, "store", "dead", "--store", name).CombinedOutput(); err != nil || strings.Count(string(left), "\n") != 1 {
		t.Errorf("given up: %s %v", left, err)
	}
}

// events are those that followers of each plan must hear of, from what callers were told:
// the plan, all its steps, for they are past, and each revision that was acknowledged.
func (a *acknowledged) events(t *testing.T, name string) map[string][]string {
	t.Helper()
	var f api.Store
	var err error
	if testdb.Named() {
		f, err = store.OpenPostgres(t.Context(), name)
	} else {
		f, err = store.OpenFile(t.Context(), name)
	}
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	want := map[string][]string{}
	for id, p := range a.plans {
		if _, err := f.Plan(t.Context(), id); err != nil {
			t.Errorf("plan %s was acknowledged: %v", id, err)
		}
		ids := []string{"0.0"}
		for i := range p.Steps {
			ids = append(ids, fmt.Sprintf("0.%d", i+1))
		}
		for n := 1; n <= a.last[id]; n++ {
			ids = append(ids, fmt.Sprintf("%d.0", n))
		}
		want[api.TopicOf(id)] = ids
	}
	return want
}
