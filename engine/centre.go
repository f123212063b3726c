package engine

import (
	"fmt"

	"blockfield/engine/design"
	"blockfield/engine/length"
)

// centredMM is how far the middle of a group may be off the middle of its wall
// and still be meant to be there: nobody places a panel by the millimetre
// without a reason, and a left edge is a round figure. Invented.
const centredMM = 10

// KeepPlaced returns the document with every group moved that an edit of its width or of
// the wall's would take from its place: one that stood in the middle of its wall stands
// there again, and one that was on its wall and would run past the right corner ends at
// that corner. Before is the plan before the edit. A place that the edit itself has
// changed is left as it is, and so is a panel wider than its wall, and a design that
// cannot be built.
func KeepPlaced(was design.Document, before Result, doc design.Document) design.Document {
	groups, err := build(doc.Design)
	if err != nil || len(before.Groups) != len(groups) {
		return doc
	}
	for i, g := range groups {
		old := before.Groups[i]
		wall, oldWall := doc.Design.Walls[g.Wall].Width, was.Design.Walls[old.Wall].Width
		same := g.Built.TotalWidth.Same(old.Built.TotalWidth) && wall.Same(oldWall)
		free := wall.Sub(g.Built.TotalWidth)
		if same || !g.Design.Place.Left.Same(old.Design.Place.Left) || free.Cmp(length.MM(0)) < 0 {
			continue
		}
		var left string
		switch notation := g.Design.Place.Left.Notation(); {
		case centred(old, oldWall):
			left = roundPlace(free.Half(), notation)
		case g.Built.Left.Cmp(free) > 0 && old.sideways(oldWall) == nil:
			left = floorPlace(free, notation)
		default:
			continue
		}
		next, err := design.Set(doc, g.Path+".place.left", left, length.Metric)
		if err == nil {
			next.Assumed = doc.Assumed // nobody has measured it now who had not before
			doc = next
		}
	}
	return doc
}

func centred(g Group, wall length.Length) bool {
	off := g.Built.Left.Add(g.Built.TotalWidth.Half()).Sub(wall.Half())
	return max(off.Millimetres(), -off.Millimetres()) <= centredMM
}

// roundPlace writes a place as somebody would mark it on a wall, in whole
// millimetres or in sixteenths of an inch.
func roundPlace(l length.Length, n length.Notation) string {
	return floorPlace(length.Nanometres(l.Nanometres()+placeStep(n)/2, l.Notation()), n)
}

// floorPlace is the same, rounded down.
func floorPlace(l length.Length, n length.Notation) string {
	steps := l.Nanometres() / placeStep(n)
	if n == length.InInch || n == length.InFeet {
		return length.Sixtyfourths(4 * steps).String()
	}
	return fmt.Sprintf("%d mm", steps)
}

// placeStep is what places are marked to, in nanometres.
func placeStep(n length.Notation) int64 {
	if n == length.InInch || n == length.InFeet {
		return 25_400_000 / 16
	}
	return 1_000_000
}
