package sound

import (
	"math"
	"strings"

	"blockfield/engine/draw"
	"blockfield/engine/words"
)

// Sizes of a chart, in units of its own; at 330 px wide its type is 11 px high.
const (
	chartWidth, chartHeight = 420.0, 230.0
	chartLeft, chartRight   = 46.0, 8.0
	chartTop, chartFoot     = 26.0, 40.0
	chartType               = 14.0
	thinLine, thickLine     = 1.0, 2.5
)

// The bands that charts show: below, panels do nothing; above, the model has
// little to say.
const (
	chartFirst Band = -5 // 315 Hz
	chartLast  Band = 9  // 8 kHz
)

// chart is a frame with third octaves along its foot and 0 to 1 up its side.
type chart struct {
	*draw.Canvas
	r words.Reader
}

func newChart(id, title, desc string, r words.Reader, args words.Args) chart {
	c := chart{draw.New(id, draw.Box{Width: chartWidth, Height: chartHeight}), r}
	c.Class("drawing sound-chart")
	c.Title(r.Say(title, args))
	c.Desc(r.Say(desc, args))
	return c
}

func (c chart) x(b Band) float64 { return c.edge(b) + c.step()/2 }

// edge is the left end of a band's column.
func (c chart) edge(b Band) float64 { return chartLeft + float64(b-chartFirst)*c.step() }

func (c chart) step() float64 {
	return (chartWidth - chartLeft - chartRight) / float64(chartLast-chartFirst+1)
}

func (c chart) y(v float64) float64 {
	v = math.Max(0, math.Min(1, v))
	return chartHeight - chartFoot - v*(chartHeight-chartTop-chartFoot)
}

// axes draws the frame. Every third band is named, which is an octave.
func (c chart) axes(side string, percent bool) {
	c.Group("axes", func() {
		for _, v := range []float64{0, 0.5, 1} {
			c.Line(chartLeft, c.y(v), chartWidth-chartRight, c.y(v), draw.Stroke("currentColor"), draw.StrokeWidth(thinLine/2))
			text := c.r.Show(words.Percent(100 * v))
			if !percent {
				text = c.r.Show(v)
			}
			c.Text(chartLeft-4, c.y(v)+chartType/3, text, draw.End(), draw.Size(chartType), draw.Fill("currentColor"))
		}
		for b := chartFirst; b <= chartLast; b += 3 {
			c.Line(c.x(b), c.y(0), c.x(b), c.y(0)+4, draw.Stroke("currentColor"), draw.StrokeWidth(thinLine/2))
			c.Text(c.x(b), c.y(0)+chartType+5, c.r.Count(int(b.NominalHz())), draw.Middle(), draw.Size(chartType), draw.Fill("currentColor"))
		}
		c.Text(chartWidth-chartRight, chartHeight-3, c.r.Say("sound/axis-hz"), draw.End(), draw.Size(chartType), draw.Fill("currentColor"))
		c.Text(0, chartType, c.r.Say(side), draw.Size(chartType), draw.Fill("currentColor"))
	})
}

// shownBands keeps the bands that a chart has room for.
func shownBands(all []Spread) []Spread {
	var out []Spread
	for _, s := range all {
		if s.Band >= chartFirst && s.Band <= chartLast {
			out = append(out, s)
		}
	}
	return out
}

// ShareChart draws the share of the energy that leaves the mirror direction,
// straight on, third octave by third octave. The open part of a bar is how high
// it can be, since real blocks begin to scatter up to two third octaves lower.
// A flat board has no bars at all.
func ShareChart(id string, r words.Reader, l Listening) string {
	c := newChart(id, "sound/share-title", "sound/share-desc", r, nil)
	bands := shownBands(l.Dome.Bands)
	var could, bars string
	for i, s := range bands {
		most := s.ByEnergy
		for _, later := range bands[i:min(i+earlier+1, len(bands))] {
			most = math.Max(most, later.ByEnergy)
		}
		could += c.bar(s.Band, s.ByEnergy, most)
		bars += c.bar(s.Band, 0, s.ByEnergy)
	}
	if could != "" {
		c.Path(could, draw.Class("could"), draw.Fill("none"), draw.Stroke("currentColor"), draw.StrokeWidth(thinLine), draw.Dash(3, 2))
	}
	if bars != "" {
		c.Path(bars, draw.Class("bars"), draw.Fill("currentColor"))
	}
	c.axes("sound/share-axis", true)
	return c.String()
}

// bar is the path of a bar between two values, empty where nothing would show.
func (c chart) bar(b Band, from, to float64) string {
	const gap = 3
	y0, y1 := c.y(from), c.y(to)
	if y0-y1 < 0.5 {
		return ""
	}
	left, right := c.edge(b)+gap/2, c.edge(b)+c.step()-gap/2
	return draw.Polygon(left, y0, left, y1, right, y1, right, y0)
}

// DiffusionChart draws the directional diffusion coefficient of a curve beside
// that of a flat board of the same size. The band round the curve is the model's
// mean error; where the curve is indicative only, or too near the flat board's, it
// is broken, and where nothing may be claimed it is left out.
func DiffusionChart(id string, r words.Reader, curve Curve) string {
	c := newChart(id, "sound/diffusion-title", "sound/diffusion-desc", r, words.Args{"source": curve.Source})
	curve.Bands = shownBands(curve.Bands)
	c.ribbon(curve)
	c.flatBoard(curve.Bands)
	if hint := c.pieces(curve, true); hint != "" {
		c.Path(hint, draw.Class("hint"), draw.Fill("none"), draw.Stroke("currentColor"), draw.StrokeWidth(thickLine), draw.Dash(6, 4))
	}
	if solid := c.pieces(curve, false); solid != "" {
		c.Path(solid, draw.Class("curve"), draw.Fill("none"), draw.Stroke("currentColor"), draw.StrokeWidth(thickLine))
	}
	c.axes("sound/diffusion-axis", false)
	return c.String()
}

// pieces returns the path of the pieces of the curve that are hints, or of those
// that are not. A piece between two bands is as good as the worse of them; a
// band whose difference from the flat board is less than the model can tell is a
// hint too. Where nothing may be claimed there are no pieces.
func (c chart) pieces(curve Curve, hints bool) string {
	var path strings.Builder
	var xy []float64
	flush := func() {
		if len(xy) > 2 {
			path.WriteString(draw.Polyline(xy...))
		}
		xy = nil
	}
	for i := 1; i < len(curve.Bands); i++ {
		from, to := curve.Bands[i-1], curve.Bands[i]
		if curve.Doubt(to.Band.Hz()).NoClaim {
			continue
		}
		if (curve.isHint(from) || curve.isHint(to)) != hints {
			flush()
			continue
		}
		if xy == nil {
			xy = append(xy, c.x(from.Band), c.y(from.Diffusion))
		}
		xy = append(xy, c.x(to.Band), c.y(to.Diffusion))
	}
	flush()
	return path.String()
}

func (c Curve) isHint(s Spread) bool {
	return c.Doubt(s.Band.Hz()).Indicative || math.Abs(s.Diffusion-s.Flat) < LeastDifference
}

// flatBoard draws the curve of a flat board of the same size.
func (c chart) flatBoard(bands []Spread) {
	if len(bands) < 2 {
		return
	}
	var xy []float64
	for _, s := range bands {
		xy = append(xy, c.x(s.Band), c.y(s.Flat))
	}
	c.Path(draw.Polyline(xy...), draw.Class("flat"), draw.Fill("none"), draw.Stroke("currentColor"), draw.StrokeWidth(thinLine))
}

// ribbon hatches the model's mean error round the curve.
func (c chart) ribbon(curve Curve) {
	if len(curve.Bands) < 2 || curve.Doubt(curve.Bands[0].Band.Hz()).NoClaim {
		return
	}
	var upper, lower []float64
	for _, s := range curve.Bands {
		upper = append(upper, c.x(s.Band), c.y(s.Diffusion+curve.Doubt(s.Band.Hz()).Mean))
	}
	for i := len(curve.Bands) - 1; i >= 0; i-- {
		s := curve.Bands[i]
		lower = append(lower, c.x(s.Band), c.y(s.Diffusion-curve.Doubt(s.Band.Hz()).Mean))
	}
	c.Path(draw.Polygon(append(upper, lower...)...), draw.Class("ribbon"), c.Hatch(5, 0.8, 45))
}
