package meant

import (
	"regexp"
	"strings"

	"example.com/cookday/schedule/cut"
)

// notGrilled are things of a table that no grill is planned for (common practice, no source).
var notGrilled = regexp.MustCompile(`(?i)(?:^|[\s("])(?:salads?|stuffing|slaw|cole ?slaw|pies?|cakes?|ice cream|desserts?|chips|crisps|dips?|salsa|guacamole|buns?|rolls?|rice|pasta|macaroni salad|drinks?|beers?|wine|soda|lemonade|ice|brownies|cookies|watermelon|fries|sauces?|gravy|mash|hummus|pickles|ketchup|mustard|mayo|chimichurri|tzatziki|aioli|corn ?bread|condiments|kartoffelsalat|krautsalat|nudelsalat|brot|s'?mores|marshmallows|(?:paper )?plates|napkins|cups|charcoal|briquettes|propane|lighter fluid|foil)(?:$|[\s,.()";:!])`)

// neverGrilled are dishes of foods that have a place on a grill, made so that they have none.
var neverGrilled = regexp.MustCompile(`(?i)(?:\b(?:mash(?:ed)? (?:sweet )?potato(?:es)?|(?:potato|bean|corn|pasta|macaroni|fruit|egg|green|side|caesar|tomato|cucumber|house|garden|big) salad|potato (?:chips|crisps)|corn ?bread|corn chips|fish (?:fingers|sticks)|tartare?|carpaccio|sushi|sashimi|ceviche|(?:shrimp|prawn) cocktail|french fries|apple pie|pumpkin pie|cranberry sauce)\b|\b(?:buns?|ketchup|sauces?|gravy|condiments|stuffing)\s*(?:[(,x\d].*)?$)`)

// beside is what is served with a food: "steaks 4 with salad".
var besideFood = regexp.MustCompile(`(?i)\s+(?:with|and|&|\+)\s+(?:an?\s+|the\s+|some\s+)?((?:\pL+\s+){0,2}(?:salads?|slaw|cole ?slaw|fries|chips|crisps|rice|pasta|buns?|rolls|sauce|gravy|mash|dips?|salsa|pickles|stuffing|corn ?bread))\s*$`)

// notForGrill says whether a thing of the table is nothing for a grill. Meat or fish in it is
// never passed over because of a word beside it: that is asked.
func notForGrill(text string) bool {
	if neverGrilled.MatchString(text) {
		return true
	}
	return notGrilled.MatchString(text) && !meatWithin(text) && Dish(text, 0, 0).Node == nil
}

// withoutSides is a food without what is served with it.
func withoutSides(text string) (plain, beside string) {
	m := besideFood.FindStringSubmatchIndex(text)
	if m == nil {
		return text, ""
	}
	return text[:m[0]], text[m[2]:m[3]]
}

// meatWithin says whether a word of a text, or two of them, are a meat, a bird or a fish.
func meatWithin(text string) bool {
	words := strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(" ,.()-;:", r) })
	for k := range words {
		for n := 1; n <= 2 && k+n <= len(words); n++ {
			cuts, _ := cut.Named(cut.Speak(strings.Join(words[k:k+n], " ")).Name)
			for _, c := range cuts {
				if c.IsMain() && len(words[k]) > 2 {
					return true
				}
			}
		}
	}
	return false
}
