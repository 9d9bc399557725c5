package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"io/fs"
	"os"
	"syscall"
)

// mostBytes is as much of a file as is read: a little more than the largest that
// the library accepts, so that it can say what is too large.
const mostBytes = 17 << 20

// source is the text of a file and the name to call it by.
type source struct {
	name string
	data []byte
}

// readSource reads a file, or standard input for "-".
func readSource(name string, stdin io.Reader) (source, error) {
	if name == "-" {
		data, err := io.ReadAll(io.LimitReader(stdin, mostBytes))
		return source{standardInput, data}, err
	}
	f, err := os.Open(name)
	if err != nil {
		return source{}, fileTrouble(name, err)
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, mostBytes))
	return source{name, data}, fileTrouble(name, err)
}

// standardInput is what a text is called that is not of a file.
const standardInput = "standard input"

// isFile says whether a text is of a file, which a command can name.
func (s source) isFile() bool { return s.name != standardInput }

// fileTrouble says what is wrong with a file that the user named.
func fileTrouble(name string, err error) error {
	switch {
	case err == nil:
		return nil
	case errors.Is(err, fs.ErrNotExist):
		return usage("%s: there is no such file", name)
	case errors.Is(err, fs.ErrPermission):
		return usage("%s: may not be opened by this user", name)
	case errors.Is(err, syscall.EISDIR):
		return usage("%s: is a folder, not a file", name)
	}
	return err
}

// planKeys stand at the top of every plan and of no request.
var planKeys = map[string]bool{"feasible": true, "steps": true, "provenance": true, "phases": true}

// isPlan tells a plan from a request by the names at its top, as far as the text
// can be read: a plan with a slip further down is still held to be one.
func (s source) isPlan() bool {
	d := json.NewDecoder(bytes.NewReader(s.data))
	if t, err := d.Token(); err != nil || t != json.Delim('{') {
		return false
	}
	for d.More() {
		key, err := d.Token()
		if name, ok := key.(string); err != nil || !ok || planKeys[name] {
			return err == nil && planKeys[name]
		}
		var value json.RawMessage
		if d.Decode(&value) != nil {
			return false
		}
	}
	return false
}
