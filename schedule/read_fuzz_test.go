package schedule_test

import (
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

func FuzzRead(f *testing.F) {
	files, _ := filepath.Glob("testdata/requests/*.*")
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	f.Add([]byte(plantest.Terrace))
	f.Fuzz(func(t *testing.T, data []byte) {
		r, err := schedule.Read(data)
		var bad *schedule.InputError
		switch {
		case err == nil:
			roundTrip(t, r)
		case !errors.As(err, &bad) || len(bad.Faults) == 0 || bad.Faults[0].Sentence == "":
			t.Fatalf("error without a fault: %v", err)
		}
	})
}

func FuzzReadPlan(f *testing.F) {
	f.Add([]byte(`{"format":1,"id":"","feasible":false,"serve_at":"2027-07-03T18:00:00-05:00","tz":"","dishes":null,"steps":[],"provenance":{},"request":{}}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		p, err := schedule.ReadPlan(data)
		if err != nil {
			return
		}
		text, err := json.Marshal(p)
		if err != nil {
			t.Fatal(err)
		}
		again, err := schedule.ReadPlan(text)
		if err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		if second, _ := json.Marshal(again); string(second) != string(text) {
			t.Fatalf("%s\nis not\n%s", second, text)
		}
	})
}
