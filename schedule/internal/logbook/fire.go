package logbook

import (
	"fmt"
	"strconv"
	"strings"

	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/unit"
)

// MostCoals is more than any grill that is meant here holds.
const MostCoals = 1000

// fireValue reads what an entry of the fire carries, and writes it in one form: two ways to write the same are one entry.
func fireValue(what Carries, text string) (value, sentence string) {
	switch what {
	case CarriesVents:
		top, bottom, err := fire.ParseVents(text)
		if err != nil {
			return "", err.Error() + "; an entry is such as top 1/4, bottom 1/2"
		}
		return ventsText(top, bottom), ""
	case CarriesCount:
		n, err := strconv.Atoi(strings.TrimSpace(text))
		if err != nil || n < 1 || n > MostCoals {
			return "", fmt.Sprintf("%s is no number of coals; write how many, 1 to %d", say.Quoted(text), MostCoals)
		}
		return strconv.Itoa(n), ""
	case CarriesAmount:
		if n, err := strconv.Atoi(strings.TrimSpace(text)); err == nil && n >= 1 && n <= MostCoals {
			return strconv.Itoa(n), ""
		}
		share, err := fire.ParseOpening(text)
		if err != nil || share <= 0 {
			return "", fmt.Sprintf("%s is no number of coals; write how many, 1 to %d, or a share of them, such as 1/2", say.Quoted(text), MostCoals)
		}
		return shareText(share), ""
	}
	if strings.EqualFold(strings.TrimSpace(text), "calm") {
		text = "0 mph"
	}
	v, err := unit.ParseSpeed(text)
	if err != nil {
		return "", err.Error()
	}
	if v < 0 || v > Stormiest {
		return "", fmt.Sprintf("%s is no wind; write it as 12 mph, 20 km/h or calm", say.Quoted(text))
	}
	out, err := v.MarshalText()
	if err != nil {
		return "", err.Error()
	}
	return string(out), ""
}

// Stormiest is beyond any wind in which somebody cooks, m/s.
const Stormiest = 60

// ventsText is the one form of an entry about vents; below zero: as before.
func ventsText(top, bottom float64) string {
	var parts []string
	for _, v := range []struct {
		name  string
		share float64
	}{{"top", top}, {"bottom", bottom}} {
		if v.share >= 0 {
			parts = append(parts, v.name+" "+shareText(v.share))
		}
	}
	return strings.Join(parts, ", ")
}

// shareText is the word of a mark where it is one, else a percentage.
func shareText(share float64) string {
	text := fire.MarkText(share)
	if exact, err := fire.ParseOpening(text); err == nil && exact == share {
		return text
	}
	return strconv.FormatFloat(share*100, 'g', 4, 64) + " %"
}
