package scene

import "slices"

// CellBytesWidth is the width in cells of the picture that Cells lays them out
// in, and RGBA bytes a cell its form.
const CellBytesWidth = 1024

// heightSteps is the resolution of a height in Cells: two bytes.
const heightSteps = 0xffff

// tallest is the greatest height that any panel's set allows; never 0, since
// heights are divided by it.
func (s Scene) tallest() float64 {
	h := liftM
	for i := range s.Panels {
		h = max(h, slices.Max(s.Panels[i].HeightsM))
	}
	return h
}

// Cells returns the heights of all panels' cells and what their blocks are cut from
// as an RGBA picture of CellBytesWidth by rows pixels for the shader: red and
// green are the height as a part of the tallest (high byte first), blue is the Cut
// of the block, and alpha is opaque unless it is of the second look. Panels follow each other; within one the order is that of Levels.
func (s Scene) Cells() (pix []byte, rows int) {
	cells := 0
	for i := range s.Panels {
		cells += len(s.Panels[i].Levels)
	}
	tallest := s.tallest()
	rows = (cells + CellBytesWidth - 1) / CellBytesWidth
	pix = make([]byte, rows*CellBytesWidth*4)
	at := 0
	for i := range s.Panels {
		p := &s.Panels[i]
		for j, l := range p.Levels {
			h := uint16(p.HeightsM[l]/tallest*heightSteps + 0.5)
			copy(pix[at:], []byte{uint8(h >> 8), uint8(h), uint8(p.cutOf(j)), 0xff})
			if p.Woods != nil && p.Woods[j] == 1 {
				pix[at+3] = 0
			}
			at += 4
		}
	}
	return pix, rows
}

// boardVectors is how many vectors of four numbers the shader has a panel.
const boardVectors = 15

// secondVectors is how many there are of the second look of blocks.
const secondVectors = 5

// Mixed reports whether there are blocks of a second look.
func (s Scene) Mixed() bool {
	return slices.ContainsFunc(s.Panels, func(p Panel) bool { return p.Woods != nil })
}

// Uniforms returns what the shader needs beside Cells for a picture of the
// given size. Names, order and units are those of the shader; the array Board is
// padded to MaxPanels, as is Second.
func (s Scene) Uniforms(width, height int) map[string]any {
	v := newView(s, width, height)
	board := make([]float32, 0, MaxPanels*boardVectors*4)
	second := make([]float32, 0, MaxPanels*secondVectors*4)
	first := 0
	for i := range v.panels {
		second = v.panels[i].appendSecond(second)
		board = v.panels[i].appendVectors(board, first)
		first += len(v.panels[i].levels)
	}
	return map[string]any{
		"Picture": vec4(vec{v.width, v.height, v.tanHalf}, 0),
		"EyeM":    vec3(v.eye), "Forward": vec3(v.forward), "Right": vec3(v.right), "Up": vec3(v.up),
		"Room":       vec4(vec{v.wallW, v.wallH, s.tallest()}, v.lampReachM),
		"WallColour": vec3(rgb(v.wall)),
		"LampDir":    vec3(v.lampDir), "LampU": vec3(v.lampU), "LampV": vec3(v.lampV), "LampAtM": vec3(v.lampAt),
		"LampLight": vec3(rgb(v.lampLight)), "FillLight": vec3(rgb(v.fillLight)),
		"Figure": vec3(vec{v.figure, v.figureX, v.sofaX}),
		"Panels": len(v.panels), "Board": board[:cap(board)], "Second": second[:cap(second)],
	}
}

// appendVectors lays a panel out for the shader; first is the place of its
// first cell in Cells.
func (b *board) appendVectors(a []float32, first int) []float32 {
	a = append(a, vec4(b.lo, b.depth)...)
	a = append(a, vec4(b.hi, flag(b.mitred))...)
	a = append(a, vec4(b.inLo, flag(b.framed))...)
	a = append(a, vec4(b.inHi, float64(first))...)
	a = append(a, vec4(vec{b.gridX, b.gridY, b.pitch}, b.block)...)
	a = append(a, vec4(vec{float64(b.cols), float64(b.rows), b.feet}, b.tallest)...)
	a = append(a, vec4(rgb(b.blocks.Face), b.blocks.Gloss)...)
	a = append(a, vec4(rgb(b.blocks.End), flag(b.gapOpen))...)
	a = append(a, vec4(rgb(b.rim.Face), b.rim.Gloss)...)
	a = append(a, vec4(rgb(b.ply.Face), b.ply.Gloss)...)
	a = append(a, vec4(rgb(b.ply.End), b.boards())...)
	g, rim := b.blocks.Grain, b.rim.Grain
	a = append(a, vec4(vec{g.RingM, g.Late, g.Early}, g.Pores)...)
	a = append(a, vec4(vec{g.Rays, g.Spread, g.Sap}, rim.Spread)...)
	a = append(a, vec4(rgb(g.SapTint), b.bevel)...)
	return append(a, vec4(vec{rim.RingM, rim.Late, rim.Early}, rim.Pores)...)
}

// appendSecond does so with the second look of its blocks.
func (b *board) appendSecond(a []float32) []float32 {
	m, g := b.second, b.second.Grain
	a = append(a, vec4(rgb(m.Face), 0)...)
	a = append(a, vec4(rgb(m.End), 0)...)
	a = append(a, vec4(vec{g.RingM, g.Late, g.Early}, g.Pores)...)
	a = append(a, vec4(vec{g.Rays, g.Spread, g.Sap}, 0)...)
	return append(a, vec4(rgb(g.SapTint), 0)...)
}

func vec3(v vec) []float32 { return []float32{float32(v.X), float32(v.Y), float32(v.Z)} }

// rgb is a colour in the place of a vector.
func rgb(c RGB) vec { return vec{c.R, c.G, c.B} }

func vec4(v vec, w float64) []float32 { return append(vec3(v), float32(w)) }

func flag(b bool) float64 {
	if b {
		return 1
	}
	return 0
}
