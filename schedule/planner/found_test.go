package planner_test

import (
	"testing"

	"example.com/cookday/schedule/internal/plantest"
)

// Days that fuzzing found: each once made a plan that was not sound, or that Check took
// for one.
var foundDays = map[string]string{
	"ribs where water boils below their tender temperature": `
format: 1
serve: {date: 2027-12-24, time: "18:30", tz: UTC}
grill: {kind: kettle, diameter: 22 in}
weather: {altitude: 4963 m}
dishes:
  - {cut: baby-backs, weight: 1 lb}
`,
	"a doneness nearer to boiling than the rule for heights allows, at the sea": `
format: 1
serve: {date: 2027-12-24, time: "18:30", tz: Europe/Berlin}
grill: {kind: kettle, diameter: 22 in}
units: metric
dishes:
  - {cut: brisket-flat, weight: 2.5 kg, target: chopped, wrap: {with: foil, after: 4h}}
`,
	"quiet hours that overlap each other and the serving": `
format: 1
serve: {date: 2028-02-29, time: "07:40", tz: UTC}
grill: {kind: kettle, diameter: 22 in}
oven: {hold: 196 F}
quiet:
  - {from: "06:55", to: "17:30"}
  - {from: "12:00", to: "21:55"}
dishes:
  - {cut: baby-backs, weight: 1 lb}
`,
	"quiet hours that begin between the light and the pouring of the coals": `
format: 1
serve: {date: 2028-02-29, time: "05:45", tz: Australia/Lord_Howe}
grill: {kind: box, width: 0.3737 m, depth: 1.0979 m, fuel: lump}
oven: {hold: 227 F}
weather: {air: 26.8 C, night: -8.1 C, humidity: 77 %, wind: 22.3 m/s, rain: false, sheltered: true, altitude: 5793 m}
quiet:
  - {from: "04:55", to: "09:15"}
  - {from: "07:05", to: "00:25"}
confidence: 0.7
dishes:
  - {cut: turkey-breast, weights: [2.311857884 kg, 4.184755410 kg], target: well-done, zone: indirect, hold: [tent, counter], travel: 30m}
`,
	"cooked to be chilled, and done early": `
format: 1
serve: {date: 2027-03-14, time: "20:30", tz: Australia/Lord_Howe}
grill: {kind: box, width: 0.2885 m, depth: 0.4163 m, fuel: lump}
oven: {hold: 227 F}
confidence: 0.7
guests: 1
dishes:
  - {cut: beef-tenderloin-half, weights: [0.98 kg, 0.4536 kg], target: well-done, start: frozen, rest: 0m, hold: [tent, counter], prep: [brined, tenderised, rolled], ready: day-before}
`,
	"two dishes of one name, both tight": `
format: 1
serve: {date: 2027-07-03, time: "18:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 18 in}
dishes:
  - {name: Ribs, cut: spare-ribs, weight: 4 lb, serve: "12:00"}
  - {name: Ribs, cut: spare-ribs, weight: 4 lb}
`,
	"two batches, one of them done before its wrap": `
format: 1
serve: {date: 2027-07-03, time: "18:00", tz: Europe/Berlin}
grill: {kind: kettle, diameter: 18 in, fuel: lump}
oven: {hold: 170 F}
weather: {air: 92 F, altitude: 5280 ft}
earliest: "06:00"
confidence: 0.6
units: us
dishes:
  - {cut: chicken-thigh, weight: 0.127 kg, count: 1}
  - {cut: pork-belly, weight: 1.814 kg, count: 2, wrap: {with: foil, after: 4h}}
  - {cut: potatoes, weight: 0.218 kg, count: 8}
`,
	"a wrap by the clock, a hair less likely than asked": `
format: 1
serve: {date: 2027-07-03, time: "12:00", tz: America/Chicago}
grill: {kind: other, zones: [{name: left, width: 12 in, depth: 18 in, min: 225 F, max: 400 F}, {name: right, width: 12 in, depth: 18 in, min: 350 F, max: 550 F, direct: true}]}
oven: {hold: 170 F}
quiet: [{from: "23:00", to: "05:30"}]
confidence: 0.8
units: us
dishes:
  - {cut: beef-plate-ribs, weight: 2.177 kg, count: 2, wrap: {with: foil, after: 4h}, prep: [injected]}
`,
	"two batches that wait in different ways": `
format: 1
serve: {date: 2027-07-03, time: "12:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 18 in, fuel: lump}
oven: {hold: 170 F}
weather: {air: 40 F, night: 25 F, wind: 10 mph}
confidence: 0.6
units: us
dishes:
  - {cut: baby-backs, weight: 1.021 kg, count: 2, wrap: {with: foil, from: 150 F}}
`,
}

func TestFoundDays(t *testing.T) {
	for name, text := range foundDays {
		t.Run(name, func(t *testing.T) {
			p, ok := planned(t, []byte(text), false)
			if !ok {
				t.Fatal("the request is refused")
			}
			plantest.LookOver(t, p)
		})
	}
}
