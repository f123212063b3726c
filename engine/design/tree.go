package design

import (
	"reflect"
	"strconv"
	"strings"
	"sync"
)

// node joins a Go struct field with its row of the table. Decode, Encode,
// Validate, Set and Schema all walk the same tree.
type node struct {
	name  string       // name in the file
	index int          // place in the parent's struct
	typ   reflect.Type // of the value; an optional part is a pointer
	shape shape
	field Field // of leaves and lists; a part has none
	parts []node
}

type shape uint8

const (
	leaf     shape = iota
	leafList       // a list of values
	part           // named fields
	partList       // a list of parts; parts are the fields of one
)

// optionalPart reports whether n may be missing altogether.
func (n *node) optionalPart() bool { return n.typ.Kind() == reflect.Pointer }

// omitted reports whether Encode leaves n out: where it is retired, or empty.
func (n *node) omitted(v reflect.Value) bool {
	if n.field.Retired {
		return true
	}
	if n.optionalPart() {
		return v.IsNil()
	}
	switch {
	case !n.field.Sparse:
		return false
	case v.Kind() == reflect.Slice:
		return v.Len() == 0
	}
	return v.IsZero()
}

// child finds the part with a name and its number, or −1.
func (n *node) child(name string) (*node, int) {
	for i := range n.parts {
		if n.parts[i].name == name {
			return &n.parts[i], i
		}
	}
	return nil, -1
}

// The trees are built once and never change.
var (
	designTree = sync.OnceValue(func() *node { return buildTree(reflect.TypeFor[Document](), designTable()) })
	bookTree   = sync.OnceValue(func() *node { return buildTree(reflect.TypeFor[Book](), bookTable()) })
)

func buildTree(t reflect.Type, table []Field) *node {
	rows := make(map[string]Field, len(table))
	for _, f := range table {
		rows[f.Path] = f
	}
	return &node{typ: t, shape: part, parts: buildParts(t, "", rows)}
}

func buildParts(t reflect.Type, prefix string, rows map[string]Field) []node {
	var parts []node
	for i := range t.NumField() {
		name, kept, _ := strings.Cut(t.Field(i).Tag.Get("json"), ",")
		n := node{name: name, index: i, typ: t.Field(i).Type}
		path := prefix + name
		inner := n.typ
		if n.optionalPart() {
			inner = n.typ.Elem()
		}
		switch row, known := rows[path]; {
		case isPart(inner):
			if path == "looks[].design" {
				path = "design" // the rows of a kept design are those of the design
			}
			n.shape, n.parts = part, buildParts(inner, path+".", rows)
			n.field.Sparse = kept == "omitzero" // a part of which nothing is said
		case !known:
			panic("design: internal error: no row for " + path)
		case inner.Kind() == reflect.Slice && isPart(inner.Elem()):
			n.shape, n.field = partList, row
			n.parts = buildParts(inner.Elem(), path+"[].", rows)
		case inner.Kind() == reflect.Slice:
			n.shape, n.field = leafList, row
		default:
			n.field = row
		}
		parts = append(parts, n)
	}
	return parts
}

// isPart reports whether t has fields of ours, unlike a Length, which is a
// value.
func isPart(t reflect.Type) bool {
	return t.Kind() == reflect.Struct && t.NumField() > 0 && t.Field(0).Tag.Get("json") != ""
}

// at is a place in a document on the way down the tree. Its text is made only
// when something is to be said about it.
type at struct {
	up    *at
	name  string
	entry int // −1: a name
}

func (p *at) field(name string) *at { return &at{up: p, name: name, entry: -1} }
func (p *at) item(i int) *at        { return &at{up: p, entry: i} }

// top is the first name of the path.
func (p *at) top() string {
	for p.up != nil {
		p = p.up
	}
	return p.name
}

// String writes the full path, "design.walls[0].groups[0].heights[2]".
func (p *at) String() string {
	switch {
	case p == nil:
		return ""
	case p.entry >= 0:
		return p.up.String() + "[" + strconv.Itoa(p.entry) + "]"
	case p.up == nil:
		return p.name
	default:
		return p.up.String() + "." + p.name
	}
}

// fullPath accepts a path below the design as well as one from the top.
func fullPath(path string) string {
	first := path
	if i := strings.IndexAny(path, ".["); i >= 0 {
		first = path[:i]
	}
	if n, _ := designTree().child(first); n != nil {
		return path
	}
	return designPrefix + path
}

const designPrefix = "design."

// shortPath is the name of a form field: below the design where it is there.
func shortPath(full string) string { return strings.TrimPrefix(full, designPrefix) }

// patternOf replaces every entry number by [].
func patternOf(path string) string {
	if !strings.Contains(path, "[") {
		return path
	}
	var b strings.Builder
	for path != "" {
		open := strings.IndexByte(path, '[')
		shut := strings.IndexByte(path, ']')
		if open < 0 || shut < open {
			break
		}
		b.WriteString(path[:open])
		b.WriteString("[]")
		path = path[shut+1:]
	}
	return b.String() + path
}

// place is what a concrete path leads to.
type place struct {
	node  *node
	value reflect.Value
	list  reflect.Value // the list that holds value, if it is an entry of one
	entry int
}

// find follows a full concrete path through a document. The value can be set
// when root is addressable.
func find(tree *node, root reflect.Value, full string) (place, bool) {
	p := place{node: tree, value: root, entry: -1}
	for rest := full; rest != ""; {
		if p.value.Kind() == reflect.Pointer {
			if p.value.IsNil() {
				return place{}, false
			}
			p.value = p.value.Elem()
		}
		if rest[0] == '[' {
			number, after, ok := strings.Cut(rest[1:], "]")
			i, err := strconv.Atoi(number)
			if !ok || err != nil || strconv.Itoa(i) != number || p.entry >= 0 ||
				p.value.Kind() != reflect.Slice || i < 0 || i >= p.value.Len() {
				return place{}, false
			}
			p = place{node: p.node, value: p.value.Index(i), list: p.value, entry: i}
			rest = after
			continue
		}
		if full != rest {
			if rest[0] != '.' {
				return place{}, false
			}
			rest = rest[1:]
		}
		name := rest
		if i := strings.IndexAny(rest, ".["); i >= 0 {
			name = rest[:i]
		}
		rest = rest[len(name):]
		holdsParts := p.node.shape == part || p.node.shape == partList && p.entry >= 0
		n, _ := p.node.child(name)
		if !holdsParts || n == nil {
			return place{}, false
		}
		p = place{node: n, value: p.value.Field(n.index), entry: -1}
	}
	return p, true
}
