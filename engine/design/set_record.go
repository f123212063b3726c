package design

import (
	"reflect"

	"blockfield/engine/length"
)

// RecordPrefix is what the name of a form field of a record starts with, so that
// fields of a record and of a design stand in one form.
const RecordPrefix = "record."

// LookupRecord returns the row of the table for a path of a job record, such as
// "bins[0].cut".
func LookupRecord(path string) (Field, bool) { return lookupIn(recordTable(), path) }

// AddReading returns the record with one reading of the moisture meter more.
func AddReading(rec Record, r Reading) (Record, error) {
	next := CloneRecord(rec)
	next.Meter = append(next.Meter, r)
	if faults := validateRecord(&next); faults != nil {
		return rec, faults
	}
	return next, nil
}

// RemoveEntry returns the record without an entry of a list, "meter[2]".
func RemoveEntry(rec Record, path string) (Record, error) {
	next := CloneRecord(rec)
	p, ok := find(recordTree(), reflect.ValueOf(&next).Elem(), path)
	if !ok || p.entry < 0 || p.node.shape != partList {
		return rec, Faults{{Path: RecordPrefix + path, Code: UnknownField}}
	}
	n := p.list.Len()
	p.list.Set(reflect.AppendSlice(p.list.Slice(0, p.entry), p.list.Slice(p.entry+1, n)))
	return next, nil
}

// RecordText returns the value at a path of a job record as a form field shows it.
// SetRecord reads it back to the same value.
func RecordText(rec Record, path string, u length.Units) (string, bool) {
	return textIn(recordTree(), reflect.ValueOf(rec), path, u)
}

// SetRecord returns the record with what a person typed at a path, read as Set reads
// it. rec is not changed, and is returned as it was with an error of type Faults when
// the text cannot be taken; their paths begin with RecordPrefix.
func SetRecord(rec Record, path, text string, u length.Units) (Record, error) {
	full := RecordPrefix + path
	next := CloneRecord(rec)
	changed, faults := setIn(recordTree(), reflect.ValueOf(&next).Elem(), path, full, text, u)
	if changed {
		faults = validateRecord(&next).at(full)
	}
	if faults != nil {
		return rec, faults
	}
	return next, nil
}
