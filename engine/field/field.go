// Package field lays the levels of a height set over a grid of cells.
//
// Level 0 is the lowest height of the set. Row 0 is at the top and column 0 at
// the left, as the panel hangs and seen from the room. With K levels, rows i
// and columns j:
//
//   - quadratic residue of order N: ⌊((i² + j²) mod N)·K/N⌋, in both directions;
//   - quadratic residue stripes: ⌊(j² mod N)·K/N⌋;
//   - primitive root of order N, folded to a rows and b columns with a·b = N−1
//     and no common factor: for t = 0 … N−2, v = gᵗ mod N with the smallest
//     primitive root g, cell (t mod a, t mod b) has ⌊(v−1)·K/(N−1)⌋
//     (M. R. Schroeder's folding of number-theoretic sequences);
//   - shuffled: equal shares of the levels, shuffled from the last place down
//     by a splitmix64 generator, so that a seed means the same panel for ever;
//   - drawn: digits as a person set them.
//
// In clumps of m, the grid of ⌈rows/m⌉ × ⌈columns/m⌉ places is laid first and
// each place covers m × m cells from the top left corner; the surplus at the
// right and at the bottom is cut off. Then the field is shifted, turned,
// mirrored and swapped, in this order.
package field

import (
	"fmt"

	"blockfield/engine/chance"
	"blockfield/engine/design"
)

// Grid is a field of levels, row after row from the top.
type Grid struct {
	Columns, Rows int
	Heights       int // number of levels in the height set
	Levels        []uint8
}

// At returns the level of a cell; row and column count from 0.
func (g Grid) At(row, column int) uint8 { return g.Levels[row*g.Columns+column] }

func newGrid(columns, rows, heights int) Grid {
	return Grid{Columns: columns, Rows: rows, Heights: heights, Levels: make([]uint8, columns*rows)}
}

// Lay returns the field of a pattern. It returns an error when the pattern
// cannot fill it, which design.Validate has refused before.
func Lay(p design.Pattern, columns, rows, heights int) (Grid, error) {
	if columns < 1 || rows < 1 || heights < 1 || heights > 10 {
		return Grid{}, fmt.Errorf("field: %d × %d cells of %d heights cannot be laid", columns, rows, heights)
	}
	across, down := columns, rows
	if p.Turn == 90 || p.Turn == 270 {
		across, down = rows, columns
	}
	g, err := base(p, across, down, heights)
	if err != nil {
		return Grid{}, err
	}
	return transform(g, p), nil
}

func base(p design.Pattern, columns, rows, heights int) (Grid, error) {
	if p.Kind == design.Drawn {
		return drawn(p.Drawn, columns, rows, heights)
	}
	clump := max(p.Clump, 1)
	places, err := computed(p, ceilDiv(columns, clump), ceilDiv(rows, clump), heights)
	if err != nil || clump == 1 {
		return places, err
	}
	g := newGrid(columns, rows, heights)
	for i := range rows {
		for j := range columns {
			g.Levels[i*columns+j] = places.At(i/clump, j/clump)
		}
	}
	return g, nil
}

func ceilDiv(a, b int) int { return (a + b - 1) / b }

func computed(p design.Pattern, columns, rows, heights int) (Grid, error) {
	switch p.Kind {
	case design.QuadraticResidue:
		return residue(p, columns, rows, heights, true), nil
	case design.QuadraticResidueStripes:
		return residue(p, columns, rows, heights, false), nil
	case design.PrimitiveRoot:
		return folded(p, columns, rows, heights)
	case design.Shuffled:
		g := newGrid(columns, rows, heights)
		shuffle(g.Levels, heights, uint64(p.Seed))
		return roll(g, p.ShiftRows, p.ShiftColumns), nil
	default:
		return Grid{}, fmt.Errorf("field: unknown pattern %q", p.Kind)
	}
}

func residue(p design.Pattern, columns, rows, heights int, both bool) Grid {
	g, n := newGrid(columns, rows, heights), p.Order
	for i := range rows {
		down := 0
		if both {
			down = square(i+p.ShiftRows, n)
		}
		for j := range columns {
			g.Levels[i*columns+j] = uint8((down + square(j+p.ShiftColumns, n)) % n * heights / n)
		}
	}
	return g
}

func square(i, n int) int { i %= n; return i * i % n }

func folded(p design.Pattern, columns, rows, heights int) (Grid, error) {
	a, b := p.FoldRows, p.FoldColumns
	if a == 0 || b == 0 {
		a, b = Fold(p.Order)
	}
	root := SmallestPrimitiveRoot(p.Order)
	if root == 0 || a*b != p.Order-1 || gcd(a, b) != 1 {
		return Grid{}, fmt.Errorf("field: a primitive root of order %d cannot be folded to %d × %d", p.Order, a, b)
	}
	tile, v := make([]uint8, a*b), 1
	for t := range p.Order - 1 {
		tile[t%a*b+t%b] = uint8((v - 1) * heights / (p.Order - 1))
		v = v * root % p.Order
	}
	g := newGrid(columns, rows, heights)
	for i := range rows {
		for j := range columns {
			g.Levels[i*columns+j] = tile[wrap(i+p.ShiftRows, a)*b+wrap(j+p.ShiftColumns, b)]
		}
	}
	return g, nil
}

func drawn(lines []string, columns, rows, heights int) (Grid, error) {
	g := newGrid(columns, rows, heights)
	if len(lines) != rows {
		return Grid{}, fmt.Errorf("field: %d drawn rows for a field of %d", len(lines), rows)
	}
	for i, line := range lines {
		if len(line) != columns {
			return Grid{}, fmt.Errorf("field: drawn row %d has %d places for %d columns", i+1, len(line), columns)
		}
		for j := range columns {
			level := int(line[j]) - '0'
			if level < 0 || level >= heights {
				return Grid{}, fmt.Errorf("field: drawn row %d, place %d: %q is not a level below %d", i+1, j+1, line[j], heights)
			}
			g.Levels[i*columns+j] = uint8(level)
		}
	}
	return g, nil
}

// shuffle fills levels with equal shares and shuffles them.
func shuffle(levels []uint8, heights int, seed uint64) {
	for n := range levels {
		levels[n] = uint8(n % heights)
	}
	chance.Shuffle(levels, seed)
}
