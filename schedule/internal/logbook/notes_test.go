package logbook

import (
	"encoding/csv"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

// Days on which notes are made, all at 5:00 PM; dishes, hours and readings are invented.
func noteDays() map[string]noteDay {
	loc := time.FixedZone("CDT", -5*3600)
	clock := func(h, m int) time.Time { return time.Date(2027, 7, 3, h, m, 0, 0, loc) }
	day := func(units unit.System, from time.Time, dishes ...Dish) Day {
		return Day{Loc: loc, First: from.Add(-24 * time.Hour), Last: clock(18, 0).Add(30 * time.Hour), From: from, To: clock(18, 0), Units: units, Dishes: dishes,
			Fires: []Fire{{From: from, LevelC: unit.FToC(275)}}, Chimney: 100}
	}
	ribs := Dish{ID: "baby-backs", Name: "Racks of baby back ribs", Cut: "baby-backs", Batches: 1}
	birds := Dish{ID: "chicken", Name: "Whole chickens", Cut: "chicken", Count: 2, Batches: 1, Poultry: true}
	brisket := Dish{ID: "brisket", Name: "Brisket", Cut: "brisket", Batches: 1, OvenC: unit.FToC(170)}
	butts := Dish{ID: "butt", Name: "Pork butts", Cut: "pork-butt", Count: 2, Batches: 2}
	corn := Dish{ID: "corn", Name: "Corn", Cut: "corn", Batches: 1}
	turkey := Dish{ID: "turkey", Name: "Turkey", Cut: "turkey", Batches: 1, Poultry: true, LeastC: unit.FToC(165), DoneC: unit.FToC(165), RawOvenC: unit.FToC(325)}
	thighs := Dish{ID: "chicken-thigh", Name: "Bone-in chicken thighs", Cut: "chicken-thigh", Count: 12, Batches: 1, Poultry: true}
	racks := Dish{ID: "ribs", Name: "St. Louis ribs", Cut: "st-louis-ribs", Count: 2, Batches: 1}
	party := []Entry{{At: clock(13, 40), Kind: Lit}, {At: clock(14, 20), Dish: "baby-backs", Kind: On}, {At: clock(16, 20), Dish: "chicken", Kind: On}}
	smoke := []Entry{{At: clock(6, 0), Kind: Lit}, {At: clock(6, 40), Dish: "brisket", Kind: On}, {At: clock(15, 0), Dish: "brisket", Kind: Core, C: unit.FToC(160)}}
	bird := []Entry{{At: clock(12, 0), Kind: Lit}, {At: clock(13, 0), Dish: "turkey", Kind: On}, {At: clock(16, 45), Dish: "turkey", Kind: Core, C: unit.FToC(171)}}
	roast := Dish{ID: "roast", Name: "Pork loin roast", Cut: "pork-loin", Count: 1, Batches: 1, LeastC: unit.FToC(145), DoneC: unit.FToC(145), RawOvenC: unit.FToC(250)}
	roasted := []Entry{{At: clock(14, 0), Kind: Lit}, {At: clock(15, 0), Dish: "roast", Kind: On}}
	return map[string]noteDay{
		"roast":  {day(unit.US, clock(14, 0), roast), roasted, clock(17, 0)},
		"rested": {day(unit.US, clock(14, 0), roast), append(slices.Clone(roasted), Entry{At: clock(16, 50), Dish: "roast", Kind: Pulled}), clock(17, 0)},
		"thighs": {day(unit.US, clock(13, 30), thighs), []Entry{{At: clock(16, 0), Kind: Lit}}, clock(17, 0)},
		"held":   {day(unit.US, clock(6, 0), brisket, butts), append(slices.Clone(smoke), Entry{At: clock(16, 0), Kind: Grate, C: unit.FToC(250)}, Entry{At: clock(16, 30), Dish: "brisket", Kind: Pulled}), clock(17, 0)},
		"racks":  {day(unit.US, clock(11, 0), racks), []Entry{{At: clock(11, 0), Kind: Lit}, {At: clock(12, 0), Dish: "ribs", Kind: On}}, clock(17, 0)},
		"party":  {day(unit.US, clock(13, 30), birds, ribs, corn), party, clock(17, 0)},
		"smoke":  {day(unit.US, clock(6, 0), brisket, butts), smoke, clock(17, 0)},
		"metric": {day(unit.Metric, clock(6, 0), brisket, butts), smoke, clock(17, 0)},
		"steaks": {day(unit.US, clock(16, 0), Dish{ID: "steak", Name: "Ribeye", Cut: "ribeye", Count: 3, Batches: 1}, Dish{ID: "hot-dog", Name: "Hot dogs", Cut: "hot-dog", Count: 8, Batches: 1}), []Entry{{At: clock(16, 0), Kind: Lit}}, clock(17, 0)},
		"brats":  {day(unit.US, clock(16, 0), Dish{ID: "sausage", Name: "Raw sausages", Cut: "sausage", Count: 14, Batches: 1}, corn), []Entry{{At: clock(16, 0), Kind: Lit}}, clock(17, 0)},
		"fresh":  {day(unit.US, clock(13, 30), birds, ribs, corn), party[:1], clock(17, 0)},
		"raw":    {day(unit.US, clock(12, 0), turkey), bird[:1], clock(17, 0)},
		"before": {withDayBefore(day(unit.US, clock(16, 0), corn), brisket), smoke, clock(17, 0)},
		"late":   {day(unit.US, clock(13, 30), birds, corn), append(slices.Clone(party), Entry{At: clock(16, 52), Kind: ServingMoved, Value: clock(18, 40).Format(time.RFC3339)}), clock(17, 0)},
		"turkey": {day(unit.US, clock(12, 0), turkey), bird, clock(17, 0)},
	}
}

// withDayBefore is a day before which a dish is cooked.
func withDayBefore(d Day, dishes ...Dish) Day {
	d.DayBefore = dishes
	return d
}

type noteDay struct {
	day Day
	log []Entry
	at  time.Time
}

// note is what a note comes to: its lines, or what it is answered.
func (d noteDay) note(words string) string {
	faults := &strict.FaultList{}
	r := NewReader(d.day, faults)
	rows, sentence := r.Note(strings.Fields(words), d.log, d.at)
	if sentence != "" {
		return "refuses " + sentence
	}
	var lines []string
	for _, row := range rows {
		e, ok := r.Entry(row)
		if !ok {
			return fmt.Sprintf("faults %v", faults.Faults)
		}
		lines = append(lines, strings.Join(strings.Fields(fmt.Sprintf("%s %s %s %s", e.At.In(d.day.Loc).Format("15:04"), e.Dish, e.Kind, row.Value())), " "))
		if row.Aside() != "" {
			lines[len(lines)-1] += " (" + row.Aside() + ")"
		}
	}
	return strings.Join(lines, "; ")
}

// rowsOf are the rows of a table of testdata, its head first.
func rowsOf(t *testing.T, name string) [][]string {
	t.Helper()
	f, err := os.Open("testdata/" + name + ".csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	in := csv.NewReader(f)
	in.Comment = '#'
	rows, err := in.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

// Each row of testdata/notes.csv is a note as a tired cook types or says it, and what it
// must come to; what cannot be noted is answered by what would be right.
func TestNotesOfTiredCooks(t *testing.T) {
	rows := rowsOf(t, "notes")
	days := noteDays()
	for _, row := range rows[1:] {
		d, ok := days[row[0]]
		if !ok {
			t.Fatalf("no day %q", row[0])
		}
		got := d.note(row[1])
		if want, refused := strings.CutPrefix(row[2], "refuses "); refused && strings.HasPrefix(got, "refuses ") && strings.Contains(got, want) {
			continue
		}
		if want, aside, ok := strings.Cut(row[2], " (..."); ok && strings.HasPrefix(got, want+" (") && strings.Contains(got, strings.TrimSuffix(aside, ")")) {
			continue
		}
		if got != row[2] {
			t.Errorf("%s: %q\n\tis   %s\n\twant %s", row[0], row[1], got, row[2])
		}
	}
}

// A word that nobody knows, before or behind what can be read, is never passed over: the
// note is refused, whatever else it says.
func TestNoWordOfANoteIsLost(t *testing.T) {
	days := noteDays()
	for _, words := range []string{"fire out", "ribs off", "chicken 150", "grate 250", "chicken thigh 158", "dinner 7 pm", "added 20 coals", "top vent half", "raining", "lid off", "ribs off at 4:50", "corn on 20 min ago", "chicken and ribs off", "chicken wrapped in foil", "chicken in the cooler", "oven 170", "wind 12 mph", "relit"} {
		if got := days["party"].note(words); strings.HasPrefix(got, "refuses") {
			t.Errorf("%q: %s", words, got)
		}
		parts := strings.Fields(words)
		for k := 0; k <= len(parts); k++ {
			said := strings.Join(append(append(append([]string{}, parts[:k]...), "xyzzy"), parts[k:]...), " ")
			if got := days["party"].note(said); !strings.HasPrefix(got, "refuses") {
				t.Errorf("%q: %s", said, got)
			}
		}
	}
}

// A grate that falls is taken as it is told once a grate was read in that unit: bad news is no
// harder to note than good. Where none was read yet the unit is asked for.
func TestAFallingGrateIsTaken(t *testing.T) {
	d := noteDays()["party"]
	d.day.Fires[0].LevelC = unit.FToC(375)
	if got := d.note("grate 190"); !strings.Contains(got, "190C") {
		t.Errorf("before any reading: %s", got)
	}
	d.log = append(slices.Clone(d.log), Entry{At: d.at.Add(-20 * time.Minute), Kind: Grate, C: unit.FToC(285)})
	if got := d.note("grate 190"); got != "17:00 grate 190 F" {
		t.Errorf("after 285 F: %s", got)
	}
}

// Whatever is typed, nothing panics and nothing takes long; what is noted is a line that a
// log may have, and not of the future.
func FuzzNotes(f *testing.F) {
	for _, s := range []string{"fire out since 3:10", "chicken 165, ribs 190, grate 340", "one sixty five on the brisket", "top vent half bottom quarter", "dinner in an hour and a half", "added 1/2 chimney of coals", "ribs on at 4.50 last night", "a hundred and a half hours ago"} {
		f.Add("party", s)
		f.Add("smoke", s)
	}
	days := noteDays()
	f.Fuzz(func(t *testing.T, which, text string) {
		d, ok := days[which]
		if !ok {
			d = days["metric"]
		}
		faults := &strict.FaultList{}
		r := NewReader(d.day, faults)
		rows, sentence := r.Note([]string{text}, d.log, d.at)
		if (sentence == "") == (len(rows) == 0) {
			t.Fatalf("%q: %d rows, %q", text, len(rows), sentence)
		}
		for _, row := range rows {
			e, ok := r.Entry(row)
			if !ok {
				continue
			}
			if form, known := e.Kind.Form(); !known || form.OfDish && e.Dish == "" {
				t.Errorf("%q: %+v", text, e)
			}
			if e.At.After(d.at.Add(soonAhead)) && row.time != d.at.Format(time.RFC3339) {
				if day := e.At.Sub(d.at); day < 0 {
					t.Errorf("%q: %s", text, day)
				}
			}
		}
	})
}
