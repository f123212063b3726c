package scene

import (
	"encoding/binary"
	"errors"
	"fmt"
	"math"
)

// codecVersion is the first byte of an encoded scene. Page, worker and frame
// are always built together, so there is one version and no migration.
const codecVersion = 3

// minPanelBytes is the shortest encoding of a panel: 13 numbers, one flag, two
// sides, one seed, three materials of 17 numbers, one height, one level and two flags.
const minPanelBytes = 13*8 + 1 + 2*2 + 8 + 3*17*8 + 2 + 8 + 1 + 2

// Encode returns the scene as bytes: a version byte, then every field in the
// order of the types, little endian, lengths and colours as float64, counts as
// uint16. Decode is its inverse for every scene that passes Validate.
func (s Scene) Encode() []byte {
	var e encoder
	e.u8(codecVersion)
	e.f64(s.Wall.WidthM, s.Wall.HeightM)
	e.rgb(s.Wall.Colour)
	e.f64(s.Camera.YawDeg, s.Camera.PitchDeg, s.Camera.Zoom, s.Camera.DistanceM)
	e.f64(s.Lamp.AzimuthDeg, s.Lamp.ElevationDeg, s.Lamp.WarmthK, s.Lamp.SpreadDeg)
	e.flag(s.Figure)
	e.u8(uint8(len(s.Panels)))
	for i := range s.Panels {
		e.panel(&s.Panels[i])
	}
	return e.b
}

// Decode reads what Encode wrote. It refuses other versions, missing and left
// over bytes, and whatever Validate refuses; it allocates no more than the
// length of b allows.
func Decode(b []byte) (Scene, error) {
	d := decoder{b: b}
	if v := d.u8(); d.err == nil && v != codecVersion {
		return Scene{}, fmt.Errorf("scene: version %d (this program reads %d)", v, codecVersion)
	}
	var s Scene
	d.f64(&s.Wall.WidthM, &s.Wall.HeightM)
	d.rgb(&s.Wall.Colour)
	d.f64(&s.Camera.YawDeg, &s.Camera.PitchDeg, &s.Camera.Zoom, &s.Camera.DistanceM)
	d.f64(&s.Lamp.AzimuthDeg, &s.Lamp.ElevationDeg, &s.Lamp.WarmthK, &s.Lamp.SpreadDeg)
	s.Figure = d.flag("figure")
	n := int(d.u8())
	if n > MaxPanels || n*minPanelBytes > len(d.b) {
		return Scene{}, fmt.Errorf("scene: %d panels in %d bytes (allowed 1 to %d)", n, len(b), MaxPanels)
	}
	s.Panels = make([]Panel, n)
	for i := range s.Panels {
		d.panel(&s.Panels[i])
	}
	if d.err != nil {
		return Scene{}, d.err
	}
	if len(d.b) > 0 {
		return Scene{}, fmt.Errorf("scene: %d bytes left over", len(d.b))
	}
	if err := s.Validate(); err != nil {
		return Scene{}, err
	}
	return s, nil
}

type encoder struct{ b []byte }

func (e *encoder) u8(v uint8)   { e.b = append(e.b, v) }
func (e *encoder) u16(v int)    { e.b = binary.LittleEndian.AppendUint16(e.b, uint16(v)) }
func (e *encoder) u64(v uint64) { e.b = binary.LittleEndian.AppendUint64(e.b, v) }
func (e *encoder) rgb(c RGB)    { e.f64(c.R, c.G, c.B) }

func (e *encoder) flag(b bool) {
	if b {
		e.u8(1)
	} else {
		e.u8(0)
	}
}

func (e *encoder) f64(vs ...float64) {
	for _, v := range vs {
		e.u64(math.Float64bits(v))
	}
}

func (e *encoder) material(m Material) {
	e.rgb(m.Face)
	e.rgb(m.End)
	g := m.Grain
	e.f64(m.Gloss, g.RingM, g.Late, g.Early, g.Pores, g.Rays, g.Spread, g.Sap)
	e.rgb(g.SapTint)
}

func (e *encoder) panel(p *Panel) {
	e.f64(p.LeftM, p.BottomM, p.OuterWidthM, p.OuterHeightM)
	e.f64(p.FrameThicknessM, p.FrameGapM, p.FrameDepthM)
	e.flag(p.Mitred)
	e.f64(p.CleatThicknessM, p.BackerThicknessM, p.OutM, p.Bevel)
	e.u16(p.Columns)
	e.u16(p.Rows)
	e.f64(p.PitchM, p.BlockM)
	e.u64(p.Seed)
	e.material(p.Blocks)
	e.material(p.Frame)
	e.material(p.Backer)
	e.u16(len(p.HeightsM))
	e.f64(p.HeightsM...)
	e.b = append(e.b, p.Levels...)
	e.flag(len(p.Cut) > 0)
	for _, c := range p.Cut {
		e.u8(uint8(c))
	}
	e.flag(len(p.Woods) > 0)
	if len(p.Woods) > 0 {
		e.b = append(e.b, p.Woods...)
		e.material(p.Second)
	}
}

var errShort = errors.New("scene: cut short")

// decoder reads from the front of b; after the first fault it reads zeros.
type decoder struct {
	b   []byte
	err error
}

func (d *decoder) take(n int) []byte {
	if d.err == nil && n > len(d.b) {
		d.err = errShort
	}
	if d.err != nil {
		return nil
	}
	head := d.b[:n]
	d.b = d.b[n:]
	return head
}

func (d *decoder) u8() uint8 {
	if b := d.take(1); b != nil {
		return b[0]
	}
	return 0
}

func (d *decoder) u16() int {
	if b := d.take(2); b != nil {
		return int(binary.LittleEndian.Uint16(b))
	}
	return 0
}

func (d *decoder) u64() uint64 {
	if b := d.take(8); b != nil {
		return binary.LittleEndian.Uint64(b)
	}
	return 0
}

func (d *decoder) flag(name string) bool {
	v := d.u8()
	if v > 1 {
		d.fail("scene: " + name + " is neither 0 nor 1")
	}
	return v == 1
}

func (d *decoder) f64(vs ...*float64) {
	for _, v := range vs {
		*v = math.Float64frombits(d.u64())
	}
}

func (d *decoder) rgb(c *RGB) { d.f64(&c.R, &c.G, &c.B) }

func (d *decoder) material(m *Material) {
	d.rgb(&m.Face)
	d.rgb(&m.End)
	g := &m.Grain
	d.f64(&m.Gloss, &g.RingM, &g.Late, &g.Early, &g.Pores, &g.Rays, &g.Spread, &g.Sap)
	d.rgb(&g.SapTint)
}

func (d *decoder) panel(p *Panel) {
	d.f64(&p.LeftM, &p.BottomM, &p.OuterWidthM, &p.OuterHeightM)
	d.f64(&p.FrameThicknessM, &p.FrameGapM, &p.FrameDepthM)
	p.Mitred = d.flag("mitred")
	d.f64(&p.CleatThicknessM, &p.BackerThicknessM, &p.OutM, &p.Bevel)
	p.Columns, p.Rows = d.u16(), d.u16()
	d.f64(&p.PitchM, &p.BlockM)
	p.Seed = d.u64()
	d.material(&p.Blocks)
	d.material(&p.Frame)
	d.material(&p.Backer)
	heights := d.u16()
	if heights > MaxHeights || p.Columns > MaxSide || p.Rows > MaxSide {
		d.fail(fmt.Sprintf("scene: %d heights, %d × %d cells (allowed %d, and %d a side)",
			heights, p.Columns, p.Rows, MaxHeights, MaxSide))
		return
	}
	p.HeightsM = make([]float64, heights)
	for i := range p.HeightsM {
		d.f64(&p.HeightsM[i])
	}
	p.Levels = append([]uint8{}, d.take(p.Columns*p.Rows)...)
	if d.flag("cut") {
		for _, c := range d.take(p.Columns * p.Rows) {
			p.Cut = append(p.Cut, Cut(c))
		}
	}
	if d.flag("woods") {
		p.Woods = append([]uint8{}, d.take(p.Columns*p.Rows)...)
		d.material(&p.Second)
	}
}

func (d *decoder) fail(what string) {
	if d.err == nil {
		d.err = errors.New(what)
	}
}
