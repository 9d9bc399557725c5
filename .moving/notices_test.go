package schedule

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/safety"
)

// uttered are the codes of findings that the sources of the package write down, with
// the severity where that is beside them.
func uttered(t *testing.T) map[string][]string {
	t.Helper()
	entries, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	var files []*ast.File
	constants := map[string]string{}
	for _, e := range entries {
		if name := e.Name(); strings.HasSuffix(name, ".go") && !strings.HasSuffix(name, "_test.go") {
			f, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
			if err != nil {
				t.Fatal(err)
			}
			files = append(files, f)
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
	}
	codes := map[string][]string{}
	for _, f := range files {
		ast.Inspect(f, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.CallExpr: // finding(code, ...) and about(piece, code, severity, ...)
				name, ok := n.Fun.(*ast.Ident)
				if ok && name.Name == "finding" {
					say(codes, n.Args[0], nil, constants)
				}
				if ok && name.Name == "about" && len(n.Args) > 2 {
					say(codes, n.Args[1], n.Args[2], constants)
				}
			case *ast.CompositeLit:
				if name, ok := n.Type.(*ast.Ident); ok && name.Name == "Finding" {
					say(codes, fieldOf(n, "Code"), fieldOf(n, "Severity"), constants)
				}
			}
			return true
		})
	}
	return codes
}

func say(codes map[string][]string, code, severity ast.Expr, constants map[string]string) {
	c, ok := literal(code, constants)
	if !ok {
		return
	}
	if _, seen := codes[c]; !seen {
		codes[c] = nil
	}
	if s, ok := literal(severity, constants); ok {
		codes[c] = append(codes[c], s)
	}
}

func fieldOf(c *ast.CompositeLit, name string) ast.Expr {
	for _, e := range c.Elts {
		if kv, ok := e.(*ast.KeyValueExpr); ok {
			if k, ok := kv.Key.(*ast.Ident); ok && k.Name == name {
				return kv.Value
			}
		}
	}
	return nil
}

// literal is the text of a string literal or constant.
func literal(e ast.Expr, constants map[string]string) (string, bool) {
	switch e := e.(type) {
	case *ast.BasicLit:
		if e.Kind == token.STRING {
			text, err := strconv.Unquote(e.Value)
			return text, err == nil
		}
	case *ast.Ident:
		text, ok := constants[e.Name]
		return text, ok
	}
	return "", false
}

// Every code that the planner can utter is among the notices, with its severity, and
// every notice can be uttered.
func TestEveryFindingIsANotice(t *testing.T) {
	codes := uttered(t)
	if len(codes) < 20 {
		t.Fatalf("%d codes found in the sources; the reading of them is broken", len(codes))
	}
	for n := range noteTexts {
		codes[string(n)] = nil
	}
	for n := range probeTexts {
		codes[n] = nil
	}
	for _, n := range []string{late, mayBeLate} { // said by lateness
		codes[n] = nil
	}
	for code, severities := range codes {
		n, ok := notice(code)
		if !ok {
			if _, ok := safety.Lookup(code); !ok {
				t.Errorf("%q is said and is no notice", code)
			}
			continue
		}
		for _, s := range severities {
			if s != n.Severity {
				t.Errorf("%q is said as %s, the notice is %s", code, s, n.Severity)
			}
		}
	}
	for _, n := range notices {
		if _, ok := codes[n.Code]; !ok && n.Code != string(fire.NoCharcoal) {
			t.Errorf("%q is a notice and nobody says it", n.Code)
		}
	}
}

func TestNoticesAreSound(t *testing.T) {
	seen := map[string]bool{}
	for _, n := range Notices() {
		if seen[n.Code] || n.Code == "" || strings.ToLower(n.Code) != n.Code {
			t.Errorf("code %q is there twice, or no code", n.Code)
		}
		seen[n.Code] = true
		if !slices.Contains([]string{Info, Warning, Danger}, n.Severity) || !strings.HasSuffix(n.Text, ".") && !strings.HasSuffix(n.Text, "?") {
			t.Errorf("%+v", n)
		}
		if n.Source == "" || n.Source != ours && safety.Document(n.Source) == "" {
			t.Errorf("%s: source %q is nowhere", n.Code, n.Source)
		}
		if word := strings.ToLower(n.Text); strings.Contains(word, " safe ") || strings.Contains(word, "safe.") {
			t.Errorf("%s calls food safe: %s", n.Code, n.Text)
		}
	}
	for _, c := range safety.Catalogue() {
		if !seen[c.Code] {
			t.Errorf("%s of the safety catalogue is missing", c.Code)
		}
	}
}
