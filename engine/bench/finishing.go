package bench

import (
	"math"
	"slices"

	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/panel"
	"blockfield/engine/wood"
)

// Coat is one coat of one finish, on all fields or on all frames that get it.
type Coat struct {
	Finish      string
	Frame       bool // on frames; else on fields
	Number, Of  int  // from 1
	TopsLitres  float64
	LongLitres  float64 // sides of the blocks and bare backer
	FrameLitres float64
	// Next is how long to wait for the coat after it, and after the last one for
	// it to be fully dry; 0 where only the maker's sheet says.
	Next wood.Hours
}

// Litres is what the coat takes in all.
func (c Coat) Litres() float64 { return c.TopsLitres + c.LongLitres + c.FrameLitres }

// How long glue takes to hold a panel that is stood up and trimmed. Common
// practice, no source: a day in a warm shop, twice as long in a cool one.
const (
	glueSetHours = 24
	warmShopC    = 18
	coolShopC    = 12
	coolSetTimes = 2
)

// GlueSetHours is how long a glued field lies before it is stood up and trimmed,
// in a shop of a temperature in °C. Between warm and cool it is in proportion.
func GlueSetHours(tempC float64) float64 {
	cool := (warmShopC - math.Max(coolShopC, math.Min(warmShopC, tempC))) / (warmShopC - coolShopC)
	return glueSetHours * (1 + (coolSetTimes-1)*cool)
}

// coatsOf lists the coats of one finish over all groups, fields first.
func (b *Bill) coatsOf(finish wood.Finish, jobs []job) {
	for _, frame := range []bool{false, true} {
		most := 0
		for _, j := range jobs {
			if j.design.Finish.Kind == finish.Name {
				most = max(most, j.coatsOn(frame))
			}
		}
		for n := 1; n <= most; n++ {
			c := Coat{Finish: finish.Name, Frame: frame, Number: n, Of: most, Next: finish.NextCoat}
			if n == most {
				c.Next = finish.FullyDry
			}
			for _, j := range jobs {
				if j.design.Finish.Kind == finish.Name && n <= j.coatsOn(frame) {
					c.add(finish.Coverage, j)
				}
			}
			b.Coats = append(b.Coats, c)
		}
	}
}

func (j job) coatsOn(frame bool) int {
	coats, frameCoats := j.coats()
	if frame {
		return frameCoats
	}
	return coats
}

// add adds what the panels of a job take of a coat.
func (c *Coat) add(k wood.Coverage, j job) {
	if c.Frame {
		c.FrameLitres += j.frameM2() / k.Frame * finishWaste
		return
	}
	for _, p := range j.built.Panels {
		tops, long := coatLitres(k, p, c.Number)
		c.TopsLitres += tops
		c.LongLitres += long
	}
}

// frameM2 is what of all frames of a job is finished, both faces of their depth.
func (j job) frameM2() float64 {
	return float64(j.panels()) * j.built.FrameRunning.Metres() * j.built.FrameDepth.Metres() * frameFaces
}

// coatLitres is what one coat takes on the field of one panel: on end grain, and on
// sides and bare backer.
func coatLitres(k wood.Coverage, p panel.Panel, number int) (tops, long float64) {
	end, face := k.EndNext, k.FaceNext
	if number == 1 {
		end, face = k.EndFirst, k.FaceFirst
	}
	return p.TopsM2 / end * finishWaste, (sideReach*p.SidesM2 + p.BareM2) / face * finishWaste
}

// Edge is one edge of the panels of a group, as they hang.
type Edge string

// The edges, in the order of a sheet.
const (
	TopEdge    Edge = "top"
	LeftEdge   Edge = "left"
	RightEdge  Edge = "right"
	BottomEdge Edge = "bottom"
)

// Trim is what is done to one edge once the glue has set.
type Trim struct {
	Edge    Edge
	Factory bool          // straight from the sheet: the field starts from it and it stays
	Off     length.Length // what comes off
	Depth   length.Length // that the saw goes through
	Backer  length.Length // of that, the backer
	Bare    bool          // no block along the edge, on any panel
	Reached bool          // by the saw of the design
}

// trims sets what is trimmed on each edge of a group. The field is laid from the
// top and from the left, where the backer keeps the straight edges of the sheet, so
// that what it is cut larger stands out at the bottom and at the right.
func (b *Bill) trims(in design.Bench, jobs []job) {
	for i, j := range jobs {
		for _, e := range []Edge{TopEdge, LeftEdge, RightEdge, BottomEdge} {
			t := Trim{Edge: e, Factory: e == TopEdge || e == LeftEdge, Depth: j.design.Backer.Thickness, Backer: j.design.Backer.Thickness}
			tallest := j.tallestAlong(e)
			t.Bare = tallest.IsZero()
			if in.Trim == design.TrimBlocks {
				t.Depth = t.Depth.Add(tallest)
			}
			if !t.Factory {
				t.Off = in.BackerOversize
			}
			t.Reached = t.Depth.Cmp(in.SawDepth) <= 0
			b.Groups[i].Trims = append(b.Groups[i].Trims, t)
		}
	}
}

// TrimsFrom is what is trimmed where the rows start at the bottom or, as in Trims,
// at the top: the edge that they start from is the straight one.
func (g GroupBill) TrimsFrom(start string) []Trim {
	out := slices.Clone(g.Trims)
	if start != design.BottomEdge {
		return out
	}
	for i := range out {
		switch t := &out[i]; t.Edge {
		case TopEdge:
			t.Factory, t.Off = false, g.oversize()
		case BottomEdge:
			t.Factory, t.Off = true, length.Length{}
		}
	}
	return out
}

// oversize is how much larger the backers of the group are cut.
func (g GroupBill) oversize() length.Length {
	most := length.Length{}
	for _, t := range g.Trims {
		most = length.Max(most, t.Off)
	}
	return most
}

// tallestAlong is the tallest block along an edge, over all panels of a job.
func (j job) tallestAlong(e Edge) length.Length {
	tallest := length.Length{}
	for _, p := range j.built.Panels {
		rows, columns := p.Grid.Rows, p.Grid.Columns
		for n := range max(rows, columns) {
			at := -1
			switch {
			case e == TopEdge && n < columns:
				at = n
			case e == BottomEdge && n < columns:
				at = (rows-1)*columns + n
			case e == LeftEdge && n < rows:
				at = n * columns
			case e == RightEdge && n < rows:
				at = n*columns + columns - 1
			}
			if at >= 0 {
				tallest = length.Max(tallest, j.design.Heights[p.Grid.Levels[at]])
			}
		}
	}
	return tallest
}

// Sawn reports whether the edge has to be sawn at all.
func (t Trim) Sawn() bool { return !t.Off.IsZero() }
