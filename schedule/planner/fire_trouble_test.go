package planner_test

import (
	"context"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
)

// fireAsked asks about a fire as a cook would.
func fireAsked(t *testing.T, fields string, log string) schedule.Steer {
	t.Helper()
	named := map[string]string{}
	for _, f := range strings.Split(fields, "; ") {
		name, value, _ := strings.Cut(f, "=")
		named[name] = value
	}
	var entries []schedule.Entry
	if log != "" {
		var err error
		if entries, err = schedule.ReadFireLog([]byte("time,kind,value\n" + log)); err != nil {
			t.Fatal(err)
		}
	}
	q, err := schedule.ReadFireInquiry(named, entries)
	if err != nil {
		t.Fatal(err)
	}
	s, err := planner.Fire(context.Background(), q)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func told(s schedule.Steer) string {
	return strings.Join(append([]string{s.Text, s.Expect, s.Look, s.Why}, s.Also...), " ")
}

// less and more say which way the air goes.
func lessAir(s schedule.Steer) bool {
	return s.To != nil && s.To.Top <= s.From.Top && s.To.Bottom <= s.From.Bottom && *s.To != *s.From
}

func moreAir(s schedule.Steer) bool {
	return s.To != nil && s.To.Top >= s.From.Top && s.To.Bottom >= s.From.Bottom && *s.To != *s.From
}

// oneVent says whether air is taken away at one vent alone.
func oneVent(s schedule.Steer) bool {
	return lessAir(s) && (s.To.Top == s.From.Top) != (s.To.Bottom == s.From.Bottom)
}

// pour is a fire as a plan lights it for 250 F.
const pour = "09:00,lit-coals,15\n09:00,unlit-coals,90\n09:00,vents,\"top 1/4, bottom 1/4\"\n"

// Thirty troubles with the fire as cooks tell them, each with the shape of a sane answer. The stories are invented; what
// is sane is common practice, no source.
func TestFireTroubles(t *testing.T) {
	for _, c := range []struct {
		name, fields, log string
		sane              func(schedule.Steer) bool
	}{
		{"it creeps up all morning", "want=250 F", "08:00,vents,\"top 1/4, bottom 1/4\"\n08:00,grate,232 F\n08:30,grate,252 F\n09:00,grate,268 F\n09:30,grate,285 F\n", lessAir},
		{"it was fine until the wind came", "want=250 F", "10:00,vents,\"top 1/4, bottom 1/4\"\n10:00,grate,250 F\n10:30,grate,252 F\n11:00,grate,248 F\n11:10,wind,14 mph\n11:30,grate,222 F\n11:45,grate,212 F\n",
			func(s schedule.Steer) bool { return moreAir(s) && strings.Contains(told(s), "creen") }},
		{"fell to 200 and all vents are open", "want=250 F", "09:00,vents,all open\n09:00,grate,245 F\n10:00,grate,225 F\n11:00,grate,205 F\n11:20,grate,200 F\n",
			func(s schedule.Steer) bool {
				return (s.Do == "add-lit" || s.Do == "add-unlit" || s.Do == "clear-ash") && s.Reach == "too-weak"
			}},
		{"310 and I want 250", "want=250 F; shows=310 F; top=1/2; bottom=1/2", "", lessAir},
		{"the lid was off for ten minutes", "want=250 F", "10:00,vents,\"top 1/4, bottom 1/4\"\n10:00,grate,250 F\n10:30,grate,250 F\n10:40,lid-opened,\n10:50,lid-closed,\n10:52,grate,190 F\n",
			func(s schedule.Steer) bool { return s.Do == "leave" && s.Reason == "lid-was-off" }},
		{"it is steady at 250", "want=250 F", "10:00,vents,\"top 1/4, bottom 1/4\"\n10:00,grate,248 F\n10:30,grate,252 F\n11:00,grate,250 F\n", func(s schedule.Steer) bool { return s.Do == "leave" && s.LookMinutes >= 15 }},
		{"only 180 and I lit it half an hour ago", "want=250 F; shows=180 F; top=open; bottom=open; since-lit=25m", "", func(s schedule.Steer) bool { return s.Do == "leave" && s.Reason == "warming" }},
		{"the gauge in the lid shows 315", "want=250 F; shows=315 F; at=lid; top=1/2; bottom=1/4; since-lit=90m", "",
			func(s schedule.Steer) bool {
				return s.Do == "hold-thermometer" && s.In15 == nil && strings.Contains(s.Text, "close the top vent")
			}},
		{"the lid says 300, the grate said 250", "want=250 F", "10:00,vents,\"top 1/4, bottom 1/4\"\n10:00,gauge,300 F\n10:00,grate,252 F\n10:30,gauge,298 F\n",
			func(s schedule.Steer) bool { return s.Do == "leave" && s.In15 != nil }},
		{"it dropped 60 F in five minutes", "want=250 F", "10:00,vents,\"top 1/4, bottom 1/4\"\n10:00,grate,250 F\n10:30,grate,251 F\n10:55,grate,250 F\n11:00,grate,190 F\n",
			func(s schedule.Steer) bool { return s.Do == "read-again" && s.LookMinutes <= 5 }},
		{"and again, so it is true", "want=250 F", "10:00,vents,\"top 1/4, bottom 1/4\"\n10:00,grate,250 F\n10:30,grate,251 F\n10:55,grate,250 F\n11:00,grate,190 F\n11:06,grate,187 F\n", moreAir},
		{"it shot up to 400 and I touched nothing", "want=250 F", "10:00,vents,\"top 1/4, bottom 1/4\"\n10:00,grate,250 F\n10:30,grate,251 F\n10:55,grate,250 F\n11:00,grate,400 F\n",
			func(s schedule.Steer) bool {
				return s.Do == "look-first" && strings.Contains(s.Text, "Don't open the lid")
			}},
		{"45 lit and an eighth on both, still 318", "want=275 F; shows=318 F; top=1/8; bottom=1/8; lit=45; since-lit=60m", "",
			func(s schedule.Steer) bool {
				return lessAir(s) && s.To.Top >= 0.124 && strings.Contains(told(s), "two minutes")
			}},
		{"everything shut as far as I may, and 300 for an hour", "want=225 F", "10:00,vents,\"top 1/8, bottom 1/16\"\n10:00,grate,305 F\n10:30,grate,302 F\n11:00,grate,300 F\n11:30,grate,298 F\n",
			func(s schedule.Steer) bool {
				return s.Reach == "too-hot" && s.To.Top >= 0.124 && strings.Contains(told(s), "food off first")
			}},
		{"the coals are nearly gone", "want=250 F; unlit=0", "09:00,lit,\n09:15,lit-coals,15\n09:15,vents,all open\n09:45,grate,265 F\n10:30,grate,230 F\n11:00,grate,195 F\n11:15,grate,185 F\n",
			func(s schedule.Steer) bool {
				return s.Do == "add-lit" && s.Count >= 5 && strings.Contains(told(s), "upwind")
			}},
		{"top is at a sixteenth with food on", "want=225 F; shows=225 F; top=1/16; bottom=1/2", "", func(s schedule.Steer) bool { return s.To != nil && s.To.Top >= 0.124 && s.To.Bottom < 0.5 }},
		{"the fire went out", "want=250 F", "10:00,vents,\"top 1/4, bottom 1/4\"\n10:00,grate,240 F\n10:40,fire-out,\n", func(s schedule.Steer) bool { return s.Do == "relight" }},
		{"my ceramic cooker is at 300", "want=250 F; shows=300 F; grill=ceramic; top=1/4; bottom=1/4", "", func(s schedule.Steer) bool {
			return s.Do == "practice-only" && s.In15 == nil && strings.Contains(s.Why, "hours")
		}},
		{"creeping up, half and half: one vent", "want=250 F", "07:15,lit-coals,15\n07:15,unlit-coals,80\n07:15,vents,\"top 1/2, bottom 1/2\"\n08:15,grate,228 F\n08:45,grate,244 F\n09:15,grate,258 F\n09:45,grate,271 F\n10:15,grate,283 F\n", oneVent},
		{"340 after the lid was off ten minutes", "want=250 F", pour + "10:00,grate,248 F\n10:30,grate,252 F\n10:40,lid-opened,\n10:50,lid-closed,\n11:02,grate,340 F\n",
			func(s schedule.Steer) bool { return lessAir(s) && strings.Contains(s.Why, "while the lid was off") }},
		{"310 and I want 250, the brisket is on: one vent", "want=250 F; shows=310 F; top=1/2; bottom=1/2; since-lit=2h", "", oneVent},
		{"the wind pushed it up", "want=250 F", pour + "10:00,grate,249 F\n10:30,grate,251 F\n11:00,grate,248 F\n11:20,wind,18 mph\n11:30,grate,285 F\n",
			func(s schedule.Steer) bool { return lessAir(s) && s.Reason == "wind" }},
		{"new coals smolder white", "want=250 F", pour + "10:00,grate,249 F\n10:30,grate,251 F\n10:50,unlit-coals,30\n11:10,grate,228 F\n",
			func(s schedule.Steer) bool {
				return s.Reason == "fresh-coals" && !strings.Contains(told(s), "few are left")
			}},
		{"thirty lit, all open, 335 half an hour later", "want=250 F", "09:00,lit-coals,30\n09:00,unlit-coals,60\n09:00,vents,all open\n09:15,grate,230 F\n09:25,grate,305 F\n09:30,grate,335 F\n",
			func(s schedule.Steer) bool { return lessAir(s) && strings.Contains(told(s), "Flames or heavy smoke?") }},
		{"too hot for wings", "want=400 F; shows=470 F; top=open; bottom=open; layout=two-zone; since-lit=40m", "", oneVent},
		{"it won't come above 300 for a sear", "want=450 F; shows=300 F; top=open; bottom=open; layout=spread; lit=50; unlit=0; since-lit=45m", "",
			func(s schedule.Steer) bool { return strings.Contains(told(s), "take the lid off") }},
		{"sixty coals, and it sinks at hour six", "want=250 F", "08:00,lit-coals,12\n08:00,unlit-coals,60\n08:00,vents,\"top 1/4, bottom 1/4\"\n09:30,grate,252 F\n11:00,grate,250 F\n12:30,grate,247 F\n13:30,grate,238 F\n13:45,vents,\"top 1/2, bottom 1/2\"\n14:00,grate,226 F\n14:10,grate,219 F\n",
			func(s schedule.Steer) bool {
				return s.Do == "add-lit" && s.Reason == "spent" && s.Count >= 4 && s.Count <= 20
			}},
		{"only the lid, and the vents are left", "want=250 F; shows=290 F; at=lid; top=1/4; bottom=1/4; since-lit=2h", "", func(s schedule.Steer) bool { return s.Reason == "gauge-alone" }},
		{"a drum, told nothing but its vents", "want=250 F; shows=300 F; top=open; bottom=1/4; grill=drum; since-lit=2h", "", func(s schedule.Steer) bool { return strings.Contains(told(s), "Little is known of drums") }},
		{"275 for 250, 45 minutes after the light", "want=250 F; shows=275 F; top=1/4; bottom=1/4; since-lit=45m", "", func(s schedule.Steer) bool { return s.Do == "leave" }},
		{"100 behind shut vents, five hours on", "want=250 F; shows=100 F; top=shut; bottom=shut; since-lit=5h", "", func(s schedule.Steer) bool { return s.Do == "relight" }},
		{"345 at the grate, and the lid shows 300", "want=300 F", "10:00,vents,\"top 1/4, bottom 1/4\"\n10:00,grate,300 F\n10:30,grate,302 F\n11:00,grate,345 F\n11:00,gauge,300 F\n", func(s schedule.Steer) bool { return !moreAir(s) }},
		{"190 after eight hours, twelve on eighty", "want=250 F; shows=190 F; since-lit=8h; lit=12; unlit=80; top=1/2; bottom=1/2", "", func(s schedule.Steer) bool { return s.Do == "add-lit" && s.Reason == "spent" }},
		{"how do I sear", "want=600 F; shows=400 F; top=open; bottom=open", "", func(s schedule.Steer) bool { return s.Do == "practice-only" }},
		{"I do not know how the vents stand", "want=250 F; shows=300 F", "", func(s schedule.Steer) bool {
			return s.Do == "practice-only" && strings.Contains(s.Why, "how the vents stand")
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := fireAsked(t, c.fields, c.log)
			t.Logf("%s: %s", s.Do, told(s))
			if !c.sane(s) {
				t.Errorf("not sane: %+v, from %+v to %+v", s, s.From, s.To)
			}
			soundSteer(t, s)
		})
	}
}

// soundSteer is what holds for every advice: safety's words, ranges, and what is never said.
func soundSteer(t *testing.T, s schedule.Steer) {
	t.Helper()
	text := strings.ToLower(told(s))
	lights := s.Do == "add-lit" || s.Do == "relight" && !strings.Contains(text, "too windy")
	for _, never := range []string{"safe", "is out", "blow", "fan ", "turn the grill", "no looking", "overnight"} {
		if strings.Contains(text, never) && !(never == "is out" && s.Do == "relight") { // the log says so then
			t.Errorf("says %q: %s", never, text)
		}
	}
	if strings.Contains(text, "water on") || strings.Contains(text, "fluid") {
		t.Errorf("says what puts people in hospital: %s", text)
	}
	if strings.Contains(text, "light nothing in it") && lights {
		t.Errorf("lights a fire in a storm: %s", text)
	}
	asked := strings.Contains(text, "flames or heavy smoke? if so, shut both vents") // a fire that rose fast after the light: only if it burns
	if strings.Contains(text, "shut both vents") && s.Do != "look-first" && !asked {
		t.Errorf("shuts a fire that cooks: %s", text)
	}
	if s.Do == "move-vents" && (s.To == nil || s.To.Top < 0.124 || s.To.Bottom < 0.0624) {
		t.Errorf("vents below their marks: %+v", s.To)
	}
	for _, r := range []*schedule.SteerRange{s.Now, s.In15, s.In30} {
		if r != nil && !(r.LowC < r.MiddleC && r.MiddleC < r.HighC) {
			t.Errorf("no range: %+v", r)
		}
	}
	if s.Expect != "" && !strings.Contains(s.Expect, " to ") {
		t.Errorf("a single figure: %s", s.Expect)
	}
	if s.In15 != nil && !strings.Contains(s.Expect, "by your thermometer at the grate") {
		t.Errorf("a figure without its thermometer: %s", s.Expect)
	}
	if lights && !strings.Contains(text, "tray") {
		t.Errorf("lit coals over food: %s", text)
	}
	if (lights || s.Do == "add-unlit") && !strings.Contains(text, "carbon monoxide") {
		t.Errorf("fresh coals without their gas: %s", text)
	}
	if s.Do != "practice-only" && s.LookMinutes < 3 && s.Do != "relight" {
		t.Errorf("no time to look again: %+v", s)
	}
}
