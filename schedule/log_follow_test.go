package schedule_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// One line that cannot be read does not take the rest away from somebody who stands beside the food: it is left aside
// and named, with its text and what is wrong, and no line is lost without a word. Where nothing can be read, or what
// is stored is read, it is refused as ever.
func TestAFaultyLineIsLeftAside(t *testing.T) {
	p := plantest.Day(t, "format: 1\nserve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\ngrill: kettle 22 in\ndishes: [{cut: pork-butt, weight: 8 lb}]\n")
	const head = "time,dish,kind,value\n"
	for _, c := range []struct {
		name, log string
		read      int
		aside     []int
	}{
		{"all well", "07:30,,lit,\n08:00,pork-butt,on,\n", 2, nil},
		{"a core that is none", "07:30,,lit,\n08:00,pork-butt,on,\n12:00,pork-butt,core,1520 F\n13:00,pork-butt,core,150 F\n", 3, []int{4}},
		{"no such dish", "07:30,,lit,\n08:00,pork-butt,on,\n12:00,brisket,core,150 F\n", 2, []int{4}},
		{"half a day too early", "14:00,,lit,\n14:30,pork-butt,on,\n04:50,pork-butt,core,95 F\n16:00,pork-butt,core,110 F\n", 3, []int{4}},
		{"two of them, and a comment", "# saturday\n07:30,,lit,\nnine,pork-butt,on,\n08:00,pork-butt,on,\n12:00,pork-butt,boiled,\n", 2, []int{4, 6}},
		{"a quote that does not end", "07:30,,lit,\n08:00,pork-butt,on,\n12:00,pork-butt,core,\"150 F\n", 2, []int{4}},
		{"another day's", "07:30,,lit,\n08:00,brisket,on,\n09:00,,grate,250 F\n12:00,brisket,core,150 F\n", 0, nil},
		{"all of it", "nine,pork-butt,on,\n12:00,brisket,core,150 F\n", 0, nil},
	} {
		read, aside, err := schedule.FollowLog([]byte(head+c.log), p)
		if (err != nil) != (c.read == 0) || len(read) != c.read {
			t.Errorf("%s: %d entries, %v", c.name, len(read), err)
			continue
		}
		var lines []int
		for _, a := range aside {
			lines = append(lines, a.Line)
			if text := strings.Split(head+c.log, "\n")[a.Line-1]; a.Text != text || a.Why == "" {
				t.Errorf("%s: line %d is told as %q: %s", c.name, a.Line, a.Text, a.Why)
			}
		}
		if len(lines) != len(c.aside) {
			t.Errorf("%s: left aside %v, want %v", c.name, lines, c.aside)
			continue
		}
		for i := range lines {
			if lines[i] != c.aside[i] {
				t.Errorf("%s: left aside %v, want %v", c.name, lines, c.aside)
			}
		}
		if _, err := schedule.ReadLog([]byte(head+c.log), p); (err == nil) != (len(c.aside) == 0 && c.read > 0) {
			t.Errorf("%s: what is stored: %v", c.name, err)
		}
		q := p.WithLeftAside(aside)
		for i, a := range aside {
			if f := q.Findings[i]; f.Code != schedule.LineLeft || !strings.Contains(f.Text, a.Text) {
				t.Errorf("%s: %+v does not name %q", c.name, f, a.Text)
			}
		}
	}
	if _, _, err := schedule.FollowLog([]byte("when,what\n08:00,on\n"), p); err == nil {
		t.Error("a header that is wrong is read")
	}
}
