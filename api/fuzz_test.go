package api

import (
	"context"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"time"
)

// Whatever is asked of whichever address: an answer that is not a fault of the service,
// with a body that its media type promises. The first byte chooses the address, the
// query and the body are as they come.
func FuzzCalls(f *testing.F) {
	calls := []struct{ method, path, kind string }{
		{"POST", "/v1/plans", typeYAML}, {"POST", "/v1/plans", typeJSON}, {"POST", "/v1/plans/" + testID + "/readings", typeCSV},
		{"POST", "/v1/plans/" + testID + "/readings", typeJSON}, {"POST", "/v1/forecasts", typeJSON}, {"GET", "/v1/forecasts", ""},
		{"GET", "/v1/plans/" + testID, ""}, {"GET", "/v1/plans/" + testID + ".csv", ""}, {"GET", "/v1/plans/" + testID + ".svg", ""},
		{"GET", "/v1/plans/" + testID + "/due", ""}, {"GET", "/v1/plans/" + testID + "/now", ""}, {"GET", "/v1/plans/" + testID + "/stream", ""}, {"GET", "/v1/cuts", ""}, {"GET", "/v1/layouts", ""},
		{"DELETE", "/v1/plans/x" + testID[1:], ""},
	}
	f.Add(uint8(0), "", party(f))
	f.Add(uint8(1), "", []byte(burgers))
	f.Add(uint8(2), "at=2027-07-03T12:00:00-05:00", []byte("time,dish,kind,value\r\n17:15,burgers,on,\r\n17:20,,grate,350 F\r\n"))
	f.Add(uint8(3), "at=2027-07-03T22:00:00Z", []byte(`[{"time":"17:15","dish":"burgers","kind":"on"}]`))
	f.Add(uint8(4), "format=csv", []byte(`{"cut": "brisket", "weight": "12 lb", "probability": [0.5, 0.9]}`))
	f.Add(uint8(5), "cut=brisket&weight=12+lb&grate=250+F", []byte{})
	f.Add(uint8(6), "revision=0", []byte{})
	f.Add(uint8(7), "table=dishes", []byte{})
	f.Add(uint8(8), "picture=grate", []byte{})
	f.Add(uint8(9), "at=2027-07-03T18:00:00Z&within=PT9999H", []byte{})
	f.Add(uint8(10), "last_event_id=1", []byte{})
	for i := 11; i < len(calls); i++ {
		f.Add(uint8(i), "%zz=1", []byte{})
	}
	cfg, _ := testConfig()
	cfg.SolveTime = 300 * time.Millisecond
	h := New(cfg).Handler()
	planned(f, h, []byte(burgers), asJSON...)
	kept, err := cfg.Store.Newest(context.Background(), testID)
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, which uint8, query string, body []byte) {
		c := calls[int(which)%len(calls)]
		forget(cfg.Store.(*mapStore), kept)
		ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
		defer cancel()
		if strings.HasSuffix(c.path, "/stream") { // it never ends by itself
			ctx, cancel = context.WithTimeout(context.Background(), 5*time.Millisecond)
			defer cancel()
		}
		r := httptest.NewRequest(c.method, c.path, strings.NewReader(string(body))).WithContext(ctx)
		r.URL.RawQuery = query
		r.Header.Set("Content-Type", c.kind)
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		switch kind := w.Header().Get("Content-Type"); {
		case w.Code == http.StatusServiceUnavailable && w.Header().Get("Retry-After") != "": // it took too long, and says so
		case w.Code >= http.StatusInternalServerError:
			t.Errorf("%s %s?%s: %d %s", c.method, c.path, query, w.Code, w.Body)
		case w.Code >= http.StatusBadRequest && kind != "application/problem+json":
			t.Errorf("%s %s?%s: %d as %s", c.method, c.path, query, w.Code, kind)
		}
	})
}
