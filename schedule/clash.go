package schedule

// Codes of the findings that make a day infeasible for reasons of its dishes.
const (
	CodeClash        = "clash"
	CodeNoRoom       = "no-room"
	CodeNeverArrives = "never-arrives"
)
