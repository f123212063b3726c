package panel

import (
	"blockfield/engine/design"
	"blockfield/engine/field"
	"blockfield/engine/length"
)

type builder struct {
	group    design.Group
	size     Group
	density  densities
	heightsM []float64
}

func (b builder) panel(letter byte, number int, grid field.Grid) Panel {
	switch letter {
	case 'B':
		grid = grid.Counter()
	case 'R':
		grid = grid.HalfTurn()
	}
	p := Panel{Letter: letter, Grid: grid, Counts: grid.Counts()}
	b.sort(&p, number)
	for w, name := range b.group.Woods() {
		p.Parts = append(p.Parts, b.blocks(p.WoodCounts[w], name, b.density.blocks[w])...)
	}
	p.Parts = append(p.Parts, b.backer())
	p.Parts = append(p.Parts, b.frame()...)
	p.Parts = append(p.Parts, b.carriers()...)
	b.areas(&p)
	var moment float64
	for _, part := range p.Parts {
		p.MassKg += part.MassKg
		moment += part.MassKg * (part.Z.Metres() + part.Depth.Metres()/2)
	}
	p.CentroidM = moment / p.MassKg
	return p
}

// sort says which wood the blocks of a panel are of.
func (b builder) sort(p *Panel, number int) {
	p.Woods = b.group.WoodsOf(number, p.Grid.Levels)
	if p.Woods == nil {
		p.WoodCounts = [][]int{p.Counts}
		return
	}
	p.WoodCounts = zeroes(len(b.group.Woods()), len(p.Counts))
	for i, w := range p.Woods {
		p.WoodCounts[w][p.Grid.Levels[i]]++
	}
}

func (b builder) areas(p *Panel) {
	face := squared(b.group.Block.Size)
	for k, n := range p.Counts {
		if b.group.Heights[k].IsZero() {
			p.BareM2 += float64(n) * squared(b.size.Pitch)
			continue
		}
		p.Blocks += n
	}
	p.TopsM2 = float64(p.Blocks) * face
	p.BasesM2 = p.TopsM2
	p.SidesM2 = p.Grid.StepSum(b.heightsM) * b.group.Block.Size.Metres()
}

func squared(l length.Length) float64 { return l.Metres() * l.Metres() }

// feet is where the blocks stand: the front of the backer.
func (b builder) feet() length.Length {
	return b.group.Cleat.Thickness.Add(b.group.Backer.Thickness)
}

// fieldCorner is how far the field's lower left corner is in from the outer
// edge, both ways.
func (b builder) fieldCorner() length.Length {
	if !b.size.Framed {
		return length.Length{}
	}
	return b.group.Frame.Thickness.Add(b.group.Frame.Gap)
}

func (b builder) blocks(counts []int, wood string, densityKgM3 float64) []Part {
	size := b.group.Block.Size
	var parts []Part
	for k, n := range counts {
		h := b.group.Heights[k]
		if n == 0 || h.IsZero() {
			continue
		}
		face := float64(n) * squared(size)
		parts = append(parts, Part{
			Kind: BlockPart, Name: "block", Count: n,
			Width: size, Height: size, Depth: h, Z: b.feet(),
			Wood: wood, Grain: GrainOut,
			FaceM2: face, MassKg: face * h.Metres() * densityKgM3,
		})
	}
	return parts
}

func (b builder) backer() Part {
	in := b.fieldCorner()
	face := b.size.FieldWidth.Metres() * b.size.FieldHeight.Metres()
	return Part{
		Kind: BackerPart, Name: "backer", Count: 1,
		Width: b.size.FieldWidth, Height: b.size.FieldHeight, Depth: b.group.Backer.Thickness,
		X: in, Y: in, Z: b.group.Cleat.Thickness,
		Wood: b.group.Backer.Sheet, Grain: GrainAcross,
		FaceM2: face, MassKg: face * b.group.Backer.Thickness.Metres() * b.density.backer,
	}
}

// frame returns the four boards. Mitred boards are as long as the outer edge at
// their long points; in a butt frame the upright boards stand between the
// others.
func (b builder) frame() []Part {
	if !b.size.Framed {
		return nil
	}
	t, zero := b.group.Frame.Thickness, length.Length{}
	across, up := b.size.OuterWidth, b.size.OuterHeight
	lessT := t.Metres() // what two mitres take from a board's mean length
	foot := zero
	if b.group.Frame.Joint == design.Butt {
		up, foot, lessT = up.Sub(t.Times(2)), t, 0
	}
	board := func(name string, w, h, long, x, y length.Length, grain Grain) Part {
		face := (long.Metres() - lessT) * t.Metres()
		return Part{
			Kind: FramePart, Name: name, Count: 1,
			Width: w, Height: h, Depth: b.size.FrameDepth, X: x, Y: y,
			Wood: b.group.Frame.Wood, Grain: grain,
			FaceM2: face, MassKg: face * b.size.FrameDepth.Metres() * b.density.frame,
		}
	}
	right, top := b.size.OuterWidth.Sub(t), b.size.OuterHeight.Sub(t)
	return []Part{
		board("frame/top", across, t, across, zero, top, GrainAcross),
		board("frame/bottom", across, t, across, zero, zero, GrainAcross),
		board("frame/left", t, up, up, zero, foot, GrainUp),
		board("frame/right", t, up, up, right, foot, GrainUp),
	}
}

// carriers returns the panel's half of the cleat and the spacer at its foot,
// both as square-edged strips, before the bevel is cut.
func (b builder) carriers() []Part {
	long := length.Max(b.size.FieldWidth.Sub(length.MM(cleatShorterMM)), b.size.FieldWidth.Half())
	in := b.fieldCorner()
	x := in.Add(b.size.FieldWidth.Sub(long).Half())
	strip := func(kind Kind, heightMM int64, y length.Length) Part {
		h := length.MM(heightMM)
		volume := long.Metres() * h.Metres() * b.group.Cleat.Thickness.Metres()
		return Part{
			Kind: kind, Name: string(kind), Count: 1,
			Width: long, Height: h, Depth: b.group.Cleat.Thickness, X: x, Y: y,
			Wood: "strip", Grain: GrainAcross,
			MassKg: volume * carrierDensityKgM3,
		}
	}
	cleatFoot := in.Add(b.size.FieldHeight).Sub(length.MM(cleatBelowTopMM))
	return []Part{
		strip(CleatPart, cleatHeightMM, cleatFoot),
		strip(SpacerPart, spacerHeightMM, in.Add(length.MM(spacerAboveFootMM))),
	}
}
