package instant

import (
	"time"
)

// quarter is to what a cook's clock is rounded ahead of the day.
const Quarter = 15 * time.Minute
