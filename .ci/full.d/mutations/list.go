package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

const list = ".ci/full.d/mutations/list.txt"

// mutation is one change of one file of a folder.
type mutation struct {
	line       int // of the list
	folder     string
	old, now   string
	equivalent string // why no test can notice it; "" for the others
}

func (m mutation) String() string { return fmt.Sprintf("%s: %s => %s", m.folder, m.old, m.now) }

func (m mutation) tests() string { return "./" + m.folder }

// mutated is the file that has the old text, and its text with the change.
func (m mutation) mutated() (file, text string, err error) {
	files, err := filepath.Glob(filepath.Join(m.folder, "*.go"))
	if err != nil {
		return "", "", err
	}
	n := 0
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		content, err := os.ReadFile(name)
		if err != nil {
			return "", "", err
		}
		if k := strings.Count(string(content), m.old); k > 0 {
			n += k
			file, text = name, strings.Replace(string(content), m.old, m.now, 1)
		}
	}
	if n != 1 {
		return "", "", fmt.Errorf("%s:%d: %q is %d times in %s, must be there once", list, m.line, m.old, n, m.folder)
	}
	return file, text, nil
}

// read parses the list.
func read() (all []mutation, err error) {
	text, err := os.ReadFile(list)
	if err != nil {
		return nil, err
	}
	folder := ""
	for i, line := range strings.Split(string(text), "\n") {
		trimmed := strings.TrimSpace(line)
		switch {
		case trimmed == "" || strings.HasPrefix(line, "#"):
		case !strings.HasPrefix(line, "\t"):
			folder = trimmed
		case strings.HasPrefix(trimmed, "equivalent: ") && len(all) > 0:
			all[len(all)-1].equivalent = strings.TrimPrefix(trimmed, "equivalent: ")
		default:
			old, now, ok := strings.Cut(trimmed, " => ")
			if !ok || folder == "" || old == now {
				return nil, fmt.Errorf("%s:%d: %q is no folder, change or reason", list, i+1, line)
			}
			all = append(all, mutation{line: i + 1, folder: folder, old: old, now: now})
		}
	}
	return all, nil
}

// overlay writes the changed file and what tells the go command to take it.
func overlay(dir, file, text string) (string, error) {
	changed, plan := filepath.Join(dir, "changed.go"), filepath.Join(dir, "overlay.json")
	path, err := filepath.Abs(file)
	if err != nil {
		return "", err
	}
	content, err := json.Marshal(map[string]any{"Replace": map[string]string{path: changed}})
	if err != nil {
		return "", err
	}
	return plan, errors.Join(os.WriteFile(changed, []byte(text), 0o600), os.WriteFile(plan, content, 0o600))
}
