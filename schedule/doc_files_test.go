package schedule

import (
	"go/parser"
	"go/token"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// fileNames are those that a comment names, with * for whatever: steps*.go.
var fileNames = regexp.MustCompile(`(?:^|[\s(])([a-z_*]+\.go)\b`)

// A comment of a package that says where to look names every file, and none that is
// gone: a list that leaves out a file hides it. A package with few files lists none.
func TestListsOfFilesAreWhole(t *testing.T) {
	named, files := map[string][]string{}, map[string][]string{}
	for _, s := range sources(t) {
		if s.file == "doc.go" {
			named[s.folder] = filesNamedIn(t, "../"+s.folder+"/doc.go")
		} else {
			files[s.folder] = append(files[s.folder], s.file)
		}
	}
	lists := 0
	for folder, patterns := range named {
		if len(patterns) == 0 {
			continue
		}
		lists++
		for _, pattern := range patterns {
			if !slices.ContainsFunc(files[folder], func(file string) bool { return matches(pattern, file) }) {
				t.Errorf("%s/doc.go names %s, and there is none", folder, pattern)
			}
		}
		for _, file := range files[folder] {
			if !slices.ContainsFunc(patterns, func(pattern string) bool { return matches(pattern, file) }) {
				t.Errorf("%s/doc.go does not say what is in %s", folder, file)
			}
		}
	}
	if lists < 8 { // 11 when this was written
		t.Errorf("only %d lists were found: the test looks for another form of them", lists)
	}
}

// filesNamedIn are the files that the comment of a package names.
func filesNamedIn(t *testing.T, doc string) []string {
	t.Helper()
	tree, err := parser.ParseFile(token.NewFileSet(), doc, nil, parser.ParseComments|parser.PackageClauseOnly)
	if err != nil {
		t.Fatal(err)
	}
	var all []string
	for _, m := range fileNames.FindAllStringSubmatch(tree.Doc.Text(), -1) {
		if !strings.HasSuffix(m[1], "_test.go") {
			all = append(all, m[1])
		}
	}
	return all
}

func matches(pattern, file string) bool {
	ok, _ := path.Match(pattern, file)
	return ok
}
