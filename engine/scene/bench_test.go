package scene_test

import (
	"testing"

	"blockfield/engine/scene"
)

func BenchmarkRender1200x800(b *testing.B) {
	s := defaultScene()
	for b.Loop() {
		scene.Render(s, 1200, 800, 1)
	}
}

// The fewest samples with soft shadows.
func BenchmarkRender1200x800Soft(b *testing.B) {
	s := defaultScene()
	for b.Loop() {
		scene.Render(s, 1200, 800, 2)
	}
}

func BenchmarkRender1200x800Supersampled(b *testing.B) {
	s := defaultScene()
	for b.Loop() {
		scene.Render(s, 1200, 800, 3)
	}
}

// As the preview draws on software graphics, and stills are drawn.
func BenchmarkRender1200x800Refined(b *testing.B) {
	s := defaultScene()
	for b.Loop() {
		scene.RenderRefined(s, 1200, 800, 2)
	}
}

func BenchmarkHit(b *testing.B) {
	s := defaultScene()
	for b.Loop() {
		s.Hit(1200, 800, 433, 377)
	}
}

func BenchmarkEncodeDecode(b *testing.B) {
	s := defaultScene()
	for b.Loop() {
		if _, err := scene.Decode(s.Encode()); err != nil {
			b.Fatal(err)
		}
	}
}
