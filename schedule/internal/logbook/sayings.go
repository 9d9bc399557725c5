package logbook

// sayings are what cooks say for a kind of entry, without the little words between; the
// longest that fits counts.
var sayings = []struct {
	phrases string // split by |
	kind    Kind
	value   string
}{
	{"went on|popped on|popped on grill|put on|puton|go on|goes on|going on|gone on|on|onto|throw on|threw on|thrown on|chucked on|whacked on|slapped on|started|start|set on|laid on|placed on|in smoker|in grill|into smoker|onto grate|onto grill|on grill|on grate|on smoker|in pit|back on coals first", On, ""},
	{"left bare|leave bare|leaving bare|unwrapped|unwrap|no wrap|going naked|naked", Wrapped, wrapNone},
	{"wrapped|wrap|wrapping|put in|in", Wrapped, ""},
	{"foil boat|in foil|into foil|foil|foiled", Wrapped, wrapFoil},
	{"in paper|in butcher paper|butcher paper|paper|in peach paper|in pink paper", Wrapped, wrapPaper},
	{"took off|take off|taken off|taking off|came off|came out|came out of smoker|out of grill|come off|coming off|comes off|went off|off|offf|pulled|pull|pulled off|pulling|lifted off|removed|out of smoker|off grill|off grate|took out of smoker", Pulled, ""},
	{"in box|in cooler|into cooler|in cooler box|into box|to cooler|to box|cooler|box|faux cambro|cambro|boxed|in cooler with towels|into cooler with towels", Boxed, HeldInCooler},
	{"held|holding|hold|resting in oven|rest in oven", Boxed, ""},
	{"on counter|counter|to counter|on table top|sitting on counter|sitting out|left out|standing out|out of fridge|out of refrigerator|sat out|been sitting out|been out|lay out|laid out|in sun|out in sun|forgot on counter|forgotten on counter|on worktop|on bench", Counter, ""},
	{"into oven|to oven|in oven|put in oven|moved to oven|moved into oven|finishing in oven|finish in oven", ToOven, ""},
	{"aside|set aside|off for now|off not done|off undone|off heat not done|took off not done|came off not done|taken off heat|off heat", Stopped, ""},
	{"back on|put back on|went back on|back on grill|back|back over|back in oven first", Restarted, ""},
	{"in fridge|into fridge|fridge|to fridge|on ice|ice bath|in ice bath|chilled|refrigerated|put away in fridge", Chilled, ""},
	{"lit|lit again|relit|fire relit|relight|light|lighted|lit fire|lit coals|lit charcoal|lit up|fire lit|fire going|fire started|started fire|chimney lit|lit chimney|coals lit|fired up|lit grill|grill lit|lit smoker|fire back|fire going again|fire lit again|fire on|coals going", Lit, ""},
	{"fire out|fire's out|fires out|fire dead|fire's dead|fire died|fire died out|fire gone|fire gone out|fire went out|went out|no fire|coals dead|coals out|coals died|coals gone|coals all gone|coals gone out|coals went out|coals burned out|coals burnt out|fire burned out|fire burnt out|fire choked|choked fire|fire snuffed|fire smothered|lost fire|grill dead|flame out|fire killed|rain put fire out|put fire out|fire out cold", FireOut, ""},
	{"added fuel|add fuel|added coals|add coals|added more coals|added charcoal|added more charcoal|added briquettes|added more briquettes|more coals|more charcoal|more briquettes|refueled|refuelled|refuel|fuel|topped up|topped up coals|topped up charcoal|topped up fire|fed fire|fed coals|threw on coals|threw on more coals|put on more coals|put more coals on|coals added|charcoal added|fuel added|stoked|stoked fire", Refuelled, ""},
	{"cleared ash|ash cleared|swept|swept ash|swept out ash|ash swept|ash|ash down|knocked ash down|knocked down ash|dumped ash|dumped out ash|emptied ash|emptied out ash|ash dumped|ash emptied|ash out|knocked ash|knocked off ash|knocked ash off|shook ash|raked ash|cleaned ash|cleaned out ash|scraped ash|ashed out|de-ashed|removed ash|ash removed|took ash out|ash pan emptied|emptied ash pan", AshCleared, ""},
	{"lid opened|lid open|lid off|left lid off|had look|looked|looked in|took look|lid's off|opened lid|open lid|took lid off|took off lid|take lid off|lifted lid|lid lifted|lid up|opened|peeked|had peek|peek|pulled lid|lid removed|removed lid|opened up|opened grill|opened smoker|checked under lid", LidOpened, ""},
	{"lid closed|lid on|lid shut|lid down|lid back on|put lid on|put lid back on|put lid back|closed lid|shut lid|close lid|lid back|lid's on|lid's back on|covered|closed up", LidClosed, ""},
	{"grate|grate temp|grate at|grate reads|grate now|grill temp|pit temp|pit|grill|grill at|grill reads|smoker|smoker temp|smoker at|ambient|ambient temp|air temp at grate|cooking temp|fire temp|fire at|cook temp|chamber|chamber temp", Grate, ""},
	{"lid temp|lid gauge|lid reads|dome|dome temp|lid|gauge|lid thermometer|dome thermometer|hood|hood temp|top gauge", Gauge, ""},
	{"oven temp|oven at|oven reads|oven|oven thermometer|oven shows", Oven, ""},
	{"oven off|oven turned off|oven turned itself off|oven switched itself off|oven switched off|oven shut off|oven shut itself off|oven cut out|oven dead|oven died|oven broke|oven broken|oven out|oven went out|oven went off|turned oven off|switched oven off|shut oven off", OvenOff, ""},
	{"surface|outside|outer|just under surface|under surface|near surface|surface temp", Outer, ""},
	{"coldest|slowest|coldest place|coldest spot|coldest part|cold spot|coolest|coolest spot|lowest|lowest spot|lowest place|thickest", Coldest, ""},
	{"internal temp|internal|inside|core|core temp|temp|temperature|reads|reading|probe|probes|probed|probe says|hit|hits|hitting|reached|reaches|at|up to|stalled at|stuck at|middle|center|centre|in middle|sitting at|holding at|temped|temps|meat probe|climbed to|jumped to|went to|up to|rose to|dropped to|fell to|down to", Core, ""},
	{"dinner served|we're eating|served|on table|everybody ate|everyone ate|ate|eaten|we ate|dished up|plated up|dinner on table|people ate|all ate|dinner over|dinners over|done eating|finished eating|all done eating", Served, ""},
	{"dinner|serve|serving|eating|eat|dinner time|dinnertime|lunch|guests|people|company|everyone|everybody|family|friends|dinner's|meal|running", ServingMoved, ""},
	{"rain stopped|rain over|stopped raining|no rain|no more rain|rain's stopped|rain gone|dry again|rain off|rain's over|not raining|not raining anymore|rain done", Rain, RainOver},
	{"raining|rains|started raining|starting to rain|rain started|rain|pouring|pouring rain|bucketing|bucketing down|drizzling|drizzle|wet out|raining hard|started to rain|chucking down|raining cats and dogs|hosing down|rain starting", Rain, ""},
	{"bag empty|empty bag|no more coals|no more charcoal|no more fuel|no more briquettes|no coals left|no charcoal left|no fuel left|no briquettes left|no coals|no charcoal|no fuel|no briquettes|out of coals|out of charcoal|out of fuel|out of briquettes|ran out of coals|ran out of charcoal|ran out of fuel|ran out of briquettes|run out of coals|run out of charcoal|charcoal ran out|coals ran out|charcoal all gone|charcoal gone|last of charcoal|used last of charcoal", NoFuel, ""},
	{"called off|cancelled|canceled|cancel|skip|skipped|skipping|forget|ditch|ditched|binned|bin|thrown out|threw out|threw away|threw|tossed|dropped from menu|not doing|no|scrap|scrapped|in bin|in trash|in the trash|trashed|not making|chucked out|chucked away|off menu", DishCancelled, ""},
	{"wind|wind gusting to|wind gusts to|wind gusting|windy|wind at|wind up to|gusts|gusting|gusts of|gusting to|gusts to|wind now|blowing|breeze", Wind, ""},
	{"wind calm|calm|no wind|wind dropped|wind gone|wind died|wind died down|wind stopped|wind's dropped", Wind, "calm"},
}
