package schedule

import (
	"encoding/json"
	"reflect"
	"strings"
	"testing"
	"time"

	"github.com/rickb777/date"
	"github.com/rickb777/date/clock"
	"pgregory.net/rapid"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/unit"
)

// roundTrip wants the JSON of r to be read as r and to be the only JSON of it.
func roundTrip(t interface{ Fatalf(string, ...any) }, r Request) {
	text, err := json.Marshal(r)
	if err != nil {
		t.Fatalf("%v", err)
	}
	again, err := Read(text)
	if err != nil {
		t.Fatalf("%v\nin %s", err, text)
	}
	if want := r.withDefaults(); !reflect.DeepEqual(again, want) {
		t.Fatalf("read %+v\nwant %+v\nfrom %s", again, want, text)
	}
	second, err := json.Marshal(again)
	if err != nil || string(second) != string(text) {
		t.Fatalf("%v\n%s\nis not\n%s", err, second, text)
	}
	if hash(r) != hash(again) || len(hash(r)) != 64 {
		t.Fatalf("hashes %q and %q", hash(r), hash(again))
	}
}

func TestJSONOfRequestReadsBackTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { roundTrip(t, anyRequest(t)) })
}

// anyRequest is a random request that is valid. The ranges are those of validate.
func anyRequest(t *rapid.T) Request {
	r := Request{
		Format:     1,
		ID:         rapid.StringMatching(`[a-z0-9_-]{0,12}`).Draw(t, "id"),
		Name:       rapid.StringMatching(`(\pL[\pL<&>"' é日]{0,20})?`).Draw(t, "name"),
		Serve:      Serve{date.New(2027, time.July, rapid.IntRange(1, 31).Draw(t, "day")), anyTime(t), "America/Chicago"},
		Guests:     maybe(t, func() Guests { return Guests{people(t), people(t), rapid.Bool().Draw(t, "frail")} }),
		Grill:      anyGrill(t),
		Oven:       maybe(t, func() Oven { return Oven{drawn[unit.Temperature](t, 55, 120)} }),
		Weather:    anyWeather(t),
		Confidence: rapid.SampledFrom([]float64{0, 0.5, 0.75, 0.9, 0.95, 0.99}).Draw(t, "confidence"),
		Units:      rapid.SampledFrom([]unit.System{"", unit.US, unit.Metric}).Draw(t, "units"),
	}
	if from, to := anyTime(t), anyTime(t); from != to {
		r.Quiet = []Quiet{{from, to}}
	}
	for range rapid.IntRange(1, 6).Draw(t, "dishes") {
		dish := anyDish(t)
		if r.Guests != nil && r.Guests.Frail {
			dish.Target = nil // a doneness below the published minimum is refused
			dish.Cut, dish.Weight, dish.Weights, dish.Count, dish.Thickness, dish.Wrap = "corn", 0, nil, 0, 0, nil
		}
		if r.Oven == nil {
			dish.Hold = nil
		}
		r.Dishes = append(r.Dishes, dish)
	}
	return r
}

func anyGrill(t *rapid.T) Grill {
	g := Grill{GaugeOffset: drawn[unit.Difference](t, -100, 100), WaterPan: rapid.Bool().Draw(t, "pan")}
	switch g.Kind = rapid.SampledFrom([]string{GrillKettle, GrillBox, GrillOther}).Draw(t, "kind"); g.Kind {
	case GrillKettle:
		g.Diameter = drawn[unit.Length](t, 0.26, 1)
		g.Fuel = rapid.SampledFrom([]string{"", FuelBriquettes, FuelLump}).Draw(t, "fuel")
	case GrillBox:
		g.Width, g.Depth = drawn[unit.Length](t, 0.25, 1.5), drawn[unit.Length](t, 0.25, 1.5)
	default:
		g.Zones = []GrillZone{{"left", drawn[unit.Length](t, 0.1, 1), 0.4, 110, drawn[unit.Temperature](t, 110, 300), true}}
	}
	return g
}

func anyWeather(t *rapid.T) Weather {
	air := func() unit.Temperature { return drawn[unit.Temperature](t, -40, 50) }
	w := Weather{
		Air: maybe(t, air), Night: maybe(t, air),
		Humidity:  maybe(t, func() unit.Fraction { return drawn[unit.Fraction](t, 0, 1) }),
		Wind:      drawn[unit.Speed](t, 0, 30),
		Rain:      rapid.Bool().Draw(t, "rain"),
		Sheltered: rapid.Bool().Draw(t, "sheltered"),
		Altitude:  drawn[unit.Length](t, -400, 6000),
	}
	if rapid.Bool().Draw(t, "hours") {
		wet := rapid.Bool().Draw(t, "wet")
		w.Hours = []WeatherFrom{{From: Clock{Time: anyTime(t)}, Air: maybe(t, air), Rain: &wet}}
	}
	return w
}

func anyDish(t *rapid.T) Dish {
	c := rapid.SampledFrom(cut.All()).Draw(t, "cut")
	mass := func() unit.Mass { return drawn[unit.Mass](t, c.MinPieceKg, c.MaxPieceKg) }
	stage := func() unit.Duration { return unit.Duration(rapid.Int64Range(0, int64(24*time.Hour)).Draw(t, "stage")) }
	d := Dish{
		Name: rapid.StringMatching(`(\pL[\pL\pN ]{0,10})?`).Draw(t, "dish"), Cut: c.Name,
		Weight: mass(), Count: rapid.IntRange(0, 500).Draw(t, "count"),
		Start: maybe(t, func() Start { return Start{Core: drawn[unit.Temperature](t, 0, 20)} }),
		Prep:  rapid.SampledFrom([][]string{nil, {"rolled"}, {"brined", "rolled"}}).Draw(t, "prep"),
		Zone:  rapid.SampledFrom([]string{"", "direct", "indirect"}).Draw(t, "zone"),
		Level: maybe(t, func() unit.Temperature { return drawn[unit.Temperature](t, 100, 300) }),
		Rest:  maybe(t, stage), Travel: maybe(t, stage),
		Hold:  rapid.SampledFrom([][]string{nil, {HoldNone}, {HoldBox, HoldOven}}).Draw(t, "hold"),
		Ready: rapid.SampledFrom([]string{"", "day-before"}).Draw(t, "ready"),
		Serve: maybe(t, func() Clock { return Clock{Time: anyTime(t)} }),
	}
	if rapid.Bool().Draw(t, "unequal") {
		d.Weight, d.Count, d.Weights = 0, 0, []unit.Mass{mass(), mass()}
	}
	if n := len(c.Doneness); n > 0 {
		d.Target = maybe(t, func() Target { return Target{Doneness: c.Doneness[n-1].Name} })
	}
	if c.WrapAllowed {
		d.Wrap = maybe(t, func() Wrap {
			after := stage()
			return rapid.SampledFrom([]Wrap{{With: WrapNone}, {With: WrapFoil}, {With: WrapPaper, After: &after}}).Draw(t, "wrap")
		})
	}
	if rapid.Bool().Draw(t, "frozen") {
		d.Start = &Start{Frozen: true}
	}
	if d.Level != nil && float64(*d.Level) < leastDirectC && d.Zone == zoneDirect {
		d.Zone = zoneIndirect
	}
	return d
}

func anyTime(t *rapid.T) clock.Clock {
	return clock.New(rapid.IntRange(0, 23).Draw(t, "hour"), rapid.IntRange(0, 59).Draw(t, "minute"), 0, 0)
}

func people(t *rapid.T) int { return rapid.IntRange(0, 100).Draw(t, "people") }

func drawn[T ~float64](t *rapid.T, least, most float64) T {
	return T(rapid.Float64Range(least, most).Draw(t, "value"))
}

func maybe[T any](t *rapid.T, draw func() T) *T {
	if !rapid.Bool().Draw(t, "given") {
		return nil
	}
	v := draw()
	return &v
}

func TestCanonicalJSON(t *testing.T) {
	r, err := Read([]byte(party))
	if err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(r)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`"guests":24`, `"serve":{"date":"2027-07-03","time":"18:00","tz":"America/Chicago"}`,
		`"quiet":[{"from":"23:00","to":"05:30"}]`, `"oven":{}`, `"diameter":"0.5588 m"`, `"id":"burgers"`} {
		if !strings.Contains(string(text), want) {
			t.Errorf("%s is not in %s", want, text)
		}
	}
	for _, not := range []string{"confidence", "units", "fuel", `"count":1,`} {
		if strings.Contains(string(text), not) {
			t.Errorf("%s is in %s", not, text)
		}
	}
}

func TestHashTellsRequestsApart(t *testing.T) {
	base, err := Read([]byte(party))
	if err != nil {
		t.Fatal(err)
	}
	for _, change := range [][2]string{{"12 lb", "12.1 lb"}, {"guests: 24", "guests: 25"}, {"\"18:00\"", "\"18:01\""}, {"count: 12", "count: 13"}} {
		other, err := Read([]byte(with(t, change[0], change[1])))
		if err != nil {
			t.Fatal(err)
		}
		if hash(base) == hash(other) {
			t.Errorf("%s and %s have one hash", change[0], change[1])
		}
	}
	if hash(Request{Dishes: []Dish{{Target: &Target{}}}}) != "" {
		t.Error("a request without JSON has a hash")
	}
}

func TestDefaultsDoNotWriteIntoTheRequest(t *testing.T) {
	r := Request{Oven: &Oven{}, Dishes: []Dish{{Cut: "corn"}}}
	full := r.withDefaults()
	if r.Oven.Hold != 0 || r.Dishes[0].ID != "" || full.Oven.Hold == 0 || full.Dishes[0].ID != "corn" || full.Dishes[0].Weight == 0 {
		t.Errorf("%+v, %+v", r, full)
	}
	if !reflect.DeepEqual(full, full.withDefaults()) {
		t.Error("a second call changes something")
	}
}

func TestIDs(t *testing.T) {
	tests := []struct{ dishes, want string }{
		{"Brisket|Wings|Brisket", "brisket wings brisket-2"},
		{"Wings|Brisket|Brisket", "wings brisket brisket-2"},
		{"Hot & Spicy!|Köfte", "hot-spicy köfte"},
		{"!!|--", "corn corn-2"}, // nothing left of the name: the cut
		{"=brisket|Brisket", "brisket brisket-2"},
		{"Brisket|=brisket", "brisket-2 brisket"},
		{strings.Repeat("very ", 30), strings.TrimSuffix(strings.Repeat("very-", 10)[:48], "-")},
	}
	for _, tt := range tests {
		var dishes []Dish
		for name := range strings.SplitSeq(tt.dishes, "|") {
			dish := Dish{Name: name, Cut: "corn"}
			if id, given := strings.CutPrefix(name, "="); given {
				dish = Dish{ID: id}
			}
			dishes = append(dishes, dish)
		}
		fillIDs(dishes)
		var got []string
		for _, d := range dishes {
			got = append(got, d.ID)
		}
		if strings.Join(got, " ") != tt.want {
			t.Errorf("%s: got %v, want %s", tt.dishes, got, tt.want)
		}
	}
}

// A value on its own keeps its JSON too, as a program that builds requests needs.
func TestPartsRoundTrip(t *testing.T) {
	for _, tt := range []struct {
		into any
		text string
	}{
		{&Serve{}, `{"date":"2027-07-03","time":"18:00","tz":"America/Chicago"}`},
		{&Clock{}, `"05:00"`},
		{&Clock{}, `{"date":"2027-07-02","time":"05:00"}`},
		{&Quiet{}, `{"from":"23:00","to":"05:30"}`},
		{&Guests{}, `24`},
		{&Guests{}, `{"adults":20,"children":8,"frail":true}`},
		{&Target{}, `"95 C"`},
		{&Target{}, `"medium-rare"`},
		{&Target{}, `{"final":"54.5 C"}`},
		{&Start{}, `"frozen"`},
		{&Start{}, `"0 C"`},
		{&Wrap{}, `"none"`},
		{&Wrap{}, `{"with":"foil","from":"66 C"}`},
		{&Wrap{}, `{"with":"paper","after":"PT4H"}`},
	} {
		if err := json.Unmarshal([]byte(tt.text), tt.into); err != nil {
			t.Errorf("%s: %v", tt.text, err)
		}
		if got, err := json.Marshal(tt.into); err != nil || string(got) != tt.text {
			t.Errorf("%s becomes %s, %v", tt.text, got, err)
		}
		faultsOf(t, json.Unmarshal([]byte(`[true]`), tt.into))
	}
	var r Request
	faultsOf(t, json.Unmarshal([]byte(`{"format":1}`), &r))
}
