package export

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// variables reads the colours of a style sheet: those of the light scheme, and of the
// dark one, which keeps what it does not change.
func variables(t *testing.T, css string) (light, dark map[string]string) {
	t.Helper()
	read := func(part string, into map[string]string) map[string]string {
		for _, m := range regexp.MustCompile(`--([a-z-]+): (#[0-9a-f]{3,6});`).FindAllStringSubmatch(part, -1) {
			into[m[1]] = m[2]
		}
		return into
	}
	before, after, ok := strings.Cut(css, "@media screen and (prefers-color-scheme: dark)")
	if !ok {
		t.Fatal("no dark scheme")
	}
	light = read(before, map[string]string{})
	return light, read(after, read(before, map[string]string{}))
}

// luminance is the relative luminance of WCAG 2.2.
func luminance(t *testing.T, hex string) float64 {
	t.Helper()
	if len(hex) == 4 {
		hex = "#" + strings.Repeat(hex[1:2], 2) + strings.Repeat(hex[2:3], 2) + strings.Repeat(hex[3:4], 2)
	}
	sum := 0.0
	for i, weight := range []float64{0.2126, 0.7152, 0.0722} {
		n, err := strconv.ParseUint(hex[1+2*i:3+2*i], 16, 8)
		if err != nil {
			t.Fatal(err)
		}
		c := float64(n) / 255
		if c <= 0.04045 {
			c /= 12.92
		} else {
			c = math.Pow((c+0.055)/1.055, 2.4)
		}
		sum += weight * c
	}
	return sum
}

func contrast(t *testing.T, a, b string) float64 {
	t.Helper()
	la, lb := luminance(t, a), luminance(t, b)
	return (max(la, lb) + 0.05) / (min(la, lb) + 0.05)
}

// The definition's own ends: black on white is 21 to 1.
func TestContrastIsThatOfTheStandard(t *testing.T) {
	if got := contrast(t, "#000000", "#fff"); math.Abs(got-21) > 1e-9 {
		t.Error(got)
	}
}

// Text wants 4.5 to 1 (WCAG 2.2, 1.4.3), lines and surfaces with a meaning 3 to 1
// (1.4.11). Checked here because checkers in browsers do not look into pictures.
func TestColoursStandOut(t *testing.T) {
	type pair struct {
		front, back string
		least       float64
	}
	picture := []pair{{"ink", "paper", 4.5}, {"soft", "paper", 4.5}, {"ink", "shade", 4.5}, {"soft", "shade", 4.5}, {"now", "paper", 4.5},
		{"paper", "fire", 4.5}, {"bare", "paper", 3}, {"fire", "paper", 3}, {"minimum", "paper", 3}, {"foil-line", "foil", 3}, {"rest-line", "rest", 3},
		{"hold-line", "hold", 3}, {"sear-line", "sear", 3}, {"bare", "band", 3}, {"coal", "coal-ground", 3}, {"meat-line", "meat", 3}, {"ink", "meat", 4.5}, {"meat-line", "meat-two", 3}, {"ink", "meat-two", 4.5}}
	sheet := []pair{{"ink", "paper", 4.5}, {"soft", "paper", 4.5}, {"ink", "shade", 4.5}, {"soft", "shade", 4.5}, {"danger", "paper", 4.5}}
	for name, c := range map[string]struct {
		css   string
		pairs []pair
	}{"picture": {pictureCSS, picture}, "sheet": {sheetCSS, sheet}} {
		light, dark := variables(t, c.css)
		for scheme, colours := range map[string]map[string]string{"light": light, "dark": dark} {
			for _, p := range c.pairs {
				if got := contrast(t, colours[p.front], colours[p.back]); got < p.least {
					t.Errorf("%s, %s: %s on %s has %.2f, wants %.1f", name, scheme, p.front, p.back, got, p.least)
				}
			}
		}
	}
}

// Stages next to each other on a lane differ without colour: each but bare cooking has
// a pattern of its own.
func TestStagesHavePatterns(t *testing.T) {
	picture := exported(t, invented(), "timeline.svg")
	for _, pattern := range []string{"wrapped", "rest", "hold", "sear", "setup", "quiet"} {
		if !strings.Contains(picture, `<pattern id="t-`+pattern+`"`) {
			t.Errorf("no pattern %s", pattern)
		}
	}
}
