package cut_test

import (
	"fmt"

	"example.com/cookday/schedule/cut"
)

func ExampleFind() {
	c, _ := cut.Find("brisket")
	d, _ := c.DefaultDoneness()
	fmt.Printf("%s: %s at %.1f C, rest %.0f min or more\n", c.Title, d.Name, d.CoreC, c.Rest.MinMinutes)
	t, w, l := c.Dimensions(6.8, 0)
	fmt.Printf("a piece of 6.8 kg is about %.0f x %.0f x %.0f cm\n", 100*t, 100*w, 100*l)
	// Output:
	// Brisket: sliced at 95.0 C, rest 30 min or more
	// a piece of 6.8 kg is about 8 x 28 x 43 cm
}
