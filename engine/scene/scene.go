package scene

import (
	"errors"
	"fmt"
	"math"
)

// Bounds of a scene. They keep pictures affordable and stop hostile input.
const (
	// MaxPanels is the most panels that one scene may hold: a group of twelve
	// is the largest that a job may order.
	MaxPanels = 12
	// MaxSide is the most cells along one side of a field; the shader's loops
	// have constant bounds that rest on it.
	MaxSide = 400
	// MaxCells is the most cells of one field.
	MaxCells = 40000
	// MaxHeights is the most heights of a set: a level is one byte.
	MaxHeights = 256

	// maxWallM is five times the longest wall that a design may have. At that
	// distance the shader's 32 bits still tell places apart that lie a fifth of
	// liftM from each other.
	maxWallM  = 100
	maxDepthM = 1 // deeper than any frame, block or board of a panel
	maxOutM   = 4 // where parts are pulled from each other
	maxBevel  = 2 // steeper than any cleat
)

// RGB is a linear colour; as an albedo each part lies between 0 and 1.
type RGB struct{ R, G, B float64 }

// Hex is the colour as a screen shows it, by the transfer curve of sRGB (IEC 61966-2-1):
// "#c8a078".
func (c RGB) Hex() string {
	encode := func(x float64) int {
		x = min(max(x, 0), 1)
		if x <= 0.0031308 {
			return int(math.Round(255 * 12.92 * x))
		}
		return int(math.Round(255 * (1.055*math.Pow(x, 1/2.4) - 0.055)))
	}
	return fmt.Sprintf("#%02x%02x%02x", encode(c.R), encode(c.G), encode(c.B))
}

// Wall is the wall that the panels hang on.
type Wall struct {
	WidthM, HeightM float64
	Colour          RGB // linear albedo of the paint
}

// Scene is everything that a picture depends on, but for its size.
type Scene struct {
	Wall   Wall
	Panels []Panel // 1 to MaxPanels
	Camera Camera
	Lamp   Lamp
	Figure bool // a person of FigureM and a sofa are outlined on the wall, for scale
}

// Panel is one panel as hung: a field of blocks on its backer, with or without
// a frame.
type Panel struct {
	LeftM, BottomM            float64 // lower left corner of the outer edge: the frame's outside, or the field's edge without a frame
	OuterWidthM, OuterHeightM float64
	// FrameThicknessM is 0 for a bare edge. The frame starts at the wall and
	// is FrameDepthM deep; FrameGapM lies between it and the field.
	FrameThicknessM, FrameGapM, FrameDepthM float64
	Mitred                                  bool    // corners are cut at 45 degrees; otherwise top and bottom boards run through
	CleatThicknessM, BackerThicknessM       float64 // the backer's rear is at z = CleatThicknessM, block feet at z = cleat + backer
	OutM                                    float64 // how far all of it is pulled from the wall
	// Bevel slants an edge of the backer by so much a metre, towards the room: its
	// lower one, or where it is negative its upper one. A cleat is a backer alone.
	Bevel                 float64
	Columns, Rows         int     // at most MaxSide each and MaxCells together
	PitchM, BlockM        float64 // a block is BlockM square, centred in its cell of PitchM
	HeightsM              []float64
	Levels                []uint8 // index into HeightsM, row by row, row 0 at the top
	Cut                   []Cut   // what each block is cut from, in the order of Levels; nil: by chance, from Seed
	Seed                  uint64  // varies the tone of the blocks
	Blocks, Frame, Backer Material
	// Woods says which blocks are of a second look, by 1 in the order of Levels; nil:
	// none is.
	Woods  []uint8
	Second Material
}

// Validate reports everything that is wrong with the scene, one error a fault,
// each with its path and the allowed range. Render and Hit expect a scene that
// passes.
func (s Scene) Validate() error {
	var f faults
	f.between("wall.width", s.Wall.WidthM, 0.1, maxWallM)
	f.between("wall.height", s.Wall.HeightM, 0.1, maxWallM)
	f.colour("wall.colour", s.Wall.Colour)
	f.between("camera.yaw", s.Camera.YawDeg, -MaxYawDeg, MaxYawDeg)
	f.between("camera.pitch", s.Camera.PitchDeg, -MaxPitchDeg, MaxPitchDeg)
	f.between("camera.zoom", s.Camera.Zoom, MinZoom, MaxZoom)
	if s.Camera.DistanceM != 0 {
		f.between("camera.distance", s.Camera.DistanceM, MinDistanceM, MaxDistanceM)
	}
	f.between("lamp.azimuth", s.Lamp.AzimuthDeg, 0, 360)
	f.between("lamp.elevation", s.Lamp.ElevationDeg, MinElevationDeg, MaxElevationDeg)
	f.between("lamp.warmth", s.Lamp.WarmthK, MinWarmthK, MaxWarmthK)
	f.between("lamp.spread", s.Lamp.SpreadDeg, 0, MaxSpreadDeg)
	if n := len(s.Panels); n < 1 || n > MaxPanels {
		f.add("panels: got %d (allowed 1 to %d)", n, MaxPanels)
		return f.err()
	}
	for i := range s.Panels {
		s.Panels[i].validate(&f, fmt.Sprintf("panels[%d]", i))
	}
	return f.err()
}

func (p *Panel) validate(f *faults, path string) {
	f.between(path+".left", p.LeftM, -maxWallM, maxWallM)
	f.between(path+".bottom", p.BottomM, -maxWallM, maxWallM)
	f.between(path+".outerWidth", p.OuterWidthM, 1e-3, maxWallM)
	f.between(path+".outerHeight", p.OuterHeightM, 1e-3, maxWallM)
	f.between(path+".frameThickness", p.FrameThicknessM, 0, maxDepthM)
	f.between(path+".frameGap", p.FrameGapM, 0, maxDepthM)
	f.between(path+".frameDepth", p.FrameDepthM, 0, maxDepthM)
	f.between(path+".cleatThickness", p.CleatThicknessM, 0, maxDepthM)
	f.between(path+".backerThickness", p.BackerThicknessM, 0, maxDepthM)
	f.between(path+".out", p.OutM, 0, maxOutM)
	f.between(path+".bevel", p.Bevel, -maxBevel, maxBevel)
	f.between(path+".pitch", p.PitchM, 1e-3, maxDepthM)
	f.between(path+".block", p.BlockM, 1e-4, p.PitchM)
	p.Blocks.validate(f, path+".blocks")
	p.Frame.validate(f, path+".frame")
	p.Backer.validate(f, path+".backer")
	p.Second.validate(f, path+".second")
	p.validateField(f, path)
}

func (p *Panel) validateField(f *faults, path string) {
	if p.Columns < 1 || p.Columns > MaxSide {
		f.add("%s.columns: got %d (allowed 1 to %d)", path, p.Columns, MaxSide)
		return
	}
	if p.Rows < 1 || p.Rows > MaxSide {
		f.add("%s.rows: got %d (allowed 1 to %d)", path, p.Rows, MaxSide)
		return
	}
	cells := p.Columns * p.Rows
	if cells > MaxCells {
		f.add("%s: got %d cells (allowed at most %d)", path, cells, MaxCells)
		return
	}
	if n := len(p.HeightsM); n < 1 || n > MaxHeights {
		f.add("%s.heights: got %d (allowed 1 to %d)", path, n, MaxHeights)
		return
	}
	for i, h := range p.HeightsM {
		f.between(fmt.Sprintf("%s.heights[%d]", path, i), h, 0, maxDepthM)
	}
	if len(p.Levels) != cells {
		f.add("%s.levels: got %d (must be %d)", path, len(p.Levels), cells)
		return
	}
	if len(p.Cut) != 0 && len(p.Cut) != cells {
		f.add("%s.cut: got %d (must be 0 or %d)", path, len(p.Cut), cells)
		return
	}
	if len(p.Woods) != 0 && len(p.Woods) != cells {
		f.add("%s.woods: got %d (must be 0 or %d)", path, len(p.Woods), cells)
		return
	}
	for i, w := range p.Woods {
		if w > 1 {
			f.add("%s.woods[%d]: got %d (allowed 0 to 1)", path, i, w)
			return
		}
	}
	for i, l := range p.Levels {
		if int(l) >= len(p.HeightsM) {
			f.add("%s.levels[%d]: got %d (allowed 0 to %d)", path, i, l, len(p.HeightsM)-1)
			return
		}
	}
}

// faults collects what is wrong, in the order found.
type faults []error

func (f *faults) add(format string, args ...any) { *f = append(*f, fmt.Errorf(format, args...)) }

func (f *faults) between(path string, v, lo, hi float64) {
	if !(v >= lo && v <= hi) || math.IsNaN(v) {
		f.add("%s: got %g (allowed %g to %g)", path, v, lo, hi)
	}
}

func (f *faults) colour(path string, c RGB) {
	f.between(path+".r", c.R, 0, 1)
	f.between(path+".g", c.G, 0, 1)
	f.between(path+".b", c.B, 0, 1)
}

func (f faults) err() error { return errors.Join(f...) }
