package design

// KeepLook returns the document with its design kept for comparison under a
// name. The error is of type Faults.
func KeepLook(doc Document, name string) (Document, error) {
	if n := len(doc.Looks); n >= maxLooks {
		row, _ := Lookup("looks")
		return doc, Faults{{Path: "looks", Code: WrongCount, Value: entries(n + 1), Allowed: row.allowedCount()}}
	}
	next := Clone(doc)
	next.Looks = append(next.Looks, Look{Name: name, Design: Clone(doc).Design})
	if faults := validate(&next); faults != nil {
		return doc, faults
	}
	return next, nil
}

// OpenLook returns the document with a kept look as its design; the look stays
// kept. n counts from 0. The error is of type Faults.
func OpenLook(doc Document, n int) (Document, error) {
	if n < 0 || n >= len(doc.Looks) {
		return doc, Faults{{Path: "looks", Code: UnknownField}}
	}
	next := Clone(doc)
	next.Design = Clone(doc).Looks[n].Design
	there := make(map[string]bool)
	for _, path := range Assumable(next.Design) {
		there[path] = true
	}
	var assumed []string
	for _, path := range next.Assumed {
		if there[path] {
			assumed = append(assumed, path)
		}
	}
	next.Assumed = assumed
	return next, nil
}

// DropLook returns the document without a kept look. n counts from 0. The error
// is of type Faults.
func DropLook(doc Document, n int) (Document, error) {
	if n < 0 || n >= len(doc.Looks) {
		return doc, Faults{{Path: "looks", Code: UnknownField}}
	}
	next := Clone(doc)
	next.Looks = append(next.Looks[:n], next.Looks[n+1:]...)
	if len(next.Looks) == 0 {
		next.Looks = nil
	}
	return next, nil
}
