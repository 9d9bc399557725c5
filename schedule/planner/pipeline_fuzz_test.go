package planner_test

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
)

// nodes of the solver for one fuzzed day: enough to get through its code.
const fuzzNodes = 400

// planned makes a plan of a text, cheaply or in full, or says that the text was
// refused with its faults.
func planned(t *testing.T, text []byte, full bool) (schedule.Plan, bool) {
	t.Helper()
	r, err := schedule.Read(text)
	var p schedule.Plan
	switch {
	case err != nil:
	case full:
		p, err = planner.Make(context.Background(), r)
	default:
		p, err = planner.Make(context.Background(), r, planner.Cheaply(fuzzNodes))
	}
	var bad *schedule.InputError
	if errors.As(err, &bad) && len(bad.Faults) > 0 {
		for _, f := range bad.Faults {
			plantest.Clean(t, "fault", f.Sentence)
		}
		return p, false
	}
	if err != nil {
		t.Fatalf("neither a plan nor faults: %v", err)
	}
	return p, true
}

// Whatever day is asked for: a sound plan that can be printed in every format, or the
// faults of the request. The bytes are choices; see FuzzedRequest.
func FuzzDay(f *testing.F) {
	f.Add([]byte{})
	f.Add([]byte("a kettle in July, two dishes or three, one of them late"))
	for i := range byte(24) {
		var choices []byte
		for j := range byte(90) {
			choices = append(choices, 37*i+11*j+i*j)
		}
		f.Add(choices)
	}
	f.Fuzz(func(t *testing.T, choices []byte) {
		text := plantest.FuzzedRequest(choices)
		full := len(choices)%8 == 7 // remedies cost plans of their own
		if p, ok := planned(t, []byte(text), full); ok {
			plantest.LookOver(t, p)
		}
		if t.Failed() {
			t.Logf("full %v, request\n%s", full, text)
		}
	})
}

// The same from the bytes of a file.
func FuzzMake(f *testing.F) {
	files, _ := filepath.Glob("../testdata/requests/*.*")
	files = append(files, "../../examples/backyard-party/request.yaml")
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		r, err := schedule.Read(data)
		if err != nil || big(r) {
			return
		}
		unnamed(&r)
		p, err := planner.Make(context.Background(), r, planner.Cheaply(fuzzNodes))
		var bad *schedule.InputError
		switch {
		case errors.As(err, &bad):
			return
		case err != nil:
			t.Fatal(err)
		}
		plantest.LookOver(t, p)
	})
}

// big days take longer than a fuzzer should wait for.
func big(r schedule.Request) bool {
	pieces := 0
	for _, d := range r.Dishes {
		pieces += d.Count + 5*len(d.Weights)
	}
	return len(r.Dishes) > 6 || pieces > 40
}

// unnamed takes away what strangers call things: a dish may be called NaN.
func unnamed(r *schedule.Request) {
	r.ID, r.Name = "", ""
	for i := range r.Dishes {
		r.Dishes[i].ID, r.Dishes[i].Name = "", ""
	}
	for i := range r.Grill.Zones {
		r.Grill.Zones[i].Name = string(rune('a' + i))
	}
}
