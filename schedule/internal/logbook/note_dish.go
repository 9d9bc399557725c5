package logbook

import (
	"fmt"
	"slices"
	"strings"

	"example.com/cookday/schedule/internal/say"
)

// takeDish takes the name of a dish from the words: from their beginning, their end, or
// from between them where what is left is something that is done to it.
func (n *noteReader) takeDish(words []string) (rest []string, id, sentence string) {
	for k := len(words) - 1; k > 0; k-- {
		ids := n.alike(strings.Join(words[:k], " "))
		if len(ids) == 1 && (!isSmall(words[0]) || k > 1 && isManyOf(n.nameOf(ids[0]), strings.Join(words[:k], " "))) {
			return words[k:], ids[0], ""
		}
		if _, _, known := noteKind(words, false); len(ids) > 1 && !known {
			return nil, "", fmt.Sprintf("%s may be %s: write more of the name", say.Quoted(strings.Join(words[:k], " ")), say.Listed(ids, "or"))
		}
	}
	for size := len(words) - 1; size > 0; size-- {
		for k := 1; k+size <= len(words); k++ {
			name := words[k : k+size]
			ids := n.alike(strings.Join(name, " "))
			if len(ids) != 1 || isSmall(name[0]) {
				continue
			}
			left := slices.Concat(words[:k], words[k+size:])
			if _, _, known := noteKind(left, true); known {
				return left, ids[0], ""
			}
		}
	}
	return words, "", ""
}

// nameOf is the name of a dish.
func (n *noteReader) nameOf(id string) string {
	for _, d := range n.named() {
		if d.ID == id {
			return d.Name
		}
	}
	return ""
}

// isSmall says of a word that it is never the beginning of a dish: "to" is not tofu.
func isSmall(word string) bool {
	return slices.Contains([]string{"on", "off", "in", "to", "at", "out", "of", "up", "with", "put", "top", "lit", "fire", "back", "into", "took", "no", "it", "we", "all", "both", "be", "co", "cold", "hot", "at"}, word)
}
