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

// The posters, in the shape of the page's preview: one for a desk, one for a
// phone. Only the first is drawn; the others are made smaller from it.
var posters = []poster{
	{"poster-large.jpg", 1280, 960},
	{"poster-small.jpg", 640, 480},
}

const (
	posterMaxBytes    = 120_000
	posterSupersample = 2 // soft shadow edges; 3 takes twice as long and looks the same
	bestQuality       = 90
	worstQuality      = 40 // below it the edges of the blocks fray
)

// drawPoster draws the largest poster.
func drawPoster(of scene.Scene) image.Image {
	return scene.Render(of, posters[0].width, posters[0].height, posterSupersample)
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
