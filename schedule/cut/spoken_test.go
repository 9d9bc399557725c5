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
		"hot dogs 8":                       {Name: "hot dogs", Count: 8},
		"burgers x 12":                     {Name: "burgers", Count: 12},
		"room 8":                           {Name: "room 8"},
		"brisket":                          {Name: "brisket"},
		"":                                 {},
		"3 dozen wings":                    {Name: "wings", Count: 36},
		"two dozen chicken wings":          {Name: "chicken wings", Count: 24},
		"half a dozen brats":               {Name: "brats", Count: 6},
		"3 dozen":                          {Count: 36},
		"6 wings per person":               {Name: "wings", Count: 6, PerHead: true},
		"2 each":                           {Count: 2, PerHead: true},
		"6 per person":                     {Count: 6, PerHead: true},
		"2 pork butts, 16 lb total":        {Name: "pork butts", Count: 2, Weight: "16 lb", Total: true},
		"10 lb total":                      {Weight: "10 lb", Total: true},
		"10-12 wings":                      {Name: "wings", Count: 12, Larger: true},
		"3-4 lb":                           {Weight: "4 lb", Larger: true},
		"brisket 12 to 14 lbs":             {Name: "brisket", Weight: "14 lbs", Larger: true},
		"1-1/2 lb":                         {Weight: "1 1/2 lb"},
		"½ lb":                             {Weight: "1/2 lb"},
		"10½ lb brisket":                   {Name: "brisket", Weight: "10 1/2 lb"},
		"12#":                              {Weight: "12 lb"},
		"twelve pounds":                    {Weight: "12 pounds"},
		"a 12 pounder":                     {Count: 1, Weight: "12 pound"},
		"two and a half pounds":            {Weight: "2 1/2 pounds"},
		"half a pound of shrimp":           {Name: "shrimp", Weight: "1/2 pound"},
		"1 1/2 chickens":                   {Name: "1 1/2 chickens", Part: true},
		"1 1/2":                            {Name: "1 1/2", Part: true},
		"4 packs":                          {Count: 4, Packs: true},
		"4 packs of hot dogs":              {Name: "hot dogs", Count: 4, Packs: true},
		"twenty burgers":                   {Name: "burgers", Count: 20},
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
