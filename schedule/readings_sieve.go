package schedule

// Why a reading is not believed.
const (
	ProbeInAir   = "probe-in-air"   // it shows the air of the grill, or the grate
	ProbeFellOut = "probe-fell-out" // it shows the air outside
	ProbeHot     = "probe-hot"      // warmer than the meat can be by now
	ProbeCold    = "probe-cold"     // colder than it can have become
)
