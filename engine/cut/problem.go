package cut

import (
	"errors"
	"fmt"
)

// More limits on what is accepted. A price may be a length, where nothing else
// is known, and the price of the most pieces that are accepted stays below 2⁶³.
const (
	MaxPrice = 100_000_000_000
	MaxBars  = 64
	MaxLines = 2000
)

// Bar is one kind of bar that can be had.
type Bar struct {
	Name      string
	Length    int64
	Price     int64
	Limited   bool
	Available int // how many there are, when limited
}

// Goal is what a plan has as little of as possible.
type Goal int

// The goals.
const (
	Cost Goal = iota
	Boards
)

// Problem is a list of pieces and the bars that they can be cut from.
type Problem struct {
	Bars    []Bar
	Kerf    int64 // taken by each cut
	EndTrim int64 // lost to squaring a bar, both ends together, kerf included
	Tail    int64 // last part of a bar, which a hand needs to hold it
	Pieces  []Piece
	Goal    Goal
}

// ErrSupply says that no plan was found that makes do with the bars at hand.
var ErrSupply = errors.New("bars: the bars at hand do not yield all pieces")

// stock is one kind of bar with the saw that cuts it.
func (p Problem) stock(bar int) Stock {
	return Stock{Length: p.Bars[bar].Length, Kerf: p.Kerf, EndTrim: p.EndTrim, Tail: p.Tail}
}

// check returns everything that is wrong with a problem.
func (p Problem) check() error {
	var faults []error
	outside := func(path string, value, low, high int64) {
		if value < low || value > high {
			faults = append(faults, fmt.Errorf("%s: %d out of range (allowed %d to %d)", path, value, low, high))
		}
	}
	outside("kerf", p.Kerf, 0, MaxLength)
	outside("trim", p.EndTrim, 0, MaxLength)
	outside("tail", p.Tail, 0, MaxLength)
	if n := len(p.Bars); n == 0 || n > MaxBars {
		faults = append(faults, fmt.Errorf("bars: %d kinds (allowed 1 to %d)", n, MaxBars))
	}
	for i, b := range p.Bars {
		outside(fmt.Sprintf("bars[%d].length", i), b.Length, 1, MaxLength)
		outside(fmt.Sprintf("bars[%d].price", i), b.Price, 0, MaxPrice)
		outside(fmt.Sprintf("bars[%d].available", i), int64(b.Available), 0, MaxPieces)
	}
	if n := len(p.Pieces); n > MaxLines {
		faults = append(faults, fmt.Errorf("pieces: %d lines (allowed up to %d)", n, MaxLines))
	}
	if p.Goal != Cost && p.Goal != Boards {
		faults = append(faults, fmt.Errorf("goal: %d is unknown", p.Goal))
	}
	if len(faults) > 0 {
		return errors.Join(faults...)
	}
	return p.checkPieces()
}

func (p Problem) checkPieces() error {
	var longest int64
	for i, b := range p.Bars {
		if !b.Limited || b.Available > 0 {
			longest = max(longest, p.stock(i).Longest())
		}
	}
	var faults []error
	count := 0
	for i, piece := range p.Pieces {
		switch {
		case piece.Length <= 0 || piece.Length > MaxLength:
			faults = append(faults, fmt.Errorf("pieces[%d].length: %d out of range (allowed 1 to %d)", i, piece.Length, int64(MaxLength)))
		case piece.Count < 0 || piece.Count > MaxPieces:
			faults = append(faults, fmt.Errorf("pieces[%d].count: %d out of range (allowed 0 to %d)", i, piece.Count, MaxPieces))
		case piece.Count > 0 && piece.Length > longest:
			faults = append(faults, &PieceError{Index: i, Length: piece.Length, Longest: longest})
		default:
			count += piece.Count
		}
	}
	if count > MaxPieces {
		faults = append(faults, fmt.Errorf("pieces: more than %d in all", MaxPieces))
	}
	return errors.Join(faults...)
}
