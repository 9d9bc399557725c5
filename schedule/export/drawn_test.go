package export_test

import (
	"bytes"
	"context"
	"errors"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/export"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
)

// go test ./schedule/export -run TestDrawnDays -drawn 60 -into DIR leaves the pages there, for
// a browser to look at.
var (
	drawnDays = flag.Int("drawn", 6, "so many days are drawn by lot")
	drawnInto = flag.String("into", "", "folder that takes their sheets")
)

// The sheets of days drawn by lot, and of a while into them: no word of a picture touches
// another or is cut, reckoned with letters as broad as those of a wide font.
func TestDrawnDays(t *testing.T) {
	dice := rand.New(rand.NewPCG(20, 7))
	bytesOf := func(n int) []byte {
		out := make([]byte, n)
		for i := range out {
			out[i] = byte(dice.IntN(256))
		}
		return out
	}
	pictures := 0
	for day := 0; day < *drawnDays; {
		r, err := schedule.Read([]byte(plantest.FuzzedRequest(bytesOf(120))))
		if err != nil {
			continue // a request that is refused
		}
		p, err := planner.Make(context.Background(), r)
		var bad *schedule.InputError
		if errors.As(err, &bad) {
			continue
		}
		if err != nil {
			t.Fatal(err)
		}
		day++
		pictures += lookedAt(t, fmt.Sprintf("%02d", day), p, p.ServeAt.Add(-5*time.Hour))
		if !p.Feasible {
			continue
		}
		log, err := schedule.ReadLog([]byte(plantest.FuzzedLog(bytesOf(30), p)), p)
		if err != nil || len(log) == 0 {
			continue
		}
		if q, err := planner.Revise(context.Background(), p, log, log[len(log)-1].At); err == nil {
			pictures += lookedAt(t, fmt.Sprintf("%02d-later", day), q, *q.RevisedAt)
		}
	}
	if pictures < *drawnDays {
		t.Errorf("only %d pictures on %d days", pictures, *drawnDays)
	}
}

var (
	aPicture = regexp.MustCompile(`(?s)<svg .*?</svg>`)
	aText    = regexp.MustCompile(`<text x="([-0-9.]+)" y="([-0-9.]+)" class="([^"]*)">([^<]*)</text>`)
	itsView  = regexp.MustCompile(`viewBox="0 0 ([0-9.]+) ([0-9.]+)"`)
)

// lookedAt holds the pictures of a sheet against what must hold of them, and counts them.
func lookedAt(t *testing.T, name string, p schedule.Plan, now time.Time) int {
	t.Helper()
	var b bytes.Buffer
	if err := export.Sheet(&b, p, export.Options{Now: now}); err != nil {
		t.Fatal(err)
	}
	if *drawnInto != "" {
		if err := os.WriteFile(filepath.Join(*drawnInto, name+".html"), b.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	all := aPicture.FindAllString(b.String(), -1)
	for i, picture := range all {
		for _, fault := range wordsThatTouch(picture) {
			t.Errorf("day %s, picture %d: %s", name, i+1, fault)
		}
	}
	return len(all)
}

type word struct {
	text                     string
	left, right, top, bottom float64
}

// wordsThatTouch names the words of a picture that touch each other or are cut.
func wordsThatTouch(picture string) (faults []string) {
	num := func(s string) float64 { x, _ := strconv.ParseFloat(s, 64); return x }
	view := itsView.FindStringSubmatch(picture)
	var words []word
	for _, m := range aText.FindAllStringSubmatch(picture, -1) {
		x, y, class, text := num(m[1]), num(m[2]), " "+m[3]+" ", unescaped(m[4])
		wide := export.TextSize(text, strings.Contains(class, " strong ") || strings.Contains(class, " letter "))
		left := x
		switch {
		case strings.Contains(class, " middle "), strings.Contains(class, " letter "), strings.Contains(class, " inside "):
			left -= wide / 2
		case strings.Contains(class, " right "):
			left -= wide
		}
		w := word{text, left, left + wide, y - 0.75*export.LetterSize, y + 0.05*export.LetterSize}
		if w.left < -0.5 || w.right > num(view[1])+0.5 || w.top < 0 || w.bottom > num(view[2]) {
			faults = append(faults, fmt.Sprintf("%q is cut: %.0f to %.0f, %.0f to %.0f in %s", text, w.left, w.right, w.top, w.bottom, view[0]))
		}
		for _, o := range words {
			if w.left < o.right && o.left < w.right && w.top < o.bottom && o.top < w.bottom {
				faults = append(faults, fmt.Sprintf("%q touches %q", w.text, o.text))
			}
		}
		words = append(words, w)
	}
	return faults
}

func unescaped(s string) string {
	return strings.NewReplacer("&amp;", "&", "&#34;", `"`, "&#39;", "'", "&lt;", "<", "&gt;", ">").Replace(s)
}

// The check finds what it is to find.
func TestWordsThatTouchAreFound(t *testing.T) {
	const bad = `<svg viewBox="0 0 100 40"><text x="5" y="20" class="">one</text><text x="12" y="22" class="soft">two</text><text x="90" y="20" class="">cut</text></svg>`
	if got := strings.Join(wordsThatTouch(bad), "\n"); !strings.Contains(got, `"two" touches "one"`) || !strings.Contains(got, `"cut" is cut`) {
		t.Error(got)
	}
}
