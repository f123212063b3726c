// Package cut plans how pieces of a few lengths come out of bars of stock.
//
// Everything is in integers of one unit that the caller chooses; the engine
// uses nanometres. A bar of length L with end trim t, holding tail u and saw
// kerf k can yield pieces exactly when
//
//	Σ(length + k) ≤ L − t − u + k
//
// since n pieces need n − 1 cuts between them. The cut that frees the last
// piece may take up to one kerf of the tail or run out of the bar's end.
//
// Three answers, from quick to thorough:
//
//   - FirstFit is what a person does at the stop block: longest pieces first,
//     each into the first bar that still has room. It needs at most 11/9 of the
//     best number of bars and 6/9 of a bar more (Dósa, Li, Han and Tuza,
//     Theoretical Computer Science 513, 2013). LowerBound says how many bars any
//     plan needs.
//   - Solve finds the fewest or cheapest bars of several lengths, prices and
//     supplies, with a bound that proves the plan or says how far it can be from
//     the best: column generation, dives over what is left, and where there is a
//     choice of bars, purchases in the order of their cost.
//   - FewestVisits keeps the bars and lowers the handling at the stop block.
//
// SolveSheets cuts rectangles out of sheets; Split says when a panel must be
// made of several modules. Budgets are steps, never time: the same input gives
// the same plan in every program.
package cut

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
)

// Limits on what is accepted, so that no sum can leave an int64: 10 million
// pieces in bars of 100 m in nanometres stay below 2⁶².
const (
	MaxLength = 100_000_000_000
	MaxPieces = 10_000_000
)

// Stock is one kind of bar, cut with one saw.
type Stock struct {
	Length  int64 // of a whole bar
	Kerf    int64 // taken by each cut
	EndTrim int64 // lost to squaring, both ends together, kerf included
	Tail    int64 // last part of a bar, which a hand needs to hold it
}

// Piece is a number of pieces of one length.
type Piece struct {
	Length int64
	Count  int
}

// Pattern is a number of bars that are all cut alike.
type Pattern struct {
	Bars   int
	Pieces []Piece // what one bar yields, longest first
	Offcut int64   // what is left of one bar, the holding tail included
}

// Layout is a plan for all pieces.
type Layout struct {
	Patterns []Pattern // in the order in which the bars are begun
	Bars     int
	Used     int64 // length of all pieces
	Bought   int64 // length of all bars
}

// UsedShare returns the share of the bought length that ends up in pieces, 0
// for an empty layout.
func (l Layout) UsedShare() float64 {
	if l.Bought == 0 {
		return 0
	}
	return float64(l.Used) / float64(l.Bought)
}

// PieceError says that pieces[Index] is longer than any piece out of one bar.
type PieceError struct {
	Index   int
	Length  int64
	Longest int64 // that a bar can yield
}

// Error names the piece and the longest length that would do.
func (e *PieceError) Error() string {
	return fmt.Sprintf("pieces[%d]: length %d does not fit any bar (allowed up to %d)", e.Index, e.Length, e.Longest)
}

// Longest returns the longest piece that a bar can yield.
func (s Stock) Longest() int64 { return max(0, s.Length-s.EndTrim-s.Tail) }

// MostOf returns how many pieces of one length come out of a bar:
// ⌊(L − t − u + k) / (length + k)⌋.
func (s Stock) MostOf(length int64) int {
	if length <= 0 || length > s.Longest() {
		return 0
	}
	return int(s.room() / (length + s.Kerf))
}

// room is what the pieces of one bar may take up, each with one kerf.
func (s Stock) room() int64 { return s.Longest() + s.Kerf }

// LowerBound returns a number of bars that no plan for these pieces can go
// below: all pieces with their kerfs over the room of a bar, rounded up. It
// refuses what FirstFit refuses.
func LowerBound(stock Stock, pieces []Piece) (int, error) {
	pieces, err := pooled(stock, pieces)
	if err != nil {
		return 0, err
	}
	var total int64
	for _, p := range pieces {
		total += int64(p.Count) * (p.Length + stock.Kerf)
	}
	if total == 0 {
		return 0, nil
	}
	room := stock.room()
	return int((total + room - 1) / room), nil
}

// pooled checks the problem, adds up pieces of like length and returns them
// longest first. Every fault is reported, not only the first.
func pooled(stock Stock, pieces []Piece) ([]Piece, error) {
	err := checkStock(stock)
	var count int
	for i, p := range pieces {
		switch {
		case p.Length <= 0 || p.Length > MaxLength:
			err = errors.Join(err, fmt.Errorf("pieces[%d]: length %d out of range (allowed 1 to %d)", i, p.Length, int64(MaxLength)))
		case p.Count < 0 || p.Count > MaxPieces:
			err = errors.Join(err, fmt.Errorf("pieces[%d]: count %d out of range (allowed 0 to %d)", i, p.Count, MaxPieces))
		case p.Count > 0 && p.Length > stock.Longest():
			err = errors.Join(err, &PieceError{Index: i, Length: p.Length, Longest: stock.Longest()})
		}
		count = min(count+min(max(p.Count, 0), MaxPieces), MaxPieces+1)
	}
	if count > MaxPieces {
		err = errors.Join(err, fmt.Errorf("pieces: more than %d in all", MaxPieces))
	}
	if err != nil {
		return nil, err
	}
	return pool(pieces), nil
}

func pool(pieces []Piece) []Piece {
	sorted := slices.Clone(pieces)
	slices.SortFunc(sorted, func(a, b Piece) int { return cmp.Compare(b.Length, a.Length) })
	var out []Piece
	for _, p := range sorted {
		switch last := len(out) - 1; {
		case p.Count == 0:
		case last >= 0 && out[last].Length == p.Length:
			out[last].Count += p.Count
		default:
			out = append(out, p)
		}
	}
	return out
}

func checkStock(s Stock) error {
	var err error
	for _, f := range []struct {
		name       string
		value, low int64
	}{
		{"length", s.Length, 1}, {"kerf", s.Kerf, 0}, {"trim", s.EndTrim, 0}, {"tail", s.Tail, 0},
	} {
		if f.value < f.low || f.value > MaxLength {
			err = errors.Join(err, fmt.Errorf("stock.%s: %d out of range (allowed %d to %d)", f.name, f.value, f.low, int64(MaxLength)))
		}
	}
	return err
}
