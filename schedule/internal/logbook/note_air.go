package logbook

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/cookday/schedule/unit"
)

// Words of a reading of the air: where it was read, by what, and what stands between.
var (
	airLid    = []string{"lid", "dome", "hood"}
	airGrate  = []string{"grate", "grill", "pit", "smoker", "cooking"}
	airOven   = []string{"oven"}
	airBuilt  = []string{"gauge", "dial"} // a grill's own is in its lid
	airDevice = []string{"gauge", "dial", "thermometer", "thermo", "probe", "temp", "temperature", "level", "height", "reading", "figure", "therm", "thermom"}
	airSmall  = []string{"at", "in", "on", "by", "from", "to", "reads", "read", "says", "saying", "shows", "showing", "sits", "sitting", "holding", "hit", "hits", "steady", "dropped", "fell", "climbed", "rose", "up", "down", "near", "beside", "next", "meat", "dropping", "falling", "rising", "climbing", "going", "running", "ran", "shot", "spiked", "jumped", "went", "sank", "back", "and", "again", "slowly", "fast"}
)

// airRead reads the temperature of the air where it is said in another order: 305 at the
// grate, thermometer in the lid 300. Of two places it reads none.
func (n *noteReader) airRead(words []string) (row Row, sentence string, ok bool) {
	number := ""
	has := map[Kind]bool{}
	builtIn := false
	for _, w := range words {
		switch {
		case noteNumber.MatchString(w) && number == "":
			number = w
		case slices.Contains(airLid, w):
			has[Gauge] = true
		case slices.Contains(airGrate, w):
			has[Grate] = true
			builtIn = builtIn || w != "grate"
		case slices.Contains(airOven, w):
			has[Oven] = true
		case !slices.Contains(airDevice, w) && !slices.Contains(airSmall, w):
			return row, "", false
		}
	}
	if number == "" || len(has) != 1 {
		return row, "", false
	}
	kind := Grate
	for k := range has {
		kind = k
	}
	if device := slices.ContainsFunc(words, func(w string) bool { return slices.Contains(airBuilt, w) || w == "thermometer" || w == "thermo" }); kind == Grate && builtIn && device {
		return row, fmt.Sprintf("is that thermometer in the lid, or at the grate? Nothing was noted. Note lid %s, or grate %s", number, number), true
	}
	value, sentence := n.degrees(kind, "", number)
	return Row{kind: string(kind), value: value}, sentence, true
}

// airAlone reads a figure that no meat can have and that names no place, 240 now, where the
// readings of the air before it were all of one place.
func (n *noteReader) airAlone(words []string) (row Row, sentence string, ok bool) {
	number := ""
	for _, w := range words {
		switch {
		case noteNumber.MatchString(w) && number == "":
			number = w
		case !slices.Contains(airSmall, w) && !slices.Contains(airDevice, w) && !slices.Contains(fillers, w) && !slices.Contains([]string{"after", "opened", "closed"}, w):
			return row, "", false
		}
	}
	asks := n.tooHotForMeat(number)
	if number == "" || asks == "" {
		return row, "", false
	}
	place := Kind("")
	for _, e := range n.log {
		if e.Kind != Grate && e.Kind != Gauge {
			continue
		}
		if place != "" && place != e.Kind {
			return row, asks, true
		}
		place = e.Kind
	}
	if place == "" {
		return row, asks, true
	}
	value, sentence := n.degrees(place, "", number)
	return Row{kind: string(place), value: value}, sentence, true
}

// tooHotForMeat asks where a figure was read that no meat can have: temp 305.
func (n *noteReader) tooHotForMeat(value string) string {
	v, err := strconv.ParseFloat(strings.TrimRight(value, "fc °"), 64)
	if err != nil {
		return ""
	}
	if c := strings.HasSuffix(value, "c") || n.day.Units == unit.Metric && !strings.HasSuffix(value, "f"); !c {
		v = unit.FToC(v)
	}
	if v <= boilingC {
		return ""
	}
	return fmt.Sprintf("no meat is that hot: was it read at the grate, or in the lid? Nothing was noted. Note grate %s, or lid %s", value, value)
}
