//go:build js

// Program preview draws the scene of the page in its sandboxed frame: a Kage
// shader walks the grid of heights (march.kage), this program feeds it. It
// draws only when something changed: the frame's script holds the browser's
// frame loop shut until the program asks for it.
//
// It talks to the frame's script through two objects of the global scope:
// previewHost (made by the script: post, wake, rest) and preview (made here:
// one function a message). Bytes are those of scene.Encode. After a change the
// page hears "sharp" when the full picture stands with one sample a pixel and
// "drawn" when it is finished, and "view" after each movement of camera or lamp.
// A scene that cannot be drawn is "refused", which is no "error" of the program.
package main

import (
	"fmt"
	"syscall/js"

	"github.com/hajimehoshi/ebiten/v2"

	"blockfield/engine/scene"
)

func main() {
	host := js.Global().Get("previewHost")
	p, err := newPicture(host)
	if err != nil {
		post(host, "error", map[string]any{"message": err.Error()})
		return
	}
	js.Global().Set("preview", p.handlers())
	post(host, "ready", nil)
	ebiten.SetScreenClearedEveryFrame(false) // a frame that shows nothing new costs nothing on screen
	if err := ebiten.RunGameWithOptions(p, &ebiten.RunGameOptions{InitUnfocused: true}); err != nil {
		post(host, "error", map[string]any{"message": err.Error()})
	}
}

// post sends a message of the given type to the page.
func post(host js.Value, kind string, fields map[string]any) {
	message := map[string]any{"type": kind}
	for name, v := range fields {
		message[name] = v
	}
	host.Call("post", message)
}

// handlers are the messages that the program takes.
func (p *picture) handlers() map[string]any {
	on := func(do func(args []js.Value)) js.Func {
		return js.FuncOf(func(_ js.Value, args []js.Value) any {
			p.mu.Lock()
			defer p.mu.Unlock()
			do(args)
			return nil
		})
	}
	return map[string]any{
		"scene":  on(func(a []js.Value) { p.setScene(bytesOf(a[0]), a[1].Truthy(), a[2].Truthy(), a[3].Int()) }),
		"orbit":  on(func(a []js.Value) { p.halt(); p.look(p.scene.Camera.Orbit(a[0].Float(), a[1].Float()), p.scene.Lamp) }),
		"zoom":   on(func(a []js.Value) { p.halt(); p.look(p.scene.Camera.ZoomBy(a[0].Float()), p.scene.Lamp) }),
		"lamp":   on(func(a []js.Value) { p.halt(); p.look(p.scene.Camera, p.scene.Lamp.Drag(a[0].Float(), a[1].Float())) }),
		"sweep":  on(func(a []js.Value) { p.sweep(a[0].String()) }),
		"shoot":  on(func(a []js.Value) { p.shoot(a[0].Int(), a[1].Int()) }),
		"pixels": on(func([]js.Value) { p.wantPixels = true; p.host.Call("wake") }),
	}
}

func bytesOf(array js.Value) []byte {
	b := make([]byte, array.Get("byteLength").Int())
	js.CopyBytesToGo(b, array)
	return b
}

// setScene takes a new scene; a bad one is refused and the last good picture
// stays. With keepView the present camera and lamp stay too; smooth has them
// glide to their new places. The number comes back with what is said of the
// scene.
func (p *picture) setScene(b []byte, keepView, smooth bool, number int) {
	s, err := scene.Decode(b)
	if err != nil {
		post(p.host, "refused", map[string]any{"scene": number, "message": err.Error()})
		return
	}
	p.halt()
	if p.loaded && keepView {
		s.Camera, s.Lamp = p.scene.Camera, p.scene.Lamp
	} else if p.loaded && smooth && (s.Camera != p.scene.Camera || s.Lamp != p.scene.Lamp) {
		p.glideTo(s)
		s.Camera, s.Lamp = p.scene.Camera, p.scene.Lamp
	}
	again := p.loaded
	p.scene, p.number, p.loaded, p.newCells = s, number, true, true
	p.touch(again) // a further edit may follow, and shall have the processors
}

// look moves the camera or the lamp and tells the page where they are now.
func (p *picture) look(c scene.Camera, l scene.Lamp) {
	if !p.loaded {
		post(p.host, "error", map[string]any{"message": "preview: no scene to look at yet"})
		return
	}
	p.scene.Camera, p.scene.Lamp = c, l
	p.touch(true)
	post(p.host, "view", map[string]any{
		"yaw": c.YawDeg, "pitch": c.PitchDeg, "zoom": c.Zoom,
		"azimuth": l.AzimuthDeg, "elevation": l.ElevationDeg,
	})
}

func (p *picture) touch(moving bool) {
	now := nowMS()
	if !p.changed {
		p.changed, p.changedAt = true, now
	}
	p.pacer.Touch(now, moving)
	if p.shot != nil {
		p.shot.next = 0 // it is of what is on screen
	}
	p.host.Call("wake")
}

func nowMS() float64 { return js.Global().Get("performance").Call("now").Float() }

// sendPixels answers with the full picture that stands on screen.
func (p *picture) sendPixels() {
	p.wantPixels = false
	p.send("pixels", p.full)
}

// send posts an image to the page.
func (p *picture) send(kind string, img *ebiten.Image) {
	size := img.Bounds().Size()
	pix := make([]byte, 4*size.X*size.Y)
	img.ReadPixels(pix)
	array := js.Global().Get("Uint8Array").New(len(pix))
	js.CopyBytesToJS(array, pix)
	post(p.host, kind, map[string]any{"width": size.X, "height": size.Y, "bytes": array})
}

// fault turns an error of the graphics into one of this program.
func fault(err error) error { return fmt.Errorf("preview: %w", err) }
