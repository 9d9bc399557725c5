package schedule_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"slices"
	"strconv"
	"testing"

	"example.com/cookday/schedule"
)

// The kinds that a program may name are those that a log may have.
func TestKindsAreThoseOfALog(t *testing.T) {
	tree, err := parser.ParseFile(token.NewFileSet(), "log.go", nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	var named, read []string
	ast.Inspect(tree, func(n ast.Node) bool {
		if v, ok := n.(*ast.ValueSpec); ok {
			if of, ok := v.Type.(*ast.Ident); ok && of.Name == "EntryKind" {
				kind, err := strconv.Unquote(v.Values[0].(*ast.BasicLit).Value)
				if err != nil {
					t.Fatal(err)
				}
				named = append(named, kind)
			}
		}
		return true
	})
	for _, f := range schedule.EntryForms() {
		read = append(read, string(f.Kind))
		if f.Kind.Means() == "" {
			t.Errorf("nobody says what %s means", f.Kind)
		}
	}
	slices.Sort(named)
	if !slices.Equal(named, read) {
		t.Errorf("named are %v; a log may have %v", named, read)
	}
}
