package planner_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/safety"
)

// sources are the files of package schedule and of all rooms of the planner, and the
// codes of the fire, without tests.
func sources(t *testing.T) map[string]*ast.File {
	t.Helper()
	files := map[string]*ast.File{}
	read := func(path string) {
		if !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return
		}
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		files[filepath.ToSlash(path)] = f
	}
	for _, folder := range []string{"..", "../internal/fire"} {
		entries, err := os.ReadDir(folder)
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range entries {
			read(filepath.Join(folder, e.Name()))
		}
	}
	err := filepath.WalkDir(".", func(path string, _ fs.DirEntry, err error) error {
		read(path)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// uttered are the codes of findings that the sources write down: those that a finding
// is made of, and those that have a sentence in a table.
func uttered(t *testing.T) map[string]bool {
	t.Helper()
	files := sources(t)
	constants := map[string]string{}
	for _, f := range files {
		ast.Inspect(f, func(n ast.Node) bool {
			if v, ok := n.(*ast.ValueSpec); ok && len(v.Values) == len(v.Names) {
				for i, name := range v.Names {
					if text, ok := literal(v.Values[i], nil); ok {
						constants[name.Name] = text
					}
				}
			}
			return true
		})
	}
	codes := map[string]bool{}
	say := func(code ast.Expr) {
		if c, ok := literal(code, constants); ok {
			codes[c] = true
		}
	}
	for _, f := range files {
		ast.Inspect(f, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.CallExpr: // NewFinding(code, ...), d.find(code, ...) and about(piece, code, ...)
				switch name := nameOf(n.Fun); {
				case (name == "NewFinding" || name == "Finding" || name == "find") && len(n.Args) > 2:
					say(n.Args[0])
				case name == "about" && len(n.Args) > 2:
					say(n.Args[1])
				}
			case *ast.ValueSpec:
				if name := n.Names[0].Name; name == "noteTexts" || name == "probeTexts" {
					for _, e := range n.Values[0].(*ast.CompositeLit).Elts {
						say(e.(*ast.KeyValueExpr).Key)
					}
				}
			}
			return true
		})
	}
	return codes
}

// nameOf is the last word of a name: find of d.find.
func nameOf(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.Ident:
		return e.Name
	case *ast.SelectorExpr:
		return e.Sel.Name
	}
	return ""
}

// literal is the text of a string literal or constant.
func literal(e ast.Expr, constants map[string]string) (string, bool) {
	if e, ok := e.(*ast.BasicLit); ok && e.Kind == token.STRING {
		text, err := strconv.Unquote(e.Value)
		return text, err == nil
	}
	text, ok := constants[nameOf(e)]
	return text, ok
}

// Every code that the planner can utter is among the notices, and every notice can be
// uttered.
func TestEveryFindingIsANotice(t *testing.T) {
	codes := uttered(t)
	if len(codes) < 20 {
		t.Fatalf("%d codes found in the sources; the reading of them is broken", len(codes))
	}
	for _, n := range []string{schedule.Late, schedule.MayBeLate, // said by lateness; by codeOf:
		schedule.ReadingOpen, schedule.ReadingUnit, schedule.ReadingOther, schedule.ReadingSettled, schedule.FrozenMiddle, schedule.WentOnWarm,
		schedule.ProbeInAir, schedule.ProbeFellOut, schedule.ProbeHot, schedule.ProbeCold,
	} {
		codes[n] = true
	}
	for code := range codes {
		if _, ok := schedule.Notice(code); ok {
			continue
		}
		if _, ok := safety.Lookup(code); !ok {
			t.Errorf("%q is said and is no notice", code)
		}
	}
	for _, n := range schedule.Notices() {
		if _, ours := schedule.Notice(n.Code); ours && !codes[n.Code] && n.Code != string(fire.NoCharcoal) {
			t.Errorf("%q is a notice and nobody says it", n.Code)
		}
	}
}

// A code has one severity, that of its notice: nothing but the constructor writes one
// down. What food safety finds brings the severity that its catalogue has.
func TestNobodyWritesASeverityOfHisOwn(t *testing.T) {
	made := 0
	for path, f := range sources(t) {
		ast.Inspect(f, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.CompositeLit:
				if nameOf(n.Type) != "Finding" || len(n.Elts) == 0 {
					return true
				}
				if made++; path != "../notices.go" && path != "internal/revise/safety.go" {
					t.Errorf("%s makes a finding without its notice", path)
				}
			case *ast.AssignStmt:
				for _, to := range n.Lhs {
					if s, ok := to.(*ast.SelectorExpr); ok && (s.Sel.Name == "Severity" || s.Sel.Name == "Source" || s.Sel.Name == "Code") {
						t.Errorf("%s changes the %s of what was found", path, s.Sel.Name)
					}
				}
			}
			return true
		})
	}
	if made != 2 {
		t.Errorf("%d places make findings; the reading of the sources is broken", made)
	}
}
