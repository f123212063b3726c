package cut

// SplitLimits say how large one module of a panel may be; 0 is no limit.
type SplitLimits struct {
	Width, Length int64 // of a sheet without its crooked edges, across and along the grain
	Turn          bool  // the grain may run the other way
	Oversize      int64 // that a module is cut larger, each way
	Passage       int64 // through which its shorter side must go
	MassG         int64 // of the whole panel
	MaxMassG      int64 // of one module
}

// MaxModules is how many modules a panel is split into at most.
const MaxModules = 12

// Split returns into how many modules, side by side and above one another, a
// panel of so many blocks must be divided: as few as possible, and of those the
// least slender. Modules are whole blocks and differ by one block at most; the
// largest is checked. It reports false where even MaxModules are too large.
func Split(columns, rows int, pitch int64, l SplitLimits) (wide, high int, ok bool) {
	for n := 1; n <= MaxModules; n++ {
		longest := int64(-1)
		for w := 1; w <= n; w++ {
			if n%w != 0 || w > columns || n/w > rows {
				continue
			}
			across, down := ceilDiv(columns, w), ceilDiv(rows, n/w)
			if !l.allow(int64(across)*pitch, int64(down)*pitch, across*down, columns*rows) {
				continue
			}
			if side := max(int64(across), int64(down)); longest < 0 || side < longest {
				wide, high, longest = w, n/w, side
			}
		}
		if longest >= 0 {
			return wide, high, true
		}
	}
	return 0, 0, false
}

// allow checks a module of so many cells out of all.
func (l SplitLimits) allow(width, height int64, cells, all int) bool {
	w, h := width+l.Oversize, height+l.Oversize
	onSheet := func(w, h int64) bool { return w <= l.Width && h <= l.Length }
	if l.Width > 0 && !onSheet(w, h) && (!l.Turn || !onSheet(h, w)) {
		return false
	}
	if l.Passage > 0 && min(width, height) > l.Passage {
		return false
	}
	return l.MaxMassG == 0 || l.MassG*int64(cells) <= l.MaxMassG*int64(all)
}

func ceilDiv(a, b int) int { return (a + b - 1) / b }
