package cut

import (
	"fmt"
	"slices"
)

// run is a number of bars, next to one another in the order of the bars, that
// hold the same pieces.
type run struct {
	bars   int
	room   int64 // left in each bar
	pieces []Piece
}

// FirstFit cuts the longest pieces first and puts each into the first bar that
// still has room, opening a new bar when none has. The plan is the same as if
// every piece were placed by itself, but the work is in proportion to lengths
// and patterns, not to pieces.
func FirstFit(stock Stock, pieces []Piece) (Layout, error) {
	pieces, err := pooled(stock, pieces)
	if err != nil {
		return Layout{}, err
	}
	var runs []run
	for _, p := range pieces {
		runs = place(runs, stock, p)
	}
	return layout(stock, runs), nil
}

// place adds all pieces of one length. First fit fills the first bar with room
// as far as it goes, then the next: so the bars of a run come out as some that
// took all they could, at most one that took the last few pieces, and some as
// they were.
func place(runs []run, stock Stock, p Piece) []run {
	width := p.Length + stock.Kerf
	out := make([]run, 0, len(runs)+2)
	left := p.Count
	for _, r := range runs {
		each := int(r.room / width)
		if each == 0 || left == 0 {
			out = append(out, r)
			continue
		}
		full := min(r.bars, left/each)
		left -= full * each
		out = r.take(out, full, p.Length, each, width)
		if full == r.bars {
			continue
		}
		if left > 0 {
			out = r.take(out, 1, p.Length, left, width)
			full, left = full+1, 0
		}
		if full < r.bars {
			r.bars -= full
			out = append(out, r)
		}
	}
	fresh := run{room: stock.room()}
	each := int(fresh.room / width)
	out = fresh.take(out, left/each, p.Length, each, width)
	if left%each > 0 {
		out = fresh.take(out, 1, p.Length, left%each, width)
	}
	return out
}

// take appends bars like those of r, each with n pieces more.
func (r run) take(out []run, bars int, length int64, n int, width int64) []run {
	if bars == 0 {
		return out
	}
	return append(out, run{
		bars:   bars,
		room:   r.room - int64(n)*width,
		pieces: append(slices.Clip(r.pieces), Piece{Length: length, Count: n}),
	})
}

// layout merges bars that are cut alike into patterns.
func layout(stock Stock, runs []run) Layout {
	var l Layout
	seen := map[string]int{} // pieces of a pattern → its index
	for _, r := range runs {
		l.Bars += r.bars
		for _, p := range r.pieces {
			l.Used += int64(r.bars) * int64(p.Count) * p.Length
		}
		key := fmt.Sprint(r.pieces)
		i, ok := seen[key]
		if !ok {
			i = len(l.Patterns)
			seen[key] = i
			l.Patterns = append(l.Patterns, Pattern{Pieces: r.pieces, Offcut: offcut(stock, r.room)})
		}
		l.Patterns[i].Bars += r.bars
	}
	l.Bought = int64(l.Bars) * stock.Length
	return l
}

// offcut is what remains of a bar: the room left without the kerf that room
// counts beyond the bar's end, and the holding tail.
func offcut(stock Stock, room int64) int64 {
	return max(0, room-stock.Kerf+stock.Tail)
}
