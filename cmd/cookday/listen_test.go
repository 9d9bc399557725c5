package main

import (
	"bufio"
	"bytes"
	"context"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/spf13/pflag"
)

func TestListenIsRefused(t *testing.T) {
	dir := t.TempDir()
	short := filepath.Join(dir, "short.txt")
	if err := os.WriteFile(short, []byte("abc\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		args []string
		says string
	}{
		"other machines":      {[]string{"--address", "0.0.0.0:0"}, "say --allow-remote if that is meant"},
		"all addresses":       {[]string{"--address", ":0"}, "say --allow-remote if that is meant"},
		"a name":              {[]string{"--address", "grill.example:80"}, "say --allow-remote if that is meant"},
		"remote, no token":    {[]string{"--address", ":0", "--allow-remote"}, "give --token-file, or say --no-auth"},
		"short token":         {[]string{"--token-file", short}, "at least 16 characters"},
		"no token file":       {[]string{"--token-file", filepath.Join(dir, "none")}, "no such file"},
		"no port":             {[]string{"--address", "localhost"}, "is not host:port"},
		"no such network":     {[]string{"--trust-proxy", "10.0.0.1"}, "is no network"},
		"no such directory":   {[]string{"--store", filepath.Join(dir, "a", "b.db")}, "no such file or directory"},
		"no such log":         {[]string{"--log", "xml"}, "--log"},
		"fewer than no plans": {[]string{"--solves", "-1"}, "is too few"},
		"metrics for others":  {[]string{"--metrics", "0.0.0.0:0"}, "--metrics: 0.0.0.0:0 can be reached from other machines"},
		"metrics, no port":    {[]string{"--metrics", "localhost"}, "--metrics: \"localhost\" is not host:port"},
		"no such database":    {[]string{"--store", "postgres://127.0.0.1:1/plans?connect_timeout=2"}, "--store: the database cannot be used"},
		"no streams":          {[]string{"--streams", "0"}, "at least one must be open"},
		"kept for hours":      {[]string{"--keep", "12h"}, "is no number of days such as 400d"},
		"a long goodbye":      {[]string{"--drain", "1h"}, "is not from 0s to 1m"},
		"an argument":         {[]string{"now"}, "one argument too many"},
	} {
		var out, faults bytes.Buffer
		args := append([]string{"listen", "--store", "memory"}, c.args...)
		if code := run(args, nil, &out, &faults); code != exitInput || !strings.Contains(faults.String(), c.says) || strings.Count(faults.String(), "\n") != 1 || out.Len() > 0 {
			t.Errorf("%s: exit %d, %q %q", name, code, out.String(), faults.String())
		}
	}
}

func TestListenAnswersUntilItIsStopped(t *testing.T) {
	token := filepath.Join(t.TempDir(), "token")
	if err := os.WriteFile(token, []byte("a-long-enough-token\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
	r, w := io.Pipe()
	cmd := rootCommand()
	cmd.SetArgs([]string{"listen", "--store", "memory", "--address", "127.0.0.1:0", "--token-file", token, "--log", "none", "--metrics", "127.0.0.1:0"})
	cmd.SetOut(w)
	done := make(chan error)
	go func() { done <- cmd.ExecuteContext(ctx) }()
	lines := bufio.NewReader(r)
	line, err := lines.ReadString('\n')
	if err != nil {
		t.Fatal(err)
	}
	metrics, err := lines.ReadString('\n')
	if err != nil {
		t.Fatal(err)
	}
	address, _, _ := strings.Cut(strings.TrimPrefix(line, "listening on "), ",")
	for header, want := range map[string]int{"": http.StatusUnauthorized, "Bearer a-long-enough-token": http.StatusOK} {
		q, err := http.NewRequest(http.MethodGet, address+"/v1/layouts", nil)
		if err != nil {
			t.Fatal(err)
		}
		q.Header.Set("Authorization", header)
		a, err := http.DefaultClient.Do(q)
		if err != nil {
			t.Fatal(err)
		}
		a.Body.Close()
		if a.StatusCode != want {
			t.Errorf("%q: %d, want %d", header, a.StatusCode, want)
		}
	}
	metricsAreApart(t, strings.TrimSpace(strings.TrimPrefix(metrics, "metrics are at ")), address)
	cancel()
	if err := <-done; err != nil {
		t.Errorf("a stop is no fault: %v", err)
	}
}

func TestFlagsFromTheEnvironment(t *testing.T) {
	set := func(environment map[string]string, args ...string) (*pflag.FlagSet, error) {
		cmd := listenCommand()
		if err := cmd.ParseFlags(args); err != nil {
			t.Fatal(err)
		}
		return cmd.Flags(), fromEnvironment(cmd.Flags(), func(name string) (string, bool) { v, ok := environment[name]; return v, ok })
	}
	flags, err := set(map[string]string{"COOKDAY_ADDRESS": "127.0.0.1:1", "COOKDAY_STORE": "memory", "COOKDAY_HOST": "a,b", "COOKDAY_ALLOW_REMOTE": "true"}, "--address", "127.0.0.1:2")
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]string{"address": "127.0.0.1:2", "store": "memory", "host": "[a,b]", "allow-remote": "true"} {
		if got := flags.Lookup(name).Value.String(); got != want {
			t.Errorf("%s is %s, want %s", name, got, want)
		}
	}
	if _, err := set(map[string]string{"COOKDAY_SOLVES": "many"}); err == nil || !strings.Contains(err.Error(), "COOKDAY_SOLVES") {
		t.Error(err)
	}
}

// metricsAreApart: at an address of their own they need no token and have the calls of the
// other, which has none of them.
func metricsAreApart(t *testing.T, metrics, service string) {
	t.Helper()
	get := func(address, token string) (int, string) {
		q, err := http.NewRequest(http.MethodGet, address, nil)
		if err != nil {
			t.Fatal(err)
		}
		q.Header.Set("Authorization", "Bearer "+token)
		a, err := http.DefaultClient.Do(q)
		if err != nil {
			t.Fatal(err)
		}
		defer a.Body.Close()
		text, err := io.ReadAll(a.Body)
		if err != nil {
			t.Fatal(err)
		}
		return a.StatusCode, string(text)
	}
	if code, text := get(metrics, ""); code != http.StatusOK || !strings.Contains(text, `cookday_calls_total{method="GET",route="/v1/layouts",status="200"} 1`) {
		t.Errorf("%s: %d %.300s", metrics, code, text)
	}
	if code, _ := get(service+"/metrics", "a-long-enough-token"); code != http.StatusNotFound {
		t.Errorf("the service itself: %d", code)
	}
	if code, _ := get(strings.TrimSuffix(metrics, "metrics")+"v1/plans", ""); code != http.StatusNotFound {
		t.Errorf("plans at the address of the metrics: %d", code)
	}
}
