package strict

// MaxFaults is for tests of documents with more faults than that.
const MaxFaults = maxFaults
