package meant

import (
	"regexp"
	"strconv"
	"strings"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/strict"
)

// saidOf are words about a dish, by the field that they are of (common practice, no source).
var saidOf = []struct {
	words        *regexp.Regexp
	field, value string // a value in brackets is an item of a list; without a field they say nothing that a plan needs
}{

	{frozenText, "start", "frozen"},
	{regexp.MustCompile(`(?i)^reverse[ -]?sear(?:ed)?$|^seared?(?: at the end)?$`), "finish", "sear"},
	{regexp.MustCompile(`(?i)^(?:with a )?(?:solution|injected|enhanced|basted|self-basting)$`), "prep", "[injected"},
	{regexp.MustCompile(`(?i)^(?:blade |needle )?tenderi[sz]ed$`), "prep", "[tenderized"},
	{regexp.MustCompile(`(?i)^(?:dry |wet )?brined$`), "prep", "[brined"},
	{regexp.MustCompile(`(?i)^stuffed$`), "prep", "[stuffed"},
	{regexp.MustCompile(`(?i)^(?:rolled|tied|rolled and tied|boned and tied)$`), "prep", "[rolled"},
	{regexp.MustCompile(`(?i)^(?:label )?(?:none|nothing|nothing on the label)$`), "prep", "["},
	{regexp.MustCompile(`(?i)^(?:wrapped in |in )(?:tin|aluminum|aluminium)? ?foil$`), "wrap", "foil"},
	{regexp.MustCompile(`(?i)^(?:wrapped in |in )(?:butcher )?paper$`), "wrap", "paper"},
	{regexp.MustCompile(`(?i)^(?:unwrapped|no wrap|not wrapped)$`), "wrap", "none"},
	{regexp.MustCompile(`(?i)^(?:direct(?:ly)?|over the coals)$`), "zone", "direct"},
	{regexp.MustCompile(`(?i)^(?:indirect(?:ly)?|beside the coals)$`), "zone", "indirect"},
	{regexp.MustCompile(`(?i)^(?:caps?|fresh|raw|(?:already |all |fully |now )?(?:thawed|defrosted)|(?:smoked |cooked |done )?low (?:and|&|n|'n') slow|smoked|grilled|barbecued|bbq|homemade|big|large|nice|plain|good|some|about|each|whole|raw weight|label not read|not read|grade a|a|how (?:much|many)(?: do (?:i|we) (?:need|buy))?\??|enough(?: for (?:all|everybody|everyone|us))?)$`), "", ""},
	{regexp.MustCompile(`(?i)^(?:for |as |into |cut into |in |sliced into |cut in )?(?:slices|halves|wedges|rings|spears|halved|sliced|quartered|cut in half|in half)$`), "", "sliced"},
	{regexp.MustCompile(`(?i)^(?:for |as |into )burnt ends$`), "", "burnt ends"},
	{unusedText, "", "unused"},
}

// unusedText are words about a dish that no plan is made of: they are told back.
var unusedText = regexp.MustCompile(`(?i)^(?:(?:usda )?(?:choice|prime|select)(?: grade)?|angus|wagyu|grass[- ]?fed|organic|free[- ]range|local|heritage|(?:lightly )?(?:salted|seasoned|marinated|rubbed|dry[- ]rubbed|glazed|sauced)|salt (?:and|&) pepper|with (?:bbq |barbecue )?sauce|(?:bbq|barbecue) sauce|for (?:the |my |our )?(?:\d+ |two |three |four )?(?:kids?|children|adults|grown-?ups|vegetarians?|veggies|vegans?|mom|mum|dad|grandma|grandpa|wife|husband|boys|girls|me|us|him|her|them)|(?:on a )?beer[- ]can|in (?:a|the) (?:pot|pan|skillet|dutch oven|tray)(?: on the grate)?|for (?:the )?(?:church|party|crowd|office|team|school)|on (?:a |the )?(?:cedar |wood(?:en)? )?planks?|with (?:the )?(?:pizza )?stone|store[- ]bought|home[- ]?made|3-2-1|321|2-2-1|from the butcher|untrimmed|trimmed|skin[- ]on|skin[- ]off|skinless|with (?:the )?skin(?: on)?|\d bones?|(?:with|in|and) (?:\pL+ ){0,2}(?:butter|herbs?|garlic|lemon|lime|salt|pepper|rub|sauce|oil|onions?|mustard|honey|beer|cheese|salsa|chimichurri|marinade|glaze|seasoning|spices)|mit haut|mit knochen|(?:on|as) (?:the |a )?sides?|for (?:today|tonight|tomorrow|(?:this |next )?(?:mon|tues|wednes|thurs|fri|satur|sun)day))$`)

var wrapSaid = regexp.MustCompile(`(?i)^wrap(?:ped)?(?: in| with)?\s*((?:butcher |pink )?paper|foil)?\s*(?:at|from|@)\s*(\d{2,3})\s*°?\s*([FC]?)$`)

// forAll takes "for 20" where just so many eat: the dish is for all of them.
func (h *hearer) forAll(said string) bool {
	m := forPeople.FindStringSubmatch(said)
	return m != nil && h.eaters > 0 && m[1] == strconv.Itoa(h.eaters) || forEverybody.MatchString(said)
}

var forEverybody = regexp.MustCompile(`(?i)^for (?:everyone|everybody|all(?: of us)?|the crowd|the (?:whole )?(?:family|party|group))$`)

// word takes down a word about the dish; false for another.
func (h *hearer) word(text string) bool {
	for _, s := range saidOf {
		if !s.words.MatchString(text) {
			continue
		}
		h.take(s.field, s.value, text)
		return true
	}
	return false
}

func (h *hearer) take(field, value, words string) {
	item, listed := strings.CutPrefix(value, "[")
	switch {
	case field == "":
		switch value {
		case "unused":
			h.Unused = append(h.Unused, words)
		case "sliced":
			if h.sliced = true; h.wedges == "" {
				h.wedges = words
			}
		case "burnt ends":
			h.Heard = append(h.Heard, strings.TrimSuffix(cut.Remark(value), "."))
		}
	case !listed:
		h.setText(field, value)
	default:
		list := strict.NewList(h.line)
		if before := h.Node.Get(field); before != nil {
			list.Items = append(list.Items, before.Items...)
		}
		if item != "" {
			list.Items = append(list.Items, strict.NewText(item, h.line))
		}
		h.set(field, list)
	}
}
