package schedule

// Steer is one advice about a burning fire: what to do now, what the grate will have then, when to look again, and why.
// It is of a fire that is asked about alone, and of the finding grate-off-level of a revision.
type Steer struct {
	Do          string        `json:"do"`                     // leave, move-vents, add-lit, add-unlit, clear-ash, read-again, look-first, hold-thermometer, relight or practice-only
	Now         *SteerRange   `json:"now,omitempty"`          // the grate, as the readings and the fire have it
	From        *SteerVents   `json:"vents_from,omitempty"`   // as they stand
	To          *SteerVents   `json:"vents,omitempty"`        // as they should
	Count       int           `json:"count,omitempty"`        // of coals
	In15        *SteerRange   `json:"expect_15,omitempty"`    // none where no figure can be given
	In30        *SteerRange   `json:"expect_30,omitempty"`    //
	LookMinutes int           `json:"look_minutes,omitempty"` // look again in so many minutes
	Reason      string        `json:"reason,omitempty"`       // a code of the one reason
	Reach       string        `json:"reach,omitempty"`        // too-weak or too-hot: vents alone won't do it
	Remedies    []SteerRemedy `json:"remedies,omitempty"`
	Text        string        `json:"text"` // first what to do
	Expect      string        `json:"expect,omitempty"`
	Look        string        `json:"look,omitempty"`
	Why         string        `json:"why,omitempty"`
	Also        []string      `json:"also,omitempty"`        // what else to mind
	Taken       []string      `json:"taken,omitempty"`       // what was taken, because nobody said so
	GrillCooks  int           `json:"grill_cooks,omitempty"` // cooks on this grill that it rests on
}

// SteerRange is the grate's air, degC: one fire in ten is below Low, one in ten above High.
type SteerRange struct {
	LowC    float64 `json:"low_c"`
	MiddleC float64 `json:"middle_c"`
	HighC   float64 `json:"high_c"`
}

// SteerVents are shares open.
type SteerVents struct {
	Top    float64 `json:"top"`
	Bottom float64 `json:"bottom"`
}

// SteerRemedy is something else than vents, and the grate 45 minutes later.
type SteerRemedy struct {
	Do    string     `json:"do"`
	Count int        `json:"count,omitempty"`
	In45  SteerRange `json:"expect_45"`
	Helps bool       `json:"helps"` // it brings the grate near its level
}
