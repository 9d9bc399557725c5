package export

import (
	"bytes"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
)

func textOf(t *testing.T, p schedule.Plan, o Options) string {
	t.Helper()
	var b bytes.Buffer
	if err := Text(&b, p, o); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestTextKeepsToItsWidth(t *testing.T) {
	for _, n := range []int{0, 40, 60, 100} {
		want := n
		if n == 0 {
			want = 80
		}
		for _, line := range strings.Split(textOf(t, invented(), Options{Width: n}), "\n") {
			if columns(line) > want {
				t.Errorf("width %d: %d columns: %q", n, columns(line), line)
			}
		}
	}
}

func TestTextSaysWhatACookNeeds(t *testing.T) {
	got := textOf(t, invented(), Options{Now: invented().ServeAt.Add(-5 * time.Hour)})
	last := -1
	for _, want := range []string{"18:00 on Saturday 3 July 2027", "21:30 on Friday 2 July 2027", "About 84 %",
		"carbon monoxide", "Friday 2 July 2027\n---", "Quiet hours until 05:30 Sat", "Saturday 3 July 2027\n---", "[ ] 05:30  wrap",
		"Now: 13:00", "Light an hour earlier. An hour more of fuel. Then: light at 20:30 Fri", "Colour is no sign"} {
		at := strings.Index(got, want)
		if at <= last {
			t.Errorf("%q is missing or out of order", want)
		}
		last = at
	}
	if t.Failed() {
		t.Log(got)
	}
}
