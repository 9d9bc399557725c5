package schedule

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

const module = "example.com/cookday"

// arrows says which packages of the module each one may import. Folders are from
// the top; what is not listed may not exist. "examples" stands for all of them.
var arrows = map[string][]string{
	"schedule/unit":              nil,
	"schedule/internal/sequence": nil,
	"schedule/cut":               {"schedule/unit"},
	"schedule/internal/heat":     {"schedule/unit"},
	"schedule/internal/fire":     {"schedule/unit"},
	"schedule/internal/safety":   {"schedule/unit"},
	"schedule": {
		"schedule/unit", "schedule/cut", "schedule/internal/heat", "schedule/internal/fire", "schedule/internal/safety", "schedule/internal/sequence",
	},
	"schedule/export": {"schedule", "schedule/unit"},
	"api":             {"schedule", "schedule/export", "schedule/unit"},
	"api/store":       {"schedule", "api"},
	"cmd/cookday":     {"api", "api/store", "schedule", "schedule/export", "schedule/unit"},
	"examples":        {"schedule", "schedule/export", "schedule/unit"},
}

// Below schedule/ nothing reads a clock, rolls dice or touches the world.
var worldly = []string{"math/rand", "os", "net", "database/sql", "syscall", "plugin"}

// clocks are the functions of package time that read the clock or wait for it.
var clocks = []string{"Now", "Since", "Until", "Sleep", "After", "AfterFunc", "Tick", "NewTimer", "NewTicker"}

// source is a Go file of the module, without its tests.
type source struct {
	folder, file string
	tree         *ast.File
	set          *token.FileSet
}

// sources parses the module's own files. They are read here and not asked of a
// child process, so that the test cache knows them.
func sources(t *testing.T) []source {
	t.Helper()
	var all []source
	err := filepath.WalkDir("..", func(name string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		base := entry.Name()
		if entry.IsDir() {
			if name != ".." && (strings.HasPrefix(base, ".") || strings.HasPrefix(base, "_") || base == "testdata") {
				return filepath.SkipDir
			}
			return nil
		}
		if !strings.HasSuffix(base, ".go") || strings.HasSuffix(base, "_test.go") {
			return nil
		}
		set := token.NewFileSet()
		tree, err := parser.ParseFile(set, name, nil, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		folder, _ := filepath.Rel("..", filepath.Dir(name))
		all = append(all, source{filepath.ToSlash(folder), base, tree, set})
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(all) < 50 {
		t.Fatalf("only %d files found: the test looks in the wrong place", len(all))
	}
	return all
}

// importsOf maps what a file imports to the name that it goes by there.
func importsOf(f *ast.File) map[string]string {
	names := map[string]string{}
	for _, i := range f.Imports {
		from, _ := strconv.Unquote(i.Path.Value)
		names[from] = from[strings.LastIndex(from, "/")+1:]
		if i.Name != nil {
			names[from] = i.Name.Name
		}
	}
	return names
}

func TestImportsFollowTheArrows(t *testing.T) {
	found := map[string]bool{}
	for _, s := range sources(t) {
		folder := s.folder
		if strings.HasPrefix(folder, "examples/") {
			folder = "examples"
		}
		allowed, known := arrows[folder]
		found[folder] = true
		if !known {
			t.Errorf("%s/%s: the folder has no row in the table of arrows", s.folder, s.file)
		}
		for from := range importsOf(s.tree) {
			if ours, inside := strings.CutPrefix(from, module+"/"); inside && !slices.Contains(allowed, ours) {
				t.Errorf("%s/%s imports %s; %s may import %v", s.folder, s.file, ours, folder, allowed)
			}
		}
	}
	for _, folder := range []string{"schedule", "schedule/unit", "schedule/cut", "schedule/internal/heat", "schedule/internal/fire", "schedule/internal/safety", "schedule/internal/sequence"} {
		if !found[folder] {
			t.Errorf("%s was not looked at", folder)
		}
	}
}

func TestScheduleKnowsNoClockAndNoWorld(t *testing.T) {
	for _, s := range sources(t) {
		if s.folder != "schedule" && !strings.HasPrefix(s.folder, "schedule/") {
			continue
		}
		names := importsOf(s.tree)
		for from, name := range names {
			for _, w := range worldly {
				if from == w || strings.HasPrefix(from, w+"/") {
					t.Errorf("%s/%s imports %s, which the schedule may not know", s.folder, s.file, from)
				}
			}
			if from == "time" && name == "." {
				t.Errorf("%s/%s imports time without its name, which hides the clock", s.folder, s.file)
			}
		}
		ast.Inspect(s.tree, func(n ast.Node) bool {
			sel, ok := n.(*ast.SelectorExpr)
			if !ok {
				return true
			}
			if x, ok := sel.X.(*ast.Ident); ok && x.Name == names["time"] && slices.Contains(clocks, sel.Sel.Name) {
				t.Errorf("%s: time.%s reads the clock", s.set.Position(sel.Pos()), sel.Sel.Name)
			}
			return true
		})
	}
}
