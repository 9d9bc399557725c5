package assemble

import (
	"slices"
)

// over says whether one of some rules stands in the way; where none is known, all may.
func (t Trouble) Over(rules ...string) bool {
	return len(t.Rules) == 0 || slices.ContainsFunc(rules, func(r string) bool { return slices.Contains(t.Rules, r) })
}
