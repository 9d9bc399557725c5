package say

import (
	"fmt"
)

// quoted makes foreign text fit for a message of one line.
func Quoted(text string) string {
	const most = 40 // characters; enough to recognise it
	if runes := []rune(text); len(runes) > most {
		text = string(runes[:most]) + "..."
	}
	return fmt.Sprintf("%q", text)
}
