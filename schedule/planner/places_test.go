package planner_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

const frailTurkey = "serve: {date: 2027-07-04, time: \"18:00\", tz: America/Chicago}\ngrill: {kind: kettle, diameter: 26 in}\nguests: {adults: 6, frail: true}\ndishes: [{cut: turkey, weight: 9 lb, level: 325 F, prep: []}]\n"

const iceInside = "time,dish,kind,value\n2027-07-04 12:30,,grate,325 F\n2027-07-04 13:00,turkey,on,\n2027-07-04 13:40,turkey,core,30 F\n2027-07-04 14:40,turkey,core,70 F\n2027-07-04 15:30,turkey,core,105 F\n2027-07-04 16:20,turkey,core,142 F\n2027-07-04 16:55,turkey,core,165 F\n"

// One reading of a bird that was frozen in the middle finishes nothing: it was "take it off now" at
// 165 °F in one place, with frail guests at table.
func TestOnePlaceOfAFrozenBirdIsNoProof(t *testing.T) {
	p := plantest.Plan(t, frailTurkey)
	for more, off := range map[string]bool{
		"":                                     false,
		"2027-07-04 16:57,turkey,core,166 F\n": false,
		"2027-07-04 16:57,turkey,core,166 F\n2027-07-04 16:58,turkey,core,167 F\n":               true,
		"2027-07-04 16:57,turkey,core,166 F breast\n2027-07-04 16:58,turkey,core,167 F breast\n": false,
		"2027-07-04 16:57,turkey,coldest,166 F\n":                                                true,
		"2027-07-04 16:57,turkey,coldest,158 F\n":                                                false,
		"2027-07-04 16:57,turkey,coldest,158 F\n2027-07-04 16:58,turkey,core,168 F\n":            false,
		"2027-07-04 16:57,turkey,core,166 F\n2027-07-04 16:58,turkey,core,150 F\n":               false,
		"2027-07-04 16:57,turkey,coldest,158 F\n2027-07-04 17:20,turkey,coldest,166 F\n":         true,
	} {
		q := plantest.Revised(t, p, iceInside+more, "2027-07-04 17:21")
		if f := ordersOff(q); f != off {
			t.Errorf("%q: taken off %v: %v %v", more, f, dueTexts(q), q.Findings)
		}
	}
	q := plantest.Revised(t, p, iceInside, "2027-07-04 16:56")
	f, _ := plantest.Finding(q, schedule.PastTarget)
	for _, wants := range []string{"leave it on", "breast", "both thighs", "coldest spot", "frozen in the middle", "(coldest)"} {
		if !strings.Contains(f.Text, wants) {
			t.Errorf("no %q: %s", wants, f.Text)
		}
	}
	q = plantest.Revised(t, p, iceInside+"2027-07-04 16:57,turkey,pulled,\n", "2027-07-04 16:58")
	if f, is := plantest.Finding(q, schedule.OffUnread); !is || !strings.Contains(f.Text, "do not cut it yet") || q.Dishes[0].Chance > 0.9 || due(q, "Carve") {
		t.Errorf("off by one place: %.3f %v", q.Dishes[0].Chance, q.Findings)
	}
}

// What else is not as hot everywhere as in one place: a bird of 10 lb and more, what was stuffed, rolled or
// tenderised. A chicken that is sound, and a roast that is whole, come off by one reading.
func TestOnePlaceOfWhatIsUnevenIsNoProof(t *testing.T) {
	for dish, wants := range map[string]string{
		"{id: d, cut: turkey, weight: 13 lb, level: 325 F, prep: []}":                                          "a bird this big",
		"{id: d, cut: pork-loin, weight: 4 lb, level: 325 F, prep: [rolled], finish: none}":                    "rolled",
		"{id: d, cut: pork-loin, weight: 4 lb, level: 325 F, prep: [stuffed], target: 165 F, finish: none}":    "stuffed",
		"{id: d, cut: tri-tip, weight: 2.5 lb, level: 300 F, prep: [tenderised], target: 145 F, finish: none}": "blades",
		"{id: d, cut: chicken, weight: 4.5 lb, level: 325 F, prep: []}":                                        "",
		"{id: d, cut: pork-loin, weight: 4 lb, level: 325 F, prep: [], finish: none}":                          "",
		"{id: d, cut: pork-butt, weight: 8 lb, level: 250 F, prep: [injected, rolled], wrap: none}":            "",
	} {
		p := plantest.Plan(t, "serve: {date: 2027-07-04, time: \"18:00\", tz: America/Chicago}\ngrill: {kind: kettle, diameter: 26 in}\nquiet: []\nguests: 6\ndishes: ["+dish+"]\n")
		off := p.Dishes[0].Batches[0]
		on, _ := off.Milestone(schedule.MilestoneOn)
		done, _ := off.Milestone(schedule.MilestoneTakeOff)
		log := "time,dish,kind,value\n" + on.Window.Expected.Format("2006-01-02 15:04") + ",d,on,\n" + done.Window.Expected.Format("2006-01-02 15:04") + ",d,core,"
		target := "165 F"
		switch {
		case strings.Contains(dish, "butt"):
			target = "203 F"
		case wants == "rolled", wants == "blades", strings.Contains(dish, "pork-loin, weight: 4 lb, level: 325 F, prep: []"):
			target = "150 F"
		}
		q := plantest.Revised(t, p, log+target+"\n", done.Window.Expected.Add(60e9).Format("2006-01-02 15:04"))
		f, _ := plantest.Finding(q, schedule.PastTarget)
		if wants == "" && strings.Contains(f.Text, "leave it on") || wants != "" && (!strings.Contains(f.Text, "leave it on") || !strings.Contains(f.Text, wants)) {
			t.Errorf("%s: %q in %q\n%v", dish, wants, f.Text, q.Findings)
		}
		if is := ordersOff(q); is != (wants == "") {
			t.Errorf("%s: off %v: %v", dish, is, dueTexts(q))
		}
	}
}

const ribsAndThighs = "serve: {date: 2027-07-04, time: \"18:30\", tz: America/Chicago}\ngrill: {kind: kettle, diameter: 26 in}\nguests: 6\ndishes:\n  - {id: ribs, cut: spare-ribs, weight: 3 lb, count: 2, level: 300 F}\n  - {id: thighs, cut: chicken-thigh, weight: 6 oz, count: 8, level: 300 F}\n"

const thighsRead = "time,dish,kind,value\n2027-07-04 13:30,ribs,on,\n2027-07-04 16:00,ribs,core,175 F\n2027-07-04 16:30,thighs,on,\n2027-07-04 17:05,thighs,core,140 F\n2027-07-04 17:30,thighs,core,181 F\n"

// Of eight thighs one reading is of one: it was "take it off now" for all of them.
func TestOneOfManyPiecesIsNotAll(t *testing.T) {
	p := plantest.Plan(t, ribsAndThighs)
	for more, off := range map[string]bool{
		"":                                     false,
		"2027-07-04 17:31,thighs,core,182 F\n": false,
		"2027-07-04 17:31,thighs,core,182 F\n2027-07-04 17:32,thighs,core,181 F\n": true,
		"2027-07-04 17:31,thighs,coldest,181 F\n":                                  true,
		"2027-07-04 17:31,thighs,coldest,161 F\n":                                  false,
	} {
		q := plantest.Revised(t, p, thighsRead+more, "2027-07-04 17:33")
		f, _ := plantest.Finding(q, schedule.PastTarget)
		if is := ordersOff(q); is != off {
			t.Errorf("%q: taken off %v: %v", more, is, dueTexts(q))
		}
		if asks := strings.Contains(f.Text, "the thickest and the one farthest from the coals"); asks == off && !strings.Contains(more, "161") {
			t.Errorf("%q: %v", more, q.Findings)
		}
	}
	q := plantest.Revised(t, p, thighsRead+"2027-07-04 17:31,thighs,pulled,\n", "2027-07-04 17:32")
	if f, is := plantest.Finding(q, schedule.OffUnread); !is || !strings.Contains(f.Text, "8 pieces, and too few") {
		t.Errorf("off by one of eight: %v", q.Findings)
	}
}

// Raw thighs that go on beside ribs that are partly cooked drip on them: nothing was said. It is said as
// they go on, and moves no time of the ribs.
func TestRawBesideWhatIsPartlyCooked(t *testing.T) {
	p := plantest.Plan(t, ribsAndThighs)
	log := thighsRead[:strings.Index(thighsRead, "2027-07-04 17:05")]
	q := plantest.Revised(t, p, log, "2027-07-04 16:31")
	f, is := plantest.Finding(q, schedule.RawBeside)
	if !is || !strings.Contains(f.Text, "own tongs") || !strings.Contains(f.Text, "own part of the grate") || !strings.Contains(f.Text, "165 °F") {
		t.Errorf("raw beside ribs: %v", q.Findings)
	}
	for name, r := range map[string]schedule.Plan{
		"long since":    plantest.Revised(t, p, log, "2027-07-04 16:50"),
		"on together":   plantest.Revised(t, p, strings.Replace(log, "16:30", "13:40", 1), "2027-07-04 16:31"),
		"ribs are off":  plantest.Revised(t, p, strings.Replace(log, "16:00,ribs,core,175 F", "16:25,ribs,pulled,", 1), "2027-07-04 16:31"),
		"ribs put on":   plantest.Revised(t, p, "time,dish,kind,value\n2027-07-04 13:30,ribs,on,\n", "2027-07-04 13:31"),
		"ribs to thigh": plantest.Revised(t, p, "time,dish,kind,value\n2027-07-04 13:30,thighs,on,\n2027-07-04 14:15,ribs,on,\n", "2027-07-04 14:16"),
	} {
		if f, is := plantest.Finding(r, schedule.RawBeside); is {
			t.Errorf("%s: %s", name, f.Text)
		}
	}
}

// ordersOff says whether a piece is to come off now.
func ordersOff(p schedule.Plan) bool {
	f, is := plantest.Finding(p, schedule.PastTarget)
	return is && strings.Contains(f.Text, " off now") || due(p, "take it off now")
}
