package instant

// sameTime is what an option does that moves no take-off.
const SameTime = " is done at the same time"
