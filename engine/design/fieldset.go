package design

import (
	"reflect"
	"strings"

	"blockfield/engine/length"
)

// lookupIn returns the row of a table for a path of its document.
func lookupIn(table []Field, path string) (Field, bool) {
	pattern := patternOf(path)
	for _, f := range table {
		if f.Path == pattern || f.IsList && f.Path+"[]" == pattern {
			return f, true
		}
	}
	return Field{}, false
}

// textIn returns the value at a path of a document as a form field shows it.
func textIn(tree *node, root reflect.Value, path string, u length.Units) (string, bool) {
	p, ok := find(tree, root, path)
	if !ok || p.node.shape == part || p.node.shape == partList {
		return "", false
	}
	return p.text(u), true
}

// setIn puts what a person typed at a path of a document, whose root can be set. It
// reports whether anything is to change: what comes back as it was shown keeps its
// exact value and notation. full is the path that a fault names.
func setIn(tree *node, root reflect.Value, path, full, text string, u length.Units) (changed bool, faults Faults) {
	p, ok := find(tree, root, path)
	switch {
	case !ok:
		return false, Faults{{Path: full, Code: UnknownField}}
	case p.node.field.Fixed || p.node.shape == part || p.node.shape == partList:
		return false, Faults{{Path: full, Code: CannotEdit}}
	case strings.TrimSpace(text) == p.text(u):
		return false, nil
	}
	if fault := p.set(text, u); fault != nil {
		fault.Path = full
		return false, Faults{*fault}
	}
	return true, nil
}

// at puts all faults at the field that was edited.
func (f Faults) at(full string) Faults {
	for i := range f {
		f[i].Path = full
	}
	return f
}
