package assemble

import (
	"fmt"

	daypkg "example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/unit"
)

// portionText says how thick a dish may be cut to chill in time.
func dayPortionText(d *daypkg.Day, name string) string {
	t, _ := daypkg.ThickestPortion()
	return fmt.Sprintf("Slice or pull %s, no piece thicker than %s.", name, d.Req.Units.Length(unit.Length(t)))
}
