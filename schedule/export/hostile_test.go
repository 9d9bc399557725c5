package export

import (
	"strings"
	"testing"
	"unicode"

	"example.com/cookday/schedule"
)

// hostileNames are what strangers may call a dish. Each has a part that must survive.
var hostileNames = map[string]string{
	`<script>alert(1)</script>`:                            "<script>alert(1)</script>",
	`"><img src=x onerror=alert(1)>`:                       `"><img src=x onerror=alert(1)>`,
	`</style></svg></title><b>`:                            "</style></svg></title><b>",
	`{{.Title}} ${x} ]]> <!-- --> &#x3c;`:                  "{{.Title}} ${x} ]]> <!-- --> &#x3c;",
	`'=HYPERLINK("//x")`:                                   `'=HYPERLINK("//x")`,
	"חזה בקר (מעושן)":                                      "חזה בקר (מעושן)",
	"لحم صدر 12":                                           "لحم صدر 12",
	"牛胸肉・ブリスケット":                                           "牛胸肉・ブリスケット",
	"👩🏽‍🍳 A\u0301\u0328\u0323 zalgo":                       "👩🏽‍🍳",
	"evil\u202etxt.exe\u2066":                              "eviltxt.exe",
	"esc\x1b[31mred\x07\x00bell":                           "esc[31mredbell",
	"line\r\nBEGIN:VEVENT\nx\u2028y":                       "line BEGIN:VEVENT x y",
	strings.Repeat("long ", 60) + strings.Repeat("x", 200): "long long",
}

func hostile(name string) schedule.Plan {
	p := invented()
	p.Name = name
	for i := range p.Dishes {
		p.Dishes[i].Name, p.Dishes[i].Way, p.Dishes[i].Doneness, p.Dishes[i].Probe = name, name, name, name
		for h := range p.Dishes[i].Holds {
			p.Dishes[i].Holds[h].Text = name
		}
	}
	for i := range p.Steps {
		p.Steps[i].Text, p.Steps[i].Why = "Turn "+name, name
	}
	for i := range p.Phases {
		p.Phases[i].Build, p.Phases[i].Vents, p.Phases[i].Zones[0].Name = name, name, name
	}
	p.Fuel.Text = name
	p.Findings[0].Text, p.Remedies[0].Text, p.Remedies[0].Price, p.Cautions[0].Text = name, name, name, name
	p.Revision, p.Changes = 1, []schedule.Change{{Step: p.Steps[0].ID, Kind: "moved", Text: name, Why: name}}
	return p
}

func TestHostileNamesStayText(t *testing.T) {
	harmless := map[string]int{}
	names, _ := page(t, exported(t, hostile("plain"), "html"))
	for name := range names {
		harmless[name]++
	}
	for name, rest := range hostileNames {
		p := hostile(name)
		for format := range exports {
			got := exported(t, p, format)
			checkCharacters(t, format, got)
			text := got
			switch {
			case strings.HasSuffix(format, "svg"):
				text = checkPicture(t, got)
			case format == "html":
				var names map[string]int
				names, text = page(t, got)
				for name := range names {
					if harmless[name] == 0 {
						t.Errorf("%q makes an element %s", rest, name)
					}
				}
			case format == "ics":
				text = summaries(t, p)
			case strings.HasSuffix(format, "csv"):
				text = ""
				for _, row := range tableOf(t, p, strings.TrimSuffix(format, ".csv")) {
					text += row["text"] + row["name"] + row["dish"] + "\n"
				}
			}
			if format != "brief.txt" && !strings.Contains(squeeze(text), squeeze(rest)) {
				t.Errorf("%s lost %q", format, rest)
			}
		}
	}
}

// squeeze drops white space and isolates: lines are broken and names set apart.
func squeeze(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) || r == isolateStart || r == isolateEnd {
			return -1
		}
		return r
	}, s)
}

// checkCharacters refuses control characters and the marks that reorder text, but for
// our own isolates in pictures and pages, which must be closed on their line.
func checkCharacters(t *testing.T, format, got string) {
	t.Helper()
	drawn := format == "html" || strings.HasSuffix(format, "svg")
	for _, line := range strings.Split(strings.ReplaceAll(got, "\r\n", "\n"), "\n") {
		open := 0
		for _, r := range line {
			switch {
			case drawn && r == isolateStart:
				open++
			case drawn && r == isolateEnd:
				open--
			case unicode.IsControl(r), unicode.Is(unicode.Bidi_Control, r):
				t.Errorf("%s: %U in %q", format, r, line)
			}
		}
		if open != 0 {
			t.Errorf("%s: isolates do not match in %q", format, line)
		}
	}
}

func TestNamesFromRightToLeftAreSetApart(t *testing.T) {
	p := hostile("חזה בקר")
	for _, format := range []string{"timeline.svg", "curves.svg", "grate.svg", "html"} {
		got := exported(t, p, format)
		bare := strings.Count(got, "חזה בקר") - strings.Count(got, "\u2068חזה בקר\u2069") - strings.Count(got, "<bdi>חזה בקר</bdi>") - strings.Count(got, "<title>חזה בקר</title>")
		if strings.Count(got, "\u2068חזה בקר\u2069") == 0 || format == "html" && bare > 0 {
			t.Errorf("%s: %d names are not set apart", format, bare)
		}
	}
}
