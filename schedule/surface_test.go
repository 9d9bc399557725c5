package schedule

import (
	"go/ast"
	"go/parser"
	"go/token"
	"slices"
	"strings"
	"testing"
)

// Nobody outside can change what a public package goes by, and nobody outside meets a
// type that they cannot name: such a package has no exported variable, and what it
// exports speaks of no type of an internal one.
func TestPublicPackagesKeepTheirInsides(t *testing.T) {
	looked := map[string]bool{}
	for _, s := range sources(t) {
		if s.folder != "schedule" && !strings.HasPrefix(s.folder, "schedule/") || strings.Contains(s.folder+"/", "/internal/") {
			continue
		}
		looked[s.folder] = true
		for _, l := range leaksOf(s.tree) {
			t.Errorf("%s: %s", s.set.Position(l.at), l.what)
		}
	}
	for _, folder := range []string{"schedule", "schedule/planner", "schedule/check", "schedule/export", "schedule/cut", "schedule/unit"} {
		if !looked[folder] {
			t.Errorf("%s was not looked at", folder)
		}
	}
}

// The test itself sees each kind of leak, and takes no harmless line for one.
func TestLeaksAreSeen(t *testing.T) {
	const head = "package p\nimport (\n\"example.com/x/internal/heat\"\nf \"example.com/x/internal/fire\"\n\"example.com/x/unit\"\n)\n"
	for code, want := range map[string]int{
		"var Table = 1":                                        1,
		"var table, Other heat.Sim":                            1,
		"func Run(s heat.Sim) {}":                              1,
		"func Run() (unit.Mass, []*f.Bed) { return 0, nil }":   1,
		"func (p *Piece) Run(k map[string]heat.Sim) {}":        1,
		"func (p List[T]) Run(k chan<- heat.Sim) {}":           1,
		"func Of[T heat.Body]() {}":                            1,
		"type Piece struct { Sim heat.Sim }":                   1,
		"type Piece struct { heat.Sim }":                       1,
		"type Piece struct { In struct{ Sim *heat.Sim } }":     1,
		"type Piece = heat.Sim":                                1,
		"type Piece func(heat.Sim)":                            1,
		"type Piece interface { Run(heat.Sim) }":               1,
		"type (\nA struct { X heat.Sim; Y f.Bed }\nB f.Bed\n)": 3,
		"const Reached heat.Status = 1":                        1,

		"var table = heat.Sim{}":                                         0,
		"func run(s heat.Sim) {}":                                        0,
		"func (p *piece) Run(s heat.Sim) {}":                             0,
		"func Run(m unit.Mass) { var s heat.Sim; _ = s }":                0,
		"type Piece struct { sim heat.Sim; Mass unit.Mass }":             0,
		"type piece struct { Sim heat.Sim }":                             0,
		"func Run() { type Inner struct { Sim heat.Sim }; var Sim int }": 0,
	} {
		tree, err := parser.ParseFile(token.NewFileSet(), "p.go", head+code, parser.SkipObjectResolution)
		if err != nil {
			t.Fatalf("%s: %v", code, err)
		}
		if got := leaksOf(tree); len(got) != want {
			t.Errorf("%s: %d leaks %v, want %d", code, len(got), got, want)
		}
	}
}

// leak is what a package lets out and should not.
type leak struct {
	at   token.Pos
	what string
}

// leaksOf are the leaks of one file of a public package.
func leaksOf(f *ast.File) []leak {
	s := surface{inside: map[string]string{}}
	for from, name := range importsOf(f) {
		if strings.Contains(from+"/", "/internal/") {
			s.inside[name] = from
		}
	}
	for _, d := range f.Decls {
		switch d := d.(type) {
		case *ast.FuncDecl:
			if d.Name.IsExported() && (d.Recv == nil || ast.IsExported(receiver(d.Recv.List[0].Type))) {
				s.look(d.Name.Name, d.Type)
			}
		case *ast.GenDecl:
			for _, spec := range d.Specs {
				s.spec(d.Tok, spec)
			}
		}
	}
	return s.leaks
}

// surface looks at what a file exports. It knows the internal packages of the file by
// the name that each goes by there.
type surface struct {
	inside map[string]string
	leaks  []leak
}

func (s *surface) spec(kind token.Token, spec ast.Spec) {
	switch spec := spec.(type) {
	case *ast.TypeSpec:
		if spec.Name.IsExported() {
			s.look(spec.Name.Name, spec)
		}
	case *ast.ValueSpec:
		for _, name := range spec.Names {
			switch {
			case !name.IsExported():
			case kind == token.VAR:
				s.leaks = append(s.leaks, leak{name.Pos(), "the variable " + name.Name + " is exported: anybody may change it"})
			case spec.Type != nil:
				s.look(name.Name, spec.Type)
			}
		}
	}
}

// look goes through a type and reports each internal one that a user meets in it: all
// but those of fields that are not exported.
func (s *surface) look(name string, n ast.Node) {
	ast.Inspect(n, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.StructType:
			for _, field := range n.Fields.List {
				if len(field.Names) == 0 || slices.ContainsFunc(field.Names, (*ast.Ident).IsExported) {
					s.look(name, field.Type)
				}
			}
			return false
		case *ast.SelectorExpr:
			if x, ok := n.X.(*ast.Ident); ok && s.inside[x.Name] != "" {
				s.leaks = append(s.leaks, leak{n.Pos(), name + " speaks of " + x.Name + "." + n.Sel.Name + " of " + s.inside[x.Name]})
			}
		}
		return true
	})
}

// receiver is the name of the type that a method is of.
func receiver(x ast.Expr) string {
	switch x := x.(type) {
	case *ast.StarExpr:
		return receiver(x.X)
	case *ast.IndexExpr:
		return receiver(x.X)
	case *ast.IndexListExpr:
		return receiver(x.X)
	case *ast.Ident:
		return x.Name
	}
	return ""
}
