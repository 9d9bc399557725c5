package schedule_test

import (
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/unit"
)

// What a note says of rest, of the heat of the grate, of the air and of the day is kept, and a
// number of pieces is the cook's.
func TestWhatANoteSaysIsKept(t *testing.T) {
	now := time.Date(2026, 12, 2, 16, 0, 0, 0, time.UTC)
	const day = "saturday 6 pm\n8 people\nkettle 22 in\n"
	for _, c := range []struct {
		written string
		holds   func(r schedule.Request) bool
	}{
		{day + "pork butt 8 lb\nrest 45 min\n", func(r schedule.Request) bool {
			return r.Dishes[0].Rest != nil && time.Duration(*r.Dishes[0].Rest) == 45*time.Minute
		}},
		{day + "pork butt 8 lb (already thawed), low and slow\n", func(r schedule.Request) bool { return r.Dishes[0].Cut == "pork-butt" && len(r.Dishes) == 1 }},
		{day + "pork butt 8 lb\nrun the smoker at 250F\n", func(r schedule.Request) bool { return near(r.Dishes[0].Level, 250) }},
		{"serve: saturday 6 pm\nguests: 8\ngrill: kettle 22 in\ntemperature: 110 C\ndishes: [pork butt 8 lb]\n", func(r schedule.Request) bool { return near(r.Dishes[0].Level, 230) && r.Weather.Air == nil }},
		{day + "pork butt 8 lb\noutside temp about 90F\n", func(r schedule.Request) bool { return near(r.Weather.Air, 90) }},
		{"dinner Saturday June 12th 2027 at 5pm\n8 people\nkettle 22 in\npork butt 8 lb\n", func(r schedule.Request) bool { return r.Serve.Date.String() == "2027-06-12" }},
		{day + "4x racks of baby back ribs\n", func(r schedule.Request) bool { return r.Dishes[0].Count == 4 }},
		{day + "12 x chicken thighs\n", func(r schedule.Request) bool { return r.Dishes[0].Count == 12 }},
		{day + "halloumi 2 blocks\n", func(r schedule.Request) bool { return r.Dishes[0].Count == 8 }},
		{day + "coleslaw and corn on the cob on the side\n", func(r schedule.Request) bool {
			return len(r.Dishes) == 1 && r.Dishes[0].Cut == "corn" && !strings.Contains(r.Dishes[0].Name, "slaw")
		}},
		{"saturday 6 pm\nparty of 30 (20 grown ups, 10 kids)\nkettle 22 in\n60 burgers\n", func(r schedule.Request) bool { return r.Guests.Adults == 20 && r.Guests.Children == 10 }},
		{"saturday 6 pm\n6 guys\nkettle 22 in\n6 steaks\n", func(r schedule.Request) bool { return r.Guests.Adults == 6 }},
		{"saturday 6 pm\n6 people\nhalf an oil drum with a lid, 36 x 18 in\n6 steaks\n", func(r schedule.Request) bool { return r.Grill.Kind == schedule.GrillBox }},
		{"What: steak\nWhen: saturday 6 pm\nWho: 6 adults\nOn: kettle 18 in\nFood: 6 steaks\n", func(r schedule.Request) bool { return r.Grill.Kind == schedule.GrillKettle }},
		{"{\"day\": \"Sunday\", \"grill\": \"kettle 22 in\", \"meals\": [{\"name\": \"lunch\", \"time\": \"1pm\", \"guests\": 6, \"food\": [\"8 brats\"]}, {\"name\": \"supper\", \"time\": \"7pm\", \"guests\": 9, \"food\": [\"8 steaks\"]}]}", func(r schedule.Request) bool {
			return r.Guests.Adults == 9 && r.Serve.Time.HhMm() == "19:00" && r.Dishes[0].Serve != nil && r.Dishes[1].Serve == nil
		}},
		{"saturday\nkettle 22 in\nlunch 12:30 - burgers (8) for 6 people\ndinner 7pm - 8 steaks for 9 people\n", func(r schedule.Request) bool {
			return r.Guests.Adults == 9 && r.Serve.Time.HhMm() == "19:00" && r.Dishes[0].Serve != nil && r.Dishes[1].Serve == nil
		}},
		{day + "two ribeyes 1.5 inch thick, medium rare, asparagus\n", func(r schedule.Request) bool { return len(r.Dishes) == 2 && r.Dishes[0].Target != nil }},
	} {
		r, err := schedule.Understand([]byte(c.written), now)
		if err != nil || !c.holds(r) {
			t.Errorf("%s\n%v\n%+v\n%+v %+v", c.written, err, r.Dishes, r.Guests, r.Grill)
		}
	}
}

func near(got *unit.Temperature, f float64) bool {
	return got != nil && got.Fahrenheit() > f-1 && got.Fahrenheit() < f+1
}

// The number of a model is no size.
func TestTheNumberOfAModelIsNoSize(t *testing.T) {
	_, err := schedule.Understand([]byte("serve: 2027-07-03 18:00 Chicago\ngrill: Roastmaster 575\ndishes: [pork butt 8 lb]\n"), time.Time{})
	if err == nil || strings.Contains(err.Error(), "kettle 575") || !strings.Contains(err.Error(), "pellet grill") {
		t.Error(err)
	}
}
