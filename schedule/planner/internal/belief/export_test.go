package belief

import "example.com/cookday/schedule/planner/internal/spread"

// What the tests outside of the package need of its inside: days lie above it.
const (
	StallErrorK = stallErrorK
	PaceDrift   = paceDrift
)

// Run follows a journey at the pace exp(lnf).
func (c *Journey) Run(lnf float64) Path { return c.run(lnf) }

// SetCores says what the core of a path was at each reading.
func (p *Path) SetCores(cores []float64) { p.cores = cores }

// Before is what was believed before any reading.
func (b *Belief) Before() spread.Spread { return b.spread }

// Paces are the logarithms of the paces that may be.
func (b *Belief) Paces() []float64 { return b.xs }

// SetLike says how likely the readings are at each pace.
func (b *Belief) SetLike(like []float64) { b.like = like }
