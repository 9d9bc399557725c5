package export

import (
	"strings"

	"example.com/cookday/schedule"
)

// alarms are the dangers of the day. What is said of two batches of a dish is told once,
// where the dish is to be thrown away or the words are the same: the first is the gravest.
func (v *view) alarms() (out []schedule.Finding) {
	told := map[string]bool{}
	for _, f := range v.Findings {
		if f.Severity != schedule.Danger {
			continue
		}
		key := f.Text
		if away := "Throw it away"; strings.Contains(f.Text, away) {
			key = away
		}
		key += "|" + strings.Join(f.Dishes, "|")
		if !told[key] {
			told[key] = true
			out = append(out, f)
		}
	}
	return out
}
