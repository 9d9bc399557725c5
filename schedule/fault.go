package schedule

import "example.com/cookday/schedule/internal/strict"

// Fault is one thing wrong with a request, plan or log of readings.
type Fault = strict.Fault

// InputError carries all faults of an input, in the order of the document.
type InputError = strict.InputError
