// Package cookday holds what describes the program's own interface, for the program to
// serve: the description of the HTTP calls stands at the top of the repository, where
// people look for it.
package cookday

import _ "embed"

// OpenAPI is openapi.yaml.
//
//go:embed openapi.yaml
var OpenAPI []byte
