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

// The posters, from the smallest on: one for a phone, one for a desk. Only the
// largest is drawn; the others are made smaller from it. Their shape is wider
// than any box of the picture and, in the middle, as tall as the usual one of
// four to three: the style sheet shows the part that a box needs, so that the
// moving picture takes the poster's place without a jump.
var posters = []poster{
	{"poster-small.jpg", 1200, 480},
	{"poster-large.jpg", 2400, 960},
}

const (
	posterMaxBytes    = 120_000
	posterSupersample = 3 // soft shadow edges without a grain
	bestQuality       = 90
	worstQuality      = 40 // below it the edges of the blocks fray

	usualShape = 4.0 / 3
)

// drawPoster draws the largest poster: as the picture in a box of the usual
// shape, with more wall at its sides.
func drawPoster(of scene.Scene) image.Image {
	largest := posters[len(posters)-1]
	of.Camera.Zoom /= PosterTall(of)
	return scene.Render(of, largest.width, largest.height, posterSupersample)
}

// PosterTall is how much taller a picture of the usual shape is than one that
// just takes in the height of the panels: the style sheet scales by it.
func PosterTall(of scene.Scene) float64 {
	width, height := of.Size()
	return max(width/height/usualShape, 1)
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
