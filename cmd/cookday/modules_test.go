package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// licences are those that may come into the program: all let it be passed on under
// terms of its own, MPL 2.0 as long as its own files stay open. Each is known by a
// phrase of its text.
var licences = []struct{ name, phrase string }{
	{"Apache 2.0", "Apache License"},
	{"MPL 2.0", "Mozilla Public License"},
	{"MIT", "Permission is hereby granted, free of charge"},
	{"BSD-3", "Redistribution and use in source and binary forms"},
	{"BSD-2", "Redistribution and use in source and binary forms"},
}

// required are the modules of go.mod.
func required(t *testing.T) (paths []string) {
	t.Helper()
	text, err := os.ReadFile("../../go.mod")
	if err != nil {
		t.Fatal(err)
	}
	if strings.Contains(string(text), "\nreplace ") {
		t.Error("go.mod replaces a module: users of the library would not get it")
	}
	for _, found := range regexp.MustCompile(`(?m)^\t([^\s/]+\.\S+) v`).FindAllStringSubmatch(string(text), -1) {
		paths = append(paths, found[1])
	}
	if len(paths) < 30 {
		t.Fatalf("only %d modules found in go.mod", len(paths))
	}
	return paths
}

// TestModulesAreListed wants a row in DEVELOPERS.md, with a reason and its licence, for
// every module that go.mod requires, and no row for others.
func TestModulesAreListed(t *testing.T) {
	text, err := os.ReadFile("../../DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	_, section, _ := strings.Cut(string(text), "\n## Modules")
	section, _, _ = strings.Cut(section, "\n## ")
	listed := map[string]string{}
	for _, row := range regexp.MustCompile(`(?m)^\| ([^\s|]+\.[^\s|]+) \| [^|]+ \| ([^|]+) \|$`).FindAllStringSubmatch(section, -1) {
		listed[row[1]] = row[2]
	}
	paths := required(t)
	for path, licence := range listed {
		if !slices.Contains(paths, path) {
			t.Errorf("DEVELOPERS.md lists %s, which go.mod does not require", path)
		}
		for _, name := range strings.Split(licence, " and ") {
			if !slices.ContainsFunc(licences, func(l struct{ name, phrase string }) bool { return l.name == name }) {
				t.Errorf("DEVELOPERS.md: licence %q of %s is none that may come in", name, path)
			}
		}
	}
	for _, path := range paths {
		if listed[path] == "" {
			t.Errorf("DEVELOPERS.md, \"Modules\": no row for %s with why and licence", path)
		} else if found := licenceOf(t, path); found != nil && !slices.Contains(found, strings.Split(listed[path], " and ")[0]) {
			t.Errorf("DEVELOPERS.md says %s of %s; its own files say %v", listed[path], path, found)
		}
	}
}

// licenceOf reads a module's own licence in the cache of modules; nil where the module
// is not there.
func licenceOf(t *testing.T, path string) (found []string) {
	t.Helper()
	out, err := exec.Command("go", "list", "-m", "-f", "{{.Dir}}", path).Output()
	dir := strings.TrimSpace(string(out))
	if err != nil || dir == "" {
		return nil
	}
	files, _ := filepath.Glob(filepath.Join(dir, "[LC][IO][CP]*"))
	more, _ := filepath.Glob(filepath.Join(dir, "edl-v*")) // beside a LICENSE that only names it
	files = append(files, more...)
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			continue
		}
		flat := strings.Join(strings.Fields(string(text)), " ")
		for _, l := range licences {
			if strings.Contains(flat, l.phrase) {
				found = append(found, l.name)
			}
		}
	}
	return found
}
