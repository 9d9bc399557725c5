package instant

import (
	_ "embed"
	"encoding/csv"
	"maps"
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
	zoneName      = regexp.MustCompile(`^[A-Z][A-Za-z0-9_+-]*(/[A-Z][A-Za-z0-9_+-]*)*$`)
	lettersBehind = regexp.MustCompile(`^([^,]*\pL)\s+([A-Z]{2})$`) // Portland ME
	stateOf       = regexp.MustCompile(`^(.+?)\s*,\s*([^,]+)$`)     // Denver, CO
)

// states are those of the United States by their letters (the postal service has them so).
var states = map[string]string{
	"al": "alabama", "ak": "alaska", "az": "arizona", "ar": "arkansas", "ca": "california", "co": "colorado", "ct": "connecticut", "de": "delaware", "fl": "florida",
	"ga": "georgia", "hi": "hawaii", "id": "idaho", "il": "illinois", "in": "indiana", "ia": "iowa", "ks": "kansas", "ky": "kentucky", "la": "louisiana", "me": "maine",
	"md": "maryland", "ma": "massachusetts", "mi": "michigan", "mn": "minnesota", "ms": "mississippi", "mo": "missouri", "mt": "montana", "ne": "nebraska", "nv": "nevada",
	"nh": "new hampshire", "nj": "new jersey", "nm": "new mexico", "ny": "new york", "nc": "north carolina", "nd": "north dakota", "oh": "ohio", "ok": "oklahoma", "or": "oregon",
	"pa": "pennsylvania", "ri": "rhode island", "sc": "south carolina", "sd": "south dakota", "tn": "tennessee", "tx": "texas", "ut": "utah", "vt": "vermont", "va": "virginia",
	"wa": "washington state", "wv": "west virginia", "wi": "wisconsin", "wy": "wyoming", "washington": "washington state",
}

// zoneWord is the text of a place without what makes no difference.
func zoneWord(text string) string {
	text = lettersBehind.ReplaceAllString(strings.TrimSpace(text), "$1, $2")
	word := strings.Join(strings.Fields(strings.ToLower(strings.ReplaceAll(text, ".", ""))), " ")
	for _, tail := range []string{" time", " standard", " daylight", ", usa", ", us", " usa", " us"} {
		word = strings.TrimSuffix(word, tail)
	}
	return strings.TrimPrefix(word, "the ")
}

// cityAndState parts a place from the state or country behind it: "Portland, Oregon",
// "portland oregon"; empty where none is there.
func cityAndState(word string) (city, region string) {
	if m := stateOf.FindStringSubmatch(word); m != nil {
		city, region = m[1], m[2]
		if full := states[region]; full != "" {
			region = full
		}
		if !isRegion(region) {
			return "", ""
		}
		return city, region
	}
	words := strings.Fields(word)
	for k := 1; k < len(words) && k <= 2; k++ {
		if tail := strings.Join(words[len(words)-k:], " "); isRegion(tail) {
			return strings.Join(words[:len(words)-k], " "), tail
		}
	}
	return "", ""
}

// countries are those whose cities may stand before them.
const countries = "|uk|united kingdom|england|scotland|wales|ireland|germany|austria|switzerland|france|italy|netherlands|belgium|denmark|sweden|norway|poland|turkey|south africa|argentina|new zealand|korea|south korea|japan|"

// isRegion says whether a word is a state, a province or a country.
func isRegion(word string) bool {
	return twoZones[word] != "" && word != "portland" && word != "birmingham" || strings.Contains(countries, "|"+word+"|") || isState(word)
}

// isState says whether a word is a state in full.
func isState(word string) bool {
	for full := range maps.Values(states) {
		if full == word {
			return true
		}
	}
	return false
}

// ZoneNamed is the time zone that a cook means by the name of a clock, a city, a state or
// a country, as the zone database calls it; empty where none is known, or more than one.
// The state behind a city decides where its clock is: there is more than one Portland.
func ZoneNamed(text string) string {
	word := zoneWord(text)
	if place := zonePlaces()[word]; place != "" {
		return place
	}
	if twoZones[word] != "" {
		return ""
	}
	if city, region := cityAndState(word); region != "" {
		if city != "" && !isTown(city) {
			return ""
		}
		if place := zonePlaces()[city+" "+region]; place != "" {
			return place
		}
		if zone := zonePlaces()[region]; zone != "" {
			return zone
		}
		zone := zonePlaces()[city]
		if zone == "" {
			alone, _, _ := strings.Cut(text, ",")
			zone = zoneOfCity(alone)
		}
		if zone != "" && strings.Contains(twoZones[region], zone) {
			return zone
		}
		return ""
	}
	return zoneOfCity(text)
}

// KnownTown says whether a place is known by itself, and not only the state or the country of it.
func KnownTown(text string) bool {
	word := zoneWord(text)
	city, region := cityAndState(word)
	if city == "" {
		return true
	}
	return zonePlaces()[word] != "" || zonePlaces()[city+" "+region] != "" || zonePlaces()[city] != "" || zoneOfCity(strings.TrimSuffix(text[:min(len(city), len(text))], ",")) != ""
}

// zoneOfCity is the zone that the zone database has under a name, or under that of a city.
func zoneOfCity(text string) string {
	city := strings.ReplaceAll(strings.TrimSpace(text), " ", "_")
	if !zoneName.MatchString(city) || strings.Contains("|West|East|North|South|Central|Eastern|Mountain|Pacific|", "|"+city+"|") { // Key West is no West
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
func ZonesNamed(text string) string {
	word := zoneWord(text)
	if twoZones[word] != "" {
		return twoZones[word]
	}
	_, region := cityAndState(word)
	return twoZones[region]
}
