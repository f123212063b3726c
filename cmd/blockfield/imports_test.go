package main_test

import (
	"fmt"
	"go/ast"
	"go/build/constraint"
	"go/parser"
	"go/token"
	"go/types"
	"io/fs"
	"os"
	"path"
	"slices"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The rooms of the house, from the ground up. A room may import the rooms of
// the floors below its own and nothing on its own floor; what lies in a
// subfolder of a room belongs to the room.
var floors = [][]string{
	{"engine/length", "engine/money", "engine/draw", "engine/cut", "engine/calendar", "engine/chance", "testdata", "site"},
	{"engine/check"},
	{"engine/words"},
	{"engine/wood"},
	{"engine/design"},
	{"engine/field", "engine/measure"},
	{"engine/panel"},
	{"engine/sound", "engine/wall", "engine/bench", "engine/cost", "engine/scene", "engine/moisture", "engine/layup", "engine/learn", "engine/schedule", "engine/tools", "engine/pricelist"},
	{"engine"},
	{"engine/papers", "engine/page"},
	{"engine/session"},
	{"cmd/blockfield", "wasm/engine", "wasm/preview"},
}

// What the engine may not import, and why. A name covers the packages below it.
var notInEngine = map[string]string{
	"syscall":                       "the engine runs everywhere",
	"unsafe":                        "the engine runs everywhere",
	"github.com/hajimehoshi/ebiten": "only the preview draws on the graphics card",
	"os":                            "no files",
	"io/ioutil":                     "no files",
	"path/filepath":                 "no files",
	"net":                           "no network",
	"time":                          "no clock: the same input gives the same result",
	"math/rand":                     "one generator for all: the same input gives the same result",
	"log":                           "one logger for all: results are returned",
	"github.com/chromedp":           "tests only",
	"github.com/stretchr":           "tests only",
	"github.com/santhosh-tekuri":    "tests only",
	"github.com/andybalholm/brotli": "only the site is compressed",
}

// What tests of the engine may import all the same.
var inEngineTests = []string{"os", "path/filepath", "time", "math/rand", "github.com/stretchr", "github.com/santhosh-tekuri"}

// math/rand/v2 offers generators that belong to their caller.
var allowedBelow = []string{"math/rand/v2"}

func TestImports(t *testing.T) {
	t.Parallel()
	assert.Empty(t, wrongImports(t, os.DirFS("../..")))
}

// The guard itself: each kind of fault is found, each kind of right is let by.
func TestImportsFindsFaults(t *testing.T) {
	t.Parallel()
	file := func(text string) *fstest.MapFile { return &fstest.MapFile{Data: []byte(text)} }
	const house = "blockfield/"
	got := wrongImports(t, fstest.MapFS{
		"engine/wood/a.go":         file(`package wood; import "` + house + `engine/length"`),
		"engine/wood/up.go":        file(`package wood; import "` + house + `engine/panel"`),
		"engine/wall/sibling.go":   file(`package wall; import "` + house + `engine/bench"`),
		"engine/wall/clock.go":     file(`package wall; import "time"`),
		"engine/wall/files.go":     file(`package wall; import "os/exec"`),
		"engine/wall/dice.go":      file(`package wall; import "math/rand/v2"`),
		"engine/wall/x_test.go":    file(`package wall_test; import ("os"; "` + house + `engine/wall")`),
		"engine/wall/state.go":     file("package wall\nvar n, m int\nfunc f() { n++; m := 1; m = 2; _ = m }\nfunc init() {}"),
		"engine/odd/a.go":          file(`package odd`),
		"wasm/preview/untagged.go": file("package main\nimport \"syscall/js\""),
		"wasm/preview/loose.go":    file("//go:build js || linux\n\npackage main\nimport \"syscall/js\""),
		"wasm/preview/tagged.go":   file("//go:build js\n\npackage main\nimport \"github.com/hajimehoshi/ebiten/v2\""),
	})
	want := []string{
		`engine/odd/a.go: engine/odd is no room of the house: add it to floors`,
		`engine/wall/clock.go: imports time (no clock: the same input gives the same result)`,
		`engine/wall/files.go: imports os/exec (no files)`,
		`engine/wall/sibling.go: engine/wall imports engine/bench, which does not lie below it`,
		`engine/wall/state.go: changes n, which is state of the whole package`,
		`engine/wall/state.go: has an init function`,
		`engine/wood/up.go: engine/wood imports engine/panel, which does not lie below it`,
		`wasm/preview/loose.go: imports syscall/js without //go:build js`,
		`wasm/preview/untagged.go: imports syscall/js without //go:build js`,
	}
	assert.Equal(t, want, got)
}

// source is one Go file of the tree.
type source struct {
	name string
	room string
	test bool
	file *ast.File
}

func wrongImports(t *testing.T, tree fs.FS) []string {
	t.Helper()
	var faults []string
	positions := token.NewFileSet()
	packages := map[string][]source{}
	for _, s := range sources(t, tree, positions) {
		if floorOf(s.room) < 0 {
			faults = append(faults, fmt.Sprintf("%s: %s is no room of the house: add it to floors", s.name, s.room))
			continue
		}
		faults = append(faults, s.importFaults()...)
		if inEngine(s.room) && !s.test {
			packages[path.Dir(s.name)] = append(packages[path.Dir(s.name)], s)
		}
	}
	for dir, files := range packages {
		faults = append(faults, stateFaults(dir, positions, files)...)
	}
	slices.Sort(faults)
	return slices.Compact(faults)
}

// sources parses every Go file, whatever its build constraints are.
func sources(t *testing.T, tree fs.FS, positions *token.FileSet) []source {
	t.Helper()
	var all []source
	err := fs.WalkDir(tree, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if entry.IsDir() && strings.HasPrefix(name, ".") && name != "." || name == "build" {
			return fs.SkipDir
		}
		if entry.IsDir() || path.Ext(name) != ".go" {
			return nil
		}
		text, err := fs.ReadFile(tree, name)
		if err != nil {
			return err
		}
		file, err := parser.ParseFile(positions, name, text, parser.ParseComments|parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		all = append(all, source{name, roomOf(path.Dir(name)), strings.HasSuffix(name, "_test.go"), file})
		return nil
	})
	require.NoError(t, err)
	return all
}

func (s source) importFaults() []string {
	var faults []string
	for _, spec := range s.file.Imports {
		name, _ := strconv.Unquote(spec.Path.Value)
		if room, ours := strings.CutPrefix(name, "blockfield/"); ours {
			if room = roomOf(room); room != s.room && floorOf(room) >= floorOf(s.room) {
				faults = append(faults, fmt.Sprintf("%s: %s imports %s, which does not lie below it", s.name, s.room, room))
			}
			continue
		}
		if why, banned := cover(notInEngine, name); banned && inEngine(s.room) && !(s.test && allowedInTests(name)) {
			faults = append(faults, fmt.Sprintf("%s: imports %s (%s)", s.name, name, why))
		}
		if needsBrowser(name) && !onlyJS(s.file) {
			faults = append(faults, fmt.Sprintf("%s: imports %s without //go:build js", s.name, name))
		}
	}
	return faults
}

// stateFaults finds init functions and assignments to variables of the package.
// Types of other packages are not needed to tell whose variable a name is, so
// imports stay unresolved and errors of type are let by.
func stateFaults(dir string, positions *token.FileSet, sources []source) []string {
	var files []*ast.File
	for _, s := range sources {
		files = append(files, s.file)
	}
	info := &types.Info{Uses: map[*ast.Ident]types.Object{}}
	config := types.Config{Error: func(error) {}, Importer: nothing{}}
	checked, _ := config.Check(dir, positions, files, info)
	var faults []string
	for _, s := range sources {
		ast.Inspect(s.file, func(n ast.Node) bool {
			if f, ok := n.(*ast.FuncDecl); ok && f.Recv == nil && f.Name.Name == "init" {
				faults = append(faults, s.name+": has an init function")
			}
			for _, target := range targets(n) {
				v, ok := info.Uses[root(target)].(*types.Var)
				if ok && v.Parent() == checked.Scope() {
					faults = append(faults, fmt.Sprintf("%s: changes %s, which is state of the whole package", s.name, v.Name()))
				}
			}
			return true
		})
	}
	return faults
}

// nothing stands in for every imported package.
type nothing struct{}

func (nothing) Import(name string) (*types.Package, error) {
	p := types.NewPackage(name, path.Base(name))
	p.MarkComplete()
	return p, nil
}

// targets are what a statement assigns to.
func targets(n ast.Node) []ast.Expr {
	switch n := n.(type) {
	case *ast.AssignStmt:
		return n.Lhs
	case *ast.IncDecStmt:
		return []ast.Expr{n.X}
	}
	return nil
}

// root is the variable at the left end of a selector or an index.
func root(e ast.Expr) *ast.Ident {
	for {
		switch x := e.(type) {
		case *ast.Ident:
			return x
		case *ast.SelectorExpr:
			e = x.X
		case *ast.IndexExpr:
			e = x.X
		case *ast.StarExpr:
			e = x.X
		case *ast.ParenExpr:
			e = x.X
		default:
			return nil
		}
	}
}

// roomOf is the room that a folder belongs to, or the folder itself.
func roomOf(dir string) string {
	for room := dir; room != "."; room = path.Dir(room) {
		if floorOf(room) >= 0 && (room != "engine" || dir == "engine") {
			return room
		}
	}
	return dir
}

func floorOf(room string) int {
	return slices.IndexFunc(floors, func(floor []string) bool { return slices.Contains(floor, room) })
}

func inEngine(room string) bool { return room == "engine" || strings.HasPrefix(room, "engine/") }

// cover finds the entry for a package or for one above it.
func cover(entries map[string]string, name string) (string, bool) {
	for p := name; p != "."; p = path.Dir(p) {
		if slices.Contains(allowedBelow, p) {
			return "", false
		}
		if why, ok := entries[p]; ok {
			return why, true
		}
	}
	return "", false
}

func allowedInTests(name string) bool {
	return slices.ContainsFunc(inEngineTests, func(allowed string) bool {
		return name == allowed || strings.HasPrefix(name, allowed+"/") && allowed != "os"
	})
}

func needsBrowser(name string) bool {
	return name == "syscall/js" || strings.HasPrefix(name, "github.com/hajimehoshi/ebiten/")
}

// onlyJS reports whether the file is built for the browser and nowhere else.
func onlyJS(file *ast.File) bool {
	for _, group := range file.Comments {
		for _, c := range group.List {
			if !constraint.IsGoBuild(c.Text) || c.Pos() > file.Package {
				continue
			}
			expr, err := constraint.Parse(c.Text)
			if err != nil {
				return false
			}
			with := expr.Eval(func(tag string) bool { return tag == "js" || tag == "wasm" })
			without := expr.Eval(func(tag string) bool { return tag != "js" })
			return with && !without
		}
	}
	return false
}
