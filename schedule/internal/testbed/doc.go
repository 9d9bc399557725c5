// Package testbed is what the tests of every room share: the fixed seed of drawn days, and
// tables of testdata. It knows nothing of cooking, so that rooms which make days may use it
// too; invented days and plans are in plantest.
package testbed
