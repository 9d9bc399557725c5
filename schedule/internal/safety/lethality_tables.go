package safety

// lethalityTables are the published times at which a core held at a temperature has
// had the stated reduction of Salmonella. Where rows say "reached instantly" (beef,
// 158 F) or "under 10 s" (poultry, 165 F) the table ends in instantF. The poultry
// tables of 5 and 12 pct fat were read in part only and print no such row; they take
// the 165 F of the household chart. The Food Code tables print no reduction: 0.
var lethalityTables = []LethalityTable{
	{Product: BeefProduct, FatPct: 0, LogReduction: 6.5, Source: "fsis_app_a_beef",
		instantF: 158, points: []lethalityPoint{
			{130, 6720}, {131, 5340}, {132, 4260}, {133, 3360}, {134, 2700}, {135, 2160}, {136, 1680},
			{137, 1380}, {138, 1080}, {139, 900}, {140, 720}, {141, 540}, {142, 480}, {143, 360},
			{144, 300}, {145, 240}, {146, 169}, {147, 134}, {148, 107}, {149, 85}, {150, 67}, {151, 54},
			{152, 43}, {153, 34}, {154, 27}, {155, 22}, {156, 17}, {157, 14},
		}},
	{Product: BeefProduct, FatPct: 0, LogReduction: 7, Source: "fsis_app_a_beef",
		instantF: 158, points: []lethalityPoint{
			{130, 7260}, {131, 5820}, {132, 4620}, {133, 3720}, {134, 2820}, {135, 2220}, {136, 1920},
			{137, 1440}, {138, 1140}, {139, 900}, {140, 720}, {141, 600}, {142, 480}, {143, 360},
			{144, 300}, {145, 240}, {146, 182}, {147, 144}, {148, 115}, {149, 91}, {150, 72}, {151, 58},
			{152, 46}, {153, 37}, {154, 29}, {155, 23}, {156, 19}, {157, 15},
		}},
	{Product: RoastProduct, FatPct: 0, LogReduction: 0, Source: "fda_3_401_11B",
		Note:     "hold may include the rise after the oven",
		instantF: 158, points: []lethalityPoint{
			{130, 6720}, {131, 5340}, {133, 3360}, {135, 2160}, {136, 1680}, {138, 1080}, {140, 720},
			{142, 480}, {144, 300}, {145, 240}, {147, 134}, {149, 85}, {151, 54}, {153, 34}, {155, 22},
			{157, 14},
		}},
	{Product: RoastProduct, FatPct: 0, LogReduction: 0, Source: "fda_3_401_11B_old",
		Note:     "older edition",
		instantF: 0, points: []lethalityPoint{
			{130, 7260}, {132, 4620}, {134, 2820}, {136, 1920}, {138, 1140}, {140, 720}, {142, 480},
			{144, 300}, {145, 180},
		}},
	{Product: ChickenProduct, FatPct: 1, LogReduction: 7, Source: "fsis_poultry_2005",
		instantF: 165, points: []lethalityPoint{
			{136, 3798}, {140, 1512}, {145, 504}, {150, 162}, {155, 44.2}, {160, 13.7},
		}},
	{Product: TurkeyProduct, FatPct: 1, LogReduction: 7, Source: "fsis_poultry_2005",
		instantF: 165, points: []lethalityPoint{
			{136, 3840}, {140, 1686}, {145, 630}, {150, 228}, {155, 72}, {160, 25.6},
		}},
	{Product: ChickenProduct, FatPct: 5, LogReduction: 7, Source: "fsis_poultry_2005",
		Note:     "fat level as read on one page",
		instantF: 165, points: []lethalityPoint{
			{140, 1650}, {145, 552}, {150, 168}, {155, 47.7},
		}},
	{Product: TurkeyProduct, FatPct: 5, LogReduction: 7, Source: "fsis_poultry_2005",
		Note:     "species and fat level inferred by comparison with the 1 pct columns: treat as weak",
		instantF: 165, points: []lethalityPoint{
			{136, 3918}, {140, 1740}, {145, 648}, {150, 222},
		}},
	{Product: PoultryProduct, FatPct: 12, LogReduction: 7, Source: "fsis_poultry_2005",
		Note:     "composite as read on one discussion page",
		instantF: 165, points: []lethalityPoint{
			{136, 4884}, {137, 3930}, {138, 3174}, {139, 2580}, {140, 2100}, {141, 1722}, {142, 1422},
			{143, 1188}, {144, 996},
		}},
}
