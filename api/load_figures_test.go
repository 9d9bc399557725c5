package api_test

import (
	"context"
	"encoding/json"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/labstack/echo/v4"

	"example.com/cookday/api"
	"example.com/cookday/api/store"
	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
)

// bareEcho does nothing but call the library, and answer the bytes it was given.
func bareEcho(kept []byte) http.Handler {
	e := echo.New()
	e.GET("/v1/plans/:id", func(c echo.Context) error { return c.Blob(http.StatusOK, "application/json", kept) })
	e.POST("/v1/plans", func(c echo.Context) error {
		data, err := io.ReadAll(c.Request().Body)
		if err != nil {
			return err
		}
		r, err := schedule.Read(data)
		if err != nil {
			return err
		}
		p, err := planner.Make(c.Request().Context(), r, planner.Judged())
		if err != nil {
			return err
		}
		text, err := json.Marshal(p)
		if err != nil {
			return err
		}
		return c.Blob(http.StatusCreated, "application/json", text)
	})
	return e
}

// drained makes a call and fails for any other answer.
func drained(t *testing.T, status int, call func() (*http.Response, error)) {
	a, err := call()
	if err != nil {
		t.Error(err)
		return
	}
	defer a.Body.Close()
	if _, err := io.Copy(io.Discard, a.Body); err != nil || a.StatusCode != status {
		t.Errorf("%d %v", a.StatusCode, err)
	}
}

// rate is how many reads a second 50 callers get within a moment.
func rate(t *testing.T, address string, moment time.Duration) float64 {
	var n atomic.Int64
	var wg sync.WaitGroup
	began := time.Now()
	for range clients {
		wg.Go(func() {
			for time.Since(began) < moment {
				drained(t, http.StatusOK, func() (*http.Response, error) { return patient.Get(address) })
				n.Add(1)
			}
		})
	}
	wg.Wait()
	return float64(n.Load()) / time.Since(began).Seconds()
}

func middle(all []float64) float64 {
	slices.Sort(all)
	return all[len(all)/2]
}

// TestFiguresBesideBareEcho measures reads and plans in turns with a bare handler, in one
// run: the machine's other work falls on both. Plans are kept in a file.
func TestFiguresBesideBareEcho(t *testing.T) {
	if !*load {
		t.Skip("not asked for by a flag")
	}
	file, err := store.OpenFile(context.Background(), filepath.Join(t.TempDir(), "plans.db"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	service := httptest.NewServer(api.New(api.Config{Store: file, Queue: clients}).Handler())
	defer service.Close()
	_, first, _, err := sent(service.URL+"/v1/plans?trial=true", "application/json", []byte(burger))
	var p schedule.Plan
	if err != nil || json.Unmarshal(first, &p) != nil {
		t.Fatal(err)
	}
	bare := httptest.NewServer(bareEcho(first))
	defer bare.Close()
	const rounds, moment = 11, 300 * time.Millisecond
	path := "/v1/plans/" + p.ID
	ratios, rates := []float64{}, map[string][]float64{}
	for range rounds {
		b, s := rate(t, bare.URL+"/v1/plans/x", moment), rate(t, service.URL+path, moment)
		ratios = append(ratios, s/b)
		rates["bare echo"], rates["kept plan"] = append(rates["bare echo"], b), append(rates["kept plan"], s)
		for _, what := range []string{".ics", ".html", "/due"} {
			rates[what] = append(rates[what], rate(t, service.URL+path+what, moment))
		}
	}
	light := httptest.NewServer(api.New(api.Config{Store: store.NewMemory()}).Handler())
	defer light.Close()
	var took [3][]time.Duration
	for range 150 {
		for i, at := range []string{bare.URL + "/v1/plans", light.URL + "/v1/plans?trial=true", service.URL + "/v1/plans?trial=true"} {
			began := time.Now()
			drained(t, http.StatusCreated, func() (*http.Response, error) {
				return patient.Post(at, "application/json", strings.NewReader(burger))
			})
			took[i] = append(took[i], time.Since(began))
		}
	}
	ratio, more := middle(ratios), quantile(took[1], 0.5)-quantile(took[0], 0.5) // what a disk takes for a commit is the disk's
	t.Logf("GET of a kept plan: %.0f/s, bare echo %.0f/s, %.2f of it (from %.2f to %.2f); calendar %.0f/s, sheet %.0f/s, due %.0f/s",
		middle(rates["kept plan"]), middle(rates["bare echo"]), ratio, ratios[0], ratios[len(ratios)-1], middle(rates[".ics"]), middle(rates[".html"]), middle(rates["/due"]))
	t.Logf("POST of a plan: by a bare handler around the library %s, kept in memory %s, kept on the disk %s (medians of 150, in turns)",
		quantile(took[0], 0.5), quantile(took[1], 0.5), quantile(took[2], 0.5))
	if ratio < 0.35 || more > time.Millisecond {
		t.Error("slower than it shall be beside a bare handler")
	}
	if busy := othersBusy(t); busy > 1 {
		t.Logf("rates a second are not judged: %.1f others want the processors", busy)
	} else if middle(rates[".ics"]) < 2000 || middle(rates[".html"]) < 2000 || middle(rates["/due"]) < 3000 {
		t.Error("slower than it shall be")
	}
}

// othersBusy is how many others have wanted a processor in the last minutes, of which this
// test took one.
func othersBusy(t *testing.T) float64 {
	t.Helper()
	text, err := os.ReadFile("/proc/loadavg")
	if err != nil {
		return 0
	}
	busy, err := strconv.ParseFloat(strings.Fields(string(text))[1], 64) // of five minutes
	if err != nil {
		t.Fatal(err)
	}
	return busy - 1
}
