package assemble

import (
	"fmt"

	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/unit"
)

// portionText says how thick a dish may be cut to chill in time.
func (d *Assembler) portionText(name string) string {
	t, _ := day.ThickestPortion()
	return fmt.Sprintf("Slice or pull %s, no piece thicker than %s.", name, d.Req.Units.Length(unit.Length(t)))
}
