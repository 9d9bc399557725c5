package instant

import (
	"time"
)

// quarterDown is the quarter of an hour before an instant: a cook's clock.
func QuarterDown(t time.Time) time.Time { return t.Truncate(Quarter) }
