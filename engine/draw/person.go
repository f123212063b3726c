package draw

import "encoding/base64"

// A standing person in a drawing, for scale.
const (
	PersonMM   = 1750       // height; a common one, from memory
	PersonHalf = 1.1 / 7.48 // half its width, of its height
	headsTall  = 7.48       // its height in heads: canon of proportion, common practice
	headMiddle = 6.98       // of the head above the feet, in heads
	headRadius = 0.5        // in heads
)

// personOutline is the left half of the outline from the neck down to between the
// legs, across and up in heads. Drawn by us.
func personOutline() [][2]float64 {
	return [][2]float64{
		{-0.18, 6.42}, {-0.62, 6.3}, {-0.86, 6.12}, {-0.97, 5.8}, {-1.04, 4.9}, {-1.1, 4.2}, {-1.08, 3.55}, {-0.98, 3.4},
		{-0.88, 3.55}, {-0.84, 4.2}, {-0.74, 5.2}, {-0.64, 5.4}, {-0.6, 4.6}, {-0.64, 3.6}, {-0.58, 2}, {-0.52, 0.25},
		{-0.6, 0}, {-0.16, 0}, {-0.14, 0.3}, {-0.1, 2}, {0, 3.35},
	}
}

// Person draws a standing person whose feet are at x and foot and who is so tall,
// as a shape of one tone.
func (c *Canvas) Person(x, foot, tall float64, attrs ...Attr) {
	head := tall / headsTall
	half := personOutline()
	var xy []float64
	for _, p := range half {
		xy = append(xy, x+p[0]*head, foot-p[1]*head)
	}
	for i := len(half) - 1; i >= 0; i-- {
		xy = append(xy, x-half[i][0]*head, foot-half[i][1]*head)
	}
	c.Group("person", func() {
		c.Circle(x, foot-headMiddle*head, headRadius*head, attrs...)
		c.Path(Polygon(xy...), attrs...)
	})
}

// Image draws a picture of a media type over a box.
func (c *Canvas) Image(b Box, mediaType string, body []byte, text string) {
	c.open("image", []Attr{
		num("x", b.X), num("y", b.Y), num("width", b.Width), num("height", b.Height),
		{"href", "data:" + mediaType + ";base64," + base64.StdEncoding.EncodeToString(body)},
	}, []Attr{{"role", "img"}, {"aria-label", text}})
	c.body.WriteString("/>")
}
