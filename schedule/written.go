package schedule

import (
	"bytes"
	"regexp"
	"strings"
	"unicode/utf16"
)

// asWritten is a request as its cook sees it: without the marks that editors and letters leave in
// a text, which nobody can see or type. Every line stays on its line.
func asWritten(data []byte) []byte {
	if text, ok := fromUTF16(data); ok {
		data = text
	}
	data = bytes.TrimPrefix(data, []byte("\uFEFF"))
	if bytes.IndexByte(data, 0) >= 0 {
		return data
	}
	lines := strings.Split(unseen.Replace(string(data)), "\n")
	for k, line := range lines {
		lead := len(line) - len(strings.TrimLeft(line, " \t"))
		line = strings.ReplaceAll(line[:lead], "\t", "  ") + line[lead:]
		if !strings.Contains(line, `"`) { // else its quotes are those of the form
			line = curly.Replace(line)
		}
		lines[k] = colonTab.ReplaceAllString(line, "$1 ")
	}
	return []byte(strings.Join(lines, "\n"))
}

var (
	unseen   = strings.NewReplacer("\r\n", "\n", "\r", "\n", "\u00a0", " ", "\u2007", " ", "\u202f", " ", "\u200b", "", "\u200e", "", "\u2060", "", "\uFEFF", "")
	curly    = strings.NewReplacer("“", `"`, "”", `"`, "„", `"`, "‘", "'", "’", "'")
	colonTab = regexp.MustCompile(`^(\s*(?:- )?[\pL_][\pL\d_ ]*:)\t+`)
)

// fromUTF16 is a text of two bytes a letter, which begins with a mark of its order, in UTF-8.
func fromUTF16(data []byte) ([]byte, bool) {
	if len(data) < 2 || len(data)%2 != 0 || len(data) > 1<<20 {
		return nil, false
	}
	high := 0 // the place of the higher byte
	switch {
	case data[0] == 0xFF && data[1] == 0xFE:
		high = 1
	case data[0] != 0xFE || data[1] != 0xFF:
		return nil, false
	}
	units := make([]uint16, 0, len(data)/2-1)
	for k := 2; k < len(data); k += 2 {
		units = append(units, uint16(data[k+high])<<8|uint16(data[k+1-high]))
	}
	return []byte(string(utf16.Decode(units))), true
}
