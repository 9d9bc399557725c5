package schedule

import (
	"time"
)

// Lethality compares the predicted core temperature of a cook and its rest with a
// published table of times and temperatures. It never stands for the minimum.
type Lethality struct {
	Product  string     `json:"product"`            // that the table was published for
	Source   string     `json:"source"`             // key of the publication
	FatPct   float64    `json:"fat_pct,omitempty"`  // of the table's column; poultry only
	TableLog float64    `json:"table_log,omitzero"` // decades of the whole table; 0 where it prints none
	Fraction float64    `json:"fraction"`           // of the table's reduction, 1 at the most
	Reached  bool       `json:"reached"`            // the whole of it
	At       *time.Time `json:"at,omitempty"`       // when
	Text     string     `json:"text"`
}
