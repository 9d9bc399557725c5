package steer

// String is the name of what to do, as answers carry it.
func (d Do) String() string {
	return [...]string{"leave", "move-vents", "add-lit", "add-unlit", "clear-ash", "read-again", "look-first", "hold-thermometer", "relight", "practice-only"}[d]
}

// String is the code of a reason.
func (w Why) String() string {
	return [...]string{
		"in-band", "coming-right", "warming", "hot", "cool", "rising", "sinking", "many-lit", "leaks", "starved", "few-lit", "spent", "ash",
		"cold-load", "wind", "bad-reading", "fat-burns", "far-over", "lid-was-off", "nothing-read", "fire-out", "passing", "fresh-coals",
		"caught", "gauge-alone", "cold", "unfelt", "near-level", "vents-shut", "lit-lately",
	}[w]
}

// String is the code of what vents cannot do, empty where they can.
func (r Reach) String() string { return [...]string{"", "too-weak", "too-hot"}[r] }
