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
	v := sawn(s, width, height)
	out := v.canvas()
	supersample = min(max(supersample, 1), maxSupersample)
	v.draw(out, func(x, y float64) RGB { return v.pixel(x, y, supersample) })
	return out
}

// RenderRefined draws the scene as the preview does, in a third of the time: with one
// sample a pixel, each towards another place of the lamp, so that soft edges of
// shadows are grainy; and then with all samples where a pixel differs from those
// around it. Elsewhere they would hardly change it. Arguments are those of Render.
func RenderRefined(s Scene, width, height, supersample int) *image.RGBA {
	v := sawn(s, width, height)
	rough := v.canvas()
	v.draw(rough, v.rough)
	supersample = min(max(supersample, 1), maxSupersample)
	out := v.canvas()
	copy(out.Pix, rough.Pix)
	v.drawWhere(out, func(x, y int) bool { return differs(rough, x, y) >= sameLight }, func(x, y float64) RGB { return v.pixel(x, y, supersample) })
	return out
}

// sameLight is below which difference, in levels of 255, pixels count as the same:
// less than the eye tells on a screen, more than a step of the grain.
const sameLight = 12

// differs is how far a pixel is from what is around it, in levels of 255 of the
// colour that tells them apart most.
func differs(rough *image.RGBA, x, y int) int {
	least, most := [3]uint8{255, 255, 255}, [3]uint8{}
	for j := max(y-1, 0); j <= min(y+1, rough.Rect.Max.Y-1); j++ {
		row := rough.Pix[rough.PixOffset(max(x-1, 0), j) : rough.PixOffset(min(x+1, rough.Rect.Max.X-1), j)+4]
		for i, level := range row {
			if k := i % 4; k < 3 {
				least[k], most[k] = min(least[k], level), max(most[k], level)
			}
		}
	}
	return int(max(most[0]-least[0], most[1]-least[1], most[2]-least[2]))
}

// sawn is the view of a picture whose sizes are within bounds, with the sticks of
// all blocks worked out.
func sawn(s Scene, width, height int) *view {
	v := newView(s, min(max(width, 1), maxSidePixels), min(max(height, 1), maxSidePixels))
	for i := range v.panels {
		v.panels[i].saw(&s.Panels[i])
	}
	return v
}

func (v *view) canvas() *image.RGBA {
	return image.NewRGBA(image.Rect(0, 0, int(v.width), int(v.height)))
}

func (v *view) draw(out *image.RGBA, pixel func(x, y float64) RGB) {
	v.drawWhere(out, func(int, int) bool { return true }, pixel)
}

// drawWhere draws the pixels that are wanted, on all processors.
func (v *view) drawWhere(out *image.RGBA, wanted func(x, y int) bool, pixel func(x, y float64) RGB) {
	height := out.Rect.Dy()
	bands := make(chan int)
	var wg sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		wg.Go(func() {
			for y := range bands {
				band(out, y, min(y+bandRows, height), wanted, pixel)
			}
		})
	}
	for y := 0; y < height; y += bandRows {
		bands <- y
	}
	close(bands)
	wg.Wait()
}

// band draws the rows from y0 to y1: linear light, then tone curve, sRGB and dither.
func band(out *image.RGBA, y0, y1 int, wanted func(x, y int) bool, pixel func(x, y float64) RGB) {
	for y := y0; y < y1; y++ {
		for x := range out.Rect.Dx() {
			if !wanted(x, y) {
				continue
			}
			px, py := float64(x), float64(y)
			c, d := tone(pixel(px, py)), dither(px, py)
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
	rough         bool // the only sample, towards any place of the lamp
}

// softRounds is how often a pixel at the soft edge of a shadow is sampled anew, by
// the samples along one side of it: eighteen samples more are as fine as the dither,
// four more a fine grain.
func softRounds(side int) int {
	switch side {
	case 1:
		return 0
	case 3:
		return 2
	}
	return 1
}

// rough is the linear light of a pixel of one sample, towards any place of the lamp.
func (v *view) rough(px, py float64) RGB {
	d := v.ray(px+0.5, py+0.5)
	light, _ := v.shade(v.trace(v.eye, d), d, chance{least: 1, turn: dither(px, py), out: scatter(px, py), rough: true})
	return light
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
	near := c
	if h.what == theBacker && h.n.Z > 0.5 && v.panels[h.panel].amongBlocks(p) {
		// The blocks around it throw what they do not swallow down to it.
		near = v.panels[h.panel].blocks.Face
		fill = fill.mix(scale(fill.mul(near), 1/max(near.R, near.G, near.B)), 1-open)
	}
	back := scale(near.mul(v.fillLight.plus(scale(v.lampLight, 0.6))), bounce*max(1-open, 0))
	light := scale(v.lampLight, direct).plus(fill).plus(back)
	return c.mul(light).plus(scale(v.lampLight, shine)), seen
}
