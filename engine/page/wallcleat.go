package page

import (
	"html/template"
	"math"

	"blockfield/engine/draw"
	"blockfield/engine/length"
	"blockfield/engine/panel"
	"blockfield/engine/wall"
	"blockfield/engine/words"
)

// Sizes of the section through a panel on its cleat, in mm.
const (
	sectionType  = 8.5  // height of the type
	sectionBelow = 72.0 // of the strip that is shown below its tip
	sectionFoot  = 92.0 // of the panel that is shown above its foot
	sectionBreak = 22.0 // between the two parts
	sectionWall  = 40.0 // of a solid wall
)

// cleatDrawing is the section, x out from the wall and y down from the upper edge of
// the panel.
type cleatDrawing struct {
	*draw.Canvas
	h                 hangingView
	cleat, backer     float64
	fieldTop, foot    float64 // of the field; lower inner corner of the panel's half
	bevel, deep, high float64
	cut, gone         float64 // where the upper part ends; how much is left out
	behind            float64 // of the wall that is shown
}

// CleatDrawing draws panel, cleat and wall cut from top to bottom.
func (h hangingView) CleatDrawing() template.HTML {
	d := h.section()
	const t = sectionType
	lift := h.LiftRoom.Millimetres()
	d.Canvas = draw.New("cleat-svg-"+h.Key, draw.Box{
		X: -d.behind - t, Y: -lift - 2*t, Width: d.behind + d.deep + 8.5*t, Height: d.high - d.gone + lift + 5.5*t,
	})
	d.Class("drawing cleat-drawing")
	d.Title(h.T("hold/section-title"))
	d.Desc(h.T("hold/section-text", "bevel", words.Degrees(h.Design.Cleat.Bevel), "below", h.TipBelowTop(), "room", h.LiftRoom))
	if h.Means != wall.Stand {
		d.wall()
	}
	d.built()
	d.strip()
	d.sizes()
	return template.HTML(d.String())
}

func (h hangingView) section() cleatDrawing {
	d := cleatDrawing{
		h: h, cleat: h.Design.Cleat.Thickness.Millimetres(), backer: h.Design.Backer.Thickness.Millimetres(),
		deep: math.Max(h.Built.Stack.Millimetres(), h.Built.FrameDepth.Millimetres()), high: h.Built.OuterHeight.Millimetres(),
	}
	d.fieldTop = d.high - h.Built.Panels[0].FieldTop().Millimetres()
	d.foot = d.fieldTop + h.Halves[0].Foot.Millimetres()
	d.bevel = d.cleat * math.Tan(h.Design.Cleat.Bevel*math.Pi/180)
	d.cut = d.foot + sectionBelow
	d.gone = math.Max(0, d.high-sectionFoot-d.cut-sectionBreak)
	d.behind = sectionWall
	if s, ok := h.Worst(); ok {
		d.behind = math.Max(d.behind, s.ScrewMM-d.cleat+sectionType/2)
	}
	return d
}

// y is a place in the drawing: what lies below the part that is left out moves up.
func (d cleatDrawing) y(mm float64) float64 {
	if mm > d.cut {
		return mm - d.gone
	}
	return mm
}

// upright draws something between two heights in both parts.
func (d cleatDrawing) upright(x, width, from, to float64, attrs ...draw.Attr) {
	part := func(a, b float64) {
		if b > a {
			d.Rect(draw.Box{X: x, Y: d.y(a), Width: width, Height: b - a}, attrs...)
		}
	}
	if d.gone == 0 {
		part(from, to)
		return
	}
	part(from, math.Min(to, d.cut))
	part(math.Max(from, d.cut+d.gone+sectionBreak), to)
}

// wall is what is behind: board and stud, or a solid wall.
func (d cleatDrawing) wall() {
	top, foot := -d.h.LiftRoom.Millimetres()-sectionType, d.high+sectionType
	board := 0.0
	if d.h.Means == wall.Studs {
		board = d.h.BoardMM
		d.upright(-board, board, top, foot, draw.Class("board"), draw.Fill("none"), draw.Stroke("currentColor"), draw.StrokeWidth(0.5))
	}
	d.upright(-d.behind, d.behind-board, top, foot, draw.Class("behind"), d.Hatch(5, 0.5, 45))
	d.Line(0, top, 0, d.y(foot), draw.Stroke("currentColor"), draw.StrokeWidth(0.8))
}

// built is frame, backer, blocks, the panel's half and its spacer.
func (d cleatDrawing) built() {
	h := d.h
	fieldFoot := d.fieldTop + h.Built.FieldHeight.Millimetres()
	wood := func(class string) []draw.Attr {
		return []draw.Attr{draw.Class(class), draw.Stroke("currentColor"), draw.StrokeWidth(0.4)}
	}
	if h.Built.Framed {
		t, deep := h.Design.Frame.Thickness.Millimetres(), h.Built.FrameDepth.Millimetres()
		d.upright(0, deep, 0, t, append(wood("frame"), draw.Fill("#d9b98c"))...)
		d.upright(0, deep, d.high-t, d.high, append(wood("frame"), draw.Fill("#d9b98c"))...)
	}
	d.upright(d.cleat, d.backer, d.fieldTop, fieldFoot, append(wood("backer"), draw.Fill("#8a7357"))...)
	half := h.Halves[0]
	column := 0
	if len(half.Row.Places) > 0 {
		column = half.Row.Places[0].Column
	}
	for row := range half.Grid.Rows {
		tall := half.HeightsMM[half.Grid.At(row, column)]
		from := d.fieldTop + float64(row)*half.PitchMM
		if tall > 0 && (d.gone == 0 || from+half.BlockMM <= d.cut || from >= d.cut+d.gone+sectionBreak) {
			d.upright(d.cleat+d.backer, tall, from, from+half.BlockMM, append(wood("block"), draw.Fill("#e8d3b3"))...)
		}
	}
	for _, part := range h.Built.Panels[0].Parts {
		foot, high := d.high-part.Y.Millimetres(), part.Height.Millimetres()
		switch part.Kind {
		case panel.CleatPart: // its height is the mean of both faces
			top := d.foot - high + d.bevel/2
			d.Path(draw.Polygon(0, top, d.cleat, top, d.cleat, d.foot, 0, d.foot+d.bevel), append(wood("cleat"), draw.Fill("#c79a63"))...)
		case panel.SpacerPart:
			d.upright(0, d.cleat, foot-high, foot, append(wood("spacer"), draw.Fill("#c79a63"))...)
		}
	}
	for _, row := range half.Row.Rows {
		y := d.fieldTop + half.RowY(row)
		d.screw(0, half.Row.ScrewMM, y)
	}
}

// screw draws one with a rim, which shows it on wood that is as light as its line.
func (d cleatDrawing) screw(from, to, y float64) {
	d.Line(from, y, to, y, draw.Class("screw-rim"), draw.Stroke("#fff"), draw.StrokeWidth(3.2))
	d.Line(from, y, to, y, draw.Class("screw"), draw.Stroke("currentColor"), draw.StrokeWidth(1.6))
}

// strip is the half on the wall with its topmost screw.
func (d cleatDrawing) strip() {
	if d.h.Means == wall.Stand {
		return
	}
	high := sectionBelow
	s, counted := d.h.Worst()
	if counted {
		high = math.Min(high, s.HeightM*1000)
	}
	d.Path(draw.Polygon(0, d.foot+d.bevel, d.cleat, d.foot, d.cleat, d.foot+high, 0, d.foot+high),
		draw.Class("strip"), draw.Fill("#b07c45"), draw.Stroke("currentColor"), draw.StrokeWidth(0.4))
	if !counted {
		return
	}
	if y := (s.HeightM - s.PlacesM[len(s.PlacesM)-1]) * 1000; y < sectionBelow {
		d.screw(d.cleat-s.ScrewMM, d.cleat, d.foot+y)
	}
}

// StripDrawing shows which way the strip goes on the wall, with the panel's half above it;
// empty where nothing is screwed to a wall.
func (h hangingView) StripDrawing() template.HTML {
	if h.Means == wall.Stand || h.Unchecked() {
		return ""
	}
	const shown, behind, air = 42.0, 14.0, 6.0 // mm of strip and half, of the wall, and around
	deep := h.Design.Cleat.Thickness.Millimetres()
	c := draw.New("strip-svg-"+h.Key, draw.Box{X: -behind - air, Y: -shown - air, Width: behind + deep + 2*air + shown, Height: 2 * (shown + air)})
	c.Class("drawing strip-drawing")
	c.Title(h.T("day/strip-title"))
	c.Desc(h.T("day/strip"))
	edge := []draw.Attr{draw.Stroke("currentColor"), draw.StrokeWidth(0.6)}
	c.Rect(draw.Box{X: -behind, Y: -shown, Width: behind, Height: 2 * shown}, draw.Class("behind"), c.Hatch(5, 0.5, 45))
	c.Line(0, -shown, 0, shown, draw.Stroke("currentColor"), draw.StrokeWidth(1.2))
	strip, half := h.Hook(shown)
	c.Path(draw.Polygon(half...), append(edge, draw.Class("cleat"), draw.Fill("#c79a63"))...)
	c.Path(draw.Polygon(strip...), append(edge, draw.Class("strip"), draw.Fill("#b07c45"))...)
	return template.HTML(c.String())
}

// sizes are the dimension lines: the air above, the tip below the top, and how deep it
// all is.
func (d cleatDrawing) sizes() {
	const t = sectionType
	show := func(l length.Length) string { return d.h.Words.Number(l) }
	at := d.deep + 3*t
	tip := d.foot
	if d.h.Means != wall.Stand {
		d.DimensionV(draw.Dimension{From: -d.h.LiftRoom.Millimetres(), To: 0, At: at + 2*t, Object: d.deep, Text: show(d.h.LiftRoom), Size: t})
	}
	d.DimensionV(draw.Dimension{From: 0, To: tip, At: at, Object: d.deep, Text: show(d.h.TipBelowTop()), Size: t})
	foot := d.y(d.high)
	d.DimensionH(draw.Dimension{From: 0, To: d.deep, At: foot + 2.6*t, Object: foot, Text: show(d.h.at(d.deep / 1000)), Size: t})
	if d.gone > 0 {
		y := d.cut + sectionBreak/2
		d.Path(draw.Polyline(-d.behind, y, d.deep*0.45, y, d.deep*0.5, y-5, d.deep*0.55, y+5, d.deep*0.6, y, d.deep+t, y),
			draw.Class("break"), draw.Fill("none"), draw.Stroke("currentColor"), draw.StrokeWidth(0.4))
	}
}
