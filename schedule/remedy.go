package schedule

const CodeNoRemedy = "no-remedy"

// codeHoldShort is the finding of a dish that may be done too early to be held.
const CodeHoldShort = "hold-short"
