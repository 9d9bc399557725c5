package safety

// NoSource is the source key of a rule that the trade follows and nobody publishes.
const NoSource = "common practice, no source"

// documents names the publication behind each source key.
var documents = map[string]string{
	"fsg_safemin_2019":      "FoodSafety.gov, Safe Minimum Cooking Temperatures Chart, 2019-04-12",
	"fsis_safemin_2012":     "USDA FSIS, Safe Minimum Internal Temperature Chart, 2012-10-26",
	"fda_3_302_11":          "FDA Food Code 3-302.11, raw animal foods apart from ready-to-eat food",
	"fda_3_401_11":          "FDA Food Code 3-401.11(A), cooking of raw animal foods",
	"fda_3_401_11B":         "FDA Food Code 3-401.11(B), whole meat roasts",
	"fda_3_401_11B_old":     "FDA Food Code 3-401.11(B), whole meat roasts, older edition",
	"fda_3_403_11":          "FDA Food Code 3-403.11, reheating for hot holding",
	"fda_3_501_14":          "FDA Food Code 3-501.14, cooling",
	"fda_3_501_16":          "FDA Food Code 3-501.16, hot and cold holding",
	"fsis_app_a_beef":       "USDA FSIS, Appendix A, Compliance Guidelines for Meeting Lethality Performance Standards, 1999",
	"fsis_poultry_2005":     "USDA FSIS, Time-Temperature Tables for Cooking Ready-to-Eat Poultry Products, 2005 (read on secondary copies)",
	"usda_danger_zone":      "USDA FSIS, Danger Zone (40-140 F) and leftovers",
	"fsis_smoking":          "USDA FSIS, Smoking Meat and Poultry",
	"fsis_roasting_general": "USDA FSIS, general roasting advice",
	"fsis_thaw":             "USDA FSIS, The Big Thaw, and turkey thawing times",
	"cpsc_5012":             "US CPSC document 5012, carbon monoxide from charcoal",
	"cpsc_99_051":           "US CPSC release 99-051, charcoal indoors, 1999",
	"emission_2020":         "Study of emissions from barbecue charcoal, 2020 (abstract)",
	"fsis_memory":           "USDA FSIS consumer advice (from memory)",
	NoSource:                NoSource,
}

// Document is the name of the publication behind a source key, or "" for a key
// that no rule of this package uses.
func Document(source string) string { return documents[source] }
