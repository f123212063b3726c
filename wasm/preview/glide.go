//go:build js

package main

import "blockfield/engine/scene"

const (
	// glideMS is how long camera and lamp take to a new view.
	glideMS = 450
	// sweepMS is how long a day lasts.
	sweepMS = 14_000
)

// glide is a movement of camera and lamp on its way to a scene; the zero glide is
// none. A sweep shows a day and ends where it began.
type glide struct {
	from, to scene.Scene
	startMS  float64
	sweep    bool
}

// sweep shows the light of a day.
func (p *picture) sweep() {
	if !p.loaded {
		return
	}
	p.glide = glide{from: p.scene, to: p.scene, startMS: nowMS(), sweep: true}
	p.touch(true)
}

// halt ends a movement where it is; the light of a day gives way to the lamp.
func (p *picture) halt() {
	if p.glide.sweep {
		p.scene.Lamp = p.glide.to.Lamp
	}
	p.glide = glide{}
}

// move takes the camera and the lamp on their way. It runs before each frame.
func (p *picture) move(now float64) {
	g := p.glide
	switch passed := now - g.startMS; {
	case g.startMS == 0:
		return
	case g.sweep && passed < sweepMS:
		p.scene.Lamp = scene.Day(passed / sweepMS)
	case !g.sweep && passed < glideMS:
		k := passed / glideMS
		soft := k * k * (3 - 2*k)
		p.scene.Camera = g.from.Camera.Toward(g.to.Camera, soft)
		p.scene.Lamp = g.from.Lamp.Toward(g.to.Lamp, soft)
	default:
		p.scene.Camera, p.scene.Lamp = g.to.Camera, g.to.Lamp
		p.glide = glide{}
	}
	p.pacer.Touch(now, true)
}
