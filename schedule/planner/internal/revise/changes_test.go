package revise

import (
	"go/ast"
	"go/parser"
	"go/token"
	"strconv"
	"strings"
	"testing"

	"example.com/cookday/schedule"
)

// Every kind of step in the source has its words in the list of changes.
func TestEveryKindOfStepHasAName(t *testing.T) {
	file, err := parser.ParseFile(token.NewFileSet(), "../../../plan_steps.go", nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	kinds := 0
	ast.Inspect(file, func(n ast.Node) bool {
		v, ok := n.(*ast.ValueSpec)
		if !ok || !strings.HasPrefix(v.Names[0].Name, "Step") {
			return true
		}
		kind, err := strconv.Unquote(v.Values[0].(*ast.BasicLit).Value)
		if err != nil {
			t.Fatal(err)
		}
		if kinds++; stepNames[schedule.StepKind(kind)] == "" {
			t.Errorf("%s has no name", kind)
		}
		return true
	})
	if kinds != len(stepNames) {
		t.Errorf("%d kinds of step, %d names", kinds, len(stepNames))
	}
}
