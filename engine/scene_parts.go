package engine

import (
	"math"

	"blockfield/engine/panel"
	"blockfield/engine/scene"
	"blockfield/engine/wall"
)

// The pulled-apart view: how far one part lies before the next, as a part of the
// panel's smaller side and in metres. Chosen by eye.
const (
	apartShare              = 0.28
	apartLeastM, apartMostM = 0.09, 0.26
)

// headM is the head of a screw in the picture, a square of the cleat's own grid.
const headM = 0.008

// Show returns a picture of the plan as a view shows it: two of them have the first
// panel on the first wall alone, turned over its upright edge like a page, or in its
// parts. Camera and lamp stay.
func (r Result) Show(s scene.Scene, v scene.View) scene.Scene {
	if !v.Alone() {
		return s
	}
	for i, g := range r.Groups {
		if g.Wall != 0 || len(s.Panels) == 0 {
			continue
		}
		p := parted{Panel: s.Panels[0], built: g.Built.Panels[0], half: r.Hangings[i].Halves[0], high: g.Built.FieldHeight.Metres()}
		p.wide = g.Built.FieldWidth.Metres()
		p.Backer, _ = scene.BackerMaterial(g.Design.Backer.Sheet) // its rear, and what the blocks will cover, stays raw
		p.bevel = math.Tan(g.Design.Cleat.Bevel * math.Pi / 180)
		if r.Hangings[i].Means != wall.Stand {
			p.strips = r.Hangings[i].Strips
			p.onWall = true
		}
		if s.Panels = p.apart(); v == scene.Rear {
			s.Panels = p.rear()
		}
		return s
	}
	return s
}

// parted is a panel of the picture with what it is built of.
type parted struct {
	scene.Panel
	built      panel.Panel
	half       wall.Half
	wide, high float64 // of the field
	bevel      float64
	onWall     bool // it hangs on a strip
	strips     []wall.Strip
}

// bar is a plain board in the picture: a backer without frame and blocks, its lower left
// rear corner at a place.
func bar(x, y, z, width, height, depth float64, of scene.Material) scene.Panel {
	return scene.Panel{
		LeftM: x, BottomM: y, OuterWidthM: width, OuterHeightM: height, OutM: z, BackerThicknessM: depth,
		Columns: 1, Rows: 1, PitchM: 0.01, BlockM: 0.01, HeightsM: []float64{0}, Levels: []uint8{0},
		Blocks: of, Frame: of, Backer: of,
	}
}

// carrier is the wood of cleat and spacer, raw.
func (p parted) carrier() scene.Material {
	m, _ := scene.WoodMaterial("pine", "none")
	return m
}

// bars are the panel's half of the cleat and its spacer, their rears at z.
func (p parted) bars(z float64) (all []scene.Panel) {
	for _, part := range p.built.Parts {
		if part.Kind != panel.CleatPart && part.Kind != panel.SpacerPart {
			continue
		}
		one := bar(p.LeftM+part.X.Metres(), p.BottomM+part.Y.Metres(), z,
			part.Width.Metres(), part.Height.Metres(), part.Depth.Metres(), p.carrier())
		if part.Kind == panel.CleatPart { // its height is the mean of both faces; its wall side reaches lower
			drop := p.bevel * part.Depth.Metres()
			one.BottomM -= drop
			one.OuterHeightM += drop / 2
			one.Bevel = p.bevel
		}
		all = append(all, one)
	}
	return all
}

// rear is the panel as somebody sees it who has turned it like a page: what was at the
// left is at the right, the backer lies behind its cleat, screws in it as they are to
// be driven.
func (p parted) rear() []scene.Panel {
	deep := math.Max(p.FrameDepthM, p.CleatThicknessM+p.BackerThicknessM+p.HeightsM[len(p.HeightsM)-1])
	back := p.Panel
	back.HeightsM, back.Levels, back.Cut, back.Woods = []float64{0}, make([]uint8, len(p.Levels)), nil, nil
	back.CleatThicknessM = deep - p.CleatThicknessM - p.BackerThicknessM
	all := []scene.Panel{back}
	if p.FrameThicknessM == 0 { // what stands behind the backer: the blocks, all as tall as the tallest
		all = append(all, bar(p.LeftM, p.BottomM, 0, p.OuterWidthM, p.OuterHeightM, back.CleatThicknessM, p.Blocks))
	}
	for i, one := range p.bars(deep - p.CleatThicknessM) {
		one.LeftM = 2*p.LeftM + p.OuterWidthM - one.LeftM - one.OuterWidthM
		one.Bevel = 0 // it faces the floor behind the edge that is seen
		if i == 0 {
			p.screws(&one)
		}
		all = append(all, one)
	}
	return all
}

// screws puts the heads of the screws on the panel's half, seen from behind.
func (p parted) screws(one *scene.Panel) {
	columns, rows := int(one.OuterWidthM/headM), int(one.OuterHeightM/headM)
	if columns < 1 || rows < 1 || columns > scene.MaxSide {
		return
	}
	one.Columns, one.Rows, one.PitchM, one.BlockM = columns, rows, headM, headM
	one.HeightsM, one.Levels = []float64{0, headM / 5}, make([]uint8, columns*rows)
	grey := scene.RGB{R: 0.16, G: 0.16, B: 0.17}
	one.Blocks = scene.Material{Face: grey, End: grey, Gloss: 0.5}
	const mm = 1000
	// The field's upper left corner, as the rear map measures from it.
	left := p.LeftM + (p.OuterWidthM-p.wide)/2
	top := p.BottomM + p.built.FieldTop().Metres()
	x0 := one.LeftM + (one.OuterWidthM-float64(columns)*headM)/2
	y0 := one.BottomM + (one.OuterHeightM+float64(rows)*headM)/2
	for _, h := range p.half.Holes(p.half.Row) {
		column, row := int((left+h.FromLeftMM/mm-x0)/headM), int((y0-top+h.FromTopMM/mm)/headM)
		if column >= 0 && row >= 0 && column < columns && row < rows {
			one.Levels[row*columns+column] = 1
		}
	}
}

// apart is strip, cleat with spacer, backer, blocks and frame, one before the other.
func (p parted) apart() []scene.Panel {
	step := math.Min(math.Max(apartShare*math.Min(p.OuterWidthM, p.OuterHeightM), apartLeastM), apartMostM)
	var all []scene.Panel
	if strip, ok := p.strip(); ok {
		all = append(all, strip)
	}
	z := step
	all = append(all, p.bars(z)...)
	z += p.CleatThicknessM + step
	left, foot := p.LeftM+(p.OuterWidthM-p.wide)/2, p.BottomM+p.built.FieldTop().Metres()-p.high
	all = append(all, bar(left, foot, z, p.wide, p.high, p.BackerThicknessM, p.Backer))
	z += p.BackerThicknessM + step
	blocks := p.Panel
	blocks.LeftM, blocks.BottomM, blocks.OuterWidthM, blocks.OuterHeightM = left, foot, p.wide, p.high
	blocks.FrameThicknessM, blocks.FrameGapM, blocks.FrameDepthM = 0, 0, 0
	blocks.CleatThicknessM, blocks.BackerThicknessM, blocks.OutM = 0, 0, z
	all = append(all, blocks)
	if p.FrameThicknessM == 0 {
		return all
	}
	z += p.HeightsM[len(p.HeightsM)-1] + step
	frame := bar(p.LeftM, p.BottomM, z, p.OuterWidthM, p.OuterHeightM, 0, p.Frame)
	frame.FrameThicknessM, frame.FrameGapM, frame.FrameDepthM, frame.Mitred = p.FrameThicknessM, p.FrameGapM, p.FrameDepthM, p.Mitred
	frame.Seed = p.Seed
	return append(all, frame)
}

// strip is what stays on the wall: as counted, or as long as the panel's half and as
// high as that.
func (p parted) strip() (scene.Panel, bool) {
	if !p.onWall {
		return scene.Panel{}, false
	}
	for _, part := range p.built.Parts {
		if part.Kind != panel.CleatPart {
			continue
		}
		tip := p.BottomM + part.Y.Metres()
		one := bar(p.LeftM+part.X.Metres(), 0, 0, part.Width.Metres(), part.Height.Metres(), part.Depth.Metres(), p.carrier())
		if len(p.strips) > 0 {
			s := p.strips[0]
			one.LeftM, one.OuterWidthM, one.OuterHeightM = s.LeftM, s.RightM-s.LeftM, s.HeightM
			tip = s.TipM
		}
		one.BottomM = tip - one.OuterHeightM
		one.Bevel = -p.bevel
		return one, true
	}
	return scene.Panel{}, false
}
