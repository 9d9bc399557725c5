package schedule

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

const module = "example.com/cookday"

// vocabulary is what every room of the planner may import: words, models, and what is
// useful to all.
var vocabulary = []string{
	"schedule", "schedule/cut", "schedule/unit", "schedule/internal/heat", "schedule/internal/fire", "schedule/internal/safety",
	"schedule/internal/strict", "schedule/internal/say", "schedule/internal/instant", "schedule/internal/plans",
}

// rooms are those of the planner, in the order in which they may import each other: a
// room imports rooms after it, and never one before it. They lie in planner/internal, so
// that nothing but the planner can name them.
var rooms = []string{"revise", "remedy", "ahead", "assemble", "arrange", "day", "surprise", "belief", "spread"}

const roomsIn = "schedule/planner/internal/"

// arrows says which packages of the module each one may import. Folders are from
// the top; what is not listed may not exist. "examples" stands for all of them.
var arrows = withRooms(map[string][]string{
	"schedule/unit":            nil,
	"schedule/cut":             {"schedule/unit", "schedule/internal/say"}, // words that are near each other
	"schedule/internal/heat":   {"schedule/unit"},
	"schedule/internal/fire":   {"schedule/unit"},
	"schedule/internal/safety": {"schedule/unit"},
	// The fire in hand is asked by the door, and by a revision.
	"schedule/internal/steer": {"schedule/unit", "schedule/internal/fire", "schedule/internal/safety"},

	"schedule/internal/say":     {"schedule/unit"},
	"schedule/internal/strict":  {"schedule/internal/say"},
	"schedule/internal/meant":   {"schedule/cut", "schedule/unit", "schedule/internal/strict", "schedule/internal/instant"}, // what a word means that the form does not have
	"schedule/internal/instant": {"schedule/unit", "schedule/internal/say"},
	// What is written down on the day.
	"schedule/internal/logbook": {
		"schedule/cut", "schedule/unit", "schedule/internal/strict", "schedule/internal/say", "schedule/internal/instant", "schedule/internal/fire",
	},
	"schedule/internal/plans": {"schedule", "schedule/internal/instant"},

	"schedule": {
		"schedule/cut", "schedule/unit", "schedule/internal/strict", "schedule/internal/say", "schedule/internal/safety", "schedule/internal/fire",
		"schedule/internal/instant", "schedule/internal/meant", "schedule/internal/logbook",
	},
	// The judge sees words and models. It knows the planner neither by its rooms, which
	// the compiler keeps from it, nor by its door.
	"schedule/check": {
		"schedule", "schedule/cut", "schedule/unit", "schedule/internal/heat", "schedule/internal/fire", "schedule/internal/safety",
		"schedule/internal/instant", "schedule/internal/plans",
	},
	// A first request is asked for, line by line.
	"schedule/draft": {"schedule", "schedule/cut", "schedule/internal/instant", "schedule/internal/meant", "schedule/unit"},
	// Formats see finished plans.
	"schedule/export": {"schedule", "schedule/unit"},

	"schedule/internal/testbed":  nil,                                                                                   // for tests
	"schedule/internal/plantest": {"schedule", "schedule/cut", "schedule/check", "schedule/export", "schedule/planner"}, // for tests

	"api":         {"schedule", "schedule/planner", "schedule/export", "schedule/unit"},
	"api/store":   {"api"},
	"api/push":    {"api"},
	"api/metrics": {"api", "api/push"},

	"api/store/testdb": nil, // for tests

	"cmd/cookday": {"api", "api/store", "api/push", "api/metrics", "schedule", "schedule/draft", "schedule/planner", "schedule/check", "schedule/export", "schedule/unit"},
	"examples":    {"schedule", "schedule/planner", "schedule/export", "schedule/unit"},
})

// withRooms adds the planner: its door may name every room, and the judge.
func withRooms(table map[string][]string) map[string][]string {
	door := slices.Concat(vocabulary, []string{"schedule/check", "schedule/internal/steer"})
	for i, room := range rooms {
		allowed := slices.Clone(vocabulary)
		for _, below := range rooms[i+1:] {
			allowed = append(allowed, roomsIn+below)
		}
		switch room {
		case "revise", "remedy", "ahead", "assemble", "arrange": // the solver is asked by arrange, and its answers are read
			allowed = append(allowed, roomsIn+"sequence")
		}
		if room == "revise" || room == "assemble" { // the fire in hand, and the vents to start with
			allowed = append(allowed, "schedule/internal/steer")
		}
		table[roomsIn+room], door = allowed, append(door, roomsIn+room)
	}
	table[roomsIn+"sequence"] = nil
	table["schedule/planner"] = door
	return table
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
	for folder := range arrows {
		if !found[folder] {
			t.Errorf("%s was not looked at", folder)
		}
	}
}

// forTests are the folders that only tests import: no row of arrows allows them.
var forTests = map[string]bool{"schedule/internal/testbed": true, "schedule/internal/plantest": true}

func TestScheduleKnowsNoClockAndNoWorld(t *testing.T) {
	for _, s := range sources(t) {
		if s.folder != "schedule" && !strings.HasPrefix(s.folder, "schedule/") || forTests[s.folder] {
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

// The top of the house has these folders and no other.
func TestTopFolder(t *testing.T) {
	entries, err := os.ReadDir("..")
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if e.IsDir() && !strings.HasPrefix(e.Name(), ".") && !slices.Contains([]string{"schedule", "api", "cmd", "examples"}, e.Name()) {
			t.Errorf("%s is no folder of the top", e.Name())
		}
	}
}
