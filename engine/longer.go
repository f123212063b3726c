package engine

import "blockfield/engine/design"

// LookLonger returns a design for whose cutting plans a longer search is made, as long
// as its blocks and sticks stay as they were planned.
func LookLonger(doc design.Document, plan Result) design.Document {
	next := design.Clone(doc)
	next.Design.Bench.LongerFor = plan.Bill.CutsCode
	return next
}

// LookedLonger returns a design without the wish for a longer search where its blocks
// or sticks are others by now; false where it stays as it is.
func LookedLonger(doc design.Document, plan Result) (design.Document, bool) {
	if wish := doc.Design.Bench.LongerFor; wish == "" || wish == plan.Bill.CutsCode {
		return doc, false
	}
	next := design.Clone(doc)
	next.Design.Bench.LongerFor = ""
	return next, true
}
