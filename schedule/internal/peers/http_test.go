package peers

import (
	"encoding/json"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/labstack/echo/v4"

	"example.com/cookday/api"
	"example.com/cookday/api/store"
	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
)

const burgers = `{"format": 1, "serve": {"date": "2027-07-03", "time": "18:00", "tz": "America/Chicago"},
 "grill": {"kind": "kettle", "diameter": "22 in"}, "dishes": [{"cut": "burger", "weight": "6 oz", "count": 4}]}`

// party is the request of the example that all doors share.
func party(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile("../../../examples/backyard-party/request.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// bare is the least that answers a request for a plan, and a kept plan.
func bare(kept []byte) http.Handler {
	e := echo.New()
	e.POST("/v1/plans", func(c echo.Context) error {
		data, err := io.ReadAll(c.Request().Body)
		if err != nil {
			return err
		}
		r, err := schedule.Read(data)
		if err != nil {
			return err
		}
		p, err := planner.Make(c.Request().Context(), r)
		if err != nil {
			return err
		}
		text, err := json.Marshal(p)
		if err != nil {
			return err
		}
		return c.Blob(http.StatusCreated, "application/json", text)
	})
	e.GET("/v1/plans/:id", func(c echo.Context) error { return c.Blob(http.StatusOK, "application/json", kept) })
	return e
}

// answered makes a call of a handler in this goroutine.
func answered(t *testing.T, h http.Handler, method, path, kind, body string) *httptest.ResponseRecorder {
	t.Helper()
	r := httptest.NewRequest(method, path, strings.NewReader(body))
	if body != "" {
		r.Header.Set("Content-Type", kind)
	}
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	if w.Code >= 300 {
		t.Fatalf("%s %s: %d %s", method, path, w.Code, w.Body)
	}
	return w
}

// TestHTTPBesideBareHandler compares the service with a handler that does nothing but
// call the library: what the door adds by its checks, its limits and its store.
func TestHTTPBesideBareHandler(t *testing.T) {
	asked(t)
	plans := store.NewMemory()
	h := api.New(api.Config{Store: plans, Queue: 64, Patience: time.Minute}).Handler()
	first := answered(t, h, http.MethodPost, "/v1/plans?trial=true", "application/json", burgers)
	b := bare(first.Body.Bytes())
	for _, c := range []struct{ name, kind, body string }{
		{"a plan of burgers", "application/json", burgers},
		{"a plan of the party", "application/yaml", party(t)},
	} {
		post := func(h http.Handler) func() {
			return func() {
				w := answered(t, h, http.MethodPost, "/v1/plans?trial=true", c.kind, c.body)
				if at := w.Header().Get("Location"); at != "" {
					_ = plans.Delete(t.Context(), strings.TrimPrefix(at, "/v1/plans/"))
				}
			}
		}
		row("POST "+c.name, "service, plan kept in memory", "bare echo handler: read, make, marshal", cost(post(h)), cost(post(b)))
	}
	location := first.Header().Get("Location")
	get := func(h http.Handler) func() {
		return func() { answered(t, h, http.MethodGet, location, "", "") }
	}
	row("GET a kept plan", "service, kept in memory", "bare echo handler: the same bytes", cost(get(h)), cost(get(b)))
}
