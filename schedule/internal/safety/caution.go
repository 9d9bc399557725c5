package safety

// Severity orders cautions and findings.
type Severity string

// The severities, least first.
const (
	Info   Severity = "info"
	Warn   Severity = "caution"
	Danger Severity = "danger"
)

// Caution is one entry of the catalogue: what to do or to leave, and who says so.
type Caution struct {
	Code     string
	Severity Severity
	Sentence string
	Source   string // source key; Document names the publication
}

// How a starved, or very hot and tightly shut, fire is opened: one way and one figure for
// whatever speaks of it (common practice, no source), as a sentence and after a colon.
const (
	OpenStarved     = "O" + openStarved
	ThenOpenStarved = "o" + openStarved

	openStarved = "pen the top vent, wait two minutes, lift the lid a finger's width on the side away from you, then open."
)

// Finding is a caution that a history or a plan has earned, with its size.
type Finding struct {
	Caution
	Minute      float64 // when the limit was passed, on the history's clock
	OverMinutes float64 // how long past the limit; 0 if the rule is not one of time
	Counted     float64 // minutes without heat, where those are what was counted
}

// Situation is what a plan or a day holds that a caution may belong to.
type Situation struct {
	Charcoal           bool // burns charcoal, lump or briquettes
	OtherFire          bool // a grill of another kind: nobody said what it burns
	NoSchedule         bool // a forecast, or a day that cannot be done: no fire is lit, tended and put out
	UnattendedFire     bool // a fire burns while nobody watches it, at night or away
	StarvedFireOpened  bool // a fire kept low by closed vents is opened
	LitCoalChange      bool // lit coals are moved from one layout to another
	LowGrate           bool // food cooks on a grate below 225 F
	Sear               bool // a phase at 550 F or above
	Probes             bool // probes are in the meat or on the grate
	WholeMuscle        bool // beef, pork, veal or lamb in the piece, or raw ham
	Poultry            bool
	Ground             bool // ground meat or sausage
	Raw                bool // raw meat, poultry or fish
	Greens             bool // vegetables, bread or fruit
	FattyJoint         bool // a brisket, a shoulder or the like, cooked on a fire of charcoal
	Stuffed            bool
	Pierced            bool // injected or tenderised
	Frail              bool // a guest is very young, old, pregnant or ill
	FrailAsked         bool // it was asked, and nobody is
	LabelUnread        bool // of a bird or of pork nobody said what was done to it
	TargetBelowMinimum bool
	Holding            bool // something waits hot
	Travel             bool // something is carried away hot
	ChillAhead         bool // cooked and chilled for another day
	Reheat             bool
	Frozen             bool // something starts, or is thawed, from frozen
}

// With adds what one piece brings to the situation.
func (s Situation) With(c Category, p Prep) Situation {
	switch c {
	case Poultry:
		s.Poultry = true
	case Beef, Pork, Veal, Lamb, Ham:
		s.WholeMuscle = true
	case Leftovers:
		s.Reheat = true
	}
	switch c {
	case Vegetable, None:
		s.Greens = true
	case HamCooked, Leftovers:
	default:
		s.Raw = true
	}
	s.Ground = s.Ground || c == Ground || c == GroundPoultry || c == Sausage
	s.Stuffed = s.Stuffed || p.Stuffed
	s.Pierced = s.Pierced || p.pierced()
	return s
}

// WithLabel adds what is not known of one piece, whose label was read or not.
func (s Situation) WithLabel(c Category, read bool) Situation {
	s.LabelUnread = s.LabelUnread || !read && (c == Poultry || c == Pork)
	return s
}

// Cautions lists what applies to a situation, most important first. Four apply to
// every one: measure, colour, raw and cooked apart, two hours; and the local codes.
func Cautions(s Situation) []Caution {
	var out []Caution
	for _, e := range catalogue {
		if e.applies != nil && e.applies(s) {
			out = append(out, e.Caution)
		}
	}
	return out
}

// Catalogue lists every caution and finding this package can utter, gravest first.
// The sentence of a finding is preceded by what was measured.
func Catalogue() []Caution {
	out := make([]Caution, len(catalogue))
	for i, e := range catalogue {
		out[i] = e.Caution
	}
	return out
}

// Lookup is the catalogue entry of a code.
func Lookup(code string) (Caution, bool) {
	for _, e := range catalogue {
		if e.Code == code {
			return e.Caution, true
		}
	}
	return Caution{}, false
}

// found is the finding of a catalogue entry with what was measured.
func found(code, measured string, minute, overMinutes float64) Finding {
	c, ok := Lookup(code)
	if !ok {
		panic("safety: no catalogue entry " + code)
	}
	if measured != "" {
		c.Sentence = measured + " " + c.Sentence
	}
	return Finding{Caution: c, Minute: minute, OverMinutes: overMinutes}
}
