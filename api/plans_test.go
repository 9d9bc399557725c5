package api

import (
	"bytes"
	"encoding/json"
	"fmt"
	"net/http"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
)

func TestPlanLivesAndDies(t *testing.T) {
	cfg, _ := testConfig()
	h := New(cfg).Handler()
	p := planned(t, h, party(t), asYAML...)
	if p.ID != testID || !p.Feasible || len(p.Steps) == 0 {
		t.Fatalf("plan %s, feasible %v, %d steps", p.ID, p.Feasible, len(p.Steps))
	}
	got := ask(t, h, http.MethodGet, "/v1/plans/"+p.ID, nil)
	again, err := schedule.ReadPlan(got.body)
	if err != nil || len(again.Steps) != len(p.Steps) {
		t.Errorf("read back: %v", err)
	}
	if gone := ask(t, h, http.MethodDelete, "/v1/plans/"+p.ID, nil); gone.StatusCode != http.StatusNoContent {
		t.Errorf("delete: %d %s", gone.StatusCode, gone.body)
	}
	for _, target := range []string{"", ".ics", "/due", "/stream"} {
		if a := ask(t, h, http.MethodGet, "/v1/plans/"+p.ID+target, nil); a.StatusCode != http.StatusNotFound {
			t.Errorf("%q after deletion: %d", target, a.StatusCode)
		}
	}
	if a := ask(t, h, http.MethodDelete, "/v1/plans/"+p.ID, nil); a.StatusCode != http.StatusNotFound {
		t.Errorf("deleted twice: %d", a.StatusCode)
	}
}

func TestInfeasibleDayIsAPlan(t *testing.T) {
	cfg, _ := testConfig()
	h := New(cfg).Handler()
	impossible := strings.Replace(burgers, `"dishes"`, `"earliest": "17:59", "dishes"`, 1) // a minute to light, cook and serve
	p := planned(t, h, []byte(impossible), asJSON...)
	if p.Feasible || len(p.Findings) == 0 || len(p.Steps) != 0 {
		t.Errorf("feasible %v, %d findings, %d steps", p.Feasible, len(p.Findings), len(p.Steps))
	}
	for _, suffix := range []string{".json", ".html", ".ics", ".csv", ".txt", ".svg"} {
		if a := ask(t, h, http.MethodGet, "/v1/plans/"+p.ID+suffix, nil); a.StatusCode != http.StatusOK {
			t.Errorf("%s: %d %s", suffix, a.StatusCode, a.body)
		}
	}
	if a := ask(t, h, http.MethodGet, "/v1/plans/"+p.ID+"/due", nil); a.StatusCode != http.StatusOK {
		t.Errorf("due: %d", a.StatusCode)
	}
}

func TestFormats(t *testing.T) {
	cfg, _ := testConfig()
	h := New(cfg).Handler()
	base := "/v1/plans/" + planned(t, h, party(t), asYAML...).ID
	begins := map[string]string{typeJSON: "{", "text/html": "<!DOCTYPE html>", "text/calendar": "BEGIN:VCALENDAR\r\n", typeCSV: "row,", "image/svg+xml": "<svg", "text/plain": "Saturday"}
	for _, f := range formats("steps", "timeline") {
		byAccept := ask(t, h, http.MethodGet, base, nil, "Accept", f.mediaType)
		bySuffix := ask(t, h, http.MethodGet, base+f.suffix, nil, "Accept", "application/pdf") // the suffix goes before it
		for how, a := range map[string]answer{"Accept": byAccept, "suffix": bySuffix} {
			if a.StatusCode != http.StatusOK || a.Header.Get("Content-Type") != f.contentType || !strings.HasPrefix(string(a.body), begins[f.mediaType]) {
				t.Errorf("%s by %s: %d %s %.60q", f.suffix, how, a.StatusCode, a.Header.Get("Content-Type"), a.body)
			}
		}
		if !bytes.Equal(byAccept.body, bySuffix.body) {
			t.Errorf("%s differs by suffix and by Accept", f.suffix)
		}
	}
	for query, want := range map[string]int{".csv?table=dishes": 200, ".csv?table=nothing": 400, ".svg?picture=grate": 200, ".svg?picture=curves": 200,
		".svg?picture=x": 400, ".pdf": 404, "?revision=0": 200, "?revision=1": 404, "?revision=-1": 400, "?revision=99999999999": 400, "?other=1": 400, "?revision=0&revision=0": 400} {
		if a := ask(t, h, http.MethodGet, base+query, nil); a.StatusCode != want {
			t.Errorf("%s: %d, want %d: %.200s", query, a.StatusCode, want, a.body)
		}
	}
	if a := ask(t, h, http.MethodGet, base, nil, "Accept", "application/pdf"); a.StatusCode != http.StatusNotAcceptable {
		t.Errorf("pdf: %d", a.StatusCode)
	}
}

func TestTagsAndCompression(t *testing.T) {
	cfg, _ := testConfig()
	h := New(cfg).Handler()
	base := "/v1/plans/" + planned(t, h, []byte(burgers), asJSON...).ID
	plain := ask(t, h, http.MethodGet, base, nil)
	small := ask(t, h, http.MethodGet, base, nil, "Accept-Encoding", "br, gzip;q=0.5")
	if !bytes.Equal(plain.body, small.body) || small.Header.Get("Content-Encoding") != "gzip" || plain.Header.Get("Content-Encoding") != "" {
		t.Error("compression changed the body or was not done as asked")
	}
	tag, gzipTag := plain.Header.Get("ETag"), small.Header.Get("ETag")
	if tag == gzipTag || tag == "" {
		t.Errorf("tags %s and %s", tag, gzipTag)
	}
	refused := ask(t, h, http.MethodGet, base, nil, "Accept-Encoding", "gzip;q=0")
	if refused.Header.Get("Content-Encoding") != "" {
		t.Error("compressed against the client's will")
	}
	for header, want := range map[string]int{tag: 304, "W/" + tag: 304, `"x", ` + tag: 304, "*": 304, `"0-0"`: 200, gzipTag: 200} {
		if a := ask(t, h, http.MethodGet, base, nil, "If-None-Match", header); a.StatusCode != want {
			t.Errorf("If-None-Match %s: %d, want %d", header, a.StatusCode, want)
		}
	}
	if a := ask(t, h, http.MethodDelete, base, nil, "If-Match", `"7-0"`); a.StatusCode != http.StatusPreconditionFailed {
		t.Errorf("stale deletion: %d", a.StatusCode)
	}
	if a := ask(t, h, http.MethodDelete, base, nil, "If-Match", gzipTag); a.StatusCode != http.StatusNoContent {
		t.Errorf("deletion: %d", a.StatusCode)
	}
}

func TestCatalogueAndHealth(t *testing.T) {
	cfg, _ := testConfig()
	cfg.Probe = time.Nanosecond
	store := cfg.Store.(*mapStore)
	s := New(cfg)
	for _, path := range []string{"/v1/cuts", "/v1/layouts", "/healthz", "/readyz"} {
		if a := ask(t, s.Handler(), http.MethodGet, path, nil); a.StatusCode != http.StatusOK || !json.Valid(a.body) {
			t.Errorf("%s: %d %.100s", path, a.StatusCode, a.body)
		}
	}
	store.broken = fmt.Errorf("disk is gone")
	if a := ask(t, s.Handler(), http.MethodGet, "/readyz", nil); a.StatusCode != http.StatusServiceUnavailable || strings.Contains(string(a.body), "disk") {
		t.Errorf("broken store: %d %s", a.StatusCode, a.body)
	}
	if a := ask(t, s.Handler(), http.MethodGet, "/v1/plans/"+testID, nil); a.StatusCode != http.StatusInternalServerError || strings.Contains(string(a.body), "disk") {
		t.Errorf("broken store: %d %s", a.StatusCode, a.body)
	}
	store.broken = nil
	s.CloseStreams()
	if a := ask(t, s.Handler(), http.MethodGet, "/readyz", nil); a.StatusCode != http.StatusServiceUnavailable {
		t.Errorf("while ending: %d", a.StatusCode)
	}
}
