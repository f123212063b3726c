package wall_test

import (
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/wall"

	"github.com/stretchr/testify/assert"
)

// The first panel is 1240.6 × 842.4 mm on a wall of 3500 × 2500 mm with studs at 300,
// 900, 1500 …; its middle lies between two studs with its left edge at 1179.7 mm, on
// one at 879.7 and 1479.7, and at the ears, 1150 mm up, with its lower edge at 728.8.
func TestSnap(t *testing.T) {
	mm := length.MM
	h := wall.Hang(first(t, func(*design.Wall, *design.Group) {}))
	for _, c := range []struct{ left, bottom, wantLeft, wantBottom int64 }{
		{1160, 900, 1180, 900}, {1159, 900, 1159, 900}, {1200, 900, 1180, 900}, {1201, 900, 1201, 900},
		{1155, 709, 1155, 729}, {1155, 708, 1155, 708}, {1155, 749, 1155, 729}, {1155, 750, 1155, 750},
		{1129, 900, 1130, 900}, // the middle of the wall, at 1129.7
		{-100, -50, 0, 0}, {3000, 2400, 2259, 1657},
	} {
		left, bottom := h.Snap(mm(c.left), mm(c.bottom))
		assert.Equal(t, []int64{c.wantLeft, c.wantBottom}, []int64{int64(left.Millimetres()), int64(bottom.Millimetres())}, "%+v", c)
	}
	inches := wall.Hang(first(t, func(_ *design.Wall, g *design.Group) {
		g.Place.Left, g.Place.Height = length.Sixtyfourths(40*64), length.Sixtyfourths(30*64)
	}))
	left, bottom := inches.Snap(mm(1030), mm(900))
	assert.Equal(t, []string{"40 9/16 in", "35 7/16 in"}, []string{left.String(), bottom.String()}, "1030 and 900 mm to 1/16 in")
}

// What is offered can be typed, and is not offered where the panel is there already.
func TestSpots(t *testing.T) {
	spots := func(change func(*design.Wall, *design.Group)) map[string]string {
		out := map[string]string{}
		for _, s := range wall.Hang(first(t, change)).Spots() {
			out[s.Name] = s.Path + " = " + s.To.String()
		}
		return out
	}
	got := spots(func(*design.Wall, *design.Group) {})
	assert.Equal(t, map[string]string{
		"spot/studs": "walls[0].groups[0].place.left = 1180 mm",
		"spot/ears":  "walls[0].groups[0].place.height = 729 mm",
	}, got, "in the middle of its wall it is")
	got = spots(func(_ *design.Wall, g *design.Group) {
		g.Place.Left, g.Place.Edge, g.Place.Height = length.MM(1180), "top", length.MM(1800)
	})
	assert.Equal(t, map[string]string{
		"spot/middle": "walls[0].groups[0].place.left = 1130 mm",
		"spot/ears":   "walls[0].groups[0].place.height = 1571.4 mm",
	}, got)
	got = spots(func(w *design.Wall, g *design.Group) {
		w.Kind, w.Width, w.Height = "brick", length.MM(1000), length.MM(800)
	})
	assert.Empty(t, got, "larger than its wall")
}
