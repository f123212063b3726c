package design

import (
	"reflect"
	"strings"

	"blockfield/engine/length"
)

// Get returns the value at a path of a design, "walls[0].width" or
// "view.lamp.azimuth", as the type that the document holds.
func Get(doc Document, path string) (any, bool) {
	p, ok := find(designTree(), reflect.ValueOf(doc), fullPath(path))
	if !ok || p.value.Kind() == reflect.Pointer && p.value.IsNil() {
		return nil, false
	}
	return p.value.Interface(), true
}

// Text returns the value at a path as a form field shows it: lengths in the
// reader's units, lists with commas or semicolons between their entries. Set
// reads it back to the same value.
func Text(doc Document, path string, u length.Units) (string, bool) {
	return textIn(designTree(), reflect.ValueOf(doc), fullPath(path), u)
}

func (p place) text(u length.Units) string {
	if p.node.shape == leafList && p.entry < 0 {
		texts := make([]string, p.value.Len())
		for i := range texts {
			texts[i] = formText(p.value.Index(i), u)
		}
		return strings.Join(texts, separator(p.node.field))
	}
	if f := p.node.field; f.Default != "" && p.value.String() == "" {
		return f.Default
	}
	return formText(p.value, u)
}

// separator stands between the entries of a list in a form.
func separator(f Field) string {
	switch {
	case f.Path == drawnPath:
		return "\n"
	case f.Kind == KindText:
		return "; "
	default:
		return ", "
	}
}

const drawnPath = "design.walls[].groups[].pattern.drawn"

func formText(v reflect.Value, u length.Units) string {
	if l, ok := v.Interface().(length.Length); ok {
		return u.Field(l)
	}
	return textOf(v)
}

// Set returns the design with what a person typed at a path. Lengths are read
// in any notation, a bare number in the reader's units; numbers may carry their
// unit; lists are typed whole ("26, 42, 64, 92") or entry by entry. Fields that
// depend on the edited one follow it (companions.go). The path is no longer
// assumed. doc is not changed, and is returned as it was with an error of type
// Faults when the text cannot be taken.
func Set(doc Document, path, text string, u length.Units) (Document, error) {
	full := fullPath(path)
	next := Clone(doc)
	changed, faults := setIn(designTree(), reflect.ValueOf(&next).Elem(), full, full, text, u)
	switch {
	case faults != nil:
		return doc, faults
	case !changed:
		next.Assumed = dropAssumed(next.Assumed, shortPath(full))
		return next, nil
	}
	accompany(&doc.Design, &next.Design, full)
	next.Assumed = dropAssumed(next.Assumed, shortPath(full))
	if faults := validate(&next); faults != nil {
		return doc, faults.movedTo(full)
	}
	return next, nil
}

// movedTo returns the faults at the edited field: one that shows elsewhere, at
// an obstacle beyond a narrower wall, comes from this edit and stands beside it.
func (f Faults) movedTo(full string) Faults {
	for i := range f {
		rest, below := strings.CutPrefix(f[i].Path, full)
		if !below || rest != "" && rest[0] != '[' && rest[0] != '.' {
			f[i].Path = full
		}
	}
	return f
}

// Confirm returns the design with the value at a path no longer assumed.
func Confirm(doc Document, path string) Document {
	doc = Clone(doc)
	doc.Assumed = dropAssumed(doc.Assumed, shortPath(fullPath(path)))
	return doc
}

// dropAssumed removes a path, and the list that it is an entry of.
func dropAssumed(paths []string, path string) []string {
	kept := paths[:0]
	for _, a := range paths {
		if rest, below := strings.CutPrefix(path, a); !below || rest != "" && rest[0] != '[' {
			kept = append(kept, a)
		}
	}
	if len(kept) == 0 {
		return nil
	}
	return kept
}

// set reads text into the place.
func (p place) set(text string, u length.Units) *Fault {
	if p.node.field.Kind != KindText {
		text = length.PlainSpaces(text)
	}
	if p.node.shape != leafList || p.entry >= 0 {
		return read(p.node.field, p.value, tidy(p.node.field, text), u)
	}
	texts := split(p.node.field, text)
	if len(texts) > p.node.field.Most {
		return &Fault{Code: WrongCount, Value: entries(len(texts)), Allowed: p.node.field.allowedCount()}
	}
	list := reflect.MakeSlice(p.value.Type(), len(texts), len(texts))
	for i, t := range texts {
		if fault := read(p.node.field, list.Index(i), t, u); fault != nil {
			return fault
		}
	}
	if len(texts) == 0 && p.node.omitted(list) {
		list = reflect.Zero(list.Type())
	}
	p.value.Set(list)
	return nil
}

// split cuts a typed list into its entries: at line ends and semicolons where
// there are any, else at commas with a space behind them, else at any comma.
// Words are not cut at commas, and a unit behind the last length is taken for
// all.
func split(f Field, text string) []string {
	sep := ","
	switch {
	case strings.ContainsAny(text, ";\n"):
		sep = ";"
		text = strings.ReplaceAll(text, "\n", ";")
	case f.Kind == KindText:
		sep = ";"
	case strings.Contains(text, ", "):
		sep = ", "
	}
	var list []string
	for entry := range strings.SplitSeq(text, sep) {
		if entry = strings.Trim(entry, " \t\r,"); entry != "" {
			list = append(list, entry)
		}
	}
	if f.Kind == KindLength && len(list) > 1 {
		shareUnit(list)
	}
	return list
}

// shareUnit gives the unit of the last entry to those that have none.
func shareUnit(list []string) {
	last := list[len(list)-1]
	unit := strings.TrimLeft(last, "0123456789.,/- ")
	if _, err := length.ParseExact(last); err != nil || strings.ContainsAny(unit, "0123456789") {
		return
	}
	for i, entry := range list {
		if strings.Trim(entry, "0123456789.,/- ") == "" {
			list[i] = entry + " " + unit
		}
	}
}
