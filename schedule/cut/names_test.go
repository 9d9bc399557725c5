package cut

import (
	"slices"
	"strings"
	"testing"

	"example.com/cookday/schedule/internal/testbed"
)

// notNames are cells of foods.csv that describe and name nothing.
var notNames = []string{"codorniz smaller"} // "smaller than quail is", beside the Cornish hen

// namesOf are the names that a row of foods.csv has, without what stands in brackets.
func namesOf(row map[string]string) []string {
	var plain strings.Builder
	deep := 0
	for _, r := range row["name"] + ";" + row["synonyms"] {
		switch {
		case r == '(':
			deep++
		case r == ')':
			deep--
		case deep == 0:
			plain.WriteRune(r)
		}
	}
	var names []string
	for _, name := range strings.Split(plain.String(), ";") {
		name = strings.Join(strings.Fields(name), " ")
		if name != "" && !slices.Contains(notNames, name) {
			names = append(names, name)
		}
	}
	return names
}

// ids are the identifiers of cuts.
func ids(cuts []Cut) []string {
	var all []string
	for _, c := range cuts {
		all = append(all, c.Name)
	}
	return all
}

// Each of the foods is found by each of its names: it is a cut, or it is outside the
// catalogue and says what is nearest. foods.csv, foods_cuts.csv.
func TestEveryFoodIsFoundByEachOfItsNames(t *testing.T) {
	foods, is := testbed.Rows(t, "testdata/foods.csv"), testbed.Rows(t, "testdata/foods_cuts.csv")
	if len(foods) != 99 || len(is) != len(foods) { // the rows of foods.csv
		t.Fatalf("%d foods, %d said to be a cut", len(foods), len(is))
	}
	tried, in := 0, 0
	for i, food := range foods {
		if is[i]["name"] != food["name"] {
			t.Fatalf("row %d is %s and %s", i, food["name"], is[i]["name"])
		}
		wanted := strings.Fields(is[i]["cuts"])
		if len(wanted) > 0 {
			in++
		}
		reached := map[string]bool{}
		for _, name := range namesOf(food) {
			tried++
			cuts, outside := Named(name)
			for _, id := range ids(cuts) {
				reached[id] = true
			}
			if len(wanted) > 0 && !slices.ContainsFunc(ids(cuts), func(id string) bool { return slices.Contains(wanted, id) }) {
				t.Errorf("%s: %q leads to %v, not to %v", food["name"], name, ids(cuts), wanted)
			}
			near := func(o Outside) bool { return slices.Contains(o.Nearest, is[i]["outside"]) }
			if len(wanted) == 0 && !slices.ContainsFunc(outside, near) {
				t.Errorf("%s: %q does not say that %s is nearest: %+v", food["name"], name, is[i]["outside"], outside)
			}
		}
		for _, id := range wanted {
			if !reached[id] {
				t.Errorf("%s: none of its names leads to %s", food["name"], id)
			}
		}
	}
	t.Logf("%d names of %d foods, %d of them in the catalogue", tried, len(foods), in)
}

// bare is a name in small letters, without hyphens, spaces and the s at the end of words.
func bare(name string) string {
	var b strings.Builder
	for _, word := range strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return r == ' ' || r == '-' }) {
		b.WriteString(strings.TrimSuffix(word, "s"))
	}
	return b.String()
}

// titled are the foods that Named found, those outside by their title.
func titled(name string) []string {
	cuts, outside := Named(name)
	all := ids(cuts)
	for _, o := range outside {
		all = append(all, o.Title)
	}
	slices.Sort(all)
	return all
}

// However a name is written, it leads to every food that bears it and to no other. The
// bearers are gathered anew here, from the names as they stand in the tables.
func TestANameLeadsToExactlyItsBearers(t *testing.T) {
	bearers := map[string][]string{}
	note := func(names []string, food string) {
		for _, name := range names {
			if b := bare(name); !slices.Contains(bearers[b], food) {
				bearers[b] = append(bearers[b], food)
				slices.Sort(bearers[b])
			}
		}
	}
	all := tables()
	for _, c := range all.cuts {
		note(c.names(), c.Name)
	}
	for _, o := range all.outside {
		note(o.names(), o.Title)
	}
	shared := 0
	check := func(names []string) {
		for _, name := range names {
			want := bearers[bare(name)]
			if len(want) > 1 {
				shared++
			}
			for _, written := range []string{name, strings.ToUpper(name), strings.ReplaceAll(name, " ", "-"), strings.ReplaceAll(name, "-", " "), " " + name + " "} {
				if got := titled(written); !slices.Equal(got, want) {
					t.Errorf("%q leads to %v, want %v", written, got, want)
				}
			}
			squeezed := strings.NewReplacer(" ", "", "-", "").Replace(name)
			if got := titled(squeezed); len(got) == 0 || slices.ContainsFunc(got, func(food string) bool { return !slices.Contains(want, food) }) {
				t.Errorf("%q leads to %v, want %v", squeezed, got, want)
			}
		}
	}
	for _, c := range all.cuts {
		check(c.names())
	}
	for _, o := range all.outside {
		check(o.names())
	}
	if shared == 0 {
		t.Error("no name is shared: nothing was tried")
	}
}

// The identifier and the title of a cut are nobody else's, nor is its plural.
func TestNoTwoCutsShareACatalogueName(t *testing.T) {
	owner := map[string]string{}
	for _, c := range All() {
		for _, name := range []string{c.Name, c.Title, c.Plural} {
			if other, taken := owner[bare(name)]; taken && other != c.Name {
				t.Errorf("%q is %s and %s", name, other, c.Name)
			}
			owner[bare(name)] = c.Name
		}
	}
	borrowed := func(names []string, food string) {
		for _, name := range names {
			if o, taken := owner[bare(name)]; taken && o != food {
				t.Errorf("%q of %s is a catalogue name of %s", name, food, o)
			}
		}
	}
	for _, c := range All() {
		borrowed(c.Also, c.Name)
		for _, name := range []string{c.Name, c.Title, c.Plural} {
			if got := titled(name); !slices.Equal(got, []string{c.Name}) {
				t.Errorf("%q leads to %v", name, got)
			}
		}
	}
	for _, o := range tables().outside {
		borrowed(o.names(), o.Title)
	}
}

// Plurals, accents, words in another order: spellings of everyday English, German, Turkish,
// Spanish, Portuguese and Afrikaans.
func TestNamesInOtherSpellings(t *testing.T) {
	for written, want := range map[string]string{
		"Patties": "burger", "chicken halves": "chicken-half", "potato": "potatoes", "sweet potatoes": "potatoes", "mielies": "corn", "boeries": "boerewors",
		"peaches": "fruit", "meat loaves": "meatloaf", "t bones": "steak", "TBONE": "steak", "rib-eyes": "steak", "porkbelly": "pork-belly", "hotdogs": "hot-dog",
		"Brüh-Wurst": "sausage-scalded", "bruhwurst": "sausage-scalded", "BRUEHWURST": "sausage-scalded", "Entrana": "skirt-steak", "entraña": "skirt-steak",
		"KÖFTE": "kofta", "koefte": "kofta", "tavuk sis": "chicken-skewer", "TAVUK ŞİŞ": "chicken-skewer", "patlıcan": "vegetables", "patlican": "vegetables",
		"pao de alho": "garlic-bread", "linguica": "sausage", "entre\u0302cote": "steak", "butchers steak": "hanger-steak", "Butcher’s steaks": "hanger-steak",
		"lamb leg": "lamb-leg-bone-in", "chops, lamb": "lamb-chop", "wings of chicken": "chicken-wing", "Prawns": "shrimp", "king prawns": "shrimp", "hot links": "sausage",
	} {
		if got := titled(written); !slices.Equal(got, []string{want}) {
			t.Errorf("%q leads to %v, want %s", written, got, want)
		}
	}
	for shared, want := range map[string][]string{
		"short ribs": {"beef-plate-ribs", "short-ribs-thick", "short-ribs-thin"}, "bratwurst": {"sausage", "sausage-scalded"},
		"sirloin": {"steak", "steak-sirloin"}, "gammon": {"ham-half", "ham-portion", "ham-whole"}, "tips": {"Rib tips", "tri-tip"}, "": nil, "--": nil, "plum cake": nil,
	} {
		if got := titled(shared); !slices.Equal(got, want) {
			t.Errorf("%q leads to %v, want %v", shared, got, want)
		}
	}
}
