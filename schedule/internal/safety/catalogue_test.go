package safety

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
)

func TestCatalogueIsFitToPrint(t *testing.T) {
	rank := map[Severity]int{Danger: 0, Warn: 1, Info: 2}
	seen, last := map[string]bool{}, 0
	for _, c := range Catalogue() {
		if seen[c.Code] {
			t.Errorf("%s: twice", c.Code)
		}
		seen[c.Code] = true
		r, known := rank[c.Severity]
		if !known || r < last {
			t.Errorf("%s: severity %q out of order", c.Code, c.Severity)
		}
		last = r
		if Document(c.Source) == "" {
			t.Errorf("%s: source %q has no document", c.Code, c.Source)
		}
		// A tired cook reads two lines: 180 characters.
		if n := len(c.Sentence); n < 15 || n > 180 || !strings.HasSuffix(strings.TrimRight(c.Sentence, "?"), ".") && !strings.HasSuffix(c.Sentence, "?") {
			t.Errorf("%s: %d characters: %s", c.Code, n, c.Sentence)
		}
		if mentionsSafe(c.Sentence) {
			t.Errorf("%s calls something safe: %s", c.Code, c.Sentence)
		}
	}
}

func mentionsSafe(s string) bool {
	return slices.ContainsFunc(strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return r < 'a' || r > 'z' }),
		func(w string) bool { return strings.HasPrefix(w, "safe") || w == "unsafe" })
}

// No text of this package, whichever way it is put together, calls food safe; only the
// titles of publications may use the word.
func TestNoTextCallsFoodSafe(t *testing.T) {
	files, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		if !strings.HasSuffix(f.Name(), ".go") || strings.HasSuffix(f.Name(), "_test.go") || f.Name() == "source.go" {
			continue
		}
		tree, err := parser.ParseFile(token.NewFileSet(), f.Name(), nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(tree, func(n ast.Node) bool {
			if lit, ok := n.(*ast.BasicLit); ok && lit.Kind == token.STRING {
				text, _ := strconv.Unquote(lit.Value)
				// Keys of sources and the panic's package name are not read by a cook.
				if mentionsSafe(text) && !strings.Contains(text, "safemin") && !strings.HasPrefix(text, "safety: ") {
					t.Errorf("%s: %q", f.Name(), text)
				}
			}
			return true
		})
	}
}

func TestWhatEverybodyIsTold(t *testing.T) {
	var got []string
	for _, c := range Cautions(Situation{}) {
		got = append(got, c.Code)
	}
	if want := []string{"measure", "colour", "raw-cooked-apart", "two-hours", "local-codes"}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// Each field of Situation brings up exactly these besides.
func TestWhatEachSituationBrings(t *testing.T) {
	cases := []struct {
		name string
		s    Situation
		want []string
	}{
		{"charcoal", Situation{Charcoal: true}, []string{"carbon-monoxide", "carbon-monoxide-lighting", "hot-ash", "coals-until-out", "fire-rules"}},
		{"another fire", Situation{OtherFire: true}, []string{"any-fire", "fire-rules", "any-ash"}},
		{"bread beside raw meat", Situation{}.With(None, Prep{}).With(Fish, Prep{}), []string{"bread-first"}},
		{"vegetables by themselves", Situation{}.With(Vegetable, Prep{}), nil},
		{"vegetables beside what is cooked already", Situation{}.With(Vegetable, Prep{}).With(Leftovers, Prep{}), []string{"reheat"}},
		{"a brisket over charcoal", Situation{FattyJoint: true}, []string{"drip-pan"}},
		{"no schedule", Situation{Charcoal: true, StarvedFireOpened: true, NoSchedule: true}, []string{"carbon-monoxide"}},
		{"unattended", Situation{UnattendedFire: true}, []string{"fire-unattended"}},
		{"starved fire", Situation{StarvedFireOpened: true}, []string{"flare-on-opening"}},
		{"lit coals", Situation{LitCoalChange: true}, []string{"lit-coals-moved"}},
		{"low grate", Situation{LowGrate: true}, []string{"low-grate"}},
		{"sear with probes", Situation{Sear: true, Probes: true}, []string{"probes-out"}},
		{"sear without", Situation{Sear: true}, nil},
		{"below minimum", Situation{TargetBelowMinimum: true}, []string{"target-below-minimum"}},
		{"frail", Situation{Frail: true}, []string{"frail-guests"}},
		{"holding", Situation{Holding: true}, []string{"hold-line", "held-apart"}},
		{"travel", Situation{Travel: true}, []string{"travel"}},
		{"ahead", Situation{ChillAhead: true}, []string{"no-partial-cooking", "chill-fast", "leftovers-days"}},
		{"frozen", Situation{Frozen: true}, []string{"thaw-cold"}},
		{"leftovers", Situation{}.With(Leftovers, Prep{}), []string{"reheat"}},
		{"chicken", Situation{}.With(Poultry, Prep{}), []string{"who-eats", "measure-poultry", "sauce-apart"}},
		{"pork, label not read", Situation{}.With(Pork, Prep{}).WithLabel(Pork, false), []string{"who-eats", "label-not-read", "sauce-apart", "rest-counts"}},
		{"beef, label not read", Situation{}.With(Beef, Prep{}).WithLabel(Beef, false), []string{"who-eats", "sauce-apart", "rest-counts"}},
		{"bird, label read, frail guests", Situation{Frail: true}.With(Poultry, Prep{}).WithLabel(Poultry, true), []string{"frail-guests", "measure-poultry", "sauce-apart"}},
		{"bird, asked, and nobody is frail", Situation{FrailAsked: true}.With(Poultry, Prep{}), []string{"measure-poultry", "sauce-apart"}},
		{"turkey patties", Situation{}.With(GroundPoultry, Prep{}), []string{"who-eats", "measure-ground", "sauce-apart"}},
		{"stuffed loin", Situation{}.With(Pork, Prep{Stuffed: true}), []string{"who-eats", "measure-stuffing", "sauce-apart", "rest-counts"}},
		{"injected brisket", Situation{}.With(Beef, Prep{Injected: true}), []string{"who-eats", "pierced", "sauce-apart", "rest-counts"}},
	}
	base := map[string]bool{}
	for _, c := range Cautions(Situation{}) {
		base[c.Code] = true
	}
	brought := map[string]bool{}
	for _, x := range cases {
		var got []string
		for _, c := range Cautions(x.s) {
			if !base[c.Code] {
				got = append(got, c.Code)
				brought[c.Code] = true
			}
		}
		if !slices.Equal(got, x.want) {
			t.Errorf("%s: %v, want %v", x.name, got, x.want)
		}
	}
	for _, e := range catalogue {
		if e.applies != nil && !base[e.Code] && !brought[e.Code] {
			t.Errorf("%s: no case brings it up", e.Code)
		}
	}
}

// Every code that a judgement can utter stands in the catalogue.
func TestVerdictsAreInTheCatalogue(t *testing.T) {
	known := map[string]bool{"target-meets-minimum": true, "target-held": true, "no-minimum": true}
	for _, c := range Catalogue() {
		known[c.Code] = true
	}
	for _, c := range Categories() {
		for _, p := range []Prep{{}, {Stuffed: true}, {Injected: true}, {Rolled: true}} {
			for targetF := 100.0; targetF < 210; targetF += 5 {
				for _, frail := range []bool{false, true} {
					v := JudgeTarget(c, p, celsius(targetF), frail)
					if !known[v.Code] || v.Sentence == "" || mentionsSafe(v.Sentence) {
						t.Errorf("%s %+v at %v °F: %+v", c, p, targetF, v)
					}
				}
			}
		}
	}
}
