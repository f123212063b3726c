package scene

import (
	"image"
	"math"
	"runtime"
	"sync"
)

// Bounds of a picture: a poster for a large screen and no more.
const (
	maxSidePixels  = 8192
	maxSupersample = 8
	bandRows       = 16 // rows of the picture that one worker draws at a time
)

// Render draws the scene. Each pixel is the mean of supersample × supersample
// samples, and of more where a shadow has a soft edge; 1 gives sharp shadows. The
// same arguments give the same picture. Width and height are clamped to 1 to 8192, supersample to 1
// to 8. The scene must pass Validate.
func Render(s Scene, width, height, supersample int) *image.RGBA {
	width = min(max(width, 1), maxSidePixels)
	height = min(max(height, 1), maxSidePixels)
	supersample = min(max(supersample, 1), maxSupersample)
	v := newView(s, width, height)
	for i := range v.panels {
		v.panels[i].saw(&s.Panels[i])
	}
	out := image.NewRGBA(image.Rect(0, 0, width, height))
	bands := make(chan int)
	var wg sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		wg.Go(func() {
			for y := range bands {
				v.band(out, y, min(y+bandRows, height), supersample)
			}
		})
	}
	for y := 0; y < height; y += bandRows {
		bands <- y
	}
	close(bands)
	wg.Wait()
	return out
}

// band draws the rows from y0 to y1: samples in linear light, then tone curve,
// sRGB and dither.
func (v *view) band(out *image.RGBA, y0, y1, side int) {
	for y := y0; y < y1; y++ {
		for x := range out.Rect.Dx() {
			px, py := float64(x), float64(y)
			c, d := tone(v.pixel(px, py, side)), dither(px, py)
			dst := out.Pix[out.PixOffset(x, y):]
			dst[0], dst[1], dst[2], dst[3] = quantise(c.R, d), quantise(c.G, d), quantise(c.B, d), 255
		}
	}
}

// quantise encodes a linear part as sRGB and rounds it up or down by d.
func quantise(c, d float64) uint8 { return uint8(clamp(math.Floor(encode(c)*255+d), 0, 255)) }

// dither is interleaved gradient noise from 0 to 1 (Jimenez 2014, from memory):
// it breaks up the bands that smooth walls would show in 8 bits.
func dither(x, y float64) float64 {
	return fract(52.9829189 * fract(0.06711056*x+0.00583715*y))
}

// Steps by the two-dimensional kin of the golden ratio spread evenly (Roberts 2018,
// from memory).
const scatterX, scatterY = 0.7548776662, 0.5698402910

// scatter is another number from 0 to 1 for a pixel.
func scatter(x, y float64) float64 { return fract(scatterX*x + scatterY*y) }

// chance is what tells one sample of a pixel from the others: its number, how
// many samples a pixel has at least, and two numbers of the pixel from 0 to 1.
type chance struct {
	number, least int
	turn, out     float64
}

// softRounds is how often a pixel at the soft edge of a shadow is sampled anew, by
// the samples along one side of it: twelve to eighteen samples more are as fine as
// the dither.
func softRounds(side int) int {
	switch side {
	case 1:
		return 0
	case 2:
		return 3
	case 3:
		return 2
	}
	return 1
}

// pixel is the linear light of a pixel of side × side samples. Where some of them
// are lit and some in shadow it takes more.
func (v *view) pixel(px, py float64, side int) RGB {
	c := chance{least: side * side, turn: dither(px, py), out: scatter(px, py)}
	sum, lit, shaded := RGB{}, false, false
	count := c.least
	for ; c.number < count; c.number++ {
		round, j := float64(c.number/c.least), c.number%c.least
		x := px + (float64(j%side)+fract(0.5+scatterX*round))/float64(side)
		y := py + (float64(j/side)+fract(0.5+scatterY*round))/float64(side)
		d := v.ray(x, y)
		light, lamp := v.shade(v.trace(v.eye, d), d, c)
		sum = sum.plus(light)
		lit, shaded = lit || lamp == lampSeen, shaded || lamp == lampHidden
		if lit && shaded {
			count = c.least * (1 + softRounds(side))
		}
	}
	return scale(sum, 1/float64(count))
}

// What a sample knows of the lamp.
const (
	lampBehind = iota // the surface faces away, or there is none
	lampSeen
	lampHidden
)

// shade is the light that a hit sends to the viewer, and what it has of the lamp.
func (v *view) shade(h hit, d vec, ch chance) (RGB, int) {
	if h.what == nothing {
		return scale(v.fillLight, 0.3), lampBehind
	}
	p := v.eye.at(d, h.t)
	foot := 2 * v.tanHalf / v.height * h.t / math.Sqrt(float64(ch.least)) / max(math.Abs(h.n.dot(d)), 0.2)
	c, gloss := v.albedo(h, p, foot)
	way := v.lampPoint(ch).sub(p)
	distance := way.length()
	lamp := way.times(1 / distance)
	facing := h.n.dot(lamp)
	direct, shine, seen := 0.0, 0.0, lampBehind
	if facing > 0 {
		seen = lampHidden
	}
	if seen == lampHidden && !v.shaded(p.at(h.n, liftM), lamp) {
		seen = lampSeen
		direct = facing * v.falloff(distance)
		half := lamp.sub(d).unit()
		shine = gloss * glossShine * math.Pow(max(h.n.dot(half), 0), glossDull+glossSharp*gloss) * direct
	}
	open := v.openness(h, p)
	fill := scale(v.fillLight, open*(0.9+0.1*h.n.Y))
	back := scale(c.mul(v.fillLight.plus(scale(v.lampLight, 0.6))), bounce*max(1-open, 0))
	light := scale(v.lampLight, direct).plus(fill).plus(back)
	return c.mul(light).plus(scale(v.lampLight, shine)), seen
}
