package main

import (
	_ "embed"
)

//go:generate cp ../../openapi.yaml openapi.yaml

// description is openapi.yaml of the top folder, where people look for it, for the
// service to serve; a package can hold no file above it, so this is a copy.
//
//go:embed openapi.yaml
var description []byte
