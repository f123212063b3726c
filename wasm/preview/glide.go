//go:build js

package main

import "blockfield/engine/scene"

const (
	// glideMS is how long camera and lamp take to a new view.
	glideMS = 450
	// dayMS is how long a day lasts, walkMS a walk past the panels.
	dayMS, walkMS = 14_000, 9_000
)

// glide is a movement of camera and lamp on its way to a scene; the zero glide is
// none. A sweep shows a day or a walk and ends where it began.
type glide struct {
	to             scene.Scene
	startMS, forMS float64
	sweep          bool
	at             func(k float64) (scene.Camera, scene.Lamp) // on the way, k from 0 to 1
}

// glideTo begins a movement to the camera and the lamp of a scene.
func (p *picture) glideTo(to scene.Scene) {
	from := p.scene
	p.glide = glide{to: to, startMS: nowMS(), forMS: glideMS, at: func(k float64) (scene.Camera, scene.Lamp) {
		soft := k * k * (3 - 2*k)
		return from.Camera.Toward(to.Camera, soft), from.Lamp.Toward(to.Lamp, soft)
	}}
}

// sweep shows the light of a day, or a walk past the panels.
func (p *picture) sweep(kind string) {
	if !p.loaded {
		return
	}
	p.halt()
	now := p.scene
	p.glide = glide{to: now, startMS: nowMS(), sweep: true}
	switch kind {
	case "walk":
		p.glide.forMS = walkMS
		p.glide.at = func(k float64) (scene.Camera, scene.Lamp) { return now.Walk(k), now.Lamp }
	default:
		p.glide.forMS = dayMS
		p.glide.at = func(k float64) (scene.Camera, scene.Lamp) { return now.Camera, scene.Day(k) }
	}
	p.touch(true)
}

// halt ends a movement where it is; a sweep gives way to what was there before.
func (p *picture) halt() {
	if p.glide.sweep {
		p.scene.Camera, p.scene.Lamp = p.glide.to.Camera, p.glide.to.Lamp
	}
	p.glide = glide{}
}

// move takes the camera and the lamp on their way. It runs before each frame.
func (p *picture) move(now float64) {
	g := p.glide
	if g.at == nil {
		return
	}
	if k := (now - g.startMS) / g.forMS; k < 1 {
		p.scene.Camera, p.scene.Lamp = g.at(k)
	} else {
		p.scene.Camera, p.scene.Lamp = g.to.Camera, g.to.Lamp
		p.glide = glide{}
	}
	p.pacer.Touch(now, true)
}
