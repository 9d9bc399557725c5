package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/cookday/schedule"
)

// hotFireLog is a fire that runs hotter than the usual grill's under its vents: read eleven times, moved twice.
func hotFireLog(offF int) string {
	log := "time,kind,value\n09:00,lit,\n09:15,lit-coals,12\n09:15,vents,\"top 1/4, bottom 1/4\"\n"
	for i, f := range []int{205, 262, 290, 301, 300, 278, 260, 255, 254, 252, 251} {
		at := 9*60 + 30 + 15*i
		log += fmt.Sprintf("%02d:%02d,grate,%d F\n", at/60, at%60, f+offF)
		switch i {
		case 4:
			log += "10:31,vents,top 1/6\n"
		case 7:
			log += "11:16,vents,bottom 1/8\n"
		}
	}
	return log
}

// filesIn writes files into a folder, and gives their paths.
func filesIn(t *testing.T, dir string) func(name, text string) string {
	return func(name, text string) string {
		t.Helper()
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		return path
	}
}

// A record is learned from the log of a fire, grows with the next, and is what fire and a request take.
func TestLearnCommand(t *testing.T) {
	dir := t.TempDir()
	file := filesIn(t, dir)
	record := filepath.Join(dir, "grill.yaml")
	for k := range 2 {
		mustRun(t, "", "learn", record, file("fire.csv", hotFireLog(2*k)), "--lit", "12", "--unlit", "80", "--out", record)
		data, err := os.ReadFile(record)
		if err != nil {
			t.Fatal(err)
		}
		own, err := schedule.ReadOwnGrill(data)
		if err != nil || own.Cooks != k+1 || len(own.Figures) != len(schedule.OwnFigures())-1 { // a fire alone teaches no pace
			t.Fatalf("after %d cooks: %v %+v\n%s", k+1, err, own, data)
		}
		if !strings.HasPrefix(string(data), "# Learned.") || !strings.Contains(string(data), "250 °F: begin with top vent") {
			t.Errorf("%s", data)
		}
	}
	ask := []string{"fire", "--want", "250F", "--shows", "280F", "--top", "1/4", "--bottom", "1/4", "--since-lit", "2h"}
	if out := mustRun(t, "", append(ask, "--own", record)...); !strings.Contains(out, "By what 2 cooks on this grill taught.") {
		t.Errorf("%s", out)
	}
	data, _ := os.ReadFile(record)
	request := "format: 1\nserve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\ngrill:\n  kind: kettle\n  diameter: 22 in\n  own:\n    " +
		strings.ReplaceAll(strings.TrimSpace(string(data)), "\n", "\n    ") + "\ndishes:\n  - {name: Chicken, cut: chicken, weight: 4 lb}\n"
	mustRun(t, "", "plan", file("day.yaml", request))
	if out := mustRun(t, "", "learn", record, file("short.csv", "time,kind,value\n09:00,grate,250 F\n"), "--format", "json"); !strings.Contains(out, `"taught": false`) || !strings.Contains(out, `"cooks": 2`) {
		t.Errorf("of one reading: %s", out)
	}
}

// A forecast takes the record of a grill, from its own file or from a request, and says what of its times rests on it.
func TestForecastTakesARecord(t *testing.T) {
	dir := t.TempDir()
	file := filesIn(t, dir)
	const record = "cooks: 3\nfigures:\n  - {name: pace, times: 1.12, spread: 0.08}\n"
	day := func(own string) string {
		return "serve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\ngrill: {kind: kettle, diameter: 22 in" + own + "}\ndishes: [{cut: pork-butt, weight: 8 lb}]\n"
	}
	ask := []string{"forecast", "--cut", "pork-butt", "--weight", "8 lb", "--grate", "250F"}
	const paced = "The times rest on what 3 cooks on this grill taught. What cooks low takes 12"
	usual := mustRun(t, "", ask...)
	own := mustRun(t, "", append(ask, "--own", file("own.yaml", record))...)
	if strings.Contains(usual, "taught") || !strings.Contains(own, paced) || strings.Split(usual, "\n")[9] == strings.Split(own, "\n")[9] {
		t.Errorf("%s\n%s", usual, own)
	}
	if out := mustRun(t, "", append(ask, "--own", file("day.yaml", day(", own: {cooks: 3, figures: [{name: pace, times: 1.12, spread: 0.08}]}")))...); out != own {
		t.Errorf("by a request: %s", out)
	}
	fireOnly := file("fire.yaml", "cooks: 2\nfigures:\n  - {name: gain, times: 1.1, spread: 0.2}\n")
	if out := mustRun(t, "", append(ask, "--own", fireOnly)...); !strings.Contains(out, "has no pace in it yet") {
		t.Errorf("of a fire alone: %s", out)
	}
	burger := []string{"forecast", "--cut", "burger", "--weight", "6 oz", "--own", filepath.Join(dir, "own.yaml")}
	if out := mustRun(t, "", burger...); !strings.Contains(out, "does not count here") {
		t.Errorf("over the coals: %s", out)
	}
	if r := invoke("", append(ask, "--own", file("none.yaml", day("")))...); r.code == exitFine || !strings.Contains(r.errors, "has no record") {
		t.Errorf("a request without a record: %+v", r)
	}
}
