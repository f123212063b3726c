//go:build js

package main

import (
	"image"

	"github.com/hajimehoshi/ebiten/v2"
)

const (
	// maxShot is the longest side of a picture to save, in pixels: what graphics
	// of any age take, and enough for a page of print.
	maxShot = 4096
	// shotSide is the samples along one side of a pixel in it, slowSide where the
	// graphics are slow.
	shotSide, slowSide = 3, 2
	// shotMS is what a band of it may take: nobody waits for its frames, but the
	// frame must answer meanwhile.
	shotMS    = 150
	shotFirst = 8 // rows of the first band
)

// shot is a picture to save that is being drawn, beside the one on screen.
type shot struct {
	image      *ebiten.Image
	side       int
	next, rows int
}

// shoot begins a picture to save, in place of one that is not finished.
func (p *picture) shoot(width, height int) {
	if p.shot != nil {
		p.shot.image.Deallocate()
	}
	p.shot = &shot{image: newImage(min(max(width, 1), maxShot), min(max(height, 1), maxShot)), side: shotSide, rows: shotFirst}
	if p.pacer.Slow() {
		p.shot.side = slowSide
	}
	p.host.Call("wake")
}

// drawShot draws a band of the picture to save, and sends it when it is whole.
func (p *picture) drawShot() {
	s := p.shot
	size := s.image.Bounds().Size()
	start := nowMS()
	to := min(s.next+s.rows, size.Y)
	p.march(s.image, image.Rect(0, s.next, size.X, to), size.X, size.Y, s.side, passWhole)
	p.await(s.image)
	s.rows = max(int(float64(s.rows)*shotMS/max(nowMS()-start, 1)), 1)
	if s.next = to; s.next < size.Y {
		return
	}
	p.send("shot", s.image)
	s.image.Deallocate()
	p.shot = nil
}
