package safety

import (
	"math"
	"testing"
)

type piece struct {
	c Category
	p Prep
}

var intact = []piece{{Beef, Prep{}}, {Veal, Prep{}}, {Lamb, Prep{}}}

// concerns maps each row of the charts, by source, food and category, to the pieces
// it is the rule for.
var concerns = map[[3]string][]piece{
	{"fsg_safemin_2019", "beef", "ground"}:                                                              {{Ground, Prep{}}, {Sausage, Prep{}}},
	{"fsg_safemin_2019", "pork", "ground"}:                                                              {{Ground, Prep{}}, {Sausage, Prep{}}},
	{"fsg_safemin_2019", "veal", "ground"}:                                                              {{Ground, Prep{}}},
	{"fsg_safemin_2019", "lamb", "ground"}:                                                              {{Ground, Prep{}}},
	{"fsg_safemin_2019", "turkey", "ground"}:                                                            {{GroundPoultry, Prep{}}},
	{"fsg_safemin_2019", "chicken", "ground"}:                                                           {{GroundPoultry, Prep{}}},
	{"fsg_safemin_2019", "beef", "steaks, roasts, chops"}:                                               {{Beef, Prep{}}, {Beef, Prep{Rolled: true, Boned: true, Brined: true}}},
	{"fsg_safemin_2019", "veal", "steaks, roasts, chops"}:                                               {{Veal, Prep{}}},
	{"fsg_safemin_2019", "lamb", "steaks, roasts, chops"}:                                               {{Lamb, Prep{}}},
	{"fsg_safemin_2019", "chicken", "whole, parts, giblets"}:                                            {{Poultry, Prep{}}},
	{"fsg_safemin_2019", "turkey", "whole, parts, giblets"}:                                             {{Poultry, Prep{Injected: true}}},
	{"fsg_safemin_2019", "duck", "whole, parts, giblets"}:                                               {{Poultry, Prep{}}},
	{"fsg_safemin_2019", "goose", "whole, parts, giblets"}:                                              {{Poultry, Prep{}}},
	{"fsg_safemin_2019", "stuffing", "alone or in bird"}:                                                {{Poultry, Prep{Stuffed: true}}, {Fish, Prep{Stuffed: true}}, {Vegetable, Prep{Stuffed: true}}},
	{"fsg_safemin_2019", "pork", "fresh: chops, steaks, roasts"}:                                        {{Pork, Prep{}}},
	{"fsg_safemin_2019", "ham", "fresh or smoked, raw"}:                                                 {{Ham, Prep{}}},
	{"fsg_safemin_2019", "ham", "precooked, reheated"}:                                                  {{HamCooked, Prep{}}},
	{"fsg_safemin_2019", "leftovers", "all"}:                                                            {{Leftovers, Prep{}}},
	{"fsg_safemin_2019", "fin fish", "all"}:                                                             {{Fish, Prep{}}},
	{"fsis_safemin_2012", "beef", "steaks, chops, roasts"}:                                              {{Beef, Prep{}}},
	{"fsis_safemin_2012", "pork", "steaks, chops, roasts"}:                                              {{Pork, Prep{}}},
	{"fsis_safemin_2012", "veal", "steaks, chops, roasts"}:                                              {{Veal, Prep{}}},
	{"fsis_safemin_2012", "lamb", "steaks, chops, roasts"}:                                              {{Lamb, Prep{}}},
	{"fsis_safemin_2012", "beef, pork, veal, lamb", "ground"}:                                           {{Ground, Prep{}}, {Sausage, Prep{}}},
	{"fsis_safemin_2012", "ham", "fresh or smoked, uncooked"}:                                           {{Ham, Prep{}}},
	{"fsis_safemin_2012", "ham", "fully cooked, reheated"}:                                              {{HamCooked, Prep{InspectedPlant: true}}},
	{"fsis_safemin_2012", "poultry", "all: breasts, whole bird, legs, thighs, wings, ground, stuffing"}: {{Poultry, Prep{}}, {GroundPoultry, Prep{}}, {Poultry, Prep{Stuffed: true}}},
	{"fsis_safemin_2012", "fish and shellfish", "all"}:                                                  {{Fish, Prep{}}},
	{"fsis_safemin_2012", "leftovers", "all"}:                                                           {{Leftovers, Prep{}}},
}

// stricter are rows of the Food Code where the household chart asks for at least as much.
var stricter = map[[3]string][]piece{
	{"fda_3_401_11", "fish, intact meat, shell eggs for immediate service", "(A)(1)"}: append([]piece{{Fish, Prep{}}, {Pork, Prep{}}}, intact...),
	{"fda_3_401_11", "poultry, stuffed foods", "(A)(3)"}:                              {{Poultry, Prep{}}, {Beef, Prep{Stuffed: true}}},
}

// pairs are rows that are one of several ways to satisfy the rule.
var pairs = map[[3]string][]piece{
	{"fda_3_401_11", "ground or injected meat, ratites, mechanically tenderised", "(A)(2)"}: {{Beef, Prep{Injected: true}}, {Pork, Prep{Tenderised: true}}},
	{"fda_3_401_11", "ground or injected meat, alternatives", "(A)(2)"}:                     {{Beef, Prep{Tenderised: true}}, {Lamb, Prep{Injected: true}}},
}

// others say why a row is not a rule of ours.
func others(r row) string {
	switch {
	case r["source"] == "usda_pre2011":
		return "advice that the 2011 charts replaced, and names of doneness"
	case r["food"] == "eggs" || r["food"] == "egg dishes" || r["food"] == "shellfish" || r["food"] == "casseroles":
		return "no such category"
	}
	return ""
}

func TestEveryRowOfTheChartsIsARule(t *testing.T) {
	used := 0
	for _, r := range readRows(t, "safe_minimum.csv") {
		key := [3]string{r["source"], r["food"], r["category"]}
		wantF, hold := r.number(t, "internal_f"), r.number(t, "hold_s")
		rest := r.number(t, "rest_min")
		if math.IsNaN(rest) {
			rest = 0
		}
		switch {
		case concerns[key] != nil:
			for _, x := range concerns[key] {
				m := MinimumFor(x.c, x.p)
				if !near(fahrenheit(m.CoreC), wantF) || m.RestMinutes != rest {
					t.Errorf("%v: %v gives %.1f F, rest %v; want %v °F, %v", key, x, fahrenheit(m.CoreC), m.RestMinutes, wantF, rest)
				}
				// The charts print Celsius to a tenth.
				if c := r.number(t, "internal_c"); math.Abs(m.CoreC-c) > 0.05+1e-9 {
					t.Errorf("%v: %.3f degC, printed %v", key, m.CoreC, c)
				}
			}
		case stricter[key] != nil:
			for _, x := range stricter[key] {
				if m := MinimumFor(x.c, x.p); fahrenheit(m.CoreC) < wantF-1e-9 {
					t.Errorf("%v: %v gives %.1f F, laxer than %v °F", key, x, fahrenheit(m.CoreC), wantF)
				}
			}
		case pairs[key] != nil:
			for _, x := range pairs[key] {
				if !hasPair(MinimaFor(x.c, x.p), wantF, hold) {
					t.Errorf("%v: %v lacks %v °F for %v s", key, x, wantF, hold)
				}
			}
			// Ground meat is held to the household chart, which is hotter than each pair.
			if wantF > fahrenheit(MinimumFor(Ground, Prep{}).CoreC) {
				t.Errorf("%v: ground meat is laxer than the row", key)
			}
		case others(r) != "":
			continue
		default:
			t.Errorf("%v: row neither used nor explained", key)
			continue
		}
		used++
	}
	if want := len(concerns) + len(stricter) + 4; used != want { // 4 rows share the 2 keys of pairs
		t.Errorf("%d rows used, want %d: a key is misspelt", used, want)
	}
}

func hasPair(all []Minimum, coreF, seconds float64) bool {
	for _, m := range all {
		if near(fahrenheit(m.CoreC), coreF) && m.HoldSeconds == seconds {
			return true
		}
	}
	return false
}

func TestEveryCategoryHasItsMinimum(t *testing.T) {
	for _, c := range Categories() {
		if !c.Valid() {
			t.Errorf("%s is not valid", c)
		}
		m := MinimumFor(c, Prep{})
		if none := c == None || c == Vegetable; m.Applies() == none {
			t.Errorf("%s: applies is %v", c, m.Applies())
		}
		if m.Applies() && Document(m.Source) == "" {
			t.Errorf("%s: source %q has no document", c, m.Source)
		}
	}
	if m := MinimumFor("haggis", Prep{}); !near(fahrenheit(m.CoreC), 165) || Category("haggis").Valid() {
		t.Errorf("an unknown category gets %.1f F, want the strictest row of the chart, 165 °F", fahrenheit(m.CoreC))
	}
}

func TestPreparationNeverLowersAMinimum(t *testing.T) {
	for _, c := range Categories() {
		plain := MinimumFor(c, Prep{})
		for _, p := range []Prep{{Stuffed: true}, {Injected: true}, {Tenderised: true}, {Rolled: true}, {Boned: true}, {Brined: true}, {Stuffed: true, Injected: true}} {
			for _, m := range MinimaFor(c, p) {
				if m.CoreC < plain.CoreC || m.RestMinutes < plain.RestMinutes {
					t.Errorf("%s %+v: %+v is laxer than %+v", c, p, m, plain)
				}
			}
		}
	}
}
