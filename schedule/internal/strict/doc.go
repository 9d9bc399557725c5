// Package strict answers one question: what does this document say, to the letter?
//
// YAML and JSON become one neutral tree, and typed readers take it apart: unknown
// fields, doubled keys, a second document, aliases, tags, values of another kind and
// trailing text are refused, and all faults come at once with path and line.
//
// It knows nothing of cooking.
package strict
