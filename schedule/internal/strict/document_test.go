package strict_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

func TestDocumentsThatAreRefused(t *testing.T) {
	deep := strings.Repeat("[", 40) + strings.Repeat("]", 40)
	tests := []struct{ name, document, path, word string }{
		{"empty", "", "", "empty"},
		{"blank", " \n\t\n", "", "empty"},
		{"only a comment", "# nothing yet\n", "", "empty"},
		{"only a document mark", "---\n", "", "group of fields"},
		{"ten megabytes", strings.Repeat("# much\n", 10<<20/7), "", "1048576 are allowed"},
		{"byte order mark", "\ufeff" + plantest.Terrace, "", "byte order mark"},
		{"UTF-16", "\xff\xfef\x00o\x00", "", "UTF-16"},
		{"NUL", "format: 1\x00\n", "", "NUL"},
		{"latin-1", strings.Replace(plantest.Terrace, "terrace", "caf\xe9", 1), "", "0xe9 is not UTF-8"},
		{"a list", "- format: 1\n", "", "is a list"},
		{"a word", "party\n", "", "group of fields"},
		{"second document", plantest.Terrace + "---\nformat: 1\n", "", "second document"},
		{"text after the end", plantest.Terrace + "...\nformat: 1\n", "", "not YAML near line 15"},
		{"broken YAML", "format: [1\n", "", "not YAML near line"},
		{"tab", "serve:\n\tdate: 2027-07-03\n", "", "not with tabs"},
		{"anchor", plantest.With(t, "weight: 12 lb", "weight: &w 12 lb"), "dishes[0].weight", "&w is an anchor"},
		{"anchor on the whole", "&all\n" + plantest.Terrace, "", "&all is an anchor"},
		{"tag", plantest.With(t, "weight: 12 lb", "weight: !!str 12 lb"), "dishes[0].weight", "!!str is a tag"},
		{"own tag", plantest.With(t, "weight: 12 lb", "weight: !mass 12 lb"), "dishes[0].weight", "!mass is a tag"},
		{"merge key", plantest.With(t, "guests: 24", "guests: {<<: {adults: 24}}"), "guests", "merges"},
		{"field name that is a list", plantest.With(t, "guests: 24", "guests: {[a]: 24}"), "guests", "not a word"},
		{"deep YAML", plantest.With(t, "name: Saturday on the terrace", "name: "+deep), "name" + strings.Repeat("[0]", 31), "nested more than 32"},
		{"deep JSON", `{"name":` + deep + `}`, "name" + strings.Repeat("[0]", 31), "nested more than 32"},
		{"repeated field", plantest.Terrace + "guests: 30\n", "guests", "given twice, first on line 4"},
		{"empty field", plantest.With(t, "guests: 24", "guests:"), "guests", "is empty"},
		{"empty item", plantest.With(t, "hold: [insulated-box, oven]", "hold: [oven, ~]"), "dishes[0].hold[1]", "is empty"},
		{"NaN", plantest.With(t, "confidence: 0.9", "confidence: .nan"), "confidence", "plain number"},
		{"infinity", plantest.With(t, "confidence: 0.9", "confidence: -.inf"), "confidence", "plain number"},
		{"hexadecimal", plantest.With(t, "guests: 24", "guests: 0x18"), "guests", "whole number"},
		{"broken JSON", `{"format": 1,}`, "", "not JSON near line 1"},
		{"JSON with more after it", `{"format": 1} {}`, "", "not JSON near line 1"},
		{"JSON cut off", "{\n\"format\": 1,\n", "", "not JSON near line 3"},
		{"JSON with a comment", "{\"format\": 1 // party\n}", "", "not JSON near line 1"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := schedule.Read([]byte(tt.document))
			for _, f := range plantest.Faults(t, err) { // a fault of the document may bring others, of what is missing then
				if f.Path == tt.path && strings.Contains(f.Sentence, tt.word) {
					return
				}
			}
			t.Errorf("got\n%v\nwant a fault at %q with %q", err, tt.path, tt.word)
		})
	}
}

func TestAliasesAreRefused(t *testing.T) {
	_, err := schedule.Read([]byte(strings.Replace(plantest.With(t, "weight: 12 lb", "weight: &w 12 lb"), "weight: 4.5 lb", "weight: *w", 1)))
	got := plantest.Faults(t, err)
	if len(got) != 2 || got[0].Path != "dishes[0].weight" || got[1].Path != "dishes[1].weight" || !strings.Contains(got[1].Sentence, "alias") {
		t.Errorf("got %v", err)
	}
}

// A few bytes that would grow to gigabytes if aliases were followed.
func TestAliasesAreNeverFollowed(t *testing.T) {
	var b strings.Builder
	b.WriteString("a0: &a0 [x, x, x, x, x, x, x, x, x]\n")
	for i := 1; i < 10; i++ {
		n := string(rune('0' + i))
		before := "*a" + string(rune('0'+i-1))
		b.WriteString("a" + n + ": &a" + n + " [" + strings.Repeat(before+", ", 8) + before + "]\n")
	}
	if _, err := schedule.Read([]byte(b.String())); err == nil {
		t.Error("was accepted")
	}
}

func TestFaultsOfJSONHaveLines(t *testing.T) {
	_, err := schedule.Read([]byte("{\n\"format\": 1,\n\"format\": 1,\n\"serve\": {\n\"date\": 5}\n}"))
	got := plantest.Faults(t, err)
	lines := map[string]int{}
	for _, f := range got {
		lines[f.Path] = f.Line
	}
	if lines["format"] != 3 || lines["serve.date"] != 5 || lines["serve.tz"] != 4 || lines["dishes"] != 1 {
		t.Errorf("got %+v", got)
	}
}
