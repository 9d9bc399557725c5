package main

import (
	"bytes"
	"os"
	"testing"
)

// What is served is what stands at the top.
func TestDescriptionIsTheOneAtTheTop(t *testing.T) {
	top, err := os.ReadFile("../../openapi.yaml")
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(top, description) {
		t.Error("cmd/cookday/openapi.yaml is another text than openapi.yaml: run go generate ./cmd/cookday")
	}
}
