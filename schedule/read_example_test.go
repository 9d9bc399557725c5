package schedule_test

import (
	"fmt"

	"example.com/cookday/schedule"
)

// All faults come at once, each with its path.
func ExampleRead() {
	_, err := schedule.Read([]byte(`
format: 1
serve: {date: 2027-07-03, time: "18:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 22}
dishes:
  - {cut: briskett, weight: 12 lb}
  - {cut: burger, weight: 6 lb, count: 12, target: 140 °F}
`))
	fmt.Println(err)
	// Output:
	// grill.diameter: 22: a length needs a unit: in, ft, mm, cm or m, such as 22 in
	// dishes[0].cut: "briskett" is not in the catalogue; the nearest are brisket, brisket-flat and brisket-point
	// dishes[1].weight: 6 lb is not plausible for each of 12 pieces: for burger it is from 2.5 oz to 1 lb a piece
	// dishes[1].target: A target of 140 °F (60 °C) is below the USDA minimum of 160 °F (72 °C). Grinding mixes surface bacteria through the meat, so it can't go lower. Set a target of 160 °F or more.
}
