package sound

// lanes is how many levels one pass over a line sums at a time: their sums and
// the cosine and sine of a place just fill the registers of a processor.
const lanes = 4

// foldedLine is a line of cells folded at its middle. Cells that mirror each
// other are kept as their sum, which goes with the cosine of their phase, and
// their difference, which goes with the sine. The last level is left out: it is
// what the others leave of the line without blocks, whose transform is known.
type foldedLine struct {
	levels int
	blocks [][]float64 // for each lanes levels: for each pair of cells, lanes sums and lanes differences
}

// foldLine folds the counts of a line: counts[m][l] cells of level l at place m.
func foldLine(counts [][]float64) foldedLine {
	n := len(counts)
	f := foldedLine{levels: len(counts[0])}
	for first := 0; first < f.levels-1; first += lanes {
		var block []float64
		for i := range (n + 1) / 2 {
			upper, lower := counts[n/2+i], counts[(n-1)/2-i]
			var pair [2 * lanes]float64
			for l := first; l < min(first+lanes, f.levels-1); l++ {
				pair[l-first] = upper[l] + lower[l]
				pair[l-first+lanes] = upper[l] - lower[l]
				if n%2 == 1 && i == 0 {
					pair[l-first] = upper[l] // the middle cell has no other
				}
			}
			block = append(block, pair[:]...)
		}
		f.blocks = append(f.blocks, block)
	}
	return f
}

// at writes the transforms of all levels but the last, for the cosines and sines
// of the places from the middle outwards.
func (f foldedLine) at(cosines, sines []float64, out []complex128) {
	for b, block := range f.blocks {
		s := sumPairs(block, cosines, sines)
		for l := b * lanes; l < min((b+1)*lanes, f.levels-1); l++ {
			out[l] = complex(s[l-b*lanes], s[l-b*lanes+lanes])
		}
	}
}

// sumPairs runs over the pairs of cells from the middle outwards and returns the
// lanes sums with the cosine, then those with the sine.
func sumPairs(block, cosines, sines []float64) [2 * lanes]float64 {
	var r0, r1, r2, r3, i0, i1, i2, i3 float64
	sines = sines[:len(cosines)]
	for m, c := range cosines {
		s := sines[m]
		p := (*[2 * lanes]float64)(block[2*lanes*m:])
		r0 += p[0] * c
		r1 += p[1] * c
		r2 += p[2] * c
		r3 += p[3] * c
		i0 += p[4] * s
		i1 += p[5] * s
		i2 += p[6] * s
		i3 += p[7] * s
	}
	return [2 * lanes]float64{r0, r1, r2, r3, i0, i1, i2, i3}
}
