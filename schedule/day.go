package schedule

import (
	"time"
)

// horizon is how long before the last serving instant a plan may begin. Two
// days hold the slowest brisket at the asked chance with its rest.
const Horizon = 48 * time.Hour
