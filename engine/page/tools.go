package page

import (
	"html/template"
	"slices"
	"strings"

	"blockfield/engine/design"
	"blockfield/engine/draw"
	"blockfield/engine/length"
	"blockfield/engine/tools"
)

// ToolTick is one tool that may be at hand.
type ToolTick struct {
	Name, Label, Key string
	There            bool
}

// ToolTicks are the tools that can be ticked.
func (v *view) ToolTicks() []ToolTick {
	var all []ToolTick
	for _, name := range design.Tools() {
		all = append(all, ToolTick{
			Name: name, Label: capital(v.T("choice/" + name)), Key: "tool-" + strings.ReplaceAll(name, " ", "-"),
			There: slices.Contains(v.Job.Record.Tools, name),
		})
	}
	return all
}

// ToolLines say what the tools at hand mean.
func (v *view) ToolLines() []string {
	a := v.Job.Tools
	var all []string
	say := func(key string, pairs ...any) { all = append(all, v.T(key, pairs...)) }
	if !a.Known {
		return []string{v.T("tools/unknown", "factor", factor(a.Factor))}
	}
	say(a.Cut, "least", a.Least)
	if len(a.TooShort) > 0 {
		say("tools/too-short", "heights", a.TooShort, "n", len(a.TooShort))
	}
	say("tools/factor", "factor", factor(a.Factor))
	say(a.Cleat)
	if len(a.Missing) > 0 {
		var names []string
		for _, name := range a.Missing {
			names = append(names, v.T("choice/"+name))
		}
		say("tools/missing", "list", names)
	}
	for _, name := range a.Missing {
		if key := "tools/instead-" + name; v.Words.Language.Has(key) {
			say(key)
		}
	}
	return all
}

// JigSheet is what is made before the first block is cut, for one group.
type JigSheet struct {
	Name    string
	Lines   []string
	Stop    template.HTML
	Carrier template.HTML
	Fence   template.HTML
}

// JigSheets are the jigs of all groups.
func (v *view) JigSheets() []JigSheet {
	var all []JigSheet
	for _, g := range v.Groups() {
		j := tools.JigsFor(g.Design)
		sheet := JigSheet{
			Lines: []string{
				v.T("tools/jig-stop", "stops", j.Stops),
				v.T("tools/jig-carrier", "length", v.Whole(j.CarrierLength), "width", v.Whole(j.CarrierWidth)),
				v.T("tools/jig-fence", "width", j.FenceWidth, "height", j.FenceHeight, "diagonal", j.Diagonal),
			},
			Stop:    v.stopDrawing(g.Key, g.Design, j),
			Carrier: v.carrierDrawing(g.Key, g.Design, j),
			Fence:   v.fenceDrawing(g.Key, j),
		}
		if len(v.Groups()) > 1 {
			sheet.Name = v.Words.Given(g.Design.Name)
		}
		all = append(all, sheet)
	}
	return all
}

// jigCanvas is an empty drawing of a jig, so wide that its type is of one size on the
// page.
func (v *view) jigCanvas(id, title string, box draw.Box) (*draw.Canvas, float64) {
	c := draw.New(id, box)
	c.Class("jig")
	c.Title(v.T(title))
	const typesAcross = 26
	return c, box.Width / typesAcross
}

// stopDrawing shows the stick against its fence, with the stop at the longest block.
func (v *view) stopDrawing(key string, g design.Group, j tools.Jigs) template.HTML {
	if len(j.Stops) == 0 {
		return ""
	}
	const fence, over, stop = 18.0, 60.0, 25.0
	long, size := j.Stops[0].Millimetres(), g.Block.Size.Millimetres()
	c, text := v.jigCanvas("jig-stop-"+key, "tools/draw-stop", draw.Box{X: -stop - 12, Y: -fence - 4, Width: long + over + stop + 24, Height: fence + size + 42})
	c.Rect(draw.Box{X: -stop - 8, Y: -fence, Width: long + over + stop + 16, Height: fence}, draw.Class("wood"))
	c.Rect(draw.Box{X: -stop, Width: stop, Height: size}, draw.Class("stop"))
	c.Rect(draw.Box{Width: long + over, Height: size}, draw.Class("stick"))
	c.Line(long, -fence-2, long, size+6, draw.Class("blade"))
	c.DimensionH(draw.Dimension{From: 0, To: long, At: size + 22, Object: size, Text: v.Words.Show(j.Stops[0]), Size: text})
	return template.HTML(c.String())
}

// carrierDrawing shows the carrier from above: a board with a notch for the stick, which
// a clamp holds in it.
func (v *view) carrierDrawing(key string, g design.Group, j tools.Jigs) template.HTML {
	long, wide, size := j.CarrierLength.Millimetres(), j.CarrierWidth.Millimetres(), g.Block.Size.Millimetres()
	tall := g.Heights[len(g.Heights)-1].Millimetres()
	c, text := v.jigCanvas("jig-carrier-"+key, "tools/draw-carrier", draw.Box{X: -6, Y: -36, Width: long + 48, Height: wide + 64})
	c.Rect(draw.Box{Width: long, Height: wide}, draw.Class("wood"))
	c.Rect(draw.Box{X: (long - tall) / 2, Width: tall, Height: size}, draw.Class("stick"))
	c.Rect(draw.Box{X: long/2 - 12, Y: size, Width: 24, Height: wide - size}, draw.Class("stop"))
	c.DimensionH(draw.Dimension{From: 0, To: long, At: wide + 20, Object: wide, Text: v.Words.Show(v.Whole(j.CarrierLength)), Size: text})
	c.DimensionH(draw.Dimension{From: 0, To: (long - tall) / 2, At: -8, Object: 0, Text: v.Words.Show(length.Micrometres(int64(1000 * (long - tall) / 2))), Size: text})
	c.DimensionV(draw.Dimension{From: 0, To: wide, At: long + 30, Object: long, Text: v.Words.Show(v.Whole(j.CarrierWidth)), Size: text})
	return template.HTML(c.String())
}

// fenceDrawing shows the start fence: two straight arms along the first row and up the
// left side, square when their ends are as far apart as the diagonal of the field.
func (v *view) fenceDrawing(key string, j tools.Jigs) template.HTML {
	w, h := j.FenceWidth.Millimetres(), j.FenceHeight.Millimetres()
	arm := max(w, h) / 18
	c, text := v.jigCanvas("jig-fence-"+key, "tools/draw-fence", draw.Box{X: -4 * arm, Y: -2 * arm, Width: w + 6*arm, Height: h + 6*arm})
	c.Rect(draw.Box{X: -arm, Y: h, Width: w + arm, Height: arm}, draw.Class("wood"))
	c.Rect(draw.Box{X: -arm, Width: arm, Height: h}, draw.Class("wood"))
	c.Line(0, 0, w, h, draw.Class("diagonal"), draw.StrokeWidth(arm/10), draw.Dash(arm/2, arm/2))
	c.DimensionH(draw.Dimension{From: 0, To: w, At: h + 3*arm, Object: h + arm, Text: v.Words.Show(j.FenceWidth), Size: text})
	c.DimensionV(draw.Dimension{From: 0, To: h, At: -2 * arm, Object: -arm, Text: v.Words.Show(j.FenceHeight), Size: text})
	c.Text(w/2+arm, h/2-arm, v.Words.Show(j.Diagonal), draw.Size(text), draw.Fill("currentColor"))
	return template.HTML(c.String())
}
