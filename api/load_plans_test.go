package api_test

import (
	"io"
	"math/rand/v2"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"sync"
	"sync/atomic"
	"testing"
	"time"
)

// TestTenThousandPlans keeps 10,000 plans, each of which is pushed to a webhook once, looks
// at them here and there, and starts again: in 1 GiB of memory.
func TestTenThousandPlans(t *testing.T) {
	const plans = 10_000
	var rung atomic.Int64
	receiver := httptest.NewServer(http.HandlerFunc(func(_ http.ResponseWriter, r *http.Request) {
		io.Copy(io.Discard, r.Body)
		rung.Add(1)
	}))
	defer receiver.Close()
	secret := filepath.Join(t.TempDir(), "secret")
	if err := os.WriteFile(secret, []byte("a-secret-of-the-terrace"), 0o600); err != nil {
		t.Fatal(err)
	}
	push := []string{"--push-trials", "--webhook", receiver.URL, "--webhook-secret-file", secret, "--webhook-private"}
	pid, address, file := pressed(t, push...)
	ids := make([]string, plans)
	began := time.Now()
	var all sync.WaitGroup
	for k := range 4 {
		all.Go(func() {
			for i := k; i < plans; i += 4 {
				ids[i] = posted(t, address+"/v1/plans?trial=true", burger).ID
			}
		})
	}
	all.Wait()
	made := time.Since(began)
	for until := time.Now().Add(10 * time.Minute); rung.Load() < plans && time.Now().Before(until); {
		time.Sleep(50 * time.Millisecond)
	}
	told := time.Since(began)
	var times []time.Duration
	for i := range 2000 {
		began := time.Now()
		a, err := patient.Get(address + "/v1/plans/" + ids[rand.IntN(plans)] + []string{"", ".html", ".ics", "/due"}[i%4])
		if err != nil || a.StatusCode != http.StatusOK {
			t.Fatal(a, err)
		}
		io.Copy(io.Discard, a.Body)
		a.Body.Close()
		times = append(times, time.Since(began))
	}
	peak := memory(t, pid, "VmHWM")
	info, err := os.Stat(file)
	if err != nil {
		t.Fatal(err)
	}
	program := binary(t)
	began = time.Now()
	other, _ := start(t, program, file, push...)
	up := time.Since(began)
	t.Cleanup(func() { other.Process.Kill(); other.Wait() })
	t.Logf("%d plans made in %s and told by a webhook %s later (%d calls); the file has %.1f MB, resident memory at most %.0f MiB; 2,000 looks at random: median %s, p99 %s; a second process is up after %s, with %.0f MiB",
		plans, made.Round(time.Second), (told - made).Round(time.Second), rung.Load(), float64(info.Size())/1e6, peak, quantile(times, 0.5), quantile(times, 0.99), up.Round(time.Millisecond), memory(t, other.Process.Pid, "VmHWM"))
	if peak > 1024 || rung.Load() < plans {
		t.Errorf("%.0f MiB, %d told", peak, rung.Load())
	}
}
