package plantest

// Days are invented days, each after something that days differ in. Every
// one has a plan or a reason.
var Days = map[string]string{
	"terrace": `
format: 1
name: Saturday on the terrace
serve: {date: 2027-07-03, time: "18:00", tz: America/Chicago}
guests: {adults: 16, children: 6}
grill: {kind: kettle, diameter: 22 in, gauge_offset: 40 °F}
oven: {hold: 170 °F}
weather: {air: 84 °F, night: 66 °F, humidity: 55%, wind: 8 mph}
quiet: [{from: "23:00", to: "05:30"}]
dishes:
  - {name: Brisket, cut: brisket, weight: 12 lb, wrap: {with: foil, from: 150 °F}, hold: [insulated-box, oven]}
  - {name: Chickens, cut: chicken-spatchcock, weight: 4.5 lb, count: 2}
`,
	"burgers": `
format: 1
serve: {date: 2027-05-15, time: "13:00", tz: Europe/Berlin}
guests: 12
grill: {kind: kettle, diameter: 57 cm}
units: metric
dishes:
  - {name: Burgers, cut: burger, weight: 170 g, count: 20}
  - {name: Corn, cut: corn, count: 6}
`,
	"shoulder": `
format: 1
serve: {date: 2027-09-18, time: "17:00", tz: America/New_York}
grill: {kind: kettle, diameter: 22 in}
oven: {hold: 170 °F}
weather: {air: 60 °F, night: 50 °F}
quiet: [{from: "22:30", to: "06:00"}]
confidence: 0.8
dishes:
  - {name: Shoulder, cut: pork-butt, weight: 8 lb}
`,
	"two sittings": `
format: 1
serve: {date: 2027-06-12, time: "19:00", tz: America/Denver}
grill: {kind: box, width: 24 in, depth: 18 in, fuel: lump}
weather: {altitude: 5280 ft, air: 80 °F}
dishes:
  - {name: Early burgers, cut: burger, weight: 5 oz, count: 8, serve: "17:30"}
  - {name: Late burgers, cut: burger, weight: 5 oz, count: 8}
  - {name: Steaks, cut: steak, weight: 14 oz, count: 2, target: medium-rare}
`,
	"roast": `
format: 1
serve: {date: 2027-12-24, time: "18:30", tz: Europe/London}
guests: {adults: 6}
grill: {kind: kettle, diameter: 26 in}
weather: {air: 5 C, wind: 4 m/s}
confidence: 0.85
dishes:
  - {name: Roast, cut: rib-roast-bone-in, weight: 3 kg, target: {final: 54 C}}
  - {name: Potatoes, cut: potatoes, count: 8}
`,
	"two levels": `
format: 1
serve: {date: 2027-07-03, time: "18:00", tz: America/Chicago}
grill: {kind: upright, diameter: 18.5 in}
dishes:
  - {name: Butts, cut: pork-butt, weight: 7 lb, count: 3}
  - {name: Ribs, cut: baby-backs, weight: 2.25 lb, count: 4, lies: standing}
`,
	"raised": `
format: 1
serve: {date: 2027-07-03, time: "18:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in, raised: true}
dishes:
  - {name: Ribs, cut: baby-backs, weight: 2.25 lb, count: 5}
`,
	"long brisket": `
format: 1
serve: {date: 2027-07-03, time: "18:00", tz: America/Chicago}
grill: {kind: upright, diameter: 18.5 in, levels: 1}
dishes:
  - {name: Brisket, cut: brisket, weight: 16 lb}
`,
	"gas": `
format: 1
serve: {date: 2027-08-01, time: "12:30", tz: America/Los_Angeles}
grill:
  kind: other
  zones:
    - {name: left, width: 12 in, depth: 18 in, min: 225 °F, max: 400 °F}
    - {name: right, width: 12 in, depth: 18 in, min: 350 °F, max: 550 °F, direct: true}
dishes:
  - {name: Chicken, cut: chicken-spatchcock, weight: 4 lb}
  - {name: Sausages, cut: sausage, weight: 4 oz, count: 10}
`,
	"thaw": `
format: 1
serve: {date: 2027-07-03, time: "18:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in}
earliest: "06:00"
dishes:
  - {name: Turkey, cut: turkey, weight: 12 lb, start: frozen}
`,
	"thaw in both": `
format: 1
serve: {date: 2027-07-03, time: "15:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in}
earliest: {date: 2027-07-01, time: "12:30"}
dishes:
  - {name: Turkey, cut: turkey, weight: 14 lb, start: frozen}
`,
	"ahead": `
format: 1
serve: {date: 2027-07-03, time: "18:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in}
oven: {hold: 170 °F}
dishes:
  - {name: Brisket, cut: brisket, weight: 12 lb, ready: day-before}
  - {name: Burgers, cut: burger, weight: 6 oz, count: 4}
`,
	"noon": `
format: 1
serve: {date: 2027-07-03, time: "12:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in}
dishes:
  - {name: Brisket, cut: brisket, weight: 12 lb}
`,
	"travel": `
format: 1
serve: {date: 2027-10-09, time: "15:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in}
earliest: "05:00"
weather: {air: 65 °F}
dishes:
  - {name: Ribs, cut: baby-backs, weight: 2.5 lb, count: 2, travel: 30m}
`,
	"sear": `
format: 1
serve: {date: 2027-06-20, time: "19:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in}
confidence: 0.7
dishes:
  - {name: Tri-tip, cut: tri-tip, weight: 2.5 lb, target: medium, finish: sear}
`,
	"too much": `
format: 1
serve: {date: 2027-06-20, time: "12:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 18 in}
earliest: "09:00"
dishes:
  - {name: Brisket, cut: brisket, weight: 14 lb}
`,
	"supper and lunch": `
format: 1
serve: {date: 2027-07-04, time: "12:30", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in}
quiet: [{from: "23:00", to: "07:00"}]
dishes:
  - {name: Burgers, cut: burger, weight: 6 oz, count: 6, serve: {date: 2027-07-03, time: "18:30"}}
  - {name: Chicken, cut: chicken-spatchcock, weight: 4 lb}
`,
	"night in the oven": `
format: 1
serve: {date: 2027-07-03, time: "12:30", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in}
oven: {hold: 170 °F}
quiet: [{from: "22:00", to: "07:00"}]
dishes:
  - {name: Butts, cut: pork-butt, weight: 9 lb, count: 2}
`,
	"box": `
format: 1
serve: {date: 2027-07-03, time: "18:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in}
box: good
dishes:
  - {name: Chicken, cut: chicken-spatchcock, weight: 4 lb, hold: [tent]}
  - {name: Butt, cut: pork-butt, weight: 8 lb, level: 275 °F}
`,
	"overnight": `
format: 1
serve: {date: 2027-11-07, time: "14:00", tz: America/Chicago}
grill: {kind: box, width: 30 in, depth: 20 in}
oven: {hold: 170 °F}
quiet: [{from: "23:30", to: "05:00"}]
confidence: 0.7
dishes:
  - {name: Brisket, cut: brisket, weight: 15 lb, level: 225 °F}
  - {name: Thighs, cut: chicken-thigh, weight: 6 oz, count: 8}
`,
}
