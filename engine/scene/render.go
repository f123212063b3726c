package scene

import (
	"image"
	"math"
	"runtime"
	"sync"

	"golang.org/x/image/draw"
)

// Bounds of a picture: a poster for a large screen and no more.
const (
	maxSidePixels  = 8192
	maxSupersample = 8
	bandRows       = 16 // rows of the picture that one worker draws at a time
)

// Render draws the scene. Each pixel is the mean of supersample × supersample
// samples; 1 gives sharp shadows, 3 and more soft ones. The same arguments give
// the same picture. Width and height are clamped to 1 to 8192, supersample to 1
// to 8. The scene must pass Validate.
func Render(s Scene, width, height, supersample int) *image.RGBA {
	width = min(max(width, 1), maxSidePixels)
	height = min(max(height, 1), maxSidePixels)
	supersample = min(max(supersample, 1), maxSupersample)
	v := newView(s, width, height)
	for i := range v.panels {
		v.panels[i].pieces = v.panels[i].blocks.Grain.cut()
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

// boxFilter averages whole samples: with an integer ratio its bands need
// nothing of their neighbours.
func boxFilter() *draw.Kernel {
	return &draw.Kernel{Support: 0.5, At: func(float64) float64 { return 1 }}
}

// linearRoom is the part of 16 bits that holds 1.0: highlights above it survive
// until the tone curve.
const linearRoom = 0xffff / 4.0

// band draws the rows from y0 to y1: samples in linear light, scaled down, then
// tone curve, sRGB and dither.
func (v *view) band(out *image.RGBA, y0, y1, n int) {
	w := out.Bounds().Dx()
	fine := image.NewRGBA64(image.Rect(0, 0, w*n, (y1-y0)*n))
	for sy := range (y1 - y0) * n {
		for sx := range w * n {
			px, py := float64(sx/n), float64(y0+sy/n)
			i := (sy%n)*n + sx%n
			c := v.sample(px, py, i, n*n, n)
			put16(fine.Pix[fine.PixOffset(sx, sy):], c)
		}
	}
	coarse := image.NewRGBA64(image.Rect(0, 0, w, y1-y0))
	if n == 1 {
		coarse = fine
	} else {
		boxFilter().Scale(coarse, coarse.Bounds(), fine, fine.Bounds(), draw.Src, nil)
	}
	for y := range y1 - y0 {
		for x := range w {
			src := coarse.Pix[coarse.PixOffset(x, y):]
			dst := out.Pix[out.PixOffset(x, y+y0):]
			d := dither(float64(x), float64(y+y0))
			c := tone(get16(src))
			dst[0], dst[1], dst[2] = quantise(c.R, d), quantise(c.G, d), quantise(c.B, d)
			dst[3] = 255
		}
	}
}

func put16(dst []uint8, c RGB) {
	for k, f := range [3]float64{c.R, c.G, c.B} {
		u := uint(clamp(f*linearRoom+0.5, 0, 0xffff))
		dst[2*k], dst[2*k+1] = uint8(u>>8), uint8(u)
	}
	dst[6], dst[7] = 0xff, 0xff
}

func get16(src []uint8) RGB {
	at := func(k int) float64 { return float64(uint(src[k])<<8|uint(src[k+1])) / linearRoom }
	return RGB{at(0), at(2), at(4)}
}

// quantise encodes a linear part as sRGB and rounds it up or down by d.
func quantise(c, d float64) uint8 { return uint8(clamp(math.Floor(encode(c)*255+d), 0, 255)) }

// dither is interleaved gradient noise from 0 to 1 (Jimenez 2014, from memory):
// it breaks up the bands that smooth walls would show in 8 bits.
func dither(x, y float64) float64 {
	return fract(52.9829189 * fract(0.06711056*x+0.00583715*y))
}

// scatter is another number from 0 to 1 for a pixel: steps by the two-dimensional
// kin of the golden ratio (Roberts 2018, from memory).
func scatter(x, y float64) float64 { return fract(0.7548776662*x + 0.5698402910*y) }

// sample is the linear light of one sample of a pixel: number i of count, laid
// out as side × side.
func (v *view) sample(px, py float64, i, count, side int) RGB {
	x := px + (float64(i%side)+0.5)/float64(side)
	y := py + (float64(i/side)+0.5)/float64(side)
	d := v.ray(x, y)
	return v.shade(v.trace(v.eye, d), d, i, count, dither(px, py), scatter(px, py))
}

// shade is the light that a hit sends to the viewer. turn and out are the pixel's
// share of chance.
func (v *view) shade(h hit, d vec, i, count int, turn, out float64) RGB {
	if h.what == nothing {
		return scale(v.fillLight, 0.3)
	}
	p := v.eye.at(d, h.t)
	foot := 2 * v.tanHalf / v.height * h.t / math.Sqrt(float64(count)) / max(math.Abs(h.n.dot(d)), 0.2)
	c, gloss := v.albedo(h, p, foot)
	way := v.lampPoint(i, count, turn, out).sub(p)
	distance := way.length()
	lamp := way.times(1 / distance)
	facing := h.n.dot(lamp)
	direct, shine := 0.0, 0.0
	if facing > 0 && !v.shaded(p.at(h.n, liftM), lamp) {
		direct = facing * v.falloff(distance)
		half := lamp.sub(d).unit()
		shine = gloss * glossShine * math.Pow(max(h.n.dot(half), 0), glossDull+glossSharp*gloss) * direct
	}
	open := v.openness(h, p)
	fill := scale(v.fillLight, open*(0.9+0.1*h.n.Y))
	back := scale(c.mul(v.fillLight.plus(scale(v.lampLight, 0.6))), bounce*max(1-open, 0))
	light := scale(v.lampLight, direct).plus(fill).plus(back)
	return c.mul(light).plus(scale(v.lampLight, shine))
}
