package planner_test

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/cookday/schedule"
)

// What is never advised. Each row is a story that begs for it, and what has to be said instead.
func TestNeverAdvised(t *testing.T) {
	const tight = "10:00,lit,\n10:15,lit-coals,60\n10:15,vents,all open\n10:40,grate,380 °F\n10:45,vents,\"top 1/8, bottom 1/16\"\n10:58,grate,392 °F\n11:10,grate,390 °F\n"
	const dead = "10:00,vents,\"top 1/4, bottom 1/4\"\n10:00,grate,240 °F\n10:40,fire-out,\n"
	const weak = "09:00,vents,all open\n09:00,grate,240 °F\n10:00,grate,220 °F\n11:00,grate,200 °F\n11:20,grate,195 °F\n"
	const flare = "10:00,vents,\"top 1/4, bottom 1/4\"\n10:00,grate,250 °F\n10:30,grate,251 °F\n10:55,grate,250 °F\n11:00,grate,420 °F\n"
	steady := func(f string) string {
		return "10:00,vents,\"top 1/8, bottom 1/16\"\n10:00,grate," + f + "\n10:30,grate," + f + "\n11:00,grate," + f + "\n"
	}
	for _, c := range []struct {
		name, fields, log string
		must, never       []string
		fits              func(schedule.Steer) bool
	}{
		{"open a tight fire at once", "want=250 °F; unlit=60", tight, []string{"open the top vent, wait two minutes, lift the lid a finger's width on the side away from you"}, nil, nil},
		{"shut a fire that is too hot, food on", "want=225 °F", steady("330 °F"), nil, []string{"shut both", "close all"}, func(s schedule.Steer) bool { return s.To.Top >= 0.124 && s.To.Bottom >= 0.0624 }},
		{"the top under an eighth", "want=225 °F; shows=330 °F; top=1/4; bottom=1/16", "", nil, nil, func(s schedule.Steer) bool { return s.To.Top >= 0.124 }},
		{"the top under a quarter where the bottom steers", "want=225 °F; shows=330 °F; top=1/2; bottom=1/16; steer=bottom", "", nil, nil, func(s schedule.Steer) bool { return s.To.Top >= 0.249 }},
		{"open the lid on burning fat", "want=250 °F", flare, []string{"don't open the lid", "never water", "call the fire service", "without heat from then on"}, []string{"lift the lid"}, func(s schedule.Steer) bool { return s.Do == "look-first" }},
		{"lit coals over food", "want=250 °F; unlit=0", "09:00,lit,\n09:15,lit-coals,15\n09:15,vents,all open\n09:45,grate,265 °F\n10:30,grate,230 °F\n11:00,grate,195 °F\n11:15,grate,185 °F\n",
			[]string{"food to a tray", "10 min at most", "away from you", "3 ft", "carbon monoxide", "never in a house, garage, shed, tent or porch, nor under a roof"}, []string{"blow", "fan", "fluid"}, func(s schedule.Steer) bool { return s.Do == "add-lit" }},
		{"light in a storm", "want=250 °F; wind=25 mph", dead, []string{"too windy to light", "oven", "325 °f"}, []string{"light a fresh chimney"}, nil},
		{"lit coals in a storm", "want=250 °F; wind=25 mph", weak, []string{"light nothing"}, nil, func(s schedule.Steer) bool { return s.Do != "add-lit" }},
		{"food without heat", "want=250 °F", dead, []string{"measure the food", "2 hr", "1 hr on a day above 90 °f"}, nil, nil},
		{"count on vents below 200 °F", "want=250 °F", "09:00,vents,\"top 1/4, bottom 1/4\"\n09:00,grate,185 °F\n09:30,grate,175 °F\n10:00,grate,165 °F\n10:20,grate,160 °F\n", []string{"measure the food"}, nil, nil},
		{"take the lid's gauge for the grate", "want=250 °F; shows=420 °F; at=lid; top=1/2; bottom=1/2", "", []string{"hold a thermometer at grate height first"}, []string{"expect "}, func(s schedule.Steer) bool { return s.To == nil && s.In15 == nil }},
		{"a screen that burns, a grill that is turned", "want=250 °F", "10:00,vents,\"top 1/4, bottom 1/4\"\n10:00,grate,250 °F\n11:00,grate,248 °F\n11:10,wind,14 mph\n11:30,grate,222 °F\n11:45,grate,212 °F\n", []string{"of metal or stone", "3 ft off", "don't move or turn a lit grill"}, []string{"wood", "cardboard"}, nil},
		{"steer above 450 °F", "want=500 °F; shows=300 °F; top=1/4; bottom=1/4", "", nil, nil, func(s schedule.Steer) bool { return s.Do == "practice-only" && s.To == nil }},
		{"steer a ceramic cooker", "want=250 °F; shows=320 °F; top=1/4; bottom=1/4; grill=ceramic", "", []string{"wait an hour", "stores heat for hours"}, []string{"halve", "a quarter open"}, func(s schedule.Steer) bool { return s.Do == "practice-only" && s.To == nil }},
		{"chase cold meat", "want=250 °F; shows=225 °F; top=1/4; bottom=1/4; since-lit=45m", "", nil, []string{"more coals", "lit coals"}, func(s schedule.Steer) bool { return s.Do != "add-lit" }},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := fireAsked(t, c.fields, c.log)
			text := strings.ToLower(told(s))
			t.Logf("%s: %s", s.Do, told(s))
			for _, m := range c.must {
				if !strings.Contains(text, m) {
					t.Errorf("does not say %q", m)
				}
			}
			for _, n := range c.never {
				if strings.Contains(text, n) {
					t.Errorf("says %q", n)
				}
			}
			if c.fits != nil && !c.fits(s) {
				t.Errorf("%+v, from %+v to %+v", s, s.From, s.To)
			}
			soundSteer(t, s)
		})
	}
}

// Whatever a log of a fire says, what is never said is not said, and it is told in whole sentences.
func TestNoLogMakesAdviceUnsound(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		minute, log := 600, ""
		for range rapid.IntRange(1, 14).Draw(rt, "entries") {
			kind := rapid.SampledFrom([]string{"grate", "grate", "grate", "gauge", "vents", "lid-opened", "lid-closed", "lit", "lit-coals", "unlit-coals", "ash-cleared", "wind", "refuelled", "fire-out", "level"}).Draw(rt, "kind")
			value := ""
			switch kind {
			case "grate", "gauge":
				value = fmt.Sprintf("%d °F", rapid.IntRange(50, 600).Draw(rt, "f"))
			case "level":
				value = fmt.Sprintf("%d °F", rapid.IntRange(200, 350).Draw(rt, "f"))
			case "vents":
				value = fmt.Sprintf("\"top %d%%, bottom %d%%\"", rapid.IntRange(0, 100).Draw(rt, "top"), rapid.IntRange(0, 100).Draw(rt, "bottom"))
			case "lit-coals", "unlit-coals":
				value = fmt.Sprint(rapid.IntRange(1, 120).Draw(rt, "coals"))
			case "wind":
				value = fmt.Sprintf("%d mph", rapid.IntRange(0, 40).Draw(rt, "wind"))
			}
			log += fmt.Sprintf("%02d:%02d,%s,%s\n", minute/60, minute%60, kind, value)
			minute += rapid.IntRange(0, 50).Draw(rt, "later")
		}
		want := rapid.IntRange(200, 440).Draw(rt, "want")
		s := fireAsked(t, fmt.Sprintf("want=%d °F; grill=%s; top=1/4; bottom=1/4", want, rapid.SampledFrom([]string{"kettle", "smoker", "drum"}).Draw(rt, "grill")), log)
		soundSteer(t, s)
		for _, sentence := range append([]string{s.Text, s.Expect, s.Look, s.Why}, s.Also...) {
			if strings.Contains(sentence, "NaN") || strings.Contains(sentence, "  ") || sentence != "" && !strings.HasSuffix(sentence, ".") && !strings.HasSuffix(sentence, "?") {
				t.Errorf("no sentence: %q", sentence)
			}
		}
		if t.Failed() {
			rt.Fatalf("%s\n%s", log, told(s))
		}
	})
}
