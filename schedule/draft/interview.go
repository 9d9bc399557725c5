package draft

import (
	"errors"
	"fmt"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/unit"
)

// Question is one line to ask.
type Question struct {
	Key     string // stays the same for the same question: when, zone, grill, dish ...
	Dish    string // of whom, where it is about one dish
	Text    string
	Default string // what no answer stands for, as people say it
	Number  int    // which of the questions about the day it is, from 1; 0 for one about a dish
	Of      int    // how many of those there are
}

// Keys of the questions, in their order. Those from which on are asked of a dish.
const (
	KeyWhen   = "when"
	KeyZone   = "zone"
	KeyGrill  = "grill"
	KeyOven   = "oven"
	KeyQuiet  = "quiet"
	KeyGuests = "guests"
	KeyFrail  = "frail"
	KeyDish   = "dish"
	KeyWhich  = "which"
	KeyAmount = "amount"
	KeyLabel  = "label"
	KeyDone   = "done"
	KeyNight  = "overnight" // asked last, and only of a cook that may take the night
)

// Interview asks for a day. Its zero value is not ready: see [New].
type Interview struct {
	now   time.Time
	units unit.System
	like  day

	serve      time.Time
	zone       string
	grill      string
	oven       bool
	quiet      string // as the request has it; empty leaves it out
	quietSaid  string // as it was answered
	guests     schedule.Guests
	frailKnown bool
	dishes     []dish
	unclear    []dish // passed over while it was not known which they are

	asked int // of the questions about the day
	open  *dish
	full  bool // there are no more dishes
	over  bool

	overnight bool
}

// New begins to ask. Now is the time on the cook's clock, in the zone that the machine
// has; zone is its name, or empty where it is not known. Like is one of [Likes] or empty.
func New(now time.Time, zone, like string) (*Interview, error) {
	begun, ok := likes[like]
	if !ok {
		return nil, fmt.Errorf("%q is no day to begin with; there are %s", like, strings.Join(Likes(), ", "))
	}
	i := &Interview{now: now, zone: zone, like: begun, units: unit.Metric}
	if zone == "" || strings.HasPrefix(zone, "America/") || strings.HasPrefix(zone, "US/") || zone == "Pacific/Honolulu" {
		i.units = unit.US
	}
	return i, nil
}

// UseUnits sets the units that the questions and the request speak.
func (i *Interview) UseUnits(u unit.System) { i.units = u }

// Next is the question that is open; false once there is none.
func (i *Interview) Next() (Question, bool) {
	switch {
	case i.over:
		return Question{}, false
	case i.asked < len(aboutTheDay):
		a := aboutTheDay[i.asked]
		return Question{Key: a.key, Text: a.text(i), Default: a.usual(i), Number: i.asked + 1, Of: len(aboutTheDay)}, true
	case i.open != nil:
		if f := i.open.next(); f != nil {
			return Question{Key: f.key, Dish: i.open.title(), Text: f.text(i, i.open), Default: f.usual(i, i.open)}, true
		}
		i.close()
		return i.Next()
	case i.full:
		return Question{Key: KeyNight, Text: nightText, Default: "no"}, true
	case len(i.dishes) < len(i.like.dishes):
		return Question{Key: KeyDish, Text: i.dishText(), Default: i.like.dishes[len(i.dishes)]}, true
	case len(i.dishes)+len(i.unclear) == 0:
		return Question{Key: KeyDish, Text: i.dishText()}, true
	}
	return Question{Key: KeyDish, Text: i.dishText(), Default: NoMore}, true
}

// NoMore ends the list of dishes.
const NoMore = "no more"

func (i *Interview) dishText() string {
	if len(i.dishes) == 0 {
		return "What is the first dish? Such as: brisket, 10 lb; or 2 chickens; or 12 burgers"
	}
	return "And the next dish? No more ends the list"
}

// Answer takes an answer to the open question; no text is the default. The error says what
// would be right, and the question stays open.
func (i *Interview) Answer(text string) error {
	q, open := i.Next()
	if !open {
		return errors.New("there is no question left")
	}
	if text = strings.TrimSpace(text); text == "" {
		text = q.Default
	}
	if q.Default != "" && q.Key != KeyFrail && q.Key != KeyDish && saysNotKnown(text) {
		text = q.Default
	}
	if text == "" && q.Key == KeyDish {
		return errors.New("this one needs an answer: a dish, such as brisket, 10 lb; or 2 chickens; or 12 burgers. cookday cuts lists what there is")
	}
	if text == "" {
		return errors.New("this one needs an answer")
	}
	switch {
	case i.asked < len(aboutTheDay):
		if err := aboutTheDay[i.asked].take(i, text); err != nil {
			return err
		}
		i.asked++
		return nil
	case i.open != nil:
		return i.open.next().take(i, i.open, text)
	case i.full:
		yes, err := yesOrNo(text)
		if err != nil {
			return err
		}
		i.overnight, i.over = yes, true
		return i.Fault()
	case saysNoMore(text):
		if len(i.dishes)+len(i.unclear) == 0 {
			return errors.New("a day has at least one dish")
		}
		if len(i.unclear) > 0 {
			i.over = true
			return nil
		}
		if i.full = i.longNight(); i.full {
			return nil
		}
		i.over = true
		return i.Fault()
	}
	d, err := readDish(text, i.guests.Adults+i.guests.Children)
	if err != nil {
		return err
	}
	if fault := i.faultOf(d); fault != nil {
		return fault
	}
	i.open = &d
	return nil
}

func saysNoMore(text string) bool {
	switch strings.ReplaceAll(strings.ToLower(strings.Trim(text, " .!")), "’", "'") {
	case NoMore, "no", "nope", "none", "done", "nothing", "nothing else", "no thanks", "no thank you", "that is all", "that's all", "thats all", "that's it", "end", "stop", "finished":
		return true
	}
	return false
}

// close ends the questions about a dish.
func (i *Interview) close() {
	i.dishes = append(i.dishes, *i.open)
	i.open = nil
}

// Fault is what is wrong with the day as it stands, by the rules of a request; nil for nothing.
func (i *Interview) Fault() error {
	_, err := schedule.Read([]byte(i.Text()))
	return err
}

// faultOf is what is wrong with one dish on this day. Where it was not asked yet how done
// the dish is to be, the usual doneness may give way to one further up.
func (i *Interview) faultOf(d dish) error {
	if d.done == "" && usualDone(i, &d) != "" {
		d.done = usualDone(i, &d)
	}
	return i.faultAsIs(d)
}

func (i *Interview) faultAsIs(d dish) error {
	alone := *i
	alone.open, alone.dishes = nil, []dish{d}
	_, err := schedule.Read([]byte(alone.Text()))
	return faultAt(err, "dishes[0]")
}

// faultAt is the first fault of a field, without its path; nil for none.
func faultAt(err error, path string) error {
	var input *schedule.InputError
	if !errors.As(err, &input) {
		return err
	}
	for _, f := range input.Faults {
		if strings.HasPrefix(f.Path, path) {
			return errors.New(f.Sentence)
		}
	}
	return nil
}

// Weekday is the day of the meal, for a name.
func (i *Interview) Weekday() string { return i.serve.Weekday().String() }
