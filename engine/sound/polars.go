package sound

import (
	"math"

	"blockfield/engine/draw"
	"blockfield/engine/words"
)

// Sizes of the small multiples.
const (
	polarRadius = 60.0
	polarWidth  = 2*polarRadius + 16
	polarHeight = polarRadius + 44
	polarType   = 13.0
	polarRange  = 30.0 // dB from the rim to the middle
)

// polarBands are the third octaves of the small multiples: 500 Hz to 8 kHz in
// octaves.
func polarBands() []Band { return []Band{-3, 0, 3, 6, 9} }

// Polars draws what the receivers of a plane hear, one half disc for each band
// and each source of the sweep that is not on the left: the thick line is the
// panel, the thin one a flat board of the same size. The rim is the loudest of
// both, the middle 30 dB less. What is indicative only is drawn thinner.
func Polars(id string, r words.Reader, l Listening, s Sweep) string {
	var rows []Polar
	for _, p := range s.Polars {
		if p.IncidenceDeg >= 0 {
			rows = append(rows, p)
		}
	}
	columns := polarBands()
	c := draw.New(id, draw.Box{Width: polarWidth * float64(len(columns)), Height: polarHeight * float64(len(rows))})
	c.Class("drawing sound-polars")
	c.Title(r.Say("sound/polars-title"))
	c.Desc(r.Say("sound/polars-desc"))
	for i, p := range rows {
		for j, b := range columns {
			for _, spread := range p.Bands {
				if spread.Band == b {
					at := draw.Move((float64(j)+0.5)*polarWidth, float64(i)*polarHeight+polarRadius+6)
					hint := Trust(b.Hz(), l.DepthHz, p.IncidenceDeg).Indicative
					c.Group("polar", func() { onePolar(c, r, p, spread, hint) }, at)
				}
			}
		}
	}
	return c.String()
}

// onePolar draws one half disc with its middle at the origin, the normal up.
func onePolar(c *draw.Canvas, r words.Reader, p Polar, s Spread, hint bool) {
	var loudest float64
	for i := range s.Energy {
		loudest = math.Max(loudest, math.Max(s.Energy[i], s.FlatEnergy[i]))
	}
	c.Path(fan(p.AnglesDeg, func(int) float64 { return 1 }), draw.Class("rim"), draw.Fill("none"), draw.Stroke("currentColor"), draw.StrokeWidth(0.5))
	c.Path(fan(p.AnglesDeg, func(i int) float64 { return depthOf(s.FlatEnergy[i], loudest) }),
		draw.Class("flat"), draw.Fill("none"), draw.Stroke("currentColor"), draw.StrokeWidth(thinLine/2), draw.Dash(2, 2))
	class, width := "curve", thickLine*0.7
	if hint {
		class, width = "hint", thinLine*0.8
	}
	c.Path(fan(p.AnglesDeg, func(i int) float64 { return depthOf(s.Energy[i], loudest) }),
		draw.Class(class), draw.Fill("none"), draw.Stroke("currentColor"), draw.StrokeWidth(width))
	source := p.IncidenceDeg * math.Pi / 180
	x, y := math.Sin(source), -math.Cos(source)
	c.Line(x*polarRadius, y*polarRadius, x*polarRadius*0.8, y*polarRadius*0.8, draw.Class("source"), draw.Stroke("currentColor"), draw.StrokeWidth(thickLine))
	label := words.Args{"hz": words.Hz(s.Band.NominalHz()), "angle": words.Degrees(p.IncidenceDeg)}
	c.Text(0, polarType+6, r.Say("sound/polar-label", label), draw.Middle(), draw.Size(polarType), draw.Fill("currentColor"))
}

// depthOf is where a level lies between the middle, 0, and the rim, 1.
func depthOf(energy, loudest float64) float64 {
	if energy <= 0 || loudest <= 0 {
		return 0
	}
	return math.Max(0, 1+10*math.Log10(energy/loudest)/polarRange)
}

// fan is the path of a closed line through one point for each angle.
func fan(anglesDeg []float64, depth func(i int) float64) string {
	xy := []float64{0, 0}
	for i, deg := range anglesDeg {
		theta, d := deg*math.Pi/180, depth(i)*polarRadius
		xy = append(xy, d*math.Sin(theta), -d*math.Cos(theta))
	}
	return draw.Polygon(xy...)
}
