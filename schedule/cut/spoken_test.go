package cut_test

import (
	"testing"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/unit"
)

// What cooks say of a dish (invented) is taken apart; every weight and thickness is one
// that the units read.
func TestSpeak(t *testing.T) {
	for text, want := range map[string]cut.Spoken{
		"2 racks of ribs":                  {Name: "ribs", Count: 2},
		"2 racks":                          {Count: 2},
		"3 racks of baby back ribs":        {Name: "baby back ribs", Count: 3},
		"rack of lamb":                     {Name: "rack of lamb"},
		"2 racks of lamb":                  {Name: "racks of lamb", Count: 2},
		"two ribeyes 1.5 inch thick":       {Name: "ribeyes", Count: 2, Thickness: "1.5 inch"},
		"two 1.5-inch ribeyes":             {Name: "ribeyes", Count: 2, Thickness: "1.5 inch"},
		"2 ribeyes, 1 1/2 in thick, 1 lb":  {Name: "ribeyes", Count: 2, Thickness: "1 1/2 in", Weight: "1 lb"},
		"1.5 in":                           {Thickness: "1.5 in"},
		`2 steaks 1.5"`:                    {Name: "steaks", Count: 2, Thickness: `1.5"`},
		"brisket 10 lb":                    {Name: "brisket", Weight: "10 lb"},
		"10 lb brisket":                    {Name: "brisket", Weight: "10 lb"},
		"a 10-pound brisket":               {Name: "brisket", Count: 1, Weight: "10 pound"},
		"8 burgers of 1/3 lb":              {Name: "burgers", Count: 8, Weight: "1/3 lb"},
		"8 burgers 6 oz each":              {Name: "burgers", Count: 8, Weight: "6 oz"},
		"8 x 6 oz burgers":                 {Name: "burgers", Count: 8, Weight: "6 oz"},
		"2 x 4.5 lb chicken":               {Name: "chicken", Count: 2, Weight: "4.5 lb"},
		"a dozen wings":                    {Name: "wings", Count: 12},
		"dozen wings":                      {Name: "wings", Count: 12},
		"12 lb 6 oz turkey":                {Name: "turkey", Weight: "12 lb 6 oz"},
		"pork butt (8 lb)":                 {Name: "pork butt", Weight: "8 lb"},
		"brisket":                          {Name: "brisket"},
		"":                                 {},
		"4 pieces of chicken breast 200 g": {Name: "chicken breast", Count: 4, Weight: "200 g"},
	} {
		got := cut.Speak(text)
		if got != want {
			t.Errorf("%q is %+v, want %+v", text, got, want)
		}
		if _, err := unit.ParseMass(got.Weight); got.Weight != "" && err != nil {
			t.Errorf("%q: %v", text, err)
		}
		if _, err := unit.ParseLength(got.Thickness); got.Thickness != "" && err != nil {
			t.Errorf("%q: %v", text, err)
		}
	}
}
