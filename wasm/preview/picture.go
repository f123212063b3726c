//go:build js

package main

import (
	"bytes"
	_ "embed"
	"fmt"
	"image"
	"image/color"
	"math"
	"slices"
	"sync"
	"syscall/js"

	"github.com/hajimehoshi/ebiten/v2"

	"blockfield/engine/scene"
	"blockfield/wasm/preview/pace"
)

//go:embed march.kage
var marchSource []byte

//go:embed enlarge.kage
var enlargeSource []byte

// maxPixels bounds the full picture on dense displays: beyond it more pixels
// cost time that nobody sees.
const maxPixels = 2_600_000

// picture is the game that Ebitengine runs: the scene, what is drawn of it and
// how far it is out of date. The mutex is for messages, which arrive between
// frames and within them.
type picture struct {
	mu      sync.Mutex
	host    js.Value
	shaders map[shaderKind]*ebiten.Shader // those that were needed so far
	enlarge *ebiten.Shader

	scene    scene.Scene
	number   int // that the page gave it
	loaded   bool
	glide    glide
	newCells bool
	cells    *ebiten.Image

	wanted        image.Point // size that the frame asks for
	width, height int
	full, coarse  *ebiten.Image
	rough         *ebiten.Image // the full picture with one sample a pixel, to be refined
	probe         *ebiten.Image // one dot, read back to wait for the graphics
	showFull      bool
	fresh         bool // there is something new to bring to the screen

	pacer      pace.Pacer
	changed    bool // since the last full picture
	changedAt  float64
	coarseDone int // coarse pictures since the last full one
	wantPixels bool
	shot       *shot // to save; nil: none
}

func newPicture(host js.Value) (*picture, error) {
	usual := shaderKind{1, 1}
	one, err := newShader(usual)
	if err != nil {
		return nil, fault(err)
	}
	enlarge, err := ebiten.NewShader(enlargeSource)
	if err != nil {
		return nil, fault(err)
	}
	return &picture{host: host, shaders: map[shaderKind]*ebiten.Shader{usual: one}, enlarge: enlarge, probe: newImage(1, 1)}, nil
}

// shaderKind is what a shader is made for: at most so many panels, with so many looks
// of their blocks.
type shaderKind struct{ panels, looks int }

// newShader makes the shader of a kind. That for one panel, which most jobs have,
// reads the numbers of its panel without an index: on software graphics that takes a
// quarter less time.
func newShader(k shaderKind) (*ebiten.Shader, error) {
	source := marchSource
	if k.panels == 1 {
		for _, index := range []string{"p", "i", "j"} {
			source = bytes.ReplaceAll(source, []byte("Board["+index+"*15"), []byte("Board[0*15"))
		}
		source = bytes.ReplaceAll(source, []byte("Second[p*5"), []byte("Second[0*5"))
	}
	constants := fmt.Sprintf("%s\nconst MostPanels = %d\nconst MostLooks = %d\n", scene.ShaderConstants(), k.panels, k.looks)
	return ebiten.NewShader(append(slices.Clone(source), constants...))
}

// shader is that for the scene.
func (p *picture) shader() *ebiten.Shader {
	k := shaderKind{1, 1}
	if len(p.scene.Panels) > 1 {
		k.panels = scene.MaxPanels
	}
	if p.scene.Mixed() {
		k.looks = 2
	}
	if p.shaders[k] == nil {
		made, err := newShader(k)
		if err != nil { // it differs from the first in numbers alone
			panic(fmt.Sprintf("preview: internal error: %v", err))
		}
		p.shaders[k] = made
	}
	return p.shaders[k]
}

// Update has nothing to do: the picture changes by messages only.
func (p *picture) Update() error { return nil }

// Layout is never called, since there is LayoutF, but the interface asks for it.
func (p *picture) Layout(w, h int) (int, int) { return w, h }

// LayoutF notes how large the picture must be: as the body of the frame, which
// has a pixel for each dot of the display, up to maxPixels. Ebitengine's own screen
// is a single dot, since DrawFinalScreen goes past it: copying every pixel once more
// costs as much as a band on software graphics.
func (p *picture) LayoutF(w, h float64) (float64, float64) {
	k := 1.0
	if n := w * h; n > maxPixels {
		k = math.Sqrt(maxPixels / n)
	}
	p.wanted = image.Pt(int(max(math.Round(w*k), 1)), int(max(math.Round(h*k), 1)))
	return 1, 1
}

// Draw draws one step of the picture. A dot on the screen, whatever its colour, has
// Ebitengine bring the picture there; without one the screen stays as it is.
func (p *picture) Draw(screen *ebiten.Image) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.step()
	if p.fresh {
		p.fresh = false
		screen.Fill(color.Black)
	}
}

func (p *picture) step() {
	if !p.loaded {
		p.host.Call("rest")
		return
	}
	p.fit(p.wanted)
	p.uploadCells()
	start := nowMS()
	p.move(start)
	step := p.pacer.Next(start, p.height)
	if step.Draws() {
		p.draw(step)
		p.pacer.Took(step, nowMS()-start, p.height)
	}
	if step.WaitMS > 0 {
		p.host.Call("nap", step.WaitMS) // frames in which nothing is drawn cost the browser as much as others
	}
	if step.Rest && p.shot != nil {
		p.drawShot()
	} else if step.Rest {
		p.finish()
	}
}

// The ways of march.kage to draw.
const (
	passWhole = iota
	passRough
	passRefine
)

// drawBand draws some rows of the full picture: of the rough one, or refined.
func (p *picture) drawBand(step pace.Step) {
	rows := image.Rect(0, step.From, p.width, step.To)
	if step.Side == 1 {
		p.march(p.full, rows, p.width, p.height, 1, passRough)
		return
	}
	if step.From == 0 {
		p.rough.DrawImage(p.full, &ebiten.DrawImageOptions{Blend: ebiten.BlendCopy})
	}
	p.march(p.full, rows, p.width, p.height, step.Side, passRefine)
}

// await waits until the graphics are through with an image.
func (p *picture) await(img *ebiten.Image) {
	p.probe.DrawImage(img, nil)
	var dot [4]byte
	p.probe.ReadPixels(dot[:])
}

// draw carries out a step and waits until the graphics are through with it, so
// that the pacer learns what it cost.
func (p *picture) draw(step pace.Step) {
	drawn := p.full
	p.fresh = step.Whole || step.Coarse > 0
	if step.Coarse > 0 {
		p.drawCoarse(step.Coarse)
		p.showFull = false
		p.coarseDone++
		drawn = p.coarse
	} else {
		p.drawBand(step)
	}
	if step.Whole && !p.showFull {
		p.showFull = true
		if step.Side == 1 {
			post(p.host, "sharp", map[string]any{"scene": p.number, "ms": nowMS() - p.changedAt})
		}
	}
	p.await(drawn)
}

// finish runs in the first frame with nothing left to draw, so the full picture
// has been handed to the browser.
func (p *picture) finish() {
	if p.changed {
		p.changed = false
		post(p.host, "drawn", map[string]any{
			"scene": p.number, "ms": nowMS() - p.changedAt, "width": p.width, "height": p.height, "coarse": p.coarseDone,
		})
		p.coarseDone = 0
	}
	if p.wantPixels {
		p.sendPixels()
	}
	p.host.Call("rest")
}

// fit follows the size of the frame.
func (p *picture) fit(size image.Point) {
	if p.full != nil && size.X == p.width && size.Y == p.height {
		return
	}
	if p.full != nil {
		p.full.Deallocate()
		p.rough.Deallocate()
	}
	p.width, p.height = size.X, size.Y
	p.full, p.rough = newImage(p.width, p.height), newImage(p.width, p.height)
	p.touch(false)
}

// newImage keeps an image out of the shared atlas: the cells are read by exact
// position, the others are too large for it.
func newImage(w, h int) *ebiten.Image {
	return ebiten.NewImageWithOptions(image.Rect(0, 0, w, h), &ebiten.NewImageOptions{Unmanaged: true})
}

func (p *picture) uploadCells() {
	if !p.newCells {
		return
	}
	p.newCells = false
	pix, rows := p.scene.Cells()
	if p.cells == nil || p.cells.Bounds().Dy() != rows {
		if p.cells != nil {
			p.cells.Deallocate()
		}
		p.cells = newImage(scene.CellBytesWidth, rows)
	}
	p.cells.WritePixels(pix)
}

func (p *picture) drawCoarse(part int) {
	w, h := (p.width+part-1)/part, (p.height+part-1)/part
	if p.coarse == nil || p.coarse.Bounds().Dx() != w || p.coarse.Bounds().Dy() != h {
		if p.coarse != nil {
			p.coarse.Deallocate()
		}
		p.coarse = newImage(w, h)
	}
	p.march(p.coarse, p.coarse.Bounds(), w, h, 1, passWhole)
}

// march runs the shader over a part of a picture of the given size.
func (p *picture) march(dst *ebiten.Image, part image.Rectangle, width, height, side, pass int) {
	uniforms := p.scene.Uniforms(width, height)
	uniforms["Side"], uniforms["Pass"] = side, pass
	x0, y0 := float32(part.Min.X), float32(part.Min.Y)
	x1, y1 := float32(part.Max.X), float32(part.Max.Y)
	corners := []ebiten.Vertex{{DstX: x0, DstY: y0}, {DstX: x1, DstY: y0}, {DstX: x0, DstY: y1}, {DstX: x1, DstY: y1}}
	dst.DrawTrianglesShader(corners, []uint16{0, 1, 2, 1, 2, 3}, p.shader(), &ebiten.DrawTrianglesShaderOptions{
		Uniforms: uniforms,
		Images:   [4]*ebiten.Image{p.cells, p.rough},
		Blend:    ebiten.BlendCopy,
	})
}

// DrawFinalScreen shows the full picture, or the coarse one enlarged.
func (p *picture) DrawFinalScreen(screen ebiten.FinalScreen, _ *ebiten.Image, _ ebiten.GeoM) {
	p.mu.Lock()
	defer p.mu.Unlock()
	shown := p.coarse
	if p.showFull {
		shown = p.full
	}
	if shown == nil {
		return
	}
	size, on := shown.Bounds().Size(), screen.Bounds().Size()
	if size == on {
		screen.DrawImage(shown, &ebiten.DrawImageOptions{Blend: ebiten.BlendCopy})
		return
	}
	x, y, sx, sy := float32(on.X), float32(on.Y), float32(size.X), float32(size.Y)
	corners := []ebiten.Vertex{{}, {DstX: x, SrcX: sx}, {DstY: y, SrcY: sy}, {DstX: x, DstY: y, SrcX: sx, SrcY: sy}}
	screen.DrawTrianglesShader(corners, []uint16{0, 1, 2, 1, 2, 3}, p.enlarge, &ebiten.DrawTrianglesShaderOptions{
		Images: [4]*ebiten.Image{shown},
		Blend:  ebiten.BlendCopy,
	})
}
