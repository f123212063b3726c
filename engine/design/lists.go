package design

import (
	"reflect"
	"slices"
	"strconv"
	"strings"
)

// Add returns the design with a fresh part at the end of a list, "walls",
// "walls[0].groups", "walls[0].obstacles", "room.surfaces", "bench.stock", "bench.sheets" or
// "money.extras",
// and the path of that part. What comes from the real world in it is assumed.
func Add(doc Document, list string) (Document, string, error) {
	full := fullPath(list)
	next := Clone(doc)
	p, fault := editableList(&next, full)
	if fault != nil {
		return doc, "", Faults{*fault}
	}
	n := p.value.Len()
	if n >= p.node.field.Most {
		return doc, "", Faults{{
			Path: full, Code: WrongCount, Value: entries(n + 1), Allowed: p.node.field.allowedCount(),
		}}
	}
	entry := reflect.ValueOf(newEntryOf(next.Design, p.node.field.Path))
	p.value.Set(reflect.Append(p.value, entry))
	path := shortPath(full) + "[" + strconv.Itoa(n) + "]"
	next.Assumed = dropAssumed(next.Assumed, path)
	for _, a := range Assumable(next.Design) {
		if strings.HasPrefix(a, path+".") {
			next.Assumed = append(next.Assumed, a)
		}
	}
	next.Assumed = sortAssumed(next.Assumed)
	if faults := validate(&next); faults != nil {
		return doc, "", faults
	}
	return next, path, nil
}

// Remove returns the design without the part at a path, "walls[0].obstacles[2]".
func Remove(doc Document, path string) (Document, error) {
	full := fullPath(path)
	next := Clone(doc)
	open := strings.LastIndexByte(full, '[')
	p, ok := find(designTree(), reflect.ValueOf(&next).Elem(), full)
	if !ok || p.entry < 0 || open < 0 {
		return doc, Faults{{Path: full, Code: UnknownField}}
	}
	list, fault := editableList(&next, full[:open])
	if fault != nil {
		return doc, Faults{*fault}
	}
	n := list.value.Len()
	if n <= list.node.field.Least {
		return doc, Faults{{
			Path: full, Code: WrongCount, Value: entries(n - 1), Allowed: list.node.field.allowedCount(),
		}}
	}
	list.value.Set(reflect.AppendSlice(list.value.Slice(0, p.entry), list.value.Slice(p.entry+1, n)))
	if list.node.omitted(list.value) { // it comes back from a file as none
		list.value.SetZero()
	}
	next.Assumed = renumbered(next.Assumed, shortPath(full[:open]), p.entry)
	if faults := validate(&next); faults != nil {
		return doc, faults
	}
	return next, nil
}

// editableList finds a list of parts that may grow and shrink.
func editableList(doc *Document, full string) (place, *Fault) {
	p, ok := find(designTree(), reflect.ValueOf(doc).Elem(), full)
	switch {
	case !ok:
		return p, &Fault{Path: full, Code: UnknownField}
	case p.node.shape != partList || p.entry >= 0 || p.node.field.Fixed:
		return p, &Fault{Path: full, Code: CannotEdit}
	}
	return p, nil
}

// renumbered drops the paths of one entry of a list and moves those of later
// entries up by one.
func renumbered(paths []string, list string, gone int) []string {
	var kept []string
	for _, path := range paths {
		number, rest, _ := strings.Cut(strings.TrimPrefix(path, list+"["), "]")
		i, err := strconv.Atoi(number)
		switch {
		case !strings.HasPrefix(path, list+"[") || err != nil || i < gone:
			kept = append(kept, path)
		case i > gone:
			kept = append(kept, list+"["+strconv.Itoa(i-1)+"]"+rest)
		}
	}
	slices.Sort(kept)
	return kept
}
