package logbook

import (
	"regexp"
	"strings"
	"sync"
)

// emergency is a kind of trouble that is answered before grammar: whatever else a note says,
// somebody may be hurt. A note is one where said fits it and unless does not.
type emergency struct {
	said, unless *regexp.Regexp
	do           string
}

const (
	burning  = `(burn(s|ing)?|burnt|burned|on fire|caught|catch(es|ing)?|flames?|flaming|alight|ablaze|smok(es|ing)|smo(u)?lder(s|ing)?|melt(s|ing|ed)?|scorch(ed|ing)?)`
	outside  = `(fences?|deck|decking|house|home|roof|shed|garage|trees?|branch(es)?|grass|lawn|bush(es)?|hedge|siding|walls?|porch|patio|gazebo|awning|canopy|umbrella|curtains?|tablecloth|table|cushions?|chairs?|leaves|mulch|straw|wood ?pile|carport|pergola|tent|neighbor('s|s)?|car|field|yard|garden|eaves|gutter)`
	clothing = `(clothes|clothing|shirt|sleeve|apron|pants|trousers|jeans|jacket|sweater|hair|beard|glove|gloves|dress|shoe|shoes)`
	hotThing = `(grill|smoker|kettle|barbecue|bbq|cooker|fire|coals?|charcoal|briquettes?|chimney|embers?|ashes)`
	closedIn = `(garage|carport|porch|shed|barn|tent|gazebo|canopy|awning|sunroom|conservatory|basement|cellar|greenhouse|camper|caravan|trailer|rv|under (a |the |our |my )?(\w+ )?(roof|overhang|eaves|tarp|umbrella|pergola|carport)|lean-?to)`
	indoorly = `(inside|indoors?|in doors|(in|into|in to) (the |our |my )?(house|home|kitchen|living room|dining room|room|hall|hallway|bedroom|cabin|apartment|flat|mud ?room|fire ?place))`
	moves    = `(roll(ed|ing)?|wheel(ed|ing)?|drag(ged|ging)?|mov(e|ed|ing)|push(ed|ing)?|pull(ed|ing)?|carr(y|ied|ying)|bring(ing)?|brought|took|taking|set up|cook(s|ing)?|grill(ing)?|smoking|light(ing)?|lit)`
	ofBody   = `(hands?|thumbs?|wrists?|palms?|eyes|eyebrows?|eyelashes|face|knuckles|(my|his|her|your|our|their|(the )?(kid|boy|girl|child|baby|guest|wife|husband|dad|mom|son|daughter)'?s?) (left |right )?(fingers?|arms?|forearms?|elbows?|legs?|knees?|foot|feet|toes?|chest|back|neck|mouth|tongue|eye|nose|ears?|skin))`
	persons  = `(myself|himself|herself|themselves|yourself|me|him|kid|kids|child|children|baby|toddler|boy|girl|son|daughter|wife|husband|guest|somebody|someone|dad|mom|grandma|grandpa|neighbor)`
	hurtHot  = `(burn(s|ing)?|burned|burnt|scald(s|ed)?|blister(s|ed|ing)?|sear(s|ed)?|singed?)`
	rotten   = `(rotten|rancid|spoiled|spoilt|putrid|slimy|mold|mould|moldy|mouldy|maggots?|gone (off|bad)|(smells?|smelling|smelled|stinks?|odor|smell is|smells like it's) ?(really |very |so |a bit |a little |kind of |kinda |pretty |quite )*(off|bad|wrong|funny|funky|sour|awful|strange|weird|terrible|foul|like eggs?|like ammonia|like sulfur|rotten)|stinks|(bad|sour|funky|foul|strange|off|weird|ammonia|sulfur) (smell|odor)|reeks)`
)

func anyWord(pattern string) *regexp.Regexp { return regexp.MustCompile(`\b` + pattern + `\b`) }

// together are two patterns in either order.
func together(a, b string) *regexp.Regexp {
	return regexp.MustCompile(`\b` + a + `\b.*\b` + b + `\b|\b` + b + `\b.*\b` + a + `\b`)
}

// Sentences that several kinds end in.
const (
	emergencyNo = "the emergency number (911 in the US, 112 in Europe)"
	callNow     = "Call " + emergencyNo
	nobodyBack  = "Nobody goes back in until the fire service says so"
	callFire    = "Leave it, get everybody away, and call the fire service now (911 in the US, 112 in Europe)"
	monoxide    = "Carbon monoxide cannot be smelled, and gray coals give off the most"
	nothingCook = "The food can wait: note what happened to it when everybody is well"
)

// emergencies are taken in their order: the first that fits. They are made when they are first
// asked for: each start would pay 7,700 allocations for them. What fire and monoxide ask for is
// common practice of fire services, first aid of burns and wounds that of its courses: no source.
var emergencies = sync.OnceValue(func() []emergency {
	return []emergency{
		{anyWord(`(unconscious|passed out|passing out|faint(s|ed|ing)?|collapsed|can'?t breathe|cannot breathe|not breathing|trouble breathing|hard to breathe|short of breath|choking|chokes|chest pains?|heart attack|seizure|911|ambulance|call for help|emergency)`), nil,
			callNow + " now, and do what they say. If there is smoke, or a fire or coals are near: everybody out into fresh air first, for it may be carbon monoxide, which cannot be smelled. " + nobodyBack},
		{together(clothing, burning), regexp.MustCompile(`\bmelt`),
			"Stop, drop and roll; smother it with a thick cloth or a coat. Then cool running water for 20 min, and leave alone what sticks to the skin. " + callNow},
		{anyWord(`(carbon monoxide|co (alarm|detector)|monoxide|dizzy|dizziness|light ?headed|head ?aches?|nausea|nauseous|nauseated|confused|drowsy|feel(s|ing)? (really |very |a bit |so )?(sick|ill|faint|woozy|weak|unwell|funny)|woozy|thr(ow|ows|ew|owing|own) up|puk(e|es|ed|ing)|barf(s|ed|ing)?|vomit(s|ed|ing)?|(i'm|is|are|everybody|everyone|we're|kids?) (all |getting |both )?sick)`), nil,
			"Out into fresh air now, everybody, away from the smoke, and stay out. " + callNow + ": say that it may be carbon monoxide. " + nobodyBack + ". " + monoxide},
		{anyWord(`(allergic (reaction|shock)|anaphyla\w+|epi ?pens?|hives|(throat|tongue|lips?|face|mouth|eyes) (is |are |has |have |all )*(closing( up)?|swollen|swelling|swells?|puffy|tight)|swollen (throat|tongue|lips?|face|mouth|eyes)|(stung|bitten) by|bee stings?|wasp stings?)`), nil, allergy},
		{anyWord(`(food ?poison(ing|ed)?|diarrh?o?ea|stomach ?(ache|pain|cramps?)s?|(stomach|belly|tummy) (really |still )?(hurts?|aches?)|the runs)`), nil,
			"Nobody eats more of it, and nobody throws it out yet: put some of each dish into the refrigerator, marked. Small sips of water. " + callNow + ", or a doctor, where somebody is very young, old, pregnant or ill, or has blood, fever, or keeps nothing down. Dizzy or a headache too, beside a grill: it may be carbon monoxide, so out into fresh air first, everybody"},
		{regexp.MustCompile(`\b(smoke|fire) (alarm|alarms|detector|detectors)\b|\b(smoke|smoky)\b.*\b(in|into|inside|through) (the |our |my )?(house|home|kitchen|bedroom|bedrooms|living room|room|basement|garage|windows?|indoors)\b|\b(house|kitchen|bedroom|living room|home|indoors) (is |are |was )?(full of |filled with |fills with )?(smoke|smoky)\b|\bsmok(e|y) (indoors|inside)\b|\bsmoke (comes|coming|came|going|gets|blows|blowing|drifts) (in|inside|into)\b`), regexp.MustCompile(`\boven\b`),
			"Everybody out of the house into fresh air, now; open doors and windows as you go. If anything burns in there, or an alarm rings for carbon monoxide, or somebody feels dizzy or sick: stay out and call " + emergencyNo + ". The smoke of a grill brings carbon monoxide. Only a grill that stands free and outdoors may burn on: shut both vents of one that stands by a door or window"},
		{regexp.MustCompile(`\bfire(s|'s)? (is |has |have )?(spread(s|ing)?|out of control|outside|got away|escaped|jumped|reached)\b|\b(spreading|out of control|wild ?fire|brush fire|grass fire|house fire|can'?t put (it|the fire) out|won'?t go out)\b|\bflames? (are |is )?(outside|out of the|over the|up the|reaching|reach|higher|on the (fence|deck|house|grass|ground))\b`), nil,
			callFire + ". Flames outside the grill are not yours to fight. Go only near it to get somebody out of its way"},
		{together(outside, burning), regexp.MustCompile(`\b(smoking|caught up|caught on)\b`), callFire + ". Do not go back for the food or the grill"},
		{regexp.MustCompile(`\b(propane|gas (tank|bottle|can|cylinder|leak)|smell(s|ing)? (of )?gas|gasoline can)\b`), nil,
			callFire + ", from a distance: no switch, no phone and no flame beside it"},
		{regexp.MustCompile(`\b(grill|smoker|kettle|chimney|barbecue|bbq|it|coals|charcoal|ashes|embers|ember|pit)\b.*\b(tipped|fell over|fallen over|falls over|knocked over|blew over|blown over|toppled|turned over|tipping over|collapsed|knocked down)\b|\b(knocked|tipped|blew|kicked)( the| over)* (grill|smoker|kettle|chimney|barbecue|bbq)\b|\b(coals?|charcoal|embers?|sparks?|briquettes?|ashes)\b.*\b(on|onto|over|in|into|across) (the |my )?(deck|grass|lawn|ground|floor|patio|fence|mulch|leaves|porch|roof|trash|trash can|garbage|bin|dumpster|paper bag)\b|\b(spilled|dropped)( the| some| my| hot| lit| burning| a few| all)* (coals|charcoal|briquettes|embers|chimney)\b`), nil,
			"Coals outside the grill: keep everybody 10 ft back, children and dogs first. If anything beside the coals burns or smolders: leave it and call the fire service (911 in the US, 112 in Europe). If nothing does: long gloves, and with a metal shovel or tongs put them into a metal bucket or back, one by one; then look at the ground again in 15 min and in an hour. Food that lay on the ground is thrown away"},
		{regexp.MustCompile(`\b(water|hose|hosed|beer|wine|juice|soda)\b.*\b(on|onto|over|at|into|in) (the |my |some |those |all )*(hot |lit |burning |grease )*(fire|coals?|charcoal|briquettes?|flames?|grease|embers)\b|\b(fire|coals?|charcoal|briquettes?|flames?|grease|embers)\b.*\b(with|by|in) (some |the |a |cold )*(bucket of |garden )?(water|hose|beer)\b|\b(hosed|doused|drenched|splashed|sprayed|watered|spritzed|soaked|wet)( down)? (the |my |down )*(hot |lit |burning )*(fire|coals?|charcoal|grill|flames?|grease|grease fire)\b`), regexp.MustCompile(`\b(pans?|wet (coals?|charcoal)|steam pan|rain|foil|(added|fresh|spare) water|soaked (the )?chips)\b`),
			"No water on it, never on burning grease: it throws the fire at you, and steam and ash burn. Stand back, lid on, both vents shut, no look for 15 min. Flames outside the grill: leave it and call the fire service (911 in the US, 112 in Europe). Wet ash on food: throw that food away. Then note what you did: both vents shut, fire out if it went out"},
		{regexp.MustCompile(`\b(lighter|lighting|starter|charcoal) (fluid|fuel|liquid)\b|\b(gasoline|petrol|kerosene|paraffin|diesel|lamp oil|turpentine|spirits|accelerant|rubbing alcohol|methylated)\b|\b(squirted|sprayed|poured) (some |more )?(fluid|gas|alcohol)\b`), nil,
			"Never on coals that burn or are warm: the flame climbs the stream to the bottle and the hand. Put it away from the fire, stand back, lid off till the flames are down. Clothes wet with it come off. Gasoline, kerosene or alcohol never. A weak fire gets coals that are lit in a chimney: note added 20 lit coals. Food goes on when nothing smells of it"},
		{regexp.MustCompile(`\bextinguisher\b`), nil,
			"If it still burns, or comes back: leave it, get everybody away, and call the fire service (911 in the US, 112 in Europe). What the extinguisher hit is thrown away, food and coals, and the grate is washed. Then note fire out, and off for the food"},
		{together(ofBody, hurtHot), regexp.MustCompile(`\b(leg of|arm roast|left hand|right hand|hand burned down)\b.*\b(vent|coals?|side)\b|\bleg of\b`), burnAid},
		{regexp.MustCompile(`\b` + hurtHot + ` (the |my |our |a )?` + persons + `\b|\b` + persons + ` (got |is |was |has |just |been )*(burned|burnt|scalded|blistered)\b|\b(got|i'm|i am|i was|i|grease) (badly |just )?(burned|burnt|scalded)( me| my(self)?)?$|\b(burn|scald) (on|to) (my|his|her|the) (hand|arm|leg|face|foot|finger)|\b(hot )?(grease|fat|oil|ember|spark|ash|smoke) (in|into|on|splashed|got in) (my|his|her) `), regexp.MustCompile(`\b(bone|ends|bits|food|chicken|skin|crust|bark|off)\b`), burnAid},
		{regexp.MustCompile(`\b(i|` + persons + `|old man|lady|man|woman|uncle|aunt|grandfather|grandmother|grandson|granddaughter|friend|he|she)\b( \w+){0,2} (fell|fallen|trip(s|ped)?|slip(s|ped)?|collided|crashed|bumped|got hurt|(is|was|got|are) (badly )?(hurt|injured))\b|\b(broke|broken|twisted|hurt|injured|hit|banged) (my|his|her|their) (\w+ )?(head|arm|leg|ankle|wrist|foot|back|knee|hip|neck|shoulder|face|hand|toe|finger|nose|tooth|teeth)\b`), regexp.MustCompile(`\b(asleep|apart|bones?|backs?|behind|in love)\b.*|\bfell in\b`), hurt},
		{regexp.MustCompile(`\bbleed(s|ing)?\b|\bblood everywhere\b|\bcut (my|his|her) \w+|\b(stabbed|sliced) (my|his|her)`), nil,
			"Press a clean cloth on it, hard, 10 min without a look, and hold it high. It does not stop, gapes, or somebody feels faint: call " + emergencyNo + ". Food and board that it touched: the food is thrown away, the board washed. Somebody else watches the fire"},
		{together(hotThing, closedIn), shelters, roofed},
		{together(hotThing, indoorly), regexp.MustCompile(`\b(oven|temp|temperature|probe|thermometer|degrees|food|meat|ash(es)? (is|are) cold|inside (the )?(grill|smoker|kettle|lid|pit)|(grill|smoker|kettle|fire|pit) inside|\d+)\b`), roofed},
		{regexp.MustCompile(`\b` + moves + ` (it|the rig|everything|the whole thing) .*\b(` + closedIn + `)`), shelters, roofed},
		{regexp.MustCompile(`\b(roll(ed|ing)?|wheel(ed|ing)?|drag(ged|ging)?) (it|everything) .*\b` + indoorly), regexp.MustCompile(`\boven\b`), roofed},
		{regexp.MustCompile(`\b(cook(s|ing)?|grilling|smoking|set up|started) (in|on|under|inside) (the |our |my |a )?(back |front |covered |screened )*` + closedIn), shelters, roofed},
		{regexp.MustCompile(`^(in|on|under|inside|into) (the |our |my |a )?(back |front |covered |screened )*` + closedIn + `( roof| now)*$`), nil, roofed},
		{anyWord(rotten), regexp.MustCompile(`\b(smoke|coals?|charcoal|fire|wood|briquettes?|fluid)\b`),
			"Do not eat it, and do not taste it: throw it away, raw or cooked. Cooking does not mend it. Wash hands, board, tongs and probe, and whatever it touched; what lay against it goes too. Then note it: the dish and called off"},
	}
})

// shelters are where food waits, not where a fire burns.
var shelters = regexp.MustCompile(`\b(fridge|refrigerator|freezer|cooler|foil tent|tented|tent of foil|foil|bag of|(charcoal|coals|briquettes|bag) (is|are) (still )?in the|spare|from the|out of the|behind the|beside the|ft from|feet from|away from)\b`)

const (
	roofed = "No grill, fire or coals in there, hot ash too: everybody out into fresh air now, and open the doors. " + monoxide + ", and a roof or a wall catches fire. Dizzy, a headache, sick, or an alarm: stay out and call " + emergencyNo + ". A lit grill is not moved with people inside or close by: shut both vents, lid on, let it go out where it stands, and stay out till it is cold and aired. Rain is no reason for a roof: a screen of metal on one side, 3 ft off, nothing overhead, or the kitchen oven"

	hurt = "Is anybody hurt? First everybody 10 ft from the grill, children first, and somebody else watches it. Touched something hot: cool running water on it for 20 min, now. Hit the head, cannot stand, faint, a burn larger than a palm, or of a child: call " + emergencyNo + ". Is the grill open or tipped, or are coals out of it? Keep away, and look from there. " + nothingCook

	allergy = callNow + ", and say that it is an allergic reaction. Is there an adrenaline pen? Use it at once. Let them lie down with the legs up, or sit where it is hard to breathe, and do not let them get up or be alone. What they ate goes off the table. " + nothingCook

	burnAid = "Cool running water on it for 20 min, now; rings and watch off; no ice, no butter. Larger than a palm, on a face, hand or joint, white or black, in an eye, or of a child: call " + emergencyNo + ". Cover it loosely with cling film or a clean cloth. Somebody else watches the fire, or both vents are shut. " + nothingCook
)

// Emergency is what to do about a note that tells of danger to people, whatever its grammar;
// empty where it tells of none. A day, its log and its dishes play no part: it is answered
// where none of them can be read.
func Emergency(words []string) string {
	text := emergencyText.Replace(strings.ToLower(strings.Join(words, " ")))
	text = strings.Join(strings.Fields(text), " ")
	for _, e := range emergencies() {
		if e.said.MatchString(text) && (e.unless == nil || !e.unless.MatchString(text)) {
			return e.do
		}
	}
	return ""
}

var emergencyText = strings.NewReplacer("’", "'", ",", " ", ".", " ", "!", " ", "?", " ", ";", " ", ":", " ", "(", " ", ")", " ", "-", " ", "_", " ")

// aboutPeople are words of somebody who may be hurt or ill; never of baby back ribs.
var (
	aboutPeople = anyWord(persons + `|guests|he|she|grandmother|grandfather|uncle|aunt|friend|dog`)
	noPeople    = regexp.MustCompile(`\bbaby[ -]?(backs?|rib|ribs)\b`)
)

// firstOfAll asks after people before anything else, where words of them were not understood; empty for others.
func firstOfAll(said string) string {
	if !aboutPeople.MatchString(noPeople.ReplaceAllString(said, "")) {
		return ""
	}
	return "is anybody hurt or ill? That comes first: call " + emergencyNo + ". If not: "
}
