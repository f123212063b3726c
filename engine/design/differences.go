package design

import (
	"iter"
	"reflect"
	"strings"

	"blockfield/engine/length"
)

// Differences gives each path of after, as Get takes it, whose text in a form is
// another than in before or was not there, with that text. Lists of values come
// as a whole. The offer and the designs of the looks have no form.
func Differences(before, after Document, u length.Units) iter.Seq2[string, string] {
	return func(yield func(string, string) bool) {
		b, a := reflect.ValueOf(&before).Elem(), reflect.ValueOf(&after).Elem()
		tree := designTree()
		for _, name := range []string{"design", "looks", "view"} {
			n, _ := tree.child(name)
			top := at{name: name, entry: -1}
			if !differences(n, b.Field(n.index), a.Field(n.index), &top, u, yield) {
				return
			}
		}
	}
}

// differences goes down a part of the tree; before is not valid where nothing
// was there. It reports whether to go on.
func differences(n *node, before, after reflect.Value, p *at, u length.Units, yield func(string, string) bool) bool {
	if after.Kind() == reflect.Pointer {
		if before.IsValid() {
			before = before.Elem()
		}
		after = after.Elem()
	}
	switch {
	case !after.IsValid():
		return true
	case n.shape == part:
		below := p.field("")
		for i := range n.parts {
			c := &n.parts[i]
			if c.typ == reflect.TypeFor[Design]() {
				continue // of a look
			}
			below.name = c.name
			var was reflect.Value
			if before.IsValid() {
				was = before.Field(c.index)
			}
			if !differences(c, was, after.Field(c.index), below, u, yield) {
				return false
			}
		}
		return true
	case n.shape == partList:
		entry := *n
		entry.shape = part
		for i := range after.Len() {
			var was reflect.Value
			if before.IsValid() && i < before.Len() {
				was = before.Index(i)
			}
			if !differences(&entry, was, after.Index(i), p.item(i), u, yield) {
				return false
			}
		}
		return true
	case before.IsValid() && same(before, after):
		return true
	}
	text := place{node: n, value: after, entry: -1}.text(u)
	if before.IsValid() && (place{node: n, value: before, entry: -1}).text(u) == text {
		return true
	}
	return yield(shortPath(p.String()), text)
}

// same reports whether two values of a form are certainly the same.
func same(a, b reflect.Value) bool {
	if a.Comparable() && b.Comparable() {
		return a.Equal(b)
	}
	return reflect.DeepEqual(a.Interface(), b.Interface())
}

// Alteration is one field, or one entry of a list as a whole, that differs between two
// designs.
type Alteration struct {
	Path  string // as Get takes it
	Added bool   // an entry that was not there before
	Gone  bool   // an entry that is there no more
}

// Alterations lists how two designs differ, in the order of the table: what the later one has
// otherwise or anew, then what it has no more. Whatever enters no revision is no change.
func Alterations(before, after Document, u length.Units) []Alteration {
	var all []Alteration
	seen := map[string]bool{}
	from, to := reflect.ValueOf(&before).Elem(), reflect.ValueOf(&after).Elem()
	add := func(path string, other reflect.Value, entry Alteration) {
		full := fullPath(path)
		if !strings.HasPrefix(full, designPrefix) {
			return
		}
		c := Alteration{Path: path}
		for i := 0; i < len(full); i++ { // the first entry on the way that the other one has not
			if full[i] != ']' {
				continue
			}
			if _, there := find(designTree(), other, full[:i+1]); !there {
				c = entry
				c.Path = shortPath(full[:i+1])
				break
			}
		}
		if !seen[c.Path] {
			seen[c.Path] = true
			all = append(all, c)
		}
	}
	for path := range Differences(before, after, u) {
		add(path, from, Alteration{Added: true})
	}
	for path := range Differences(after, before, u) {
		add(path, to, Alteration{Gone: true})
	}
	return all
}
