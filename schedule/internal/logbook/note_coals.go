package logbook

import (
	"regexp"
	"strconv"
	"strings"
)

var (
	noteCoals     = regexp.MustCompile(`^(?:added |add |poured |put on |put in |put |laid |dumped |dumped in |threw on |threw in |tossed in |tipped in |lit )?([0-9]+) (more )?(lit |hot |burning |unlit |cold |fresh |new |more )?(?:coals|briquettes|briquets|charcoal|charcoals)(?: in| on| added)?$`)
	noteSomeCoals = regexp.MustCompile(`^(?:added|put on|put|threw on|threw in|chucked on|tossed in) (?:a )?(?:load|bunch|few|handful|bit|lot|more|some|couple|shovel) (?:more )?(?:of )?(?:more )?(?:coals|charcoal|briquettes|fuel)(?: on| in)?$`)
	noteChimney   = regexp.MustCompile(`^(?:added|add|poured|poured in|poured on|dumped|dumped in|tipped|tipped in|threw in|put in|put on|put) (?:in )?(?:(half|quarter|1/2|1/4|3/4|[0-9.]+|another|full|a|an|half a|1 and a half) )*(?:full |lit |hot |more |unlit |of )*(?:chimney|chimneys|chimneyful|basket)(?: full)?(?: of)?(?: lit| hot| unlit)?(?: coals| charcoal| briquettes)?(?: in| on)?$`)
)

// coalsSaid reads how many coals were added, and whether they were lit; false where it
// tells of none.
func (n *noteReader) coalsSaid(words []string) (row Row, sentence string, ok bool) {
	said := strings.Join(words, " ")
	if m := noteCoals.FindStringSubmatch(said); m != nil {
		which := strings.TrimSpace(m[3])
		switch {
		case which == "lit" || which == "hot" || which == "burning" || strings.HasPrefix(said, "lit ") || strings.HasPrefix(said, "poured "):
			return Row{kind: string(LitCoals), value: m[1]}, countFault(m[1]), true
		case which == "unlit" || which == "cold" || strings.HasPrefix(said, "laid "):
			return Row{kind: string(UnlitCoals), value: m[1]}, countFault(m[1]), true
		}
		return Row{kind: string(Refuelled), value: m[1] + " coals"}, countFault(m[1]), true
	}
	if noteSomeCoals.MatchString(said) {
		return Row{kind: string(Refuelled)}, "", true
	}
	m := noteChimney.FindStringSubmatch(said)
	if m == nil || n.day.Chimney == 0 {
		return row, "", false
	}
	coals := strconv.Itoa(int(chimneys(said)*float64(n.day.Chimney) + 0.5))
	kind := LitCoals
	if strings.Contains(said, "unlit") {
		kind = UnlitCoals
	}
	return Row{kind: string(kind), value: coals}, countFault(coals), true
}

func countFault(count string) string {
	if _, bad := fireValue(CarriesCount, count); bad != "" {
		return bad
	}
	return ""
}

// chimneys is how many a text speaks of.
func chimneys(said string) float64 {
	share := 1.0
	for _, w := range strings.Fields(said) {
		switch w {
		case "half", "1/2":
			share = 0.5
		case "quarter", "1/4":
			share = 0.25
		case "3/4":
			share = 0.75
		}
		if v, err := strconv.ParseFloat(w, 64); err == nil && v > 0 && v < 20 {
			share = v
		}
	}
	return share
}
