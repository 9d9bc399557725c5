package schedule

// Places of a stage away from or on the grate.
const (
	PlaceGrate = "grate"
	PlaceOven  = "oven"
)
