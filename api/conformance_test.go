package api

import (
	"bytes"
	"compress/gzip"
	"context"
	"encoding/json"
	"io"
	"net/http"
	"net/http/httptest"
	"net/url"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/getkin/kin-openapi/openapi3"
	"github.com/getkin/kin-openapi/openapi3filter"
	"github.com/getkin/kin-openapi/routers"
	"go.yaml.in/yaml/v3"
)

// The whole suite of this package goes through ask, which holds every request that
// is accepted and every answer against openapi.yaml.

var document31 = sync.OnceValues(func() (*openapi3.T, error) {
	for _, kind := range []string{"text/html", "text/calendar", "text/csv", "image/svg+xml", "text/event-stream", "text/plain"} {
		openapi3filter.RegisterBodyDecoder(kind, func(r io.Reader, _ http.Header, _ *openapi3.SchemaRef, _ openapi3filter.EncodingFn) (any, error) {
			text, err := io.ReadAll(r)
			return string(text), err
		})
	}
	openapi3filter.RegisterBodyDecoder(typeYAML, func(r io.Reader, _ http.Header, _ *openapi3.SchemaRef, _ openapi3filter.EncodingFn) (any, error) {
		var n yaml.Node
		err := yaml.NewDecoder(r).Decode(&n)
		return withoutDates(&n), err
	})
	return openapi3.NewLoader().LoadFromFile("../openapi.yaml")
})

// withoutDates is a YAML document as JSON has it: a date is a text.
func withoutDates(n *yaml.Node) (v any) {
	var walk func(n *yaml.Node)
	walk = func(n *yaml.Node) {
		if n.Tag == "!!timestamp" {
			n.Tag = "!!str"
		}
		for _, inner := range n.Content {
			walk(inner)
		}
	}
	walk(n)
	n.Decode(&v) // what cannot be decoded stays nil, which fits no schema
	return v
}

func openAPI(t testing.TB) *openapi3.T {
	t.Helper()
	d, err := document31()
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func TestDocumentIsValid(t *testing.T) {
	if err := openAPI(t).Validate(context.Background(), openapi3.EnableExamplesValidation()); err != nil {
		t.Fatal(err)
	}
}

// documentPath is a route of the router as the document writes it.
func documentPath(path string) string { return routeParameter.ReplaceAllString(path, "{$1}") }

var routeParameter = regexp.MustCompile(`:(\w+)`)

// suffixed are the routes whose last part may have a suffix, which the document has as
// addresses of their own.
var suffixed = []string{"GET /v1/plans/{id}.{suffix}", "GET /v1/feeds/{id}.{suffix}"}

func TestRoutesAndDocumentAreTheSame(t *testing.T) {
	var served, described []string
	for _, r := range New(Config{}).table() {
		served = append(served, r.method+" "+documentPath(r.path))
	}
	served = append(served, suffixed...)
	for path, item := range openAPI(t).Paths.Map() {
		for method := range item.Operations() {
			described = append(described, method+" "+path)
		}
	}
	slices.Sort(served)
	slices.Sort(described)
	if !slices.Equal(served, described) {
		t.Errorf("served:\n%s\n\ndescribed:\n%s", strings.Join(served, "\n"), strings.Join(described, "\n"))
	}
}

// operationOf finds what the document says of a call, nil if it has no such address.
func operationOf(d *openapi3.T, method, target string) (*routers.Route, map[string]string) {
	u, err := url.Parse(target)
	if err != nil {
		return nil, nil
	}
	for path, item := range d.Paths.Map() {
		op := item.GetOperation(method)
		parameters, fits := match(path, u.Path)
		if op != nil && fits {
			return &routers.Route{Spec: d, Path: path, PathItem: item, Method: method, Operation: op}, parameters
		}
	}
	return nil, nil
}

// match fits a path to a template of the document.
func match(template, path string) (map[string]string, bool) {
	want, have := strings.Split(template, "/"), strings.Split(path, "/")
	if len(want) != len(have) {
		return nil, false
	}
	got := map[string]string{}
	for i, w := range want {
		switch {
		case w == "{id}.{suffix}":
			id, suffix, found := strings.Cut(have[i], ".")
			if !found {
				return nil, false
			}
			got["id"], got["suffix"] = id, suffix
		case strings.HasPrefix(w, "{"):
			if strings.Contains(have[i], ".") {
				return nil, false
			}
			got[strings.Trim(w, "{}")] = have[i]
		case w != have[i]:
			return nil, false
		}
	}
	return got, true
}

// answer is what came back, its body uncompressed.
type answer struct {
	*http.Response
	body []byte
}

// ask sends a request to a handler and holds both against the document.
func ask(t testing.TB, h http.Handler, method, target string, body []byte, headers ...string) answer {
	t.Helper()
	r := httptest.NewRequest(method, target, bytes.NewReader(body))
	for i := 0; i < len(headers); i += 2 {
		r.Header.Add(headers[i], headers[i+1])
	}
	recorder := httptest.NewRecorder()
	h.ServeHTTP(recorder, r)
	a := answer{recorder.Result(), recorder.Body.Bytes()}
	if a.Header.Get("Content-Encoding") == "gzip" {
		z, err := gzip.NewReader(recorder.Body)
		if err != nil {
			t.Fatal(err)
		}
		if a.body, err = io.ReadAll(z); err != nil {
			t.Fatal(err)
		}
	}
	validate(t, r, body, a)
	return a
}

func validate(t testing.TB, r *http.Request, body []byte, a answer) {
	t.Helper()
	if r.Method == http.MethodHead { // the document says: wherever GET is
		route, _ := operationOf(openAPI(t), http.MethodGet, r.URL.String())
		if len(a.body) > 0 || a.StatusCode < 400 && (route == nil || route.Operation.Responses.Status(a.StatusCode) == nil) {
			t.Errorf("HEAD %s: %d, a body of %d bytes", r.URL, a.StatusCode, len(a.body))
		}
		return
	}
	if a.StatusCode >= 400 && !strings.HasPrefix(a.Header.Get("Content-Type"), "text/html") { // the document says where a page may be
		mustBeProblem(t, a)
	}
	route, parameters := operationOf(openAPI(t), r.Method, r.URL.String())
	if route == nil {
		if a.StatusCode != http.StatusNotFound && a.StatusCode != http.StatusMethodNotAllowed {
			t.Errorf("%s %s is not in the document but was answered with %d", r.Method, r.URL, a.StatusCode)
		}
		return
	}
	options := &openapi3filter.Options{IncludeResponseStatus: true, AuthenticationFunc: openapi3filter.NoopAuthenticationFunc, SkipSettingDefaults: true,
		SchemaValidationOptions: []openapi3.SchemaValidationOption{openapi3.EnableJSONSchema2020()}}
	request := r.Clone(context.Background())
	request.Body = io.NopCloser(bytes.NewReader(body))
	in := &openapi3filter.RequestValidationInput{Request: request, PathParams: parameters, QueryParams: r.URL.Query(), Route: route, Options: options}
	if a.StatusCode < 400 {
		if err := openapi3filter.ValidateRequest(context.Background(), in); err != nil {
			t.Errorf("%s %s was accepted, but: %v", r.Method, r.URL, err)
		}
	}
	header := a.Header.Clone()
	header.Del("Content-Encoding")
	out := &openapi3filter.ResponseValidationInput{RequestValidationInput: in, Status: a.StatusCode, Header: header, Options: options}
	out.SetBodyBytes(a.body)
	if err := openapi3filter.ValidateResponse(context.Background(), out); err != nil {
		t.Errorf("answer %d to %s %s: %v", a.StatusCode, r.Method, r.URL, err)
	}
	if documented := route.Operation.Responses.Value(http.StatusText(a.StatusCode)); documented != nil && a.Header.Get("X-Request-Id") == "" {
		t.Error("no X-Request-Id")
	}
}

func mustBeProblem(t testing.TB, a answer) {
	t.Helper()
	var p Problem
	if err := json.Unmarshal(a.body, &p); err != nil || p.Status != a.StatusCode || p.Title == "" || !strings.HasPrefix(p.Type, typeBase) ||
		a.Header.Get("Content-Type") != "application/problem+json" || p.Instance != "urn:request:"+a.Header.Get("X-Request-Id") {
		t.Errorf("answer %d is not a problem document: %.300s (%v)", a.StatusCode, a.body, err)
	}
}
