//go:build js

package main

import "blockfield/engine/scene"

// glideMS is how long camera and lamp take to a new view.
const glideMS = 450

// glide is a movement of camera and lamp; the zero glide is none.
type glide struct {
	from, to scene.Scene
	startMS  float64
}

// move takes the camera and the lamp on their way. It runs before each frame.
func (p *picture) move(now float64) {
	if p.glide.startMS == 0 {
		return
	}
	k := min((now-p.glide.startMS)/glideMS, 1)
	soft := k * k * (3 - 2*k)
	p.scene.Camera = p.glide.from.Camera.Toward(p.glide.to.Camera, soft)
	p.scene.Lamp = p.glide.from.Lamp.Toward(p.glide.to.Lamp, soft)
	if k == 1 {
		p.scene.Camera, p.scene.Lamp = p.glide.to.Camera, p.glide.to.Lamp
		p.glide = glide{}
	}
	p.pacer.Touch(now, true)
}
