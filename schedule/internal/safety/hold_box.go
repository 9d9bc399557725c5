package safety

import "math"

// What a logged hold must show of a box that is called good. A piece of the usual size at
// boxAtC loses in a good box at most goodBoxRate of what it is above the room in an hour:
// records of good boxes lost 0.04 to 0.062 (holding_2.csv H5, H9, H12), of usual ones 0.07
// and more (H1 to H4, H8, cooldown.csv). Shorter than goodBoxHours they look alike. The
// limit between them is set on these rows.
const (
	boxAtC       = (200.0 - 32) * 5 / 9
	boxRoomC     = (70.0 - 32) * 5 / 9
	goodBoxRate  = 0.065
	GoodBoxHours = 5
)

// GoodBoxC is what a probe in the middle must still show after so many hours in a box for
// it to count as good; +Inf where that is too short a time to tell.
func GoodBoxC(hours float64) float64 {
	if hours < GoodBoxHours {
		return math.Inf(1)
	}
	return boxRoomC + (boxAtC-boxRoomC)*math.Exp(-goodBoxRate*hours)
}
