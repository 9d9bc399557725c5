package schedule

// Codes of a piece that may not be ready.
const (
	Late      = "late"        // expected after its serving
	MayBeLate = "may-be-late" // expected before it, but not at the asked chance
)

// early is the code of a piece that will have to wait for long.
const Early = "early"
