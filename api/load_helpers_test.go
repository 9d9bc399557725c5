package api_test

import (
	"bytes"
	"fmt"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"
)

// pressed starts the program for a test of load.
func pressed(t *testing.T, flags ...string) (pid int, address, file string) {
	t.Helper()
	if !*load {
		t.Skip("not asked for by a flag")
	}
	file = filepath.Join(t.TempDir(), "plans.db")
	cmd, address := start(t, binary(t), file, flags...)
	t.Cleanup(func() { cmd.Process.Kill(); cmd.Wait() })
	return cmd.Process.Pid, address, file
}

// memory reads a line of what Linux says of a process, in MiB.
func memory(t *testing.T, pid int, line string) float64 {
	t.Helper()
	status, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", pid))
	if err != nil {
		t.Skip("there is no /proc here")
	}
	_, rest, _ := strings.Cut(string(status), line+":")
	kib, err := strconv.ParseFloat(strings.Fields(rest)[0], 64)
	if err != nil {
		t.Fatal(err)
	}
	return kib / 1024
}

var patient = &http.Client{Timeout: 2 * time.Minute, Transport: &http.Transport{MaxIdleConnsPerHost: 256, MaxIdleConns: 1024}}

// sent makes a call and says what came back and how long it took.
func sent(address, kind string, body []byte) (status int, text []byte, took time.Duration, err error) {
	began := time.Now()
	a, err := patient.Post(address, kind, bytes.NewReader(body))
	if err != nil {
		return 0, nil, 0, err
	}
	defer a.Body.Close()
	text, err = io.ReadAll(a.Body)
	return a.StatusCode, text, time.Since(began), err
}

// quantile of lengths of time.
func quantile(all []time.Duration, q float64) time.Duration {
	all = slices.Sorted(slices.Values(all))
	return all[min(int(q*float64(len(all))), len(all)-1)]
}

// looked asks for an address again and again until it is told to stop.
func looked(t *testing.T, address string, stop <-chan struct{}) (times []time.Duration) {
	for {
		began := time.Now()
		a, err := patient.Get(address)
		if err != nil {
			t.Error(err)
			return times
		}
		io.Copy(io.Discard, a.Body)
		a.Body.Close()
		times = append(times, time.Since(began))
		select {
		case <-stop:
			return times
		case <-time.After(5 * time.Millisecond):
		}
	}
}
