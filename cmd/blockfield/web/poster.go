package web

import (
	"bytes"
	"fmt"
	"image"
	"image/jpeg"

	"golang.org/x/image/draw"

	"blockfield/engine/scene"
)

// poster is a still picture of the default design, shown until the preview
// draws.
type poster struct {
	name          string
	width, height int
}

// The posters, in the shape of the page's preview and from the smallest on: one
// for a phone, one for a desk. Only the largest is drawn; the others are made
// smaller from it.
var posters = []poster{
	{"poster-small.jpg", 640, 480},
	{"poster-large.jpg", 1280, 960},
}

const (
	posterMaxBytes    = 120_000
	posterSupersample = 2 // soft shadow edges; 3 takes twice as long and looks the same
	bestQuality       = 90
	worstQuality      = 40 // below it the edges of the blocks fray
)

// drawPoster draws the largest poster.
func drawPoster(of scene.Scene) image.Image {
	largest := posters[len(posters)-1]
	return scene.Render(of, largest.width, largest.height, posterSupersample)
}

func (s *Site) addPosters(drawn image.Image) error {
	for _, p := range posters {
		picture := image.NewRGBA(image.Rect(0, 0, p.width, p.height))
		draw.CatmullRom.Scale(picture, picture.Rect, drawn, drawn.Bounds(), draw.Src, nil)
		body, err := smallJPEG(picture)
		if err != nil {
			return fmt.Errorf("build: %s: %w", p.name, err)
		}
		s.add(p.name, body, false)
	}
	return nil
}

// smallJPEG takes the best quality that keeps within the size of a poster.
func smallJPEG(picture image.Image) ([]byte, error) {
	for quality := bestQuality; quality >= worstQuality; quality -= 5 {
		var b bytes.Buffer
		if err := jpeg.Encode(&b, picture, &jpeg.Options{Quality: quality}); err != nil {
			return nil, err
		}
		if b.Len() <= posterMaxBytes {
			return b.Bytes(), nil
		}
	}
	return nil, fmt.Errorf("picture is larger than %d bytes at the worst quality", posterMaxBytes)
}
