package instant

import (
	_ "embed"
	"encoding/csv"
	"regexp"
	"strings"
	"sync"
	"time"
)

//go:embed zones.csv
var zonesCSV string

// zonePlaces are time zones by what people call their clock, a state or a country of one
// zone, or a large city that the zone database does not name (geography, from memory).
var zonePlaces = sync.OnceValue(func() map[string]string {
	rows, err := csv.NewReader(strings.NewReader(zonesCSV)).ReadAll()
	if err != nil {
		panic(err) // the table is a part of this program
	}
	places := map[string]string{}
	for _, row := range rows[1:] {
		for name := range strings.SplitSeq(row[1], ";") {
			places[name] = row[0]
		}
	}
	return places
})

// twoZones are places whose clocks differ within them, and the zones to choose from.
var twoZones = map[string]string{
	"texas":   "America/Chicago, or America/Denver around El Paso",
	"florida": "America/New_York, or America/Chicago in the west", "tennessee": "America/Chicago, or America/New_York in the east",
	"kentucky": "America/New_York, or America/Chicago in the west", "indiana": "America/Indiana/Indianapolis, or America/Chicago in the northwest and southwest",
	"michigan": "America/Detroit, or America/Menominee in the far west", "kansas": "America/Chicago, or America/Denver in the far west",
	"nebraska": "America/Chicago, or America/Denver in the west", "south dakota": "America/Chicago, or America/Denver in the west",
	"north dakota": "America/Chicago, or America/Denver in the southwest", "idaho": "America/Boise, or America/Los_Angeles in the north",
	"oregon": "America/Los_Angeles, or America/Boise in the far east", "nevada": "America/Los_Angeles, or America/Denver in the far east",
	"usa": "America/New_York, America/Chicago, America/Denver or America/Los_Angeles", "us": "America/New_York, America/Chicago, America/Denver or America/Los_Angeles",
	"united states": "America/New_York, America/Chicago, America/Denver or America/Los_Angeles",
	"canada":        "America/Toronto, America/Winnipeg, America/Edmonton or America/Vancouver", "australia": "Australia/Sydney, Australia/Brisbane, Australia/Adelaide or Australia/Perth",
	"brazil": "America/Sao_Paulo, America/Manaus or another", "spain": "Europe/Madrid, or Atlantic/Canary", "portland": "America/Los_Angeles, or America/New_York in Maine",
	"birmingham": "America/Chicago, or Europe/London", "mexico": "America/Mexico_City, America/Tijuana or another",
}

var (
	zoneName = regexp.MustCompile(`^[A-Z][A-Za-z0-9_+-]*(/[A-Z][A-Za-z0-9_+-]*)*$`)
	stateOf  = regexp.MustCompile(`\s*,\s*[a-z]{2}$`) // Denver, CO
)

// zoneWord is the text of a place without what makes no difference.
func zoneWord(text string) string {
	word := strings.Join(strings.Fields(strings.ToLower(strings.ReplaceAll(text, ".", ""))), " ")
	for _, tail := range []string{" time", " standard", " daylight", " us"} {
		word = strings.TrimSuffix(word, tail)
	}
	return strings.TrimPrefix(stateOf.ReplaceAllString(word, ""), "the ")
}

// ZoneNamed is the time zone that a cook means by the name of a clock, a city, a state or
// a country, as the zone database calls it; empty where none is known, or more than one.
func ZoneNamed(text string) string {
	word := zoneWord(text)
	if place := zonePlaces()[word]; place != "" {
		return place
	}
	if twoZones[word] != "" {
		return ""
	}
	city := strings.ReplaceAll(strings.TrimSpace(text), " ", "_")
	if !zoneName.MatchString(city) {
		return ""
	}
	if strings.Contains(city, "/") || city == "UTC" {
		if _, err := time.LoadLocation(city); err == nil {
			return city
		}
		return ""
	}
	for _, part := range []string{"America/", "Europe/", "Australia/", "Asia/", "Africa/", "Pacific/"} {
		if _, err := time.LoadLocation(part + city); err == nil {
			return part + city
		}
	}
	return ""
}

// ZonesNamed are the zones to choose from for a place that has several, in words; empty for
// any other.
func ZonesNamed(text string) string { return twoZones[zoneWord(text)] }
