package schedule_test

import (
	"reflect"
	"strings"
	"testing"
	"time"
	"unicode/utf16"

	"example.com/cookday/schedule"
)

// A request says the same whatever an editor or a letter has left in its text.
func TestMarksThatNobodySeesChangeNothing(t *testing.T) {
	now := time.Date(2026, 12, 2, 16, 0, 0, 0, time.UTC)
	const plain = "serve: Saturday 6 PM, Chicago\ngrill: kettle 22 in\nguests: 8\ndishes:\n  - pork butt, 8 lb\n  - corn\n"
	want, err := schedule.Understand([]byte(plain), now)
	if err != nil {
		t.Fatal(err)
	}
	wide := "\xff\xfe"
	for _, u := range utf16.Encode([]rune(plain)) {
		wide += string([]byte{byte(u), byte(u >> 8)})
	}
	for name, text := range map[string]string{
		"byte order mark": "\uFEFF" + plain,
		"line ends":       strings.ReplaceAll(plain, "\n", "\r\n"),
		"tabs":            strings.ReplaceAll(strings.ReplaceAll(plain, "  - ", "\t- "), ": ", ":\t"),
		"quotes":          "serve: “Saturday 6 PM, Chicago”\ngrill: “kettle 22 in”\nguests: 8\ndishes: [“pork butt, 8 lb”, “corn”]\n",
		"hard spaces":     strings.ReplaceAll(plain, " ", "\u00a0"),
		"two bytes":       wide,
		"all of it":       "\uFEFF" + strings.ReplaceAll(strings.ReplaceAll(plain, " ", "\u00a0"), "\n", "\r\n"),
	} {
		got, err := schedule.Understand([]byte(text), now)
		if err != nil || !reflect.DeepEqual(got, want) {
			t.Errorf("%s: %v\n%+v\nwant\n%+v", name, err, got, want)
		}
		mended, _ := schedule.MendOn([]byte(text), now)
		if _, err := schedule.Read(mended); err != nil {
			t.Errorf("%s, mended: %v\n%s", name, err, mended)
		}
	}
	// Quotes within quotes stay.
	if r, err := schedule.Understand([]byte(strings.Replace(plain, "kettle 22 in", "\"kettle 22 in\"\nname: \"The “big” day\"", 1)), now); err != nil || r.Name != "The “big” day" {
		t.Errorf("%v %q", err, r.Name)
	}
}
