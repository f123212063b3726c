package designtest

import "blockfield/engine/design"

// TwoWoods is a document with walnut among the blocks of all groups: that of the
// groups of walnut is maple.
func TwoWoods(doc design.Document, mixed string) design.Document {
	doc = design.Clone(doc)
	for i := range doc.Design.Walls {
		for j := range doc.Design.Walls[i].Groups {
			g := &doc.Design.Walls[i].Groups[j]
			g.Mixed, g.SecondWood = mixed, "walnut"
			if g.Wood == g.SecondWood {
				g.SecondWood = "maple"
			}
		}
	}
	return doc
}
