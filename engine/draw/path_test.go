package draw_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"regexp"
	"strconv"
	"testing"

	"blockfield/engine/draw"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestFieldPathByHand(t *testing.T) {
	f := draw.Field{Columns: 4, Rows: 2, Levels: []uint8{
		1, 1, 0, 1,
		0, 0, 0, 1,
	}, Pitch: 10}
	assert.Equal(t, "m0 0h20v10h-20zm30 0h10v10h-10zm0 10h10v10h-10z", f.Path(1))
	assert.Equal(t, "m20 0h10v10h-10zm-20 10h30v10h-30z", f.Path(0))
	assert.Empty(t, f.Path(2))
	f.Inset = 0.5
	assert.Equal(t, "m0.5 0.5h9v9h-9zm10 0h9v9h-9zm20 0h9v9h-9zm0 10h9v9h-9z", f.Path(1))
	assert.Equal(t, draw.Box{X: 30.5, Y: 10.5, Width: 9, Height: 9}, f.Cell(3, 1))
	assert.Equal(t, draw.Box{Width: 40, Height: 20}, f.Box())
	f.Levels = f.Levels[1:]
	assert.Panics(t, func() { f.Path(1) })
}

// Reading the paths of all levels back gives every cell once, in its place.
func TestFieldPathsCoverTheField(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 9))
	for range 60 {
		f := draw.Field{
			Columns: 1 + rng.IntN(60), Rows: 1 + rng.IntN(30),
			Pitch: 10 + rng.Float64()*50, Inset: float64(rng.IntN(2)) * rng.Float64(),
		}
		const levels = 5
		f.Levels = make([]uint8, f.Columns*f.Rows)
		for i := range f.Levels {
			f.Levels[i] = uint8(rng.IntN(levels))
		}
		got := make([]int, len(f.Levels))
		for i := range got {
			got[i] = -1
		}
		for level := range levels {
			for _, r := range rectangles(t, f.Path(uint8(level))) {
				markCells(t, f, r, level, got)
			}
		}
		for i, l := range f.Levels {
			require.Equal(t, int(l), got[i], "cell %d of %+v", i, f)
		}
	}
}

// markCells notes the level of all cells that a rectangle covers, after a look
// at its edges: a hundredth of rounding and no more, wherever it is.
func markCells(t *testing.T, f draw.Field, r draw.Box, level int, got []int) {
	t.Helper()
	cells := func(distance float64) int { return int(math.Round(distance / f.Pitch)) }
	first, row := cells(r.X-f.Inset), cells(r.Y-f.Inset)
	n := cells(r.Width + 2*f.Inset)
	a, b := f.Cell(first, row), f.Cell(first+n-1, row)
	require.InDelta(t, a.X, r.X, 0.0051)
	require.InDelta(t, a.Y, r.Y, 0.0051)
	require.InDelta(t, b.X+b.Width, r.X+r.Width, 0.0051)
	require.InDelta(t, a.Y+a.Height, r.Y+r.Height, 0.0051)
	for col := first; col < first+n; col++ {
		require.Equal(t, -1, got[row*f.Columns+col], "cell drawn twice")
		got[row*f.Columns+col] = level
	}
}

var rectangle = regexp.MustCompile(`^m(-?[0-9.]+) (-?[0-9.]+)h([0-9.]+)v([0-9.]+)h(-[0-9.]+)z`)

// rectangles reads path data the way a browser does: a relative move starts
// from the first point of the rectangle before.
func rectangles(t *testing.T, d string) []draw.Box {
	t.Helper()
	var out []draw.Box
	x, y := 0.0, 0.0
	for d != "" {
		m := rectangle.FindStringSubmatch(d)
		require.NotNil(t, m, "no rectangle at %.40q", d)
		var v [5]float64
		for i := range v {
			var err error
			v[i], err = strconv.ParseFloat(m[i+1], 64)
			require.NoError(t, err)
		}
		x, y = x+v[0], y+v[1]
		require.Equal(t, v[2], -v[4], "not closed square on")
		out = append(out, draw.Box{X: x, Y: y, Width: v[2], Height: v[3]})
		d = d[len(m[0]):]
	}
	return out
}

func BenchmarkField(b *testing.B) {
	for _, side := range []struct{ columns, rows int }{{50, 30}, {200, 200}} {
		for _, inset := range []float64{0, 0.1} {
			rng := rand.New(rand.NewPCG(1, 1))
			f := draw.Field{Columns: side.columns, Rows: side.rows, Pitch: 36.2, Inset: inset}
			f.Levels = make([]uint8, f.Columns*f.Rows)
			for i := range f.Levels {
				f.Levels[i] = uint8(rng.IntN(4))
			}
			b.Run(fmt.Sprintf("%d/inset=%v", len(f.Levels), inset), func(b *testing.B) {
				b.ReportAllocs()
				size := 0
				for b.Loop() {
					size = 0
					for level := range uint8(4) {
						size += len(f.Path(level))
					}
				}
				b.ReportMetric(float64(size), "text-B")
			})
		}
	}
}
